"""Every read larger than a get."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Any

from django.db.models import Count, DateField, F, Max, Q, QuerySet, Window
from django.db.models.functions import RowNumber, TruncWeek
from django.utils import timezone

from quizzes.competencies import COMPETENCIES
from quizzes.models import (
    Accommodation,
    Attempt,
    DecisionRecord,
    Doubt,
    Ruling,
    Sitting,
    Slot,
    Standing,
)
from quizzes.practice import Answer, Help, across
from quizzes.readiness import LATEST
from quizzes.standing import DECIDING, Facts, Purpose, State
from quizzes.subjects import WHOLE

if TYPE_CHECKING:
    from quizzes.typing import Learner


@dataclass(frozen=True, slots=True, eq=False)
class Stand:
    """A state as it shows today, and whether it waits for an instructor. There is one of each kind.

    Equal is only itself: a board looks up thousands, and a state is slow to hash.
    """

    state: State
    waits: bool


STANDS = {(state, waits): Stand(state, waits) for state in State for waits in (False, True)}


def standings_for(learner: Learner) -> dict[str, Standing]:
    """The learner's standing in every competency by slug; one not begun is a blank "not started", to read."""
    kept = {row.competency: row for row in Standing.objects.raw(_standings_sql(), [learner.pk])}
    return {slug: kept.get(slug) or _blank(slug) for slug in COMPETENCIES}


@cache
def _blank(competency: str) -> Standing:
    """Nobody's standing, "not started": one for all, since a row is dear to make and most are blank."""
    return Standing(competency=competency)


@cache
def _standings_sql() -> str:
    """Put into words once: on pages that are loaded often that costs more than the asking."""
    return Standing.objects.filter(learner=0).query.sql_with_params()[0]


def standing_for(learner: Learner, competency: str) -> Standing:
    """The learner's standing in one competency; an unsaved "not started" before the first answer."""
    row = Standing.objects.filter(learner=learner, competency=competency).first()
    return row or Standing(learner=learner, competency=competency)


def stands_of(learners: Collection[int]) -> Iterator[tuple[int, str, Stand]]:
    """Where many learners stand: (learner, competency, stand) for each that was begun. One query."""
    today = timezone.localdate()
    rows = Standing.objects.filter(learner__in=learners).order_by()
    for learner, competency, state, waits, notice, due in rows.values_list(*_OF_A_STAND):
        yield learner, competency, _stand(state, waits, notice, due, today)


_OF_A_STAND = ("learner_id", "competency", "state", "waits", "notice_on", "due_on")


@lru_cache(maxsize=4096)
def _stand(state: str, waits: bool, notice: date | None, due: date | None, today: date) -> Stand:
    """Kept, since a cohort shares its days: a board has far fewer of these than cells."""
    return STANDS[Facts(State(state), notice_on=notice, due_on=due).on(today), waits]


def last_moves_of(learners: Collection[int]) -> Mapping[int, date]:
    """The day of each learner's last practice answer, ended check or decision, by learner. One query.

    It reads the standings, never the attempts; a check counts when it ends.
    """
    rows = Standing.objects.filter(learner__in=learners, moved_at__isnull=False).order_by()
    latest = rows.values_list("learner_id").annotate(Max("moved_at"))
    return {learner: timezone.localdate(moved) for learner, moved in latest}


def practice_by_week(learner: Learner) -> list[tuple[date, int, int]]:
    """The learner's answers in practice and review by week, earliest first: (its Monday, answers, right)."""
    week = TruncWeek("answered_at", output_field=DateField())
    weeks = _practised(learner).annotate(week=week).order_by("week").values_list("week")
    return list(weeks.annotate(answers=Count("pk"), right=Count("pk", filter=Q(counted="right"))))


def open_attempt(learner: Learner, competency: str, *purposes: Purpose) -> Attempt | None:
    """The problem that waits for this learner in a sitting of one of these purposes."""
    return (
        Attempt.objects.select_related("sitting")
        .filter(
            learner=learner, sitting__competency=competency, sitting__purpose__in=purposes,
            sitting__ended__isnull=True, answered_at__isnull=True,
        )
        .order_by("-sitting__purpose")  # a review goes before practice
        .first()
    )  # fmt: skip


def open_check(learner: Learner, competency: str) -> Sitting | None:
    """The learner's check of the competency, or of the whole course, that has not ended."""
    return Sitting.objects.filter(
        learner=learner, competency__in=(competency, WHOLE), purpose__in=DECIDING, ended__isnull=True
    ).first()


