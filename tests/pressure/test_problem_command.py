"""The command that prints a problem, lists the families and audits them."""

import json
from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from pressure import catalogue
from pressure.draw import draw


def printed(*args):
    out = StringIO()
    call_command("problem", *args, stdout=out)
    return out.getvalue()


def test_json_holds_all_that_another_program_needs():
    whole = json.loads(printed("gauge-to-absolute", "--seed", "5", "--system", "us", "--json"))
    problem = draw("gauge-to-absolute", 5, "us")
    assert (whole["family"], whole["version"], whole["seed"]) == ("gauge-to-absolute", 1, 5)
    assert whole["givens"][0]["value"] == problem.facts["reading_psi"]
    assert (whole["givens"][0]["unit"], whole["givens"][0]["kind"]) == ("psi", "gauge")
    assert whole["asked"] | {"kind": "absolute", "unit": "psi"} == whole["asked"]
    assert whole["answer"]["value"] == problem.key.answer
    assert whole["tolerance"] == {"low": problem.key.low, "high": problem.key.high, "allowance": 0.005}
    assert {"name", "low", "high", "mend"} <= set(whole["slips"][0])
    assert {"why", "relation", "substitution", "result"} == set(whole["steps"][0])


def test_text_ends_with_the_answer_and_its_slips():
    text = printed("depth-to-volume", "--seed", "1", "--system", "metric")
    assert "Take 1 bar at the surface and 10 m of sea water per bar." in text
    assert "Answer: " in text
    assert "Slip: the ratio was upside down" in text


def test_a_mixed_form_is_printed_in_the_other_unit_with_the_step_that_turns_it():
    text = printed("depth-to-absolute", "--seed", "3", "--mixed")
    assert "What is the absolute pressure there, in bar?" in text
    assert "Divide to turn it into bar: 1 bar is 14.5038 psi" in text
    whole = json.loads(printed("depth-to-absolute", "--seed", "3", "--mixed", "--json"))
    assert (whole["mixed"], whole["answer"]["unit"]) == ("psi", "bar")


def test_the_list_names_every_family():
    assert "volume-on-ascent" in printed("--list")
    entries = json.loads(printed("--list", "--json"))
    assert {entry["family"]: entry["systems"] for entry in entries}["depth-to-gauge"] == ["us", "metric"]


@pytest.mark.parametrize(
    ("args", "sentence"),
    [
        (["nothing"], "There is no family 'nothing'"),
        ([], "Name a family"),
        (["depth-to-gauge", "--seed", "x"], "A seed is a whole number"),
        (["depth-to-gauge", "--seed=-1"], "A seed is a whole number"),
        (["depth-to-gauge", "--seed", "9" * 5000], "A seed is a whole number"),
        (["depth-to-gauge", "--system", "si"], "It is set in: us, metric"),
        (["air-table", "--mixed"], "not asked for in another unit"),
    ],
)
def test_an_unknown_word_is_answered_with_a_sentence_and_code_2(args, sentence):
    with pytest.raises(CommandError, match=sentence) as caught:
        printed(*args)
    assert caught.value.returncode == 2


def test_the_audit_finds_nothing_wrong():
    families = catalogue.families().values()
    assert printed("--audit", "--draws", "20").count(": 0 faults, ") == sum(
        len(one.systems) for one in families
    )
    one = printed("depth-to-gauge", "--audit", "--draws", "20")
    assert [line.split(":")[0] for line in one.splitlines()] == ["depth-to-gauge us", "depth-to-gauge metric"]


@pytest.mark.parametrize(
    "slug", ["air-table", "chain-of-events", "shallow-metres", "dial-reading", "helmet-fall"]
)
def test_every_kind_of_problem_is_printed_with_its_answer(slug):
    text = printed(slug, "--seed", "2")
    whole = json.loads(printed(slug, "--seed", "2", "--json"))
    assert f"Answer: {whole.get('answer_text') or whole['answer']['text']}" in text
    assert all(step["why"] in text for step in whole["steps"])
