"""The PDFs read back: what is handed out, the key apart from it, sheets, fonts and ink."""

import re
from io import BytesIO

import pytest
from django.urls import reverse
from pypdf import PdfReader

from course.papers.keys import key_as_pdf
from course.papers.sheets import papers_as_pdf
from pressure.marking import judge
from pressure.record import key_from
from quizzes.models import JournalLine

# ISO 216 (A4: 210 mm × 297 mm) and ANSI/ASME Y14.1 (Letter: 8.5 in × 11 in), in points of 1/72 in.
SHEETS = {"A4": (595.28, 841.89), "Letter": (612.0, 792.0)}


def read(pdf):
    return PdfReader(BytesIO(pdf))


def words(pages):
    """All that is written, with every gap one blank: lines break where there is room."""
    return " ".join("\n".join(page.extract_text() for page in pages).split())


def pages_of(reader, paper):
    return [page for page in reader.pages if paper.spaced_code in page.extract_text()]


@pytest.fixture
def both(make):
    """A run, what is handed out and the key."""

    def printed(slug="gauge-absolute", **more):
        run = make(slug, **more)
        papers = list(run.papers.all())
        return papers, read(papers_as_pdf(run, papers)), read(key_as_pdf(run, papers))

    return printed


@pytest.mark.parametrize("slug", ["water-columns", "boyle-at-work", "mechanisms"])
def test_every_paper_holds_its_name_its_code_and_every_question(both, slug):
    papers, handed_out, _ = both(slug)
    for paper in papers:
        text = words(pages_of(handed_out, paper))
        assert (paper.name or "Name: ____") in text
        for question in paper.questions:
            assert question["shown"]["situation"] in text
            assert all(option["text"] in text for option in question["shown"].get("options", ()))
        assert "counts as a wrong answer" in text
        assert "the check goes on on the screen from the score reached" in text
        assert "not a dive plan" in text


@pytest.mark.parametrize("slug", ["gauge-absolute", "mechanisms"])
def test_nothing_of_the_key_is_handed_out(both, slug):
    papers, handed_out, key = both(slug)
    given, kept = words(handed_out.pages), words(key.pages)
    for paper in papers:
        for question in paper.questions:
            for step in question["key"]["steps"]:
                assert step["why"] not in given
                assert step["why"] in kept
    assert "Key" not in given


@pytest.mark.parametrize("slug", ["gauge-absolute", "boyle-at-work"])
def test_the_answers_printed_in_the_key_are_marked_right(both, slug):
    papers, _, key = both(slug)
    text = words(key.pages)
    for question in (one for paper in papers for one in paper.questions):
        shown, kept = question["shown"], question["key"]
        if shown["task"] == "number":
            answer = re.sub(r" (absolute|gauge)$", "", kept["answer_text"])
            assert f"{shown['asked']['text']}: {kept['answer_text']}" in text
            assert judge({"answer": answer}, key_from(shown, kept)).verdict == "right"
        elif shown["task"] == "choice":
            right = next(one["text"] for one in kept["options"] if one["name"] == kept["right"])
            letters = re.findall(rf"\b([a-l]) {re.escape(right)}", text)
            assert "right" in {judge({"answer": one}, key_from(shown, kept)).verdict for one in letters}


@pytest.mark.parametrize("sheet", SHEETS)
def test_each_paper_counts_its_own_pages_on_the_sheet_asked_for(both, sheet):
    papers, handed_out, key = both("boyle-at-work", sheet=sheet)
    for page in (*handed_out.pages, *key.pages):
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(
            SHEETS[sheet], abs=0.5
        )
    for paper in papers:
        own = pages_of(handed_out, paper)
        said = [re.search(r"Page (\d+) of (\d+)", page.extract_text()).groups() for page in own]
        assert said == [(str(number), str(len(own))) for number in range(1, len(own) + 1)]


def test_the_fonts_travel_with_the_file_and_drawings_are_paths(both):
    _, handed_out, key = both("dials-units")
    for page in (*handed_out.pages, *key.pages):
        fonts = page["/Resources"]["/Font"].values()
        assert all("/FontFile2" in font["/DescendantFonts"][0]["/FontDescriptor"] for font in fonts)
        assert "/Image" not in {one["/Subtype"] for one in page["/Resources"].get("/XObject", {}).values()}


def test_all_is_said_in_black_and_white(both):
    _, handed_out, key = both("dials-units")
    for page in (*handed_out.pages, *key.pages):
        content = page.get_contents().get_data().decode("latin-1")
        for red, green, blue in re.findall(r"([\d.]+) ([\d.]+) ([\d.]+) (?:rg|RG)\b", content):
            assert red == green == blue


def test_the_same_paper_comes_out_the_same_however_often_it_is_printed(make):
    run = make()
    papers = list(run.papers.all())
    assert papers_as_pdf(run, papers) == papers_as_pdf(run, papers)


def test_the_two_files_have_names_that_tell_them_apart_and_opening_the_key_is_noted(desk, make):
    run = make()
    files = {one: desk.get(reverse(f"papers:{one}", args=[run.pk])) for one in ("sheets", "key")}
    names = {one: file["Content-Disposition"] for one, file in files.items()}
    assert names["sheets"] == f'attachment; filename="gauge-absolute_slipway_{run.pk}_papers.pdf"'
    assert names["key"] == f'attachment; filename="gauge-absolute_slipway_{run.pk}_key.pdf"'
    assert JournalLine.objects.get(verb="paper key opened").actor_name == "Given Instructor"
