"""A trainee's progress: what the curves show, the table says."""

import re
from datetime import UTC, date, datetime, timedelta
from types import SimpleNamespace

import pytest
from django.urls import reverse
from django.utils import timezone

from course.demo.factories import PersonFactory
from course.desks.curves import progress
from quizzes import actions, queries
from quizzes.competencies import COMPETENCIES
from tests.course.boards import text_of
from tests.quizzes.conftest import give

MONDAY = date(2026, 3, 2)
TODAY = date(2026, 4, 1)  # a Wednesday, the fifth week


def decided(*entries):
    """Decisions, each (day, competency, what), in the order they were made."""
    return [
        SimpleNamespace(
            pk=number, competency=slug, decided=what, ruling_id=None,
            at=datetime(day.year, day.month, day.day, 12, tzinfo=UTC),
        )
        for number, (day, slug, what) in enumerate(entries)
    ]  # fmt: skip


def in_week(number, weekday=0):
    return MONDAY + timedelta(weeks=number, days=weekday)


DECISIONS = decided(
    (in_week(0, 3), "boyle", "held"),
    (in_week(1, 1), "boyle", "met"),
    (in_week(1, 2), "air-supply", "granted"),
    (in_week(2, 6), "boyle", "confirmed"),
    (in_week(3), "boyle", "revoked"),
    (in_week(3), "whole-course", "met"),
)
PRACTISED = [(MONDAY, 8, 2), (in_week(1), 3, 2), (in_week(4), 1, 1)]


def strokes(figure):
    """Corners of the curve's strokes, in the figure's own coordinates."""
    paths = re.findall(r'<path class="fig-deep"[^>]* d="([^"]*)"', figure)
    return [[tuple(map(float, pair)) for pair in re.findall(r"[ML] ([\d.]+) ([\d.]+)", d)] for d in paths]


def test_the_table_counts_answers_and_what_was_met_by_the_end_of_each_week():
    found = progress(PRACTISED, DECISIONS, TODAY)
    assert [(week.begins, week.answers, week.right, week.met) for week in found.weeks] == [
        (MONDAY, 8, 2, 0),
        (in_week(1), 3, 2, 2),
        (in_week(2), 0, 0, 2),
        (in_week(3), 0, 0, 1),
        (in_week(4), 1, 1, 1),
    ]
    assert [week.percent for week in found.weeks] == [25, 67, None, None, 100]


def test_the_line_of_competencies_rises_and_falls_with_the_decisions():
    (line,) = strokes(progress(PRACTISED, DECISIONS, TODAY).met)
    heights = [y for _, y in line]
    none, two, one = heights[0], min(heights), heights[-1]  # figures count downwards
    assert none == max(heights)
    assert none - one == pytest.approx((none - two) / 2, abs=0.01)


def test_each_week_of_practice_is_a_level_stroke_and_a_week_without_is_a_gap():
    corners = strokes(progress(PRACTISED, DECISIONS, TODAY).practice)[0]
    assert len(corners) == 2 * len(PRACTISED)
    pairs = list(zip(corners[::2], corners[1::2], strict=True))
    assert all(left[1] == right[1] and left[0] < right[0] for left, right in pairs)
    quarter, two_thirds, whole = (left[1] for left, _ in pairs)
    assert (quarter - two_thirds) / (quarter - whole) == pytest.approx((67 - 25) / 75, abs=0.001)


def test_the_figures_say_in_words_what_they_show():
    found = progress(PRACTISED, DECISIONS, TODAY)
    assert "from none on 2 March 2026 to 1 of 14 on 1 April 2026, after 2 at most" in found.met
    assert "from 25 per cent of 8 in the week of 2 March 2026 to 100 per cent of 1" in found.practice


def test_the_figures_are_the_same_bytes_each_time_and_hold_no_style():
    once, again = progress(PRACTISED, DECISIONS, TODAY), progress(PRACTISED, DECISIONS, TODAY)
    assert once == again
    assert "style=" not in once.met + once.practice


@pytest.mark.parametrize("weeks", [1, 8, 9, 60, 300])
def test_a_curve_of_any_length_has_few_enough_weeks_on_its_axis(weeks):
    found = progress([(MONDAY, 4, 3)], [], in_week(weeks - 1, 6))
    ticks = re.findall(r">(\d+)</text>", found.practice.split("weeks since")[0])
    assert 2 <= len(ticks) <= 9
    assert int(ticks[-1]) >= weeks


def test_before_the_first_answer_there_is_nothing_to_draw():
    assert progress([], [], TODAY) is None


def test_weeks_begin_on_monday_where_the_site_is(db, boyle, settings):
    settings.TIME_ZONE, learner = "America/New_York", PersonFactory()
    late = datetime(2026, 3, 9, 2, tzinfo=UTC)  # still Sunday evening there
    give(actions.start_practice(learner=learner, competency=boyle, now=late), "+-+", late)
    assert queries.practice_by_week(learner) == [(MONDAY, 3, 2)]


def test_the_trainees_page_draws_and_tells_it(client, quay):
    client.force_login(quay.people["instructor"])
    page = client.get(reverse("desks:trainee", args=[quay.people["trainee"].pk])).text
    assert page.count('class="figure"') == 2
    monday = timezone.localdate() - timedelta(days=timezone.localdate().weekday())
    assert f"{monday:%-d %b %Y} 3 3 100 % 0 of {len(COMPETENCIES)}" in text_of(page)


def test_a_trainee_without_an_answer_reads_what_will_stand_there(client, quay):
    client.force_login(quay.people["instructor"])
    quay.cohort.trainees.add(newcomer := quay.people["administrator"])
    page = client.get(reverse("desks:trainee", args=[newcomer.pk]))
    assert "With the first week of practice a curve begins here." in page.text
