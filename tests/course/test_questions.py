"""The questions beside the lessons: drawn like numbers, and each fault told by file and line."""

import pytest

from course.lessons import banks, library, proofs
from course.lessons.checks import faulty_questions, questions_can_be_asked
from course.lessons.library import SHELF
from pressure import catalogue, record
from pressure.cautions import STANDARD
from pressure.draw import draw, walk
from quizzes import competencies

HEAD = """title = "Tides at the quay"
competency = "boyle"
edition = 3
"""
CHOICE = """
[[question]]
id = "ebb"
scene = "{who} ties {what} short at high water, {where}, and goes to lunch."
ask = "What is wrong after {either 6 ft|1.8 m} of ebb?"
sense = "A short line holds what the water no longer carries."
reason = ["The water sinks.", "A short line cannot follow it."]
source = "common practice, no source"
[question.slots]
who = ["A tender", "A trainee"]
what = ["the skiff", "the workboat", "the raft", "the float"]
where = ["on the mole", "by the lock", "at the slip", "off the ladder"]
[question.right]
text = "It hangs by its line"
why = "The water has gone from under it."
[[question.wrong]]
name = "tide-forgotten"
label = "the tide was forgotten"
text = "Nothing at all is wrong"
why = "The water sinks and the line does not."
[[question.wrong]]
name = "blames-depth-alone"
text = "It lies at greater depth"
why = "It floats as before."
[[question.wrong]]
name = "line-grows"
label = "the line was taken to grow"
text = "Its line has grown longer"
why = "A line does not grow."
"""
ORDER = """
[[question]]
id = "mooring"
kind = "order"
scene = "{who} moors {what} {where} at high water."
ask = "Put the steps in order."
sense = "Look before you tie."
reason = ["First one looks at the tide board.", "Last comes the knot."]
source = "common practice, no source"
[question.slots]
where = ["on the mole", "by the lock", "at the slip", "off the ladder"]
[[question.cases]]
who = "A tender"
what = "the skiff"
[[question.cases]]
who = "A trainee"
what = "the raft"
[[question.cases]]
who = "The cook"
what = "the float"
[[question.cases]]
who = "A diver"
what = "the barge"
[[question.cases]]
who = "The clerk"
what = "the punt"
[[question.cases]]
who = "The smith"
what = "the lugger"
[[question.cases]]
who = "The pilot"
what = "the cutter"
[[question.cases]]
who = "The warden"
what = "the launch"
""" + "".join(
    f'[[question.item]]\nname = "{name}"\ntext = "{text}"\nwhy = "It stands here."\n'
    for name, text in (
        ("read", "Read the board"),
        ("pay", "Pay out line"),
        ("tie", "Tie"),
        ("look", "Look again"),
    )
)
SOUND = HEAD + CHOICE + ORDER


@pytest.fixture
def put(tmp_path):
    """Puts questions on a shelf of their own and gives their file."""

    def put(text, slug="tides"):
        path = tmp_path / slug / "questions.toml"
        path.parent.mkdir()
        path.write_text(text, encoding="utf-8")
        return path

    return put


def line_of(text, start):
    return next(at for at, line in enumerate(text.split("\n"), start=1) if line.startswith(start))


def test_every_question_on_the_shelf_can_be_asked_and_is_enlisted():
    assert [str(fault) for fault in proofs.faults(SHELF)] == []
    assert questions_can_be_asked() == []
    found = {family.slug for family in catalogue.families().values() if family.topic == "questions"}
    assert found == {f"{path.parent.name}-questions" for path in proofs.paths(SHELF)}


def test_a_sound_file_makes_one_family_with_a_place_for_every_combination(put):
    sheet, faults = proofs.read(put(SOUND))
    family = banks.family_of(sheet)
    assert faults == []
    assert (family.slug, family.edition, family.topic) == ("tides-questions", 3, "questions")
    assert [len(walk(family, system)) for system in family.systems] == [64, 64]
    assert [example.source for example in family.examples] == ["common practice, no source"] * 2


@pytest.mark.parametrize(("system", "said"), [("us", "after 6 ft of ebb"), ("metric", "after 1.8 m of ebb")])
def test_a_question_is_drawn_in_the_readers_units_and_always_the_same(put, system, said):
    path = put(SOUND)
    first, again = (banks.family_of(proofs.read(path)[0]) for _ in range(2))
    drawn = [draw(first, seed, system) for seed in range(64)]
    assert drawn == [draw(again, seed, system) for seed in range(64)]
    assert len({problem.situation for problem in drawn}) == 64
    assert {problem.item for problem in drawn} == {"ebb", "mooring"}
    assert all(said in problem.key.question for problem in drawn if problem.item == "ebb")


