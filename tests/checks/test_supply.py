"""Stored gas, use at depth and supply pressure, against manuals and arithmetic from their formulas."""

import pytest

from pressure.families.cylinder_content import FAMILY as CONTENT
from pressure.laws import supply
from pressure.units import FACTORS
from pressure.waters import SEA_0445_PSI, SEA_10_M, SEA_33_FT

NAVY = "US Navy Diving Manual, Revision 4, Change A"


def needed_by_hose(depth, share, loss):
    """TM 5-4220-225-14: so much of the depth in ft, and a loss, in psi gauge."""
    return supply.supply_pressure(share * depth, loss)


ROWS = [
    (
        3 * supply.used_at_depth(1.4, SEA_33_FT.atmospheres(190)),
        28.38,
        2e-4,
        f"{NAVY}: emergency gas, 190 fsw, scf",
    ),
    (supply.used_at_depth(1.4, SEA_33_FT.atmospheres(70)), 4.370, 2e-4, f"{NAVY}, 7-4.1 at 70 ft, scfm"),
    (supply.free_gas(0.399, 3000 - 250, 14.7), 74.64, 2e-4, f"{NAVY}, 7-4.1: 3000 to 250 psig, scf"),
    (supply.endurance(74.64, 4.370), 17.1, 2e-3, f"{NAVY}, 7-4.1: the time, min"),
    (supply.rate_at_surface(74.64, 17.08, SEA_33_FT.atmospheres(70)), 1.4, 5e-4, f"{NAVY}, 7-4.1 backwards"),
    (
        supply.demand(2, 1.4, SEA_33_FT.atmospheres(132)),
        14.0,
        1e-9,
        f"{NAVY}, ch. 12: 5 ata at 132 fsw; 2 × 7.0",
    ),
    (needed_by_hose(100, 0.50, 42), 92, 1e-9, "US Army TM 5-4220-225-14, §2-15: 300-ft hose, psig"),
    (needed_by_hose(100, 0.62, 42), 104, 1e-9, "US Army TM 5-4220-225-14, §2-15: 600-ft hose, psig"),
    (supply.over_bottom(194.5, SEA_0445_PSI.gauge(100)), 150, 1e-6, f"{NAVY}, p. 8-3: 44.5 psi at 100 fsw"),
    (supply.free_gas(12, 232, 1), 2784, 1e-9, "arithmetic: 12 L at 232 bar gauge, bar convention, L"),
    (supply.free_gas(15, 232, 1), 3480, 1e-9, "arithmetic: 15 L at 232 bar gauge, L"),
    (supply.free_gas(10, 200, 1), 2000, 1e-9, "arithmetic: 10 L at 200 bar gauge, L"),
    (supply.free_gas(12, 232, 1.01325), 2748, 2e-4, "arithmetic: the same at 1 atm, L"),
    (supply.free_gas(12, 300, 1.01325), 3553, 2e-4, "arithmetic: 12 L at 300 bar gauge, L at 1 atm"),
    (supply.free_gas(0.399, 3000, 14.7), 81.43, 1e-4, "arithmetic: 0.399 ft³ at 3000 psig, ft³"),
    (supply.free_gas(18, 244.9, 1) / 2.37, 1860, 1e-3, "OpenStax Chemistry 2e, §9.2, inputs only: 18 L, atm"),
    (supply.free_gas(1, 2000 + 14.7, 14.7), 137, 1e-3, "2000 psi as 137 ata: only if it is read as a gauge"),
    (
        supply.used_at_depth(20, SEA_10_M.atmospheres(30)),
        80,
        1e-9,
        "common practice, no source: four times at 30 m",
    ),
    (0.049 * FACTORS["ft3/min"] / FACTORS["L/min"], 1.4, 0.01, f"{NAVY}, 17-4.1.1: 0.049 scfm in L/min"),
]


@pytest.mark.parametrize(
    ("computed", "printed", "within", "source"), ROWS, ids=lambda each: each if isinstance(each, str) else ""
)
def test_supply(computed, printed, within, source):
    assert computed == pytest.approx(printed, rel=within), source


def test_a_tenth_of_a_cubic_foot_is_not_2_9_litres():
    """US Navy Diving Manual, 17-4.1.1, Change A, p. 17-11 prints 2.9 L; it is 2.83."""
    litres = 0.1 * FACTORS["ft3"] / FACTORS["L"]
    assert litres == pytest.approx(2.83, abs=0.005)
    assert abs(litres - 2.9) > 0.05


def test_the_18_litre_cylinder_of_a_textbook_cannot_give_what_is_asked_of_it():
    """OpenStax Chemistry 2e, §9.2: 1860 L at 2.37 atm from 18 L rated 220 bar needs 248 bar."""
    needed_bar = 1860 * 2.37 / 18 * FACTORS["atm"] / FACTORS["bar"]
    assert needed_bar == pytest.approx(248, abs=0.5)
    assert needed_bar > 220


@pytest.mark.parametrize(("reading", "both"), [(50.0, False), (200.0, True)])
def test_the_last_atmosphere_is_fixed_by_the_prompt_where_it_tells(reading, both):
    """The trade counts a cylinder empty at nought by gauge, or with its last atmosphere (two conventions)."""
    facts = {"room_L": 12.0, "rated_bar": 232.0, "count": 1.0, "scene": 0.0, "reading_bar": reading}
    usable, whole = (CONTENT.pose("metric", facts | {"is_all": kind}) for kind in (0.0, 1.0))
    assert usable.accepted[0] == pytest.approx(12 * reading)
    assert whole.accepted[0] == pytest.approx(12 * (reading + 1))
    assert (set(usable.accepted) == set(whole.accepted)) is both
