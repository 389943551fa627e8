"""Stored forms: nothing that gives the answer away is shown, and marking reads them without the family."""

import json

import pytest

from pressure import catalogue, record
from pressure.draw import draw

SET = [(family.slug, system) for family in catalogue.families().values() for system in family.systems]


@pytest.mark.parametrize(("slug", "system"), SET)
def test_the_key_comes_back_from_json_as_it_was(slug, system):
    problem = draw(slug, 11, system)
    shown, key = json.loads(json.dumps([record.shown(problem), record.key(problem)]))
    assert record.key_from(shown, key) == problem.key


@pytest.mark.parametrize(("slug", "system"), SET)
def test_what_is_shown_holds_no_answer(slug, system):
    problem = draw(slug, 11, system)
    shown, key = record.shown(problem), record.key(problem)
    assert set(shown) & set(key) <= {"cells", "options", "figure"}
    text = json.dumps({name: shown[name] for name in shown if name != "facts"})
    for cell in key.get("cells", [key]):
        assert repr(cell.get("answer", "no number")) not in text
        assert not any(slip["mend"] in text or slip["label"] in text for slip in cell.get("slips", []))
    assert all(set(option) == {"letter", "text"} for option in shown.get("options", []))
    assert not any(json.dumps(option["why"]) in text for option in key.get("options", []))


def test_givens_stand_in_the_situation_word_for_word():
    shown = record.shown(draw("volume-on-ascent", 4, "us"))
    assert all(given["text"] in shown["situation"] for given in shown["givens"])
    assert shown["asked"]["text"] == "Volume after the ascent, in ft³"
    assert shown["asked"]["words"] == "Volume after the ascent, in cubic feet"


def test_a_record_reads_without_its_family(monkeypatch):
    problem = draw("depth-to-gauge", 4, "us")
    stored = json.dumps([record.shown(problem), record.key(problem)])
    monkeypatch.setattr(catalogue, "families", dict)
    assert record.key_from(*json.loads(stored)).answer == problem.key.answer
