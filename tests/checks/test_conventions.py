"""The conventions for water, against tables made outside the project.

Tables without another source are plain arithmetic from the stated convention, kept to the printed digits.
"""

import pytest

from pressure.constants import ATMOSPHERE, GRAVITY
from pressure.laws import hydrostatics
from pressure.units import FACTORS
from pressure.waters import (
    FRESH_0432_PSI,
    FRESH_34_FT,
    FRESH_62_4_LB,
    FRESH_DENSITY,
    SEA_0445_PSI,
    SEA_10_M,
    SEA_33_FT,
    SEA_64_LB,
    SEA_DENSITY,
)

# fsw; psi gauge at 0.445; ata by 33 ft and by 64 lb/ft³; psi absolute by the three; bar absolute; msw.
SEA_FEET = [
    (0, 0.00, 1.0000, 1.0000, 14.70, 14.70, 14.70, 1.0132, 0.0000),
    (10, 4.45, 1.3030, 1.3024, 19.15, 19.15, 19.14, 1.3197, 3.0643),
    (18, 8.01, 1.5455, 1.5444, 22.72, 22.71, 22.70, 1.5648, 5.5158),
    (30, 13.35, 1.9091, 1.9073, 28.06, 28.05, 28.03, 1.9326, 9.1930),
    (33, 14.69, 2.0000, 1.9980, 29.40, 29.38, 29.36, 2.0245, 10.1123),
    (34, 15.13, 2.0303, 2.0283, 29.85, 29.83, 29.81, 2.0551, 10.4187),
    (40, 17.80, 2.2121, 2.2097, 32.52, 32.50, 32.47, 2.2390, 12.2573),
    (60, 26.70, 2.8182, 2.8146, 41.43, 41.40, 41.36, 2.8519, 18.3860),
    (66, 29.37, 3.0000, 2.9960, 44.10, 44.07, 44.03, 3.0357, 20.2246),
    (99, 44.05, 4.0000, 3.9940, 58.80, 58.75, 58.70, 4.0469, 30.3369),
    (100, 44.50, 4.0303, 4.0243, 59.25, 59.20, 59.14, 4.0776, 30.6434),
    (130, 57.85, 4.9394, 4.9315, 72.61, 72.55, 72.47, 4.9969, 39.8364),
    (132, 58.74, 5.0000, 4.9920, 73.50, 73.44, 73.36, 5.0582, 40.4492),
    (165, 73.42, 6.0000, 5.9900, 88.20, 88.12, 88.03, 6.0694, 50.5616),
    (190, 84.55, 6.7576, 6.7461, 99.34, 99.25, 99.14, 6.8355, 58.2224),
    (198, 88.11, 7.0000, 6.9880, 102.90, 102.81, 102.70, 7.0806, 60.6739),
    (231, 102.80, 8.0000, 7.9861, 117.60, 117.50, 117.36, 8.0919, 70.7862),
]
# ffw; psi gauge at 0.432; ata by 34 ft and by 62.4 lb/ft³; psi absolute at 0.432 and by weight.
FRESH_FEET = [
    (10, 4.320, 1.2941, 1.2949, 19.020, 19.029),
    (33, 14.256, 1.9706, 1.9731, 28.956, 28.996),
    (34, 14.688, 2.0000, 2.0025, 29.388, 29.429),
    (60, 25.920, 2.7647, 2.7692, 40.620, 40.696),
    (66, 28.512, 2.9412, 2.9461, 43.212, 43.296),
    (68, 29.376, 3.0000, 3.0051, 44.076, 44.163),
    (99, 42.768, 3.9118, 3.9192, 57.468, 57.596),
    (102, 44.064, 4.0000, 4.0076, 58.764, 58.896),
    (130, 56.160, 4.8235, 4.8333, 70.860, 71.029),
]
# m; bar by 10 m and 1 bar; msw and 1.01325 bar; 1025 and 1000 kg/m³; atm by D/10.3 + 1 and by 1025 kg/m³.
METRES = [
    (5, 1.50, 1.5132, 1.5158, 1.5036, 1.4854, 1.4960),
    (10, 2.00, 2.0133, 2.0184, 1.9939, 1.9709, 1.9920),
    (12, 2.20, 2.2132, 2.2195, 2.1900, 2.1650, 2.1904),
    (18, 2.80, 2.8133, 2.8226, 2.7784, 2.7476, 2.7857),
    (20, 3.00, 3.0133, 3.0236, 2.9746, 2.9417, 2.9841),
    (30, 4.00, 4.0133, 4.0288, 3.9552, 3.9126, 3.9761),
    (40, 5.00, 5.0133, 5.0340, 4.9359, 4.8835, 4.9681),
    (50, 6.00, 6.0133, 6.0392, 5.9166, 5.8544, 5.9602),
    (60, 7.00, 7.0133, 7.0443, 6.8972, 6.8252, 6.9522),
]


def printed(places):
    """Within what a table printed to so many decimals can tell."""
    return 0.501 * 10**-places


@pytest.mark.parametrize("row", SEA_FEET, ids=lambda row: f"{row[0]} fsw")
def test_feet_of_sea_water(row):
    depth, gauge, by_33, by_64, psi_33, psi_0445, psi_64, bar, msw = row
    assert SEA_0445_PSI.gauge(depth) == pytest.approx(gauge, abs=printed(2) + 1e-6)
    assert SEA_33_FT.atmospheres(depth) == pytest.approx(by_33, abs=printed(4))
    assert SEA_64_LB.atmospheres(depth) == pytest.approx(by_64, abs=printed(4))
    assert SEA_33_FT.absolute(depth) == pytest.approx(psi_33, abs=printed(2))
    assert SEA_0445_PSI.absolute(depth) == pytest.approx(psi_0445, abs=printed(2) + 1e-6)
    assert SEA_64_LB.absolute(depth) == pytest.approx(psi_64, abs=printed(2))
    pascals = depth * FACTORS["fsw"]
    assert (pascals + ATMOSPHERE.value) / FACTORS["bar"] == pytest.approx(bar, abs=printed(4) + 1e-6)
    assert pascals / FACTORS["msw"] == pytest.approx(msw, abs=printed(4))


