"""Every number that is not computed: symbol, name, value, unit, source, edition."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Constant:
    """A number with where it comes from. ``edition`` is the printing, year or release that was read."""

    symbol: str
    name: str
    value: float
    unit: str
    source: str
    edition: str


_SCIPY = "scipy.constants 1.17.1"
_NAVY = "US Navy Diving Manual, p. 8-3"
_PRACTICE = "common practice, no source"
_MARTIN = "L. Martin, Scuba Diving Explained, section E"

GRAVITY = Constant("g_n", "standard gravity", 9.80665, "m/s²", "exact by definition, 3rd CGPM (1901)", _SCIPY)
ATMOSPHERE = Constant(
    "atm", "standard atmosphere", 101_325.0, "Pa", "exact by definition, 10th CGPM (1954)", _SCIPY
)
BAR = Constant("bar", "bar", 1e5, "Pa", "exact by definition, SI Brochure", _SCIPY)
FOOT = Constant("ft", "international foot", 0.3048, "m", "exact by the 1959 yard and pound agreement", _SCIPY)
INCH = Constant("in", "international inch", 0.0254, "m", "exact by the 1959 yard and pound agreement", _SCIPY)
POUND = Constant(
    "lb", "avoirdupois pound", 0.453_592_37, "kg", "exact by the 1959 yard and pound agreement", _SCIPY
)
GALLON = Constant("gal", "US gallon, 231 cubic inches", 3.785_411_784e-3, "m³", "exact by definition", _SCIPY)
MERCURY = Constant(
    "ρ_Hg",
    "density of mercury behind the conventional millimetre",
    13_595.1,
    "kg/m³",
    "conventional value; with g_n it gives 133.322387415 Pa per mmHg",
    "NIST SP 811, 2008, appendix B, recalled and checked by arithmetic",
)

SEA_WEIGHT = Constant("w_sea", "weight of sea water", 64.0, "lb/ft³", _MARTIN, "1997")
FRESH_WEIGHT = Constant("w_fresh", "weight of fresh water", 62.4, "lb/ft³", _MARTIN, "1997")
SEA_DENSITY = Constant(
    "ρ_sea", "density of sea water of 64 lb/ft³", 1025.18, "kg/m³", "64 lb/ft³ in SI, by arithmetic", _SCIPY
)
SEA_KILOGRAMS = Constant(
    "ρ_sea",
    "density of sea water as textbooks round it",
    1025.0,
    "kg/m³",
    "OpenStax College Physics 2e, §11.2 (1.025 g/mL)",
    "2022 (year recalled)",
)
FRESH_DENSITY = Constant(
    "ρ_fresh",
    "density of fresh water at 4 °C",
    1000.0,
    "kg/m³",
    "OpenStax University Physics 1, §14.1",
    "2016 (year recalled)",
)

LEAD_DENSITY = Constant(
    "ρ_Pb",
    "density of lead",
    11_300.0,
    "kg/m³",
    "OpenStax College Physics for AP Courses, table 11.1",
    "col11844, 1.14",
)

SURFACE_PSI = Constant("P_atm", "atmosphere of the trade in psi", 14.7, "psi", _NAVY, "Revision 4, Change A")
SURFACE_BAR = Constant("P_atm", "atmosphere of the trade in bar", 1.0, "bar", _PRACTICE, "as taught")
SEA_FT_PER_ATM = Constant(
    "h_atm",
    "feet of sea water to an atmosphere",
    33.0,
    "ft/atm",
    "TERMIUM Plus, Government of Canada (0.0303030 ata per foot)",
    "2002",
)
SEA_FT_PER_ATM_EXACT = Constant(
    "h_atm", "feet of sea water of 64 lb/ft³ to an atmosphere", 33.07, "ft/atm", "arithmetic: 33.066", _SCIPY
)
SEA_PSI_PER_FT = Constant(
    "γ_sea", "psi to a foot of sea water", 0.445, "psi/ft", _NAVY, "Revision 4, Change A"
)
FRESH_FT_PER_ATM = Constant("h_atm", "feet of fresh water to an atmosphere", 34.0, "ft/atm", _MARTIN, "1997")
FRESH_PSI_PER_FT = Constant(
    "γ_fresh",
    "psi to a foot of fresh water",
    0.432,
    "psi/ft",
    "14.7/34, as printed on a teaching sheet",
    "undated",
)
SEA_M_PER_BAR = Constant("h_bar", "metres of sea water to a bar", 10.0, "m/bar", _PRACTICE, "as taught")
FRESH_M_PER_BAR = Constant(
    "h_bar",
    "metres of fresh water to a bar",
    10.2,
    "m/bar",
    "arithmetic: 1e5/(1000 × 9.80665) = 10.197",
    _SCIPY,
)

# The standard atmosphere below 11 km, for lakes above the sea.
_ICAO = "ICAO Doc 7488, standard atmosphere, recalled and checked by computation"
SEA_LEVEL_TEMPERATURE = Constant(
    "T_0", "temperature of the standard atmosphere at the sea", 288.15, "K", _ICAO, "3rd edition, 1993"
)
LAPSE_RATE = Constant("L", "fall of temperature with height", 0.0065, "K/m", _ICAO, "3rd edition, 1993")
GAS_CONSTANT_OF_AIR = Constant(
    "R_air", "specific gas constant of dry air", 287.052_87, "J/(kg K)", _ICAO, "3rd edition, 1993"
)
EARTH_RADIUS = Constant(
    "r", "nominal radius of the earth for geopotential height", 6_356_766.0, "m", _ICAO, "3rd edition, 1993"
)

# Temperature: what is added to degrees to reach the absolute scale.
FAHRENHEIT_ZERO = Constant(
    "R", "degrees Rankine at 0 °F, of the trade", 460.0, "°R", "FAA handbook examples", "undated"
)
FAHRENHEIT_ZERO_EXACT = Constant(
    "R", "degrees Rankine at 0 °F", 459.67, "°R", "exact: 273.15 K × 1.8 − 32", _SCIPY
)
CELSIUS_ZERO = Constant(
    "T", "kelvins at 0 °C, of the trade", 273.0, "K", "OpenStax Chemistry 2e, §9.2", "2019 (year recalled)"
)
CELSIUS_ZERO_EXACT = Constant("T", "kelvins at 0 °C", 273.15, "K", "exact by definition, SI Brochure", _SCIPY)

# Air as a real gas.
_LEMMON = "Lemmon et al., J Phys Chem Ref Data 29:331 (2000), as held by CoolProp"
AIR_CRITICAL_TEMPERATURE = Constant("T_c", "critical temperature of air", 132.5306, "K", _LEMMON, "8.0.0")
AIR_CRITICAL_PRESSURE = Constant("P_c", "critical pressure of air", 37.86, "bar", _LEMMON, "8.0.0")
AIR_ACENTRICITY = Constant("ω", "acentric factor of air", 0.0335, "1", _LEMMON, "8.0.0")

CONSTANTS: tuple[Constant, ...] = tuple(v for v in list(vars().values()) if isinstance(v, Constant))
