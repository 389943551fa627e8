"""Keeping the counts in step with the answers, in their transaction; and making them anew from the attempts.

Rows of items are shared by everybody, so they are locked in the order of their names, after the standing and
before the deal of the family asked next.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from typing import TYPE_CHECKING, Any

from django.db import connection, transaction
from django.db.models import Case, CharField, Count, F, Max, Value, When

from quizzes.blocks import Block, block_of, finished_blocks
from quizzes.models import AnswerCount, Attempt, CountedBlock, ItemTally, Sitting
from quizzes.models.attempt import AttemptQuerySet
from quizzes.models.tallies import count_answer, locked
from quizzes.standing import Purpose
from quizzes.statistics.drift import watch
from quizzes.statistics.keeping import Counts, add_block, items_of

if TYPE_CHECKING:
    from quizzes.typing import Learner

_BATCH = 1000


def note_answer(attempt: Attempt) -> None:
    """Count an answer that was just written; with the last one of a first block, the block."""
    count_answer(attempt)
    sitting = attempt.sitting
    if sitting.purpose == Purpose.CHECK and attempt.diagnostic and attempt.number == len(sitting.kinds):
        _count_block(sitting)


def _count_block(sitting: Sitting) -> None:
    block = block_of(sitting)
    if block is None:
        return
    known = _known(block)
    rows = locked(items_of(block.answers))
    counts = {item: row.counts for item, row in rows.items()}
    add_block(counts, block.answers, known)
    _keep(rows.values(), counts)
    CountedBlock.objects.create(sitting=sitting)


def _known(block: Block) -> frozenset[str]:
    """The items that the person answered in a block counted before."""
    families = [one.family for one in block.answers]
    earlier = Attempt.objects.filter(
        learner=block.person, family__in=families, diagnostic=True, sitting__counted_block__isnull=False
    ).counting()
    rows = list(earlier.values_list("family", "shown__item"))
    return frozenset({family for family, _ in rows} | {f"{family}/{item}" for family, item in rows if item})


def _keep(rows: Iterable[ItemTally], counts: dict[str, Counts]) -> None:
    kept = list(rows)
    for row in kept:
        row.counts = counts[row.item]
    ItemTally.objects.bulk_update(kept, ItemTally.COUNTED, batch_size=_BATCH)


def follow_ruling(attempt: Attempt) -> None:
    """Count anew what a ruling on one answer touches, in the caller's transaction."""
    _recount_answers(attempt.learner, attempt.family)
    if CountedBlock.objects.filter(sitting=attempt.sitting_id).exists() and attempt.diagnostic:
        block = Attempt.objects.filter(sitting=attempt.sitting_id, diagnostic=True)
        _recount_items(set(block.values_list("family", flat=True)))


def _recount_answers(learner: Learner, family: str) -> None:
    AnswerCount.objects.filter(learner=learner, family=family).delete()
    mine = Attempt.objects.filter(learner=learner, family=family)
    AnswerCount.objects.bulk_create(AnswerCount(**row) for row in answer_sums(mine))


def _recount_items(families: Collection[str]) -> None:
    """The items of these families from their first answers; how often it is done does not matter."""
    items = dict(ItemTally.objects.filter(family__in=families).values_list("item", "family"))
    rows = locked(items)
    fresh = recounted(finished_blocks(families), {item: row.drift_from for item, row in rows.items()})
    _keep(rows.values(), {item: fresh.get(item, Counts()) for item in rows})


def recounted(blocks: Iterable[Block], watched_from: dict[str, int]) -> dict[str, Counts]:
    """The counts of every item in the blocks. ``watched_from`` is where the watch for drift began anew."""
    found: dict[str, Counts] = {}
    known: dict[int, set[str]] = {}
    firsts: dict[str, list[bool]] = {}
    for block in blocks:
        items = items_of(block.answers)
        for item in items:
            found.setdefault(item, Counts())
        seen = known.setdefault(block.person, set())
        add_block(found, block.answers, frozenset(seen))
        for one in block.answers:
            for item in set(one.items) - seen:
                firsts.setdefault(item, []).append(one.right)
        seen.update(items)
    for item, counts in found.items():
        counts.drift = watch(firsts.get(item, [])[watched_from.get(item, 0) :])
    return found


def rebuild() -> None:
    """Make all counts anew. Whoever answers meanwhile waits; what people decided of an item stays."""
    with transaction.atomic():
        _shut_out_writers()
        watched_from = dict(ItemTally.objects.values_list("item", "drift_from"))
        blocks = finished_blocks()
        counts = recounted(blocks, watched_from)
        families = {item: family for block in blocks for item, family in items_of(block.answers).items()}
        rows = locked(dict.fromkeys(watched_from, "") | families)
        _keep(rows.values(), {item: counts.get(item, Counts()) for item in rows})
        counted = [CountedBlock(sitting_id=block.sitting) for block in blocks]
        CountedBlock.objects.bulk_create(counted, ignore_conflicts=True, batch_size=_BATCH)
        AnswerCount.objects.all().delete()
        for batch in _in_batches(answer_sums(Attempt.objects.all())):
            AnswerCount.objects.bulk_create(AnswerCount(**row) for row in batch)


def _shut_out_writers() -> None:
    """SQLite has one writer at a time anyway; readers are let in by both."""
    if connection.vendor == "postgresql":
        with connection.cursor() as cursor:
            cursor.execute(
                "LOCK TABLE quizzes_answercount, quizzes_itemtally, quizzes_countedblock IN EXCLUSIVE MODE"
            )


def answer_sums(attempts: AttemptQuerySet) -> Iterator[dict[str, Any]]:
    """The answers that count, summed by the database: the fields of an ``AnswerCount`` each."""
    text, right = CharField(), When(counted="right", then=Value(""))
    sums = (
        attempts.counting()
        .annotate(
            made=Case(right, default=F("slip"), output_field=text),
            words=Case(right, default=F("slip_label"), output_field=text),
        )
        .order_by()
        .values_list("learner", "family", "counted", "made")
        .annotate(label=Max("words"), answers=Count("pk"))
    )
    names = ("learner_id", "family", "verdict", "slip", "label", "answers")
    for row in sums.iterator(chunk_size=2000):
        yield dict(zip(names, row, strict=True))


def _in_batches(rows: Iterator[dict[str, Any]]) -> Iterator[list[dict[str, Any]]]:
    batch: list[dict[str, Any]] = []
    for row in rows:
        batch.append(row)
        if len(batch) == _BATCH:
            yield batch
            batch = []
    yield batch
