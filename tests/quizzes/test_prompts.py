"""How a stored problem is set on the page."""

from quizzes.templatetags.prompts import situation


def shown(text, *givens):
    return {"situation": text, "givens": [{"text": given} for given in givens]}


def test_given_numbers_stand_in_bold():
    assert situation(shown("A box of 2 ft³ sinks to 33 ft.", "2 ft³", "33 ft")) == (
        "A box of <strong>2 ft³</strong> sinks to <strong>33 ft</strong>."
    )


def test_a_number_is_not_found_inside_a_longer_one():
    assert situation(shown("From 33 ft up to 3 ft with 3 ft³.", "3 ft")) == (
        "From 33 ft up to <strong>3 ft</strong> with 3 ft³."
    )


def test_the_situation_is_escaped():
    assert situation(shown("a <b> & 3 ft", "3 ft")) == "a &lt;b&gt; &amp; <strong>3 ft</strong>"


def test_a_situation_without_numbers_is_left_as_it_is():
    assert situation(shown("Nothing is given.")) == "Nothing is given."
