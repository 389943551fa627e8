"""Ready-made counts of first answers to every item of the course, as if so many people had been checked.

How hard a kind is follows from its name; people differ in what they command; four slips share the rest.
"""

from random import Random

from quizzes.competencies import COMPETENCIES
from quizzes.items import questions_of
from quizzes.models import ItemTally
from quizzes.statistics.keeping import Answer, Counts, add_block, items_of

BAND = 33


def fill(people: int, times: int = 1) -> int:
    """Write them, each count so many ``times``: how many answers that makes. The same at every call."""
    rng, counts, families = Random(6), {}, {}
    for _ in range(people):
        able = rng.gauss(0, 0.15)
        for competency in COMPETENCIES.values():
            block = [_answer(family, able, rng) for family in competency.families]
            for item, family in items_of(block).items():
                counts.setdefault(item, Counts())
                families[item] = family
            add_block(counts, block, frozenset())
    ItemTally.objects.filter(item__in=counts).delete()
    rows = [ItemTally(item=item, family=families[item]) for item in counts]
    for row in rows:
        row.counts = _grown(counts[row.item], times)
    ItemTally.objects.bulk_create(rows)
    return sum(row.counts.tally().split.answers for row in rows if row.item == row.family)


def _grown(counts: Counts, times: int) -> Counts:
    pairs = (
        {key: [each * times for each in pair] for key, pair in kept.items()}
        for kept in (counts.rests, counts.draws)
    )
    single = ({key: each * times for key, each in kept.items()} for kept in (counts.chosen, counts.seconds))
    (rests, draws), (chosen, seconds) = pairs, single
    before = [each * times for each in counts.before]
    return Counts(rests, chosen, counts.labels, seconds, draws, before, counts.drift)


def _answer(family: str, able: float, rng: Random) -> Answer:
    hard = 0.7 + 0.28 * (sum(map(ord, family)) % 10) / 10
    right = rng.random() < hard + able
    slip = "" if right else f"slip-{int(rng.random() * 4)}"
    low = BAND * int(rng.random() * 6)
    return Answer(
        family=family,
        question=rng.choice(questions_of(family) or ("",)),
        right=right,
        chosen=slip,
        label=slip and f"Slip of kind {slip[-1]}",
        seconds=int(rng.lognormvariate(4, 0.6)),
        draw=f"{rng.choice(('us', 'metric'))}, {low} to {low + BAND} ft",
        before=rng.random() < hard - 0.3,
    )
