"""What a cohort has signed off and what is held, laid out for one page."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from django.db.models import Q
from django.utils import timezone

from course.people.models import Person
from quizzes.competencies import COMPETENCIES
from quizzes.models import DecisionRecord, Standing
from quizzes.models.competency import Decided
from quizzes.standing import State

ORAL, POOL, OTHER = "oral", "pool", "other"
PARTS = {ORAL: "Oral", POOL: "Pool", OTHER: "Another part"}


@dataclass(frozen=True, slots=True)
class Cell:
    """One box to tick: its value in the form, and the latest signature that stands there."""

    value: str
    part: str
    signature: DecisionRecord | None
    is_ticked: bool


@dataclass(frozen=True, slots=True)
class Row:
    """One trainee with a box for each part; ``others`` are signatures of further parts."""

    person: Person
    cells: tuple[Cell, ...]
    others: tuple[DecisionRecord, ...]


def rows(people: Sequence[Person], competency: str, ticked: Iterable[str]) -> list[Row]:
    """A row for each trainee in the order given; one query."""
    signed = _latest(people, competency)
    chosen = set(ticked)
    return [
        Row(
            person,
            tuple(
                Cell(box(person, part), part, signed.get((person.pk, part)), box(person, part) in chosen)
                for part in PARTS
            ),
            tuple(
                one for (who, part), one in signed.items() if who == person.pk and part not in (ORAL, POOL)
            ),
        )
        for person in people
    ]


def box(person: Person, part: str) -> str:
    """The value of a box: who and which part."""
    return f"{person.pk}:{part}"


def _latest(people: Sequence[Person], competency: str) -> dict[tuple[int, str], DecisionRecord]:
    found: dict[tuple[int, str], DecisionRecord] = {}
    signatures = DecisionRecord.objects.filter(
        learner__in=people, competency=competency, decided=Decided.SIGNED
    )
    for one in signatures:  # latest first
        found.setdefault((one.learner_id, one.part.lower()), one)
    return found


def sums(people: Sequence[Person]) -> list[tuple[str, str, int, int]]:
    """For each competency its slug and title, and how many have the oral and the pool part; one query."""
    pairs = DecisionRecord.objects.filter(learner__in=people, decided=Decided.SIGNED).values_list(
        "learner", "competency", "part"
    )
    count = Counter(
        (slug, part) for _, slug, part in {(who, slug, part.lower()) for who, slug, part in pairs}
    )
    return [(slug, one.title, count[slug, ORAL], count[slug, POOL]) for slug, one in COMPETENCIES.items()]


def held(people: Sequence[Person]) -> list[tuple[Person, Standing]]:
    """Every standing that is held, rests or waits, by trainee in the order given; one query."""
    found: dict[int, list[Standing]] = defaultdict(list)
    holding = Q(waits=True) | Q(state=State.HELD) | Q(held_until__gt=timezone.localdate())
    for row in Standing.objects.filter(holding, learner__in=people).order_by("pk"):
        found[row.learner_id].append(row)
    return [(person, row) for person in people for row in found[person.pk]]
