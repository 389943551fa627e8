"""The dial to be read: needle and words say the same place, and the words do not say the reading."""

import re

import pytest

from pressure.draw import draw, walk
from pressure.families.dial_reading import FAMILY
from pressure.figures.catalogue import render

SAID = re.compile(
    r"A dial numbered from 0 to ([\d.]+) (psi|bar) in steps of ([\d.]+), with (\d+) smaller marks "
    r"between one number and the next\. The needle stands (\d+) marks? past the number ([\d.]+)\."
)
NEEDLE = re.compile(r'transform="rotate\((-?[\d.]+)\)"')
ATMOSPHERES = {"psi": 14.7, "bar": 1.0}
INTO = {"psi": 1.0, "bar": 1.0, "atm": 1 / 14.7, "kPa": 100.0}
every_system = pytest.mark.parametrize("system", FAMILY.systems)


def problems(system):
    return [draw(FAMILY, seed, system) for seed in range(len(walk(FAMILY, system)))]


def read(words):
    """The gauge reading by the words alone, as a listener would work it out, and its unit."""
    top, unit, step, smaller, more, number = SAID.fullmatch(words).groups()
    reading = float(number) + int(more) * float(step) / (int(smaller) + 1)
    return reading, unit, float(top)


@every_system
def test_who_hears_the_words_reaches_the_answer(system):
    for problem in problems(system):
        reading, unit, _ = read(problem.figure.words)
        total = (reading + ATMOSPHERES[unit]) * INTO[problem.asked.unit]
        assert total == pytest.approx(problem.answer.value)


@every_system
def test_the_needle_stands_where_the_words_say(system):
    """The scale turns 270 degrees from nought to its top, nought lying 135 degrees left of upright."""
    for problem in problems(system)[:200]:
        reading, _, top = read(problem.figure.words)
        drawn = render(problem.figure.name, problem.figure.facts, problem.figure.words)
        turn = float(NEEDLE.search(drawn).group(1))
        assert turn == pytest.approx(270 * reading / top - 135, abs=0.01)


@every_system
def test_neither_the_words_nor_the_prompt_say_the_reading(system):
    for problem in problems(system):
        reading, unit, _ = read(problem.figure.words)
        told = f"{problem.situation} {problem.convention} {problem.figure.words}"
        assert not re.search(rf"(?<![\d.]){reading:g} {unit}|number {reading:g}\.$", told)


def test_a_needle_off_the_scale_is_refused():
    with pytest.raises(ValueError, match="off this dial"):
        render("dial", {"top": 60, "step": 10, "fine": 5, "at": 31, "unit": "psi"}, "")