@pytest.mark.parametrize("row", FRESH_FEET, ids=lambda row: f"{row[0]} ffw")
def test_feet_of_fresh_water(row):
    depth, gauge, by_34, by_weight, psi_0432, psi_weight = row
    assert FRESH_0432_PSI.gauge(depth) == pytest.approx(gauge, abs=printed(3))
    assert FRESH_34_FT.atmospheres(depth) == pytest.approx(by_34, abs=printed(4))
    assert FRESH_62_4_LB.atmospheres(depth) == pytest.approx(by_weight, abs=printed(4))
    assert FRESH_0432_PSI.absolute(depth) == pytest.approx(psi_0432, abs=printed(3))
    assert FRESH_62_4_LB.absolute(depth) == pytest.approx(psi_weight, abs=printed(3))


@pytest.mark.parametrize("row", METRES, ids=lambda row: f"{row[0]} m")
def test_metres_of_water(row):
    depth, rule, msw, sea, fresh, atm_fresh, atm_sea = row
    air, bar = ATMOSPHERE.value, FACTORS["bar"]
    assert SEA_10_M.absolute(depth) == pytest.approx(rule, abs=printed(2))
    assert (depth * FACTORS["msw"] + air) / bar == pytest.approx(msw, abs=printed(4) + 1e-6)
    sea_pascals = hydrostatics.column_pressure(depth, 1025, GRAVITY.value)
    assert hydrostatics.absolute(sea_pascals, air) / bar == pytest.approx(sea, abs=printed(4))
    assert hydrostatics.absolute(sea_pascals, air) / air == pytest.approx(atm_sea, abs=printed(4))
    assert FRESH_DENSITY.absolute(depth) / 100 == pytest.approx(fresh, abs=printed(4))
    assert hydrostatics.atmospheres(depth, 10.3) == pytest.approx(atm_fresh, abs=printed(4))


@pytest.mark.parametrize(
    ("depth_ft", "psi", "ata"),
    [(0, 14.7, 1), (33, 29.4, 2), (66, 44.1, 3)],
    ids=["surface", "33 ft", "66 ft"],
)
def test_an_atmosphere_is_added_every_33_ft(depth_ft, psi, ata):
    """Common practice, no source."""
    assert SEA_33_FT.absolute(depth_ft) == pytest.approx(psi)
    assert SEA_33_FT.atmospheres(depth_ft) == pytest.approx(ata)


def test_a_column_33_ft_high_on_a_square_inch_weighs_an_atmosphere():
    """Common practice, no source: 14.7 lb, from 64 lb/ft³ (L. Martin, Scuba Diving Explained, 1997)."""
    assert hydrostatics.column_weight(33, 1 / 144, 64) == pytest.approx(14.7, rel=0.0025)


@pytest.mark.parametrize(
    ("convention", "bar_at_30_m"),
    [(SEA_DENSITY, 4.0346), (FRESH_DENSITY, 3.9545)],
    ids=["sea", "fresh"],
)
def test_exact_densities_come_near_the_equation_of_state_of_sea_water(convention, bar_at_30_m):
    """TEOS-10 (gsw 3.6.23), 10 °C, latitude 45, surface 1013.25 hPa; uniform columns of SP 35 and fresh."""
    assert convention.absolute(30) / 100 == pytest.approx(bar_at_30_m, rel=0.002)


@pytest.mark.parametrize(
    ("depth_ft", "sea_psi", "fresh_psi"),
    [(33, 29.388, 28.998), (66, 44.080, 43.300), (99, 58.773, 57.604), (130, 72.576, 71.041)],
    ids=lambda each: str(each),
)
def test_rules_in_feet_hold_to_a_quarter_of_a_percent_in_real_water(depth_ft, sea_psi, fresh_psi):
    """TEOS-10 (gsw 3.6.23), SP 35 and fresh at 10 °C, latitude 45, surface 1013.25 hPa."""
    for convention in (SEA_33_FT, SEA_0445_PSI, SEA_64_LB):
        assert convention.absolute(depth_ft) == pytest.approx(sea_psi, rel=0.0025)
    for convention in (FRESH_34_FT, FRESH_0432_PSI, FRESH_62_4_LB):
        assert convention.absolute(depth_ft) == pytest.approx(fresh_psi, rel=0.0035)


@pytest.mark.parametrize(
    ("atmospheres", "depth_m", "error_ft", "error_m"),
    [(1, 10.0500, 0.0008, -0.0050), (5, 50.2451, 0.0009, -0.0049), (10, 100.4780, 0.0011, -0.0048)],
)
def test_rules_of_thumb_err_as_much_as_the_standard_ocean_says(atmospheres, depth_m, error_ft, error_m):
    """TEOS-10 (gsw 3.6.23) and EOS-80 (seawater 3.3.5), standard ocean, latitude 45: they agree to 0.2 mm."""
    assert atmospheres * 33 * 0.3048 / depth_m - 1 == pytest.approx(error_ft, abs=6e-5)
    assert atmospheres * 10 / depth_m - 1 == pytest.approx(error_m, abs=6e-5)
    assert SEA_33_FT.atmospheres(depth_m / 0.3048) == pytest.approx(atmospheres + 1, rel=0.0015)
