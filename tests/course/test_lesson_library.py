"""The shelf: every lesson on it can be read, and a faulty one is told by file and line what to mend."""

import re

import pytest

from course.lessons import library
from course.lessons.checks import faulty, lessons_can_be_read
from course.lessons.errors import LessonError
from course.lessons.inserts import UnknownInsert, fill

HEAD = """---
title: Tides at the quay
lead: What comes in goes out.
order: 1
hazard: false
competencies:
  - boyle
aims:
  - read a tide board
sources:
  - the harbour's own board
---
"""


@pytest.fixture
def shelf(tmp_path):
    """Puts a lesson on a shelf of its own and gives its file."""

    def put(text, slug="tides"):
        path = tmp_path / slug / "lesson.md"
        path.parent.mkdir()
        path.write_text(text, encoding="utf-8")
        return path

    return put


def html(path, system="us"):
    """The text as set, without the links to the glossary."""
    made = "".join(part.html for part in library.read(path).parts[system])
    return re.sub(r'<a class="term"[^>]*>([^<]*)</a>', r"\1", made)


def test_every_lesson_on_the_shelf_can_be_read():
    assert [str(fault) for fault in library.faults()] == []
    assert lessons_can_be_read() == []
    assert len(library.lessons()) == len(library.paths()) > 0


def test_lessons_come_in_the_order_of_the_course():
    orders = [lesson.order for lesson in library.lessons().values()]
    assert orders == sorted(orders)


@pytest.mark.parametrize(
    ("text", "line", "said"),
    [
        ("# No head\n", 1, "head is missing"),
        ("---\norder: 1\ntitle: a: b\n---\nText\n", 3, "not YAML"),
        ("---\ntitle: \x00\n---\nText\n", 1, "not YAML"),
        (HEAD.replace("order: 1\n", ""), 1, "no 'order'"),
        (HEAD.replace("order: 1", "order: first"), 4, "a whole number"),
        (HEAD.replace("order: 1", "order: true"), 4, "a whole number"),
        (HEAD.replace("hazard: false", "hazard: maybe"), 5, "true or false"),
        (HEAD.replace("  - boyle", "  - boyl"), 7, "no competency 'boyl'"),
        (HEAD.replace("lead:", "blurb: x\nlead:"), 3, "'blurb' is not known"),
        (HEAD.replace("hazard: false", "hazard: true") + "Text.\n", 5, "needs a caution"),
        (HEAD + "\n\n# Tides\n", 15, "Begin headings here with ##"),
        (HEAD + "\n## At {depth 1}\n", 14, "A heading holds no insert"),
        (HEAD + "\n## !?\n", 14, "holds no letters"),
        (HEAD + "\nText.\n\n::: video\n:::\n", 16, "no block 'video'"),
        (HEAD + "\n::: apparatus lung\n:::\n", 14, "There are: "),
        (HEAD + "\n::: apparatus box\n\nText.\n", 14, "not closed"),
        (HEAD + "\n::: apparatus box\nText.\n:::\n", 14, "holds no text"),
        (HEAD + "\n::: apparatus box\n:::\n\n::: apparatus box\n:::\n", 17, "stands on the page already"),
        (HEAD + "\n::: caution\n- a list\n:::\n", 14, "one paragraph"),
        (HEAD + "\n::: example family=tides seed=1\n:::\n", 14, "no family 'tides'"),
        (HEAD + "\n::: example family=depth-to-gauge seed=-1\n:::\n", 14, "Write an example as"),
        (HEAD + "\nDeep:\n{gauge two}\n", 15, "{gauge two} is not known"),
    ],
)
def test_a_faulty_lesson_is_told_by_file_and_line_what_to_mend(shelf, text, line, said):
    with pytest.raises(LessonError) as caught:
        library.read(shelf(text))
    assert str(caught.value).startswith(f"tides/lesson.md, line {line}: ")
    assert said in str(caught.value)


def test_a_folder_without_a_lesson_is_a_fault(tmp_path):
    (tmp_path / "empty").mkdir()
    assert [str(fault) for fault in library.faults(tmp_path)] == [
        "empty/lesson.md, line 1: The file is missing. A lesson's folder needs a lesson.md."
    ]


def test_a_folders_name_is_the_lessons_address(shelf):
    with pytest.raises(LessonError, match="letters, digits and hyphens"):
        library.read(shelf(HEAD + "Text.\n", "two words"))


def test_the_system_check_names_each_faulty_lesson_once(shelf):
    shelf(HEAD + "# one\n# two\n", "first")
    path = shelf(HEAD.replace("boyle", "boil"), "second")
    shelf(HEAD + "Sound.\n", "third")
    found = faulty(path.parent.parent)
    assert [message.id for message in found] == ["lessons.E001"] * 2
    assert [message.msg.split(",")[0] for message in found] == ["first/lesson.md", "second/lesson.md"]


@pytest.mark.parametrize(
    "text",
    [
        "<script>alert(1)</script>",
        "a <b onclick=alert(1)>bold</b> word",
        "<img src=x onerror=alert(1)>",
        "[tap](javascript:alert(1))",
        "![a](x.png)",
        '::: caution\n<iframe src="x"></iframe>\n:::',
        "| a |\n| :-: |\n| <svg/onload=alert(1)> |",
    ],
)
def test_no_html_of_the_text_reaches_the_page(shelf, text):
    made = html(shelf(HEAD + text))
    for tag in ("<script", "<b", "<img", "<iframe", "<svg", 'href="javascript', "style="):
        assert tag not in made


def test_aligned_columns_carry_a_class_because_the_content_policy_blocks_styles(shelf):
    made = html(shelf(HEAD + "| depth |\n| --: |\n| {depth 1} |\n"))
    assert '<td class="num">33 ft</td>' in made
    assert 'tabindex="0"' in made


def test_numbers_in_the_text_follow_the_readers_units(shelf):
    path = shelf(HEAD + "At {depth 2} the gauge reads {gauge 2}, which is {absolute 2} absolute.\n")
    # 66 ft is 29.4 psi gauge and 44.1 psi absolute, 20 m is 2 and 3 bar: common practice, no source.
    assert "At 66 ft the gauge reads 29.4 psi, which is 44.1 psi absolute." in html(path)
    assert "At 20 m the gauge reads 2.00 bar, which is 3.00 bar absolute." in html(path, "metric")


def test_sections_are_known_by_anchors_that_are_their_own(shelf):
    lesson = library.read(shelf(HEAD + "## The tide\n\nIn.\n\n## *The* tide!\n\nOut.\n\n## Box\n\nx\n"))
    assert [(one.title, one.anchor) for one in lesson.sections] == [
        ("The tide", "the-tide"),
        ("The tide!", "the-tide-2"),
        ("Box", "box-2"),  # "box" is the apparatus
    ]
    assert '<h2 id="the-tide-2"><em>The</em> tide!</h2>' in lesson.parts["us"][1].html


@pytest.mark.parametrize(
    ("system", "text"), [("us", "about 4 ft of water"), ("metric", "about 1.2 m of water")]
)
def test_a_published_figure_is_given_in_the_readers_units(system, text):
    assert fill("about {either 4 ft|1.2 m} of water", system) == text


def test_an_insert_that_is_broken_across_lines_is_found_out():
    with pytest.raises(UnknownInsert, match="on one line"):
        fill("a gauge reads {gauge", "us")
