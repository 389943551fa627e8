"""One item's page: its figures in words and tables, the flags, two charts, and whether it is asked."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from django.http import Http404
from django.urls import reverse

from course.desks.bars import Bar, chart
from course.desks.statistics import address, correlation, flags_of, percent
from course.people.access import Deed, Reach, reach
from course.people.models import Person
from quizzes.competencies import COMPETENCIES
from quizzes.items import competencies_of, exists, item_of, place_of, questions_of, split, title_of
from quizzes.models import ItemPause, ItemTally
from quizzes.models.pauses import paused_items
from quizzes.statistics.draws import Unevenness
from quizzes.statistics.drift import ALARM, Drift
from quizzes.statistics.flags import FIRM
from quizzes.statistics.items import ItemStatistics, Times, describe, rating
from quizzes.statistics.shares import Share, answers_to_see
from quizzes.statistics.tallies import Split

SYSTEMS = {"us": "feet", "metric": "metres", "si": "SI"}


@dataclass(frozen=True, slots=True)
class Line:
    """One row of a table: its name and its cells, ready to be shown."""

    name: str
    cells: tuple[str, ...]
    address: str = ""


@dataclass(frozen=True, slots=True)
class Table:
    """Lines under their heads."""

    heads: tuple[str, ...]
    lines: Sequence[Line]


def item_or_404(family: str, question: str = "") -> str:
    """The item of an address. What the shelf does not hold does not exist."""
    item = item_of(family, question)
    if not exists(item):
        raise Http404
    return item


def portrait(item: str, viewer: Person) -> dict[str, Any]:
    """What the page shows. Three queries, however many answers there are."""
    family, question = split(item)
    rows = {row.item: row for row in ItemTally.objects.filter(family=family)}
    paused = paused_items()
    system, seed = place_of(item)
    return {
        "item": item,
        "title": title_of(item),
        "family": family,
        "family_title": title_of(family) if question else "",
        "competencies": [COMPETENCIES[slug].title for slug in competencies_of(family)],
        "preview": reverse("desks:problem", args=[family, system, seed]),
        "paused": item in paused,
        "family_paused": bool(question) and family in paused,
        "pauses": pauses_of(item, viewer),
        "questions": None if question else _questions(family, rows, paused),
        **_told(rows.get(item)),
    }


def pauses_of(item: str, viewer: Person) -> list[tuple[ItemPause, str]]:
    """The journal of an item, latest first, with who it was; a name only for whom it is within reach."""
    sees_all = reach(viewer, Deed.READ_RECORDS) is Reach.EVERYBODY
    return [
        (entry, entry.by_name if sees_all or entry.by_key == viewer.pk else "a colleague")
        for entry in ItemPause.objects.filter(item=item)
    ]


def _questions(family: str, rows: Mapping[str, ItemTally], paused: Iterable[str]) -> Table:
    found = []
    for question in questions_of(family):
        item = item_of(family, question)
        row = rows.get(item)
        split_ = row.counts.tally().split if row else Split(0, 0)
        share = percent(Share(split_.right, split_.answers)) if split_.answers else "not answered yet"
        state = "paused" if item in paused else "asked"
        found.append(Line(title_of(item), (str(split_.answers), share, state), address(item)))
    return Table(("Question", "First answers", "Share right", "State"), found)


def _told(row: ItemTally | None) -> dict[str, Any]:
    """The figures; nothing before the first answer."""
    counts = row.counts if row else None
    if row is None or counts is None or not counts.rests:
        return {"answers": 0}
    tally = counts.tally()
    found = describe(tally)
    before = Share(counts.before[0], sum(counts.before)) if sum(counts.before) else None
    return {
        "answers": found.right.of,
        "right": percent(found.right),
        "correlation": correlation(found.discrimination),
        "rating": rating(found.discrimination.value) if found.discrimination else "",
        "before": percent(before) if before else "",
        "before_of": before.of if before else 0,
        "findings": flags_of(found, before, row.drift),
        "firm": FIRM,
        "slips": _slips(found, counts.labels),
        "to_see": [(share, answers_to_see(share / 100)) for share in (5, 10, 20)],
        "times": _times(found.times),
        "times_chart": _times_chart(row.item, tally.seconds),
        "draws": _draws(tally.draws),
        "unevenness": _unevenness(found.draws),
        "drift": _drift(row.drift),
        **_by_rest(row.item, tally.rests),
    }


def _slips(found: ItemStatistics, labels: Mapping[str, str]) -> Table:
    lines = [
        Line(
            labels.get(one.name) or one.name.replace("-", " ") or "No known slip explains it",
            (str(one.of_wrong.hits), percent(one.of_wrong), percent(one.of_answers)),
        )
        for one in found.chosen
    ]
    return Table(("Slip or option", "Answers", "Of the wrong ones", "Of all"), lines)


def _times(times: Times | None) -> str:
    if times is None:
        return "No time is known: all these answers were entered from paper."
    return (
        f"Half of {times.of} answers took between {times.lower:.0f} and {times.upper:.0f} seconds, "
        f"the middle one {times.median:.0f}."
    )


def _times_chart(item: str, seconds: Mapping[int, int]) -> str:
    """Counts in steps wide enough that ten bars hold nine answers in ten; the rest stands in the last."""
    if not seconds:
        return ""
    ordered = sorted(Counter(seconds).elements()) if sum(seconds.values()) < 50 else _thinned(seconds)
    reach_ = ordered[int(0.9 * (len(ordered) - 1))]
    step = next(step for step in (5, 10, 15, 30, 60, 120, 300) if reach_ < 9 * step or step == 300)
    counted: Counter[int] = Counter()
    for value, count in seconds.items():
        counted[min(value // step, 9)] += count
    most = max(counted.values())
    bars = []
    for place in range(max(counted) + 1):
        low, count = place * step, counted[place]
        said = f"{low} seconds or more" if place == 9 else f"{low} to {low + step} seconds"
        bars.append(Bar(f"{low}", count / most, str(count), f"{said}, {count}"))
    return chart(f"times-{item.replace('/', '-')}", "How long answers took", "seconds from", bars)


def _thinned(seconds: Mapping[int, int]) -> list[int]:
    """A hundred values that stand for all, in order."""
    found: list[int] = []
    total, passed = sum(seconds.values()), 0
    for value, count in sorted(seconds.items()):
        passed += count
        found += [value] * (round(100 * passed / total) - len(found))
    return found


def _draws(draws: Mapping[str, Split]) -> Table:
    named: dict[str, Split] = {}
    for name, split_ in draws.items():
        system, comma, band = name.partition(", ")
        said = f"{SYSTEMS[system]}{comma}{band}" if system in SYSTEMS else name.replace("-", " ").capitalize()
        named[said] = split_
    lines = [
        Line(name, (str(one.answers), percent(_share(one))))
        for name, one in sorted(named.items(), key=lambda pair: (-pair[1].answers, pair[0]))
        if one.answers
    ]
    return Table(("Draws", "First answers", "Share right"), lines)


def _unevenness(found: Unevenness | None) -> str:
    if found is None:
        return "There is nothing to compare yet: it takes two classes of draws, and right and wrong answers."
    how = "by drawing, since some classes are small" if found.is_drawn else "from the chi-square distribution"
    figures = (
        f"Chi-square is {found.statistic:.1f} for {found.freedom} degrees of freedom ({found.dispersion:.1f} "
        f"each); draws that are equally hard come to so much in {100 * found.chance:.1f} % of cases ({how})."
    )
    if found.chance < 0.05:
        return f"Some draws seem harder than others. {figures}"
    if not found.is_worth_asking:
        return f"Nothing shows, but below 200 answers this test misses most. {figures}"
    return f"No draws stand out as harder. {figures}"


def _drift(drift: Drift) -> str:
    if drift.alarm is not None:
        return f"The alarm sounded at answer {drift.alarm}; things changed at about answer {drift.began + 1}."
    return (
        f"Quiet: the sum stands at {drift.score} after {drift.answers} first answers, and sounds at {ALARM}."
    )


def _by_rest(item: str, rests: Mapping[tuple[int, int], Split]) -> dict[str, Any]:
    """How the share right goes with the rest, in blocks of the commonest length: a chart, and its table."""
    sizes: dict[int, int] = defaultdict(int)
    for (size, _), one in rests.items():
        sizes[size] += one.answers
    size = max(sizes, key=lambda each: (sizes[each], each))
    kept = sorted((rest, one) for (each, rest), one in rests.items() if each == size and one.answers)
    lines = [Line(str(rest), (str(one.answers), percent(_share(one)))) for rest, one in kept]
    return {
        "others": size - 1,
        "by_rest": Table(("Right among the others", "First answers", "Share right"), lines),
        "by_rest_chart": _rest_chart(item, size, kept) if size > 1 else "",
    }


def _rest_chart(item: str, size: int, kept: Sequence[tuple[int, Split]]) -> str:
    bars = []
    for rest, one in kept:
        value = f"{100 * _share(one).value:.0f} %"
        bars.append(Bar(str(rest), _share(one).value, value, f"with {rest}, {value} of {one.answers}"))
    across = f"right among the other {size - 1} of the block"
    return chart(f"rest-{item.replace('/', '-')}", "Share right, by how the rest went", across, bars)


def _share(one: Split) -> Share:
    return Share(one.right, one.answers)
