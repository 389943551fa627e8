"""Every export: permission, safe cells, the choice of cohort and days, the journal."""

import csv
import io

import pytest
from django.urls import reverse

from course.demo.factories import CohortFactory
from course.exports import csvfile
from course.exports.catalogue import exports
from quizzes.models import JournalLine

EXPORTS = exports().values()


@pytest.fixture
def officer(client, quay):
    client.force_login(quay.people["officer"])
    return client


def download(client, cohort, first="2000-01-01", last="2100-12-31", slug="competency-records"):
    return client.get(
        reverse("exports:download", args=[slug]), {"cohort": cohort.pk, "first": first, "last": last}
    )


def cells(response):
    """The file as the standard library's reader takes it apart, by RFC 4180."""
    return list(csv.reader(io.StringIO(response.getvalue().decode("utf-8"), newline=""), strict=True))


@pytest.mark.parametrize("export", EXPORTS, ids=lambda export: export.slug)
def test_each_export_has_the_same_header_on_an_empty_set_and_as_many_cells_a_row(officer, quay, export):
    empty = cells(download(officer, CohortFactory(), slug=export.slug))
    full = cells(download(officer, quay.cohort, slug=export.slug))
    assert empty == [[column.name for column in export.columns]] == full[:1]
    assert len(full) > 1
    assert {len(row) for row in full} == {len(export.columns)}


@pytest.mark.parametrize("export", EXPORTS, ids=lambda export: export.slug)
def test_each_column_is_explained_on_the_page(officer, export):
    text = officer.get(reverse("exports:index")).text
    assert all(column.explanation for column in export.columns)
    assert text.count('<dt class="code">') == sum(len(each.columns) for each in EXPORTS)


def test_a_file_says_what_it_is_in_its_name_and_type(officer, quay):
    response = download(officer, quay.cohort, "2026-01-01", "2026-03-31")
    assert response["Content-Disposition"] == (
        'attachment; filename="competency-records_slipway_2026-01-01_2026-03-31.csv"'
    )
    assert response["Content-Type"].startswith("text/csv; charset=utf-8")
    assert response.streaming


def test_a_download_leaves_a_line_in_the_journal(officer, quay):
    download(officer, quay.cohort, "2026-01-01", "2026-03-31")
    line = JournalLine.objects.first()
    assert (line.actor_name, line.verb, line.subject_name) == (
        "Given Officer",
        "export downloaded",
        "Slipway",
    )
    assert line.details == {"export": "competency-records", "first": "2026-01-01", "last": "2026-03-31"}


@pytest.mark.parametrize(
    ("first", "last", "sentence"),
    [
        ("", "2026-01-31", "Give the first day. Write the day as year-month-day"),
        ("31.1.2026", "2026-01-31", "That is not a day we can read."),
        ("2026-02-01", "2026-01-31", "The last day comes before the first."),
        ("2026-02-01", "9999-12-31", "Give a day between the years 2000 and 2100."),
    ],
)
def test_days_that_make_no_sense_are_refused_with_a_sentence(officer, quay, first, last, sentence):
    response = download(officer, quay.cohort, first, last)
    assert response.status_code == 400
    assert sentence in response.text
    assert not JournalLine.objects.filter(verb="export downloaded").exists()


def test_another_instructors_cohort_cannot_be_chosen(client, quay):
    client.force_login(quay.people["outsider"])
    assert "That cohort is not one of yours." in download(client, quay.cohort).text


def test_an_export_that_there_is_not_is_not_found(officer, quay):
    assert download(officer, quay.cohort, slug="knots").status_code == 404


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", "\n"])
def test_text_that_a_spreadsheet_would_run_gets_an_apostrophe(start):
    """The seven beginnings of OWASP ASVS 5.0, V1.2.10."""
    assert csvfile.guarded(f"{start}1+1") == f"'{start}1+1"


def test_numbers_and_other_text_stay_as_they_are():
    plain = [-6, 0.5, "", "1-2", "a=b", "'quoted'"]
    assert [csvfile.guarded(cell) for cell in plain] == plain


def test_quotes_commas_and_line_breaks_come_back_as_they_were():
    """RFC 4180 section 2: CRLF ends each record; such fields stand in quotes, a quote in them is doubled."""
    row = ['say "33 ft"', "a,b", "first\r\nsecond", "Lucía"]
    text = "".join(csvfile.lines(["a", "b", "c", "d"], [row]))
    assert text.startswith('a,b,c,d\r\n"say ""33 ft""","a,b","first\r\nsecond",Lucía')
    assert text.endswith("\r\n")
    assert list(csv.reader(io.StringIO(text, newline="")))[1] == row


def test_a_long_file_is_written_in_pieces():
    pieces = list(csvfile.lines(["n"], ([number] for number in range(1201))))
    assert len(pieces) == 4
    assert "".join(pieces).count("\r\n") == 1202
