"""The cohort board of 200 × 25: its markup against joining ready-made cells, its reading against raw SQL."""

from datetime import timedelta
from random import Random

import pytest
from django.db import connection
from django.utils import timezone

from course.demo.factories import PersonFactory
from course.desks.boards import grid_of, in_order, lines_of, rows_of, state_marks, sums_of
from course.desks.filters import Wish
from quizzes.models import Standing
from quizzes.standing import KEPT, State

ACROSS, DOWN, TIMES = 25, 200, 20
COLUMNS = tuple([f"competency-{number:02}" for number in range(ACROSS)])
MARKUP, READING = 8.0, 3.0


@pytest.fixture
def trainees(db):
    """Two hundred people who stand in all twenty-five, a third of it met on some day of the last year."""
    chance, today = Random(25), timezone.localdate()
    people = PersonFactory.create_batch(DOWN)
    Standing.objects.bulk_create(
        [stood(person, slug, chance, today) for person in people for slug in COLUMNS]
    )
    return [(person.pk, person.name) for person in people]


def stood(person, slug, chance, today):
    due = today + timedelta(days=chance.randrange(-20, 345))
    return Standing(
        learner=person, competency=slug, state=chance.choice([*KEPT[1:], State.MET]),
        waits=chance.random() < 0.02, met_on=today, notice_on=due - timedelta(days=60), due_on=due,
        moved_at=timezone.now(),
    )  # fmt: skip


def times(work):
    """Often enough that a call takes some milliseconds."""
    return lambda: [work() for _ in range(TIMES)][-1]


def joining(lines):
    """The same rows from ready-made cells, names and all."""
    marks, names = state_marks(), [f'<th scope="row"><a href="/desk/">{line.name}</a></th>' for line in lines]
    rows = [[name, *(f"<td>{marks[line.stands[slug].state]}</td>" for slug in COLUMNS)]
            for name, line in zip(names, lines, strict=True)]  # fmt: skip
    return lambda: "".join([f"<tr>{''.join(row)}</tr>\n" for row in rows])


@pytest.mark.benchmark
def test_a_board_costs_at_most_eight_times_joining_ready_made_cells(trainees, compare):
    lines, wish = lines_of(trainees, timezone.localdate()), Wish(sort=COLUMNS[3])

    def ours():
        shown = in_order(lines, wish)
        grid = grid_of(shown, COLUMNS)
        return rows_of(shown, grid), sums_of(shown, grid)

    floor, each = times(joining(lines)), TIMES * DOWN * ACROSS
    compare("board 200 × 25, markup:", times(ours), floor, MARKUP, against="joining", each=each)


READ = "SELECT learner_id, competency, state, waits, notice_on, due_on"
RAW = READ + " FROM quizzes_standing WHERE learner_id IN ({})"
MOVED = "SELECT learner_id, MAX(moved_at) FROM quizzes_standing WHERE learner_id IN ({}) GROUP BY learner_id"


def raw(trainees):
    numbers = [pk for pk, _ in trainees]
    marks = ", ".join(["%s"] * len(numbers))

    def work():
        with connection.cursor() as cursor:
            for query in (RAW, MOVED):
                cursor.execute(query.format(marks), numbers)
                cursor.fetchall()

    return work


@pytest.mark.benchmark
def test_reading_a_board_costs_at_most_three_times_the_raw_statements(trainees, compare):
    def ours():
        return lines_of(trainees, timezone.localdate())

    compare("board 200 × 25, reading:", ours, raw(trainees), READING, against="raw SQL", each=DOWN * ACROSS)