def latest_practice(learner: Learner, competency: str) -> list[Answer]:
    """The learner's latest answers in practice and review of one competency, the latest first."""
    rows = _practised(learner).filter(sitting__competency=competency)
    return [_answer(*row) for row in rows.order_by("-pk").values_list(*_OF_AN_ANSWER)[:LATEST]]


def latest_practice_in_each(learner: Learner) -> Mapping[str, list[Answer]]:
    """The same for every competency that was practised, in one query."""
    back = Window(RowNumber(), partition_by=F("sitting__competency"), order_by=F("pk").desc())
    rows = _practised(learner).annotate(back=back).filter(back__lte=LATEST).order_by("-pk")
    found: dict[str, list[Answer]] = defaultdict(list)
    for competency, *row in rows.values_list("sitting__competency", *_OF_AN_ANSWER):
        found[competency].append(_answer(*row))
    return found


def next_across(learner: Learner) -> str | None:
    """The competency whose problem comes next in practice over the whole course.

    None that is being checked; None at all while every one of them is.
    """
    checked = set(
        Sitting.objects.filter(learner=learner, purpose__in=DECIDING, ended__isnull=True).values_list(
            "competency", flat=True
        )
    )
    free = {slug: row for slug, row in standings_for(learner).items() if not {slug, WHOLE} & checked}
    begun = [slug for slug, row in free.items() if row.state != State.NOT_STARTED] or list(free)[:1]
    return across(latest_practice_in_each(learner), begun) if begun else None


_OF_AN_ANSWER = ("family", "counted", "slip_label", "help", "hints")


def _practised(learner: Learner) -> QuerySet[Attempt]:
    purposes = (Purpose.PRACTICE, Purpose.REVIEW)
    return Attempt.objects.counting().filter(learner=learner, sitting__purpose__in=purposes)


def _answer(family: str, counted: str, label: str, help_: int, hints: int) -> Answer:
    return Answer(family, counted == "right", label, is_unaided=help_ == Help.NONE and not hints)


def last_check(learner: Learner, competency: str) -> Sitting | None:
    """The learner's latest check of any kind that has ended."""
    return Sitting.objects.filter(
        learner=learner, competency=competency, purpose__in=DECIDING, ended__isnull=False
    ).first()


def accommodation_of(learner: Learner) -> Accommodation | None:
    """What the learner's checks are held under: the latest entry."""
    return Accommodation.objects.filter(learner=learner).first()


def accommodations_of(learner: Learner) -> QuerySet[Accommodation]:
    """Every entry, latest first."""
    return Accommodation.objects.filter(learner=learner)


def slots_of(group: str) -> QuerySet[Slot]:
    """The group's slots for supervised checks, latest first."""
    return Slot.objects.filter(group=group)


def answered_of(sitting: Sitting) -> QuerySet[Attempt]:
    """The sitting's answered attempts in the order they were put."""
    return sitting.attempts.filter(answered_at__isnull=False).order_by("number")


def decisions_of(learner: Learner) -> QuerySet[DecisionRecord]:
    """The learner's competency record, latest first."""
    return DecisionRecord.objects.filter(learner=learner).select_related("sitting", "ruling")


def sittings_of(learner: Learner) -> QuerySet[Sitting]:
    """Every practice and check of the learner, latest first."""
    return Sitting.objects.filter(learner=learner)


def doubts_waiting(learners: QuerySet[Any]) -> QuerySet[Doubt]:
    """What these learners doubt and nobody has ruled on yet, the oldest first."""
    waiting = Doubt.objects.filter(learner__in=learners, attempt__ruled="")
    return waiting.select_related("learner", "attempt__sitting").defer(
        "attempt__shown", "attempt__key", "attempt__mend", "attempt__sitting__rule"
    )


def doubts_of(learner: Learner) -> QuerySet[Doubt]:
    """What one learner doubted, the latest first, with the answers it is about."""
    found = Doubt.objects.filter(learner=learner).select_related("attempt__sitting").order_by("-pk")
    return found.defer("attempt__shown", "attempt__key", "attempt__mend", "attempt__sitting__rule")


def doubt_about(attempt: Attempt) -> Doubt | None:
    """What its learner said about an answer."""
    return Doubt.objects.filter(attempt=attempt).first()


def rulings_on(attempt: Attempt) -> QuerySet[Ruling]:
    """Every ruling on an answer, the latest last."""
    return attempt.rulings.all()


def after_review(sitting: Sitting) -> QuerySet[DecisionRecord]:
    """What a check came to by reviews after its end, the latest first."""
    found = DecisionRecord.objects.filter(sitting=sitting, competency=sitting.competency)
    return found.filter(ruling__isnull=False).select_related("ruling")
