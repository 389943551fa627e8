"""Who made which slips, and how often they could have: the counts that a teaching list is ranked by."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime

from quizzes.actions.tallying import answer_sums
from quizzes.models import AnswerCount, Attempt


@dataclass(slots=True)
class SlipMade:
    """One slip: in a few words, the families it was made in, and for each person (made, answers there).

    ``people`` are all who answered in one of these families, whether or not they made it: what
    quizzes/statistics/ranking.py asks for. ``makers`` are those who made it: learner → family → how often.
    """

    label: str = ""
    families: dict[str, int] = field(default_factory=dict)
    people: list[tuple[int, int]] = field(default_factory=list)
    makers: dict[int, dict[str, int]] = field(default_factory=dict)


def slips_of(learners: Iterable[int], since: datetime | None = None) -> Mapping[str, SlipMade]:
    """Every slip that these learners made, by name, in one query over their counts.

    Counts know no dates; with ``since`` it is one query over their answers from then on, summed alike.
    An answer could show the slip where anybody of them made it in that family. What no slip explains is
    left out. An answer that was set aside does not count, one accepted as right is right.
    """
    answers: dict[str, dict[int, int]] = defaultdict(lambda: defaultdict(int))
    made: dict[str, dict[int, int]] = defaultdict(lambda: defaultdict(int))
    found: dict[str, SlipMade] = defaultdict(SlipMade)
    for learner, family, slip, label, count in _sums(list(learners), since):
        answers[family][learner] += count
        if slip:
            made[slip][learner] += count
            found[slip].makers.setdefault(learner, {})[family] = count
            found[slip].label = label
            found[slip].families[family] = found[slip].families.get(family, 0) + count
    for slip, one in found.items():
        given: dict[int, int] = defaultdict(int)
        for family in one.families:
            for learner, count in answers[family].items():
                given[learner] += count
        one.people = [(made[slip].get(learner, 0), count) for learner, count in given.items()]
    return dict(found)


def _sums(learners: Collection[int], since: datetime | None) -> Iterable[tuple[int, str, str, str, int]]:
    """Learner, family, slip and its label, how often."""
    if since is None:
        rows = AnswerCount.objects.filter(learner__in=learners).order_by()
        return rows.values_list("learner", "family", "slip", "label", "answers")
    sums = answer_sums(Attempt.objects.filter(learner__in=learners, answered_at__gte=since))
    return [(one["learner_id"], one["family"], one["slip"], one["label"], one["answers"]) for one in sums]
