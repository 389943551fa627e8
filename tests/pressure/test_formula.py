"""Formulas say the same to the eye and to the ear, and stay inside their element."""

from xml.etree import ElementTree

import pytest

from pressure.formula import Number, Symbol, computed, equation, given, result

TOTAL, GAUGE, AIR = (
    Symbol("P", "abs", "absolute"),
    Symbol("P", "g", "gauge"),
    Symbol("P", "atm", "atmosphere"),
)


def test_a_sum_is_read_aloud_term_by_term():
    line = equation(Symbol("P", "", "absolute"), given(29.4, "psi") + given(14.7, "psi"))
    assert line.words == "P absolute equals 29.4 psi plus 14.7 psi"


def test_mathml_is_one_display_block_of_core_elements():
    line = equation(TOTAL, AIR * (Symbol("D") / Symbol("h", "atm")), given(14.7, "psi") * given(2))
    tree = ElementTree.fromstring(line.mathml)  # noqa: S314 (our own markup)
    assert (tree.tag, tree.get("display")) == ("math", "block")
    assert {node.tag for node in tree.iter()} <= {"math", "mrow", "mi", "mn", "mo", "mtext", "msub", "mfrac"}


def test_a_sum_inside_a_product_or_a_fraction_is_fenced():
    product = (GAUGE + AIR) * Symbol("V", "1")
    assert product.words() == "open bracket P gauge plus P atmosphere close bracket times V 1"
    assert (
        ((GAUGE + AIR) / AIR).words().startswith("open bracket P gauge plus P atmosphere close bracket over")
    )
    assert "<mo>(</mo>" not in ((GAUGE + AIR) / AIR).mathml()


def test_what_is_taken_off_is_fenced_when_it_is_a_sum():
    assert (TOTAL - (GAUGE + AIR)).mathml().count("<mo>(</mo>") == 1


def test_text_is_escaped():
    assert "<b>" not in Symbol("<b>", "<b>").mathml() + Number("<b>", "<b>").mathml()


@pytest.mark.parametrize(
    ("value", "words"),
    [(29.4, "P absolute equals 29.4 psi absolute"), (29.41, "P absolute is about 29.4 psi absolute")],
)
def test_a_rounded_result_says_that_it_is_about(value, words):
    assert result(TOTAL, value, "psi", "absolute").words == words


def test_numbers_on_the_way_keep_a_figure_more_unless_they_are_short():
    assert computed(17.8181, "psi", figures=4).text == "17.82"
    assert computed(3.0, figures=4).text == "3"


def test_units_stand_as_text_with_a_space_that_does_not_break():
    assert "<mtext>\N{NO-BREAK SPACE}ft³</mtext>" in given(1, "ft3").mathml()
    assert given(12, "ft3").words() == "12 cubic feet"
