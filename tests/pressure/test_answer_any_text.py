"""No text whatever makes the reader raise, wait, or say what cannot be shown."""

from time import perf_counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pressure.answer import Marked, Trouble, mark, read
from tests.benchmarks.answers import ASKED, KEY, hostile

A_MILLISECOND = 1e-3

any_text = st.text(st.characters(), max_size=80)  # lone surrogates and NUL included
near_numbers = st.text("0123456789.,/ eE+-−½⅓()^*'\"psigbarft³\u00a0\u200f１", max_size=64)


def seconds(text):
    """The best of five: another process can take the core away once, hardly five times over."""

    def once():
        began = perf_counter()
        mark(text, KEY)
        return perf_counter() - began

    return min(once() for _ in range(5))


@settings(max_examples=1000, deadline=None)
@given(any_text | near_numbers)
def test_any_text_is_read_or_answered_within_a_millisecond(text):
    marked = mark(text, KEY)
    assert isinstance(marked, Marked | Trouble)
    if isinstance(marked, Trouble):
        assert marked.sentence.isprintable()
    else:
        assert "\0" not in text  # what is judged is stored, and PostgreSQL stores no NUL
        assert text.encode("utf-8")
    assert seconds(text) < A_MILLISECOND


@settings(max_examples=300, deadline=None)
@given(near_numbers)
def test_what_is_judged_is_a_finite_number_that_reads_back(text):
    reading = read(text + " psi", ASKED)
    if not isinstance(reading, Trouble):
        assert abs(reading.value) < 1e12
        again = read(reading.understood, ASKED)
        assert again.unit == reading.unit
        assert again.value == pytest.approx(reading.value, abs=1e-9)


@pytest.mark.parametrize(
    "text",
    [
        "1" * 63 + "x",
        "1," * 32,
        "1 " * 32,
        "1." * 32,
        "1/" * 32,
        "½" * 64,
        "1e" * 32,
        " " * 64,
        "1" + " " * 62 + "/",
    ],
)
def test_repeated_parts_do_not_make_it_slow(text):
    assert seconds(text) < A_MILLISECOND / 10


def test_ten_thousand_hostile_answers_never_come_out_right():
    verdicts = [mark(text, KEY) for text in hostile()]
    assert len(verdicts) == 10_000
    assert all(isinstance(v, Trouble) or v.verdict != "right" for v in verdicts)