def test_the_record_keeps_which_question_was_asked():
    slug = next(family.slug for family in catalogue.families().values() if family.topic == "questions")
    assert record.shown(draw(slug, 3, "us"))["item"] == draw(slug, 3, "us").item != ""
    assert record.shown(draw("depth-to-gauge", 3, "us"))["item"] == ""


@pytest.mark.parametrize(("hazard", "caution"), [("true", STANDARD), ("false", "")])
def test_questions_on_a_hazard_carry_the_caution(put, hazard, caution):
    path = put(SOUND)
    path.with_name("lesson.md").write_text(f"---\nhazard: {hazard}\n---\nText.\n", encoding="utf-8")
    assert draw(banks.family_of(proofs.read(path)[0]), 1, "us").caution == caution


@pytest.mark.parametrize(
    ("old", "new", "at", "said"),
    [
        ('title = "Tides', "title = Tides", "title", "This is not TOML"),
        ('title = "Tides at the quay"', 'title = ""', "title", "Give the file a title"),
        ("edition = 3", "edition = true", "edition", "a whole number from 1"),
        ('"boyle"', '"boil"', "competency", "no competency 'boil'"),
        ("edition = 3", 'edition = 3\nauthor = "x"', "author", "'author' is not known"),
        (CHOICE + ORDER, "question = []", "question", "The file holds no question"),
        ("edition = 3", "edition = 3\n[[wrong]]", "[[wrong]]", "'wrong' is not known"),
    ],
)
def test_a_fault_of_the_head_is_told_by_its_line(put, old, new, at, said):
    text = SOUND.replace(old, new)
    _, faults = proofs.read(put(text))
    assert str(faults[0]).startswith(f"tides/questions.toml, line {line_of(text, at)}: ")
    assert said in str(faults[0])


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('source = "common', 'hint = "x"\nsource = "common', "'hint' is not known in a choice"),
        ('sense = "A short line holds what the water no longer carries."', "", "needs 'sense' as a text"),
        ('id = "ebb"', 'id = "Ebb tide"', "An id is small letters"),
        ('id = "ebb"', 'id = "mooring"', "Another question has this id"),
        ('reason = ["The', 'reason = "The', "This is not TOML"),
        ('where = ["on the mole", "by', 'depth = ["a", "b"]\nwhere = ["on the mole", "by', "stands nowhere"),
        ("{who} ties", "{whom} ties", "Nothing fills {whom}"),
        ("ties {what} short", "ties {what} {depth short", "A brace stands alone"),
        ("{either 6 ft|1.8 m}", "{ebb 2}", "{ebb 2} is not known"),
        ("{either 6 ft|1.8 m}", "6 ft", "holds the number 6"),
        ("[question.right]", "[question.ebb]", "'ebb' is not known in a choice"),
        ('who = ["A tender", "A trainee"]', 'who = "A tender"', "'who' must be a list"),
        ('who = ["A tender", "A trainee"]', 'who = ["A tender", "A tender"]', "comes twice"),
        ('who = ["A tender", "A trainee"]', 'who = ["a tender", "A trainee"]', "begins with a small letter"),
        ('who = ["A', 'unit = ["a"]\nwho = ["A', "'unit' is no name for a slot"),
        (
            'text = "It hangs by its line"',
            'text = "It hangs in the air by its line and by nothing else"',
            "much the longest",
        ),
        ('text = "It hangs by its line"', 'text = "Nothing at all is wrong"', "Two options read alike"),
        ('text = "It hangs by its line"', 'text = "It hangs by its line."', "Let them agree"),
        ('text = "It hangs by its line"', 'text = "It <b>hangs</b>"', "plain text on one line"),
        ("gone from under it.", "gone from under it", "does not end in a full stop"),
        ("the water no longer carries.", "the water  no longer carries.", "Look at its spaces"),
        ("of ebb?", "of ebb!", "neither in a question mark"),
        ('name = "line-grows"', 'name = "tide-forgotten"', "Two options share a name"),
        ('name = "line-grows"', 'name = "right"', "no name for an option"),
        ('label = "the tide was forgotten"', "", "'tide-forgotten' needs a label"),
        ('label = "the tide was forgotten"', 'label = "Tide."', "begin it small"),
        ('name = "blames-depth-alone"', 'name = "blames-depth-alone"\nlabel = "deep"', "Leave the label out"),
        ('name = "line-grows"', 'name = "line-grows"\nnote = "x"', "'note' is not known in a wrong option"),
    ],
)
def test_a_fault_of_a_choice_is_told_by_the_line_of_its_id(put, old, new, said):
    text = SOUND.replace(old, new, 1)
    assert text != SOUND
    _, faults = proofs.read(put(text))
    assert said in str(faults[0])
    if "TOML" not in said:
        assert str(faults[0]).startswith(f"tides/questions.toml, line {line_of(text, 'id = ')}: ")


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('kind = "order"', 'kind = "sort"', "The kind 'sort' is not known"),
        ('kind = "order"', "", "'item' is not known in a choice"),
        ('[[question.item]]\nname = "tie"\ntext = "Tie"\nwhy = "It stands here."\n', "", "at least four"),
        ('who = "The cook"\n', "", "Every case must fill the same slots"),
        (
            'where = ["on the mole", "by the lock", "at the slip", "off the ladder"]\n[[question.c',
            'who = ["x"]\n[[question.c',
            "by the cases and by the slots",
        ),
        ('name = "tie"', 'name = "Tie up"', "'Tie up' is no name for an option"),
    ],
)
def test_a_fault_of_an_order_is_told_too(put, old, new, said):
    text = HEAD + CHOICE + ORDER.replace(old, new, 1)
    line = line_of(text, 'id = "mooring')
    _, faults = proofs.read(put(text))
    assert str(faults[0]).startswith(f"tides/questions.toml, line {line}: ")
    assert said in str(faults[0])


