"""Taking the answers that were written on a paper.

A paper is printed before anybody answers and entered after; in between it is nobody's sitting. What is
entered goes the way of every answer: judged by pressure/marking.py, written as attempts of a check, weighed
by the rule, and decided in the same transaction.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, datetime, time
from typing import TYPE_CHECKING, Any

from django.db import transaction
from django.utils import timezone

from pressure.marking import Judged, Unjudged, judge
from pressure.record import key_from
from pressure.remarks import told_more
from quizzes import windows
from quizzes.actions.answers import write_answer
from quizzes.actions.checks import needs_code, rule_of
from quizzes.actions.decisions import allow
from quizzes.actions.endings import weigh
from quizzes.actions.paper_plans import PaperCheck, Question
from quizzes.actions.sittings import lock_standing, open_checks
from quizzes.errors import Refused
from quizzes.models import Accommodation, Attempt, Sitting, Standing, journal
from quizzes.models.policy import in_force
from quizzes.sheets import fields_of
from quizzes.standing import Purpose
from quizzes.subjects import WHOLE

if TYPE_CHECKING:
    from quizzes.typing import Learner

Form = Mapping[str, str]
"""The fields of pressure/marking.py for one question."""


def read_answers(questions: Sequence[Question], forms: Sequence[Form]) -> list[Judged | Unjudged]:
    """Each answer as it is judged, or what is wrong with its text.

    Where a field is left blank, so is the answer: it is wrong, since a paper cannot be handed back for a
    sentence to be mended.
    """
    return [_read(one["shown"], one["key"], form) for one, form in zip(questions, forms, strict=True)]


def _read(shown: Mapping[str, Any], key: Mapping[str, Any], form: Form) -> Judged | Unjudged:
    texts = {field["name"]: form.get(field["name"], "").strip() for field in fields_of(shown, {})}
    if not all(texts.values()):
        said = "; ".join(filter(None, texts.values()))
        return Judged("wrong", said[:400], "left blank in part" if said else "left blank")
    if shown["task"] == "choice":
        texts = {name: text.lower() for name, text in texts.items()}
    judged = judge(texts, key_from(shown, key))
    if isinstance(judged, Unjudged):
        if judged.code == "unchosen":
            last = shown["options"][-1]["letter"]
            return judged._replace(sentence=f"Give one letter from a to {last}, or leave it blank.")
        return judged
    return told_more(judged, shown, key)


def enter_paper(
    *,
    paper: PaperCheck,
    learner: Learner,
    forms: Sequence[Form],
    answered_on: date,
    by: Learner,
    watched_by: str = "",
    now: datetime | None = None,
) -> Sitting:
    """Enter what a learner wrote on a paper as a check of theirs; the rule decides, or the check goes on.

    ``watched_by`` is who was with the learner while it was answered. Raises Refused where the check is not
    open to the learner, for a paper printed for another, for oneself, and for text that cannot be read.
    """
    now = now or timezone.now()
    allow(learner, by, why="answers on paper")
    with transaction.atomic():
        row = lock_standing(learner, paper.competency.slug)
        began = moment(learner, paper.competency.slug, answered_on, now)
        why_not = refusal(paper, row, learner, began, watched_by, lock=True)
        if why_not:
            raise Refused(why_not)
        sitting = _write(paper, row, learner, by, watched_by, began)
        attempts = _answered(sitting, learner, paper, forms)
        details = {"answered on": answered_on.isoformat(), "questions": len(attempts)}
        journal.write(actor=by, verb="paper check entered", subject=sitting, details=details, at=now)
        weigh(attempts[-1], row, learner, now)
    return sitting


def refusal(
    paper: PaperCheck,
    row: Standing,
    learner: Learner,
    began: datetime,
    watched_by: str,
    *,
    lock: bool = False,
) -> str:
    """Why the paper cannot count for the learner who began it then, in a sentence; empty where it can."""
    policy = in_force()
    appointed = windows.conditions_of(learner.pk, paper.competency.slug, began, lock=lock)
    opening = appointed.narrow(row.opening(policy, timezone.localdate(began)))
    if open_checks(learner, paper.competency.slug, WHOLE):
        return f"A check of {learner} is open on the screen. It has to be finished there."
    if opening.purpose is None:
        return f"The check is not open to {learner}, who is told: “{opening.shut_because}”"
    if opening.purpose is not paper.purpose:
        return (
            f"This paper was printed as a {paper.purpose.value}; what is open to {learner} is a "
            f"{opening.purpose.value}. Print another."
        )
    if paper.purpose is Purpose.CHECK and paper.holds != row.holds:
        mark = rule_of(policy, paper.purpose, paper.competency, row.holds).target
        return (
            f"This paper was printed for a mark of {paper.rule.target}. With the holds of {learner} "
            f"the mark to reach is {mark}. Print another."
        )
    if (appointed.supervised or needs_code(policy, row)) and not watched_by.strip():
        return "This check is supervised. Say who watched while it was answered."
    return ""


def moment(learner: Learner, subject: str, day: date, now: datetime) -> datetime:
    """When a paper of that day was begun. Nobody noted the hour, so it is taken to lie in the time that the
    check was set for, if it was set for that day; otherwise it is now, or noon of an earlier day.
    """
    dawn = timezone.make_aware(datetime.combine(day, time.min))
    for one in windows.of_subject(windows.windows_of(learner.pk), subject):
        began = max(one.opens_at, dawn)
        if timezone.localdate(began) == day and began <= now and one.is_open(began):
            return began
    return now if day == timezone.localdate(now) else dawn.replace(hour=12)


def _write(
    paper: PaperCheck, row: Standing, learner: Learner, by: Learner, watched_by: str, began: datetime
) -> Sitting:
    if row.supervise:
        row.supervise = False
        row.save(update_fields=["supervise"])
    held_with = Accommodation.objects.filter(learner=learner).first()
    said = [held_with.in_words] if held_with and held_with.in_words != "none" else []
    return Sitting.objects.create(
        learner=learner,
        competency=paper.competency.slug,
        purpose=paper.purpose,
        system=paper.system,
        seed=paper.seed,
        rule=paper.rule.as_record(),
        policy=paper.policy,
        paper=[(paper.competency.slug, list(paper.families))],
        supervised_by=watched_by.strip()[:160],
        accommodation="; ".join([*said, f"pen on paper, entered by {by}"])[:500],
        began=began,
    )


def _answered(sitting: Sitting, learner: Learner, paper: PaperCheck, forms: Sequence[Form]) -> list[Attempt]:
    """The attempts, in the order printed. Raises Refused for the first text that cannot be read."""
    attempts = []
    read = read_answers(paper.questions, forms)
    for number, (question, judged) in enumerate(zip(paper.questions, read, strict=True), start=1):
        if isinstance(judged, Unjudged):
            raise Refused(f"Question {number}: {judged.sentence}")
        shown = question["shown"]
        attempt = Attempt.objects.create(
            sitting=sitting,
            learner=learner,
            number=number,
            diagnostic=number <= len(sitting.kinds),
            family=shown["family"],
            edition=shown["edition"],
            system=shown["system"],
            seed=shown["seed"],
            place=shown["number"],
            shown=shown,
            key=question["key"],
            asked_at=sitting.began,
        )
        write_answer(attempt, judged, sitting.began)
        attempts.append(attempt)
    return attempts
