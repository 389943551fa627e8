"""Every conversion asked for, against scipy's units and against printed examples; the source beside each."""

import pytest
from scipy import constants as si

from pressure.draw import draw, key_of, walk
from pressure.families.unit_conversion import _PAIRS as PAIRS
from pressure.families.unit_conversion import FAMILY
from pressure.marking import judge

CHEMISTRY = "OpenStax Chemistry 2e, §9.1"
# scipy.constants 1.17; a foot of water by 64 and 62.4 lb/ft³ (L. Martin, 1997), a metre of it 10 kPa.
PASCALS = {
    "atm": si.atm, "psi": si.psi, "bar": si.bar, "mbar": si.bar / 1000, "kPa": 1000.0, "mmHg": si.mmHg,
    "inHg": si.mmHg * 25.4, "fsw": 64 * si.lbf / si.foot**2, "ffw": 62.4 * si.lbf / si.foot**2, "msw": 1e4,
}  # fmt: skip
GRAINS = {
    "atm": 0.4,
    "psi": 5,
    "bar": 0.5,
    "mbar": 50,
    "kPa": 50,
    "mmHg": 25,
    "inHg": 1,
    "fsw": 4,
    "ffw": 4,
    "msw": 2,
}
SET = [(system, number) for system in PAIRS for number in range(len(PAIRS[system]))]


def key(system, value, first, second):
    grains = value / GRAINS[first]
    return key_of(
        FAMILY.pose(system, {"pair": PAIRS[system].index((first, second)), "grains": grains, "scene": 0})
    )


@pytest.mark.parametrize(
    ("system", "number"), SET, ids=[f"{system} {'>'.join(PAIRS[system][number])}" for system, number in SET]
)
def test_the_exact_conversion_is_accepted(system, number):
    first, second = PAIRS[system][number]
    found = key(system, 7 * GRAINS[first], first, second)
    exact = 7 * GRAINS[first] * PASCALS[first] / PASCALS[second]
    assert found.low < exact < found.high
    assert judge({"answer": f"{exact:.5g} {second}"}, found).verdict == "right"


@pytest.mark.parametrize("system", PAIRS)
def test_every_pair_is_drawn(system):
    drawn = {draw(FAMILY, seed, system).facts["pair"] for seed in range(len(walk(FAMILY, system)))}
    assert drawn == set(range(len(PAIRS[system])))


PRINTED = [
    ("us", 32, "psi", "kPa", 220.6, f"{CHEMISTRY}, exercises: 2.2e2 kPa to two figures"),
    ("us", 88.8, "atm", "psi", 1.30e3, f"{CHEMISTRY}, exercises"),
    ("us", 29.2, "inHg", "psi", 0.976 * 14.696, f"{CHEMISTRY}, example: 0.976 atm"),
    ("us", 740, "mmHg", "psi", 0.974 * 14.696, f"{CHEMISTRY}: 0.974 atm"),
    (
        "us",
        3000,
        "psi",
        "bar",
        206.8,
        "arithmetic; OpenStax University Physics 1, §14.2 calls 207 atmospheres",
    ),
    ("us", 3000, "psi", "atm", 204.1, "arithmetic; the same put right"),
    ("us", 132, "fsw", "atm", 4, "US Navy Diving Manual, ch. 12 (12-2): 132 fsw is 5 ata"),
    ("us", 46, "fsw", "atm", 1.3939, "TERMIUM Plus, Government of Canada, 2002: 2.3939 ata"),
    ("us", 1, "fsw", "psi", 0.44444, "US Navy Diving Manual, as quoted in an encyclopedia"),
    ("us", 1, "fsw", "kPa", 3.0643, "US Navy Diving Manual, as quoted in an encyclopedia"),
    ("us", 1, "fsw", "msw", 0.30643, "US Navy Diving Manual, as quoted in an encyclopedia"),
    ("us", 57, "ffw", "psi", 24.6, "teaching sheet, undated (low authority): 57 ft of fresh water"),
    ("us", 1, "bar", "fsw", 32.633, "arithmetic from 64 lb/ft³"),
    ("us", 34, "psi", "kPa", 336 - 101.3, "OpenStax College Physics 2e, §11.6: 48.7 psi is 336 kPa"),
    ("metric", 615, "mmHg", "kPa", 82.0, f"{CHEMISTRY}, exercises"),
    ("metric", 740, "mmHg", "kPa", 98.7, f"{CHEMISTRY}"),
    ("metric", 29.2 * 25.4, "mmHg", "mbar", 989, f"{CHEMISTRY}, example: 29.2 inHg"),
    ("metric", 60, "msw", "bar", 6, "Scott et al., J Appl Physiol 130:1490, 2021: 60 m is 7 ata"),
    ("metric", 1, "atm", "msw", 10.1325, "definition of the metre of sea water"),
    ("metric", 1, "bar", "psi", 14.504, "scipy.constants 1.17"),
]


@pytest.mark.parametrize(("system", "value", "first", "second", "printed", "source"), PRINTED)
def test_printed_conversions_are_accepted(system, value, first, second, printed, source):
    found = key(system, value, first, second)
    assert found.low <= printed <= found.high, source


def test_the_textbook_that_takes_bars_for_atmospheres_has_made_a_slip():
    """OpenStax University Physics 1, §14.2: 3000 psi as 207 atmospheres, which is its value in bar."""
    marked = judge({"answer": "207 atm"}, key("us", 3000, "psi", "atm"))
    assert marked.verdict != "right"


@pytest.mark.parametrize(
    ("system", "value", "first", "second", "typed", "slip"),
    [
        ("us", 30, "psi", "bar", "2.04 bar", "atm-for-bar"),
        ("us", 66, "fsw", "psi", "28.5 psi", "fresh-for-salt"),
        ("us", 68, "ffw", "psi", "30.3 psi", "salt-for-fresh"),
        ("us", 30, "psi", "atm", "441 atm", "inverted-factor"),
        ("us", 30, "psi", "atm", "3.04 atm", "atmosphere-added"),
        ("metric", 40, "msw", "bar", "40 bar", "not-converted"),
    ],
)
def test_a_slip_is_known_by_its_number(system, value, first, second, typed, slip):
    """Common practice, no source: what each misunderstanding leads to, by hand."""
    assert judge({"answer": typed}, key(system, value, first, second)).slip == slip