def another(question, n):
    """The same question with an id and scenes of its own."""
    return question.replace('id = "', f'id = "{"x" * n}').replace(
        'scene = "', f'scene = "{"Again " * n}{{who}}: '
    )


def test_an_order_is_never_first_and_at_most_twice(put):
    assert "never the first question" in str(proofs.read(put(HEAD + ORDER + CHOICE, "first"))[1][0])
    orders = "".join(another(ORDER, n) for n in range(3))
    faults = proofs.read(put(HEAD + CHOICE + orders))[1]
    assert ["at most two" in str(fault) for fault in faults] == [True]


def test_fewer_than_three_wrong_options_or_six_combinations_are_too_few(put):
    head, _, _ = CHOICE.rpartition("[[question.wrong]]")
    assert "has 2" in str(proofs.read(put(HEAD + head, "two"))[1][0])
    few = CHOICE.replace(', "at the slip", "off the ladder"', "").replace(', "the raft", "the float"', "")
    few = few.replace('"A tender", ', "")
    assert "make 4 combinations" in str(proofs.read(put(HEAD + few, "few"))[1][0])


@pytest.mark.parametrize("path", proofs.paths(SHELF), ids=lambda path: path.parent.name)
def test_a_lesson_on_a_hazard_has_a_dozen_questions(path):
    sheet, _ = proofs.read(path)
    assert len(sheet.questions) >= (12 if library.read(path.with_name("lesson.md")).hazard else 2)


def test_a_file_with_one_question_has_none_to_serve_as_example(put):
    wide = CHOICE.replace('"A trainee"]', '"A trainee", "A diver", "The cook"]')
    assert "needs a second question" in str(proofs.read(put(HEAD + wide))[1][0])


def test_a_file_with_few_draws_says_how_many_are_needed(put):
    assert "make 32 draws. At least 60" in str(proofs.read(put(HEAD + CHOICE))[1][0])


def test_a_name_bears_one_label_over_the_whole_shelf(put):
    put(SOUND, "first")
    path = put(SOUND.replace('"the tide was forgotten"', '"the ebb was forgotten"'), "second")
    found = [message.msg for message in faulty_questions(path.parents[1])]
    assert len(found) == 1
    assert found[0].startswith("second/questions.toml, line 6: ")
    assert "“the tide was forgotten” elsewhere" in found[0]


def test_a_faulty_file_is_passed_over_and_the_rest_enlisted(put):
    put("title = ", "broken")
    path = put(SOUND, "sound")
    assert [family.slug for _, family in banks.banks(path.parents[1])] == ["sound-questions"]


def test_enlisting_twice_changes_nothing():
    before = (dict(catalogue.families()), dict(competencies.COMPETENCIES))
    banks.enlist(SHELF)
    assert (dict(catalogue.families()), dict(competencies.COMPETENCIES)) == before
    with pytest.raises(KeyError):
        competencies.enlist("tides", "depth-to-gauge")
