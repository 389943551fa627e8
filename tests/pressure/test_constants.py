"""Every number says what it is and where it comes from."""

from dataclasses import fields

import pytest
from scipy import constants as scipy_constants

from pressure.constants import ATMOSPHERE, BAR, CONSTANTS, FOOT, GALLON, GRAVITY, INCH, POUND, Constant


@pytest.mark.parametrize("constant", CONSTANTS, ids=lambda each: each.name)
def test_nothing_about_a_constant_is_blank(constant):
    assert all(getattr(constant, field.name) for field in fields(Constant))
    assert constant.value > 0


def test_no_constant_is_written_down_twice():
    names = [constant.name for constant in CONSTANTS]
    assert len(names) == len(set(names)) >= 18


@pytest.mark.parametrize(
    ("constant", "published"),
    [
        (GRAVITY, scipy_constants.g),
        (ATMOSPHERE, scipy_constants.atm),
        (BAR, scipy_constants.bar),
        (FOOT, scipy_constants.foot),
        (INCH, scipy_constants.inch),
        (POUND, scipy_constants.pound),
        (GALLON, scipy_constants.gallon_US),
    ],
    ids=lambda each: getattr(each, "symbol", ""),
)
def test_defined_constants_are_those_of_scipy(constant, published):
    assert constant.value == pytest.approx(published, rel=1e-15)
