"""Where a slip leaves the worked solution: a step with a result, and for the known ones the right one."""

import pytest

from pressure import catalogue, record
from pressure.draw import draw
from pressure.problem import Key
from pressure.slips import LABELS, LANDMARKS, step_of

NUMBERS = [
    (family.slug, system)
    for family in catalogue.families().values()
    for system in family.systems
    if isinstance(draw(family, 0, system).key, Key)
]


def test_landmarks_are_those_of_known_slips():
    assert set(LANDMARKS) <= set(LABELS)


@pytest.mark.parametrize(("slug", "system"), NUMBERS)
def test_every_slip_leaves_the_solution_at_a_step_with_a_result(slug, system):
    for seed in range(10):
        problem = draw(slug, seed, system)
        steps = record.key(problem)["steps"]
        assert all(steps[step_of(steps, slip.name)]["result"] for slip in problem.key.slips)


@pytest.mark.parametrize(
    ("slug", "name", "relation"),
    [
        ("depth-to-absolute", "atmosphere-left-out", "P absolute equals P gauge plus P atmosphere"),
        (
            "depth-to-absolute",
            "fresh-for-salt",
            "P gauge equals P atmosphere times D over h of one atmosphere",
        ),
        ("absolute-to-depth", "atmosphere-kept", "P gauge equals P absolute minus P atmosphere"),
        ("depth-to-volume", "gauge-ratio", "n equals 1 plus D over h of one atmosphere"),
        ("depth-to-volume", "inverted-ratio", "V 2 equals V 1 over n"),
        ("general-gas-law", "degrees-ratio", "T 1 equals t 1 plus 460"),
        ("receiver-temperature", "atmosphere-kept", "P gauge 2 equals P absolute 2 minus P atmosphere"),
        ("lift-bag-growth", "inverted-ratio", "V 2 equals V 1 times n 1 over n 2"),
        ("cylinder-endurance", "surface-rate", "C equals C 0 times n"),
        ("apparent-weight", "displaced-for-apparent", "W in water equals W minus B"),
    ],
)
def test_a_slip_is_shown_at_the_step_that_it_departed_from(slug, name, relation):
    steps = record.key(draw(slug, 3, "us"))["steps"]
    assert steps[step_of(steps, name)]["relation"]["words"] == relation


def test_a_solution_of_reasons_alone_has_no_step_to_mend():
    assert step_of([{"why": "So it is.", "relation": None, "result": None}], "gauge-ratio") is None
