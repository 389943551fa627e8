"""Whether the kept counts agree with the attempts, counted a second way: from single answers."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from quizzes.actions.tallying import answer_sums
from quizzes.blocks import Block, finished_blocks
from quizzes.models import AnswerCount, Attempt, CountedBlock, ItemTally
from quizzes.statistics.drift import Drift, watch
from quizzes.statistics.keeping import responses
from quizzes.statistics.tallies import Response, Tally, tally

_SHOWN = 10


def disagreements() -> Iterator[str]:
    """A sentence for each place where they differ; nothing where all agree."""
    blocks = finished_blocks()
    yield from _blocks(blocks)
    rows = {row.item: row for row in ItemTally.objects.all()}
    by_question, by_family = (_responses(blocks, questions=questions) for questions in (True, False))
    tallies = tally(by_question) | tally(by_family)
    rights = _rights(by_question) | _rights(by_family)
    before = _before(blocks)
    for item in sorted(rows.keys() | tallies.keys()):
        row, counted = rows.get(item) or ItemTally(item=item), tallies.get(item, Tally({}))
        yield from _item(row, counted, before.get(item, [0, 0]), rights.get(item, []))
    yield from _answers()


def _blocks(blocks: Sequence[Block]) -> Iterator[str]:
    counted = set(CountedBlock.objects.values_list("sitting", flat=True))
    finished = {block.sitting for block in blocks}
    for sitting in sorted(counted ^ finished):
        what = "finished, but not counted" if sitting in finished else "counted, but not finished"
        yield f"First block of sitting {sitting}: {what}."


def _responses(blocks: Sequence[Block], *, questions: bool) -> list[Response]:
    return [
        one
        for block in blocks
        for one in responses(block.person, block.sitting, block.answers, questions=questions)
    ]


def _rights(singles: Sequence[Response]) -> dict[str, list[bool]]:
    """Each person's first answer to each item, in order."""
    firsts: dict[str, dict[int, bool]] = defaultdict(dict)
    for one in singles:
        firsts[one.item].setdefault(one.person, one.right)
    return {item: list(people.values()) for item, people in firsts.items()}


def _before(blocks: Sequence[Block]) -> Mapping[str, list[int]]:
    firsts: dict[tuple[str, int], bool | None] = {}
    for block in blocks:
        for one in block.answers:
            firsts.setdefault((one.family, block.person), one.before)
    sums: dict[str, list[int]] = defaultdict(lambda: [0, 0])
    for (family, _), right in firsts.items():
        if right is not None:
            sums[family][not right] += 1
    return sums


def _item(row: ItemTally, counted: Tally, before: list[int], rights: Sequence[bool]) -> Iterator[str]:
    kept = row.counts.tally()
    pairs: list[tuple[str, Any, Any]] = [
        ("right and wrong by the rest", dict(kept.rests), dict(counted.rests)),
        ("slips and options", dict(kept.chosen), dict(counted.chosen)),
        ("seconds", dict(kept.seconds), dict(counted.seconds)),
        ("draws", dict(kept.draws), dict(counted.draws)),
        ("first answers in practice", row.counts.before, before),
        ("drift", row.drift, watch(rights[row.drift_from :], Drift())),
    ]
    for what, is_kept, is_counted in pairs:
        if is_kept != is_counted:
            yield f"{row.item}, {what}: kept {is_kept}, counted {is_counted}."


def _answers() -> Iterator[str]:
    names = ("learner_id", "family", "verdict", "slip", "answers")
    kept = set(AnswerCount.objects.values_list(*names).iterator(chunk_size=2000))
    counted = {tuple(row[name] for name in names) for row in answer_sums(Attempt.objects.all())}
    for *what, answers in sorted(kept ^ counted)[:_SHOWN]:
        side = "kept" if (*what, answers) in kept else "counted"
        yield f"Answers of person {what[0]} to {what[1]}, {what[3] or what[2]}: {side} {answers}."
