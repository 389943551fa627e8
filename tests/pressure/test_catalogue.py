"""Families are found by looking in their folder, and a wrong file is refused."""

from dataclasses import replace
from pathlib import Path
from types import ModuleType

import pytest

import pressure.families
from pressure import catalogue
from pressure.errors import BrokenFamily, UnknownFamily


def module(name, family=None):
    made = ModuleType(name)
    if family:
        made.FAMILY = family
    return made


def test_every_file_of_the_folder_is_a_family():
    files = {path.stem for path in Path(pressure.families.__path__[0]).glob("*.py")} - {"__init__"}
    assert {slug.replace("-", "_") for slug in catalogue.families()} == files


def test_a_file_without_a_family_is_refused():
    with pytest.raises(BrokenFamily, match=r"stray does not end in FAMILY"):
        catalogue.gather([module("stray")])


def test_two_families_of_one_slug_are_refused():
    family = catalogue.family("gauge-to-absolute")
    twin = replace(family, title="Another")
    with pytest.raises(BrokenFamily, match=r"second and first share the slug 'gauge-to-absolute'"):
        catalogue.gather([module("first", family), module("second", twin)])


def test_an_unknown_family_is_answered_with_those_there_are():
    with pytest.raises(UnknownFamily, match=r"no family 'depth'.*depth-to-absolute, depth-to-gauge"):
        catalogue.family("depth")
