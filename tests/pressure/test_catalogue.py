"""Families are found by looking in their folder, and a wrong file is refused."""

from dataclasses import replace
from pathlib import Path
from types import ModuleType

import pytest

import pressure.families
from pressure import catalogue
from pressure.draw import draw
from pressure.errors import BrokenFamily, UnknownFamily


def module(name, family=None):
    made = ModuleType(name)
    if family:
        made.FAMILY = family
    return made


def test_every_file_of_the_folder_is_a_family():
    files = {path.stem for path in Path(pressure.families.__path__[0]).glob("*.py")} - {"__init__"}
    found = {slug for slug, family in catalogue.families().items() if family.topic != "questions"}
    assert {slug.replace("-", "_") for slug in found} == files


def test_a_file_without_a_family_is_refused():
    with pytest.raises(BrokenFamily, match=r"stray does not end in FAMILY"):
        catalogue.gather([module("stray")])


def test_two_families_of_one_slug_are_refused():
    family = catalogue.family("gauge-to-absolute")
    twin = replace(family, title="Another")
    with pytest.raises(BrokenFamily, match=r"second and first share the slug 'gauge-to-absolute'"):
        catalogue.gather([module("first", family), module("second", twin)])


def test_a_family_is_enlisted_once_and_no_other_may_bear_its_slug():
    family = catalogue.family("gauge-to-absolute")
    before = catalogue.families()
    catalogue.enlist([family, family])
    assert catalogue.families() == before
    with pytest.raises(BrokenFamily, match="share the slug 'gauge-to-absolute'"):
        catalogue.enlist([replace(family, title="Another")])


def test_an_unknown_family_is_answered_with_those_there_are():
    with pytest.raises(UnknownFamily, match=r"no family 'depth'.*depth-to-absolute, depth-to-gauge"):
        catalogue.family("depth")


@pytest.mark.parametrize("family", catalogue.families().values(), ids=lambda family: family.slug)
def test_several_steps_are_of_the_highest_level_only_and_one_step_never(family):
    assert family.level in (1, 2, 3)
    results = [step for step in family.solve(draw(family, 1, family.systems[0])) if step.result]
    if family.level == 3 and results:
        assert len(results) >= 3
    if len(results) == 1:
        assert family.level < 3
