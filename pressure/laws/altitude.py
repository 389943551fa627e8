"""The standard atmosphere: how hard the air presses on a lake above the sea.

Source: ICAO Doc 7488, 3rd edition (1993), the same as U.S. Standard Atmosphere (1976) below 11 km; recalled,
and checked in the tests against an independent package. Altitudes are geometric: height above the sea.
"""

from __future__ import annotations

from pressure.constants import (
    ATMOSPHERE,
    EARTH_RADIUS,
    GAS_CONSTANT_OF_AIR,
    GRAVITY,
    LAPSE_RATE,
    SEA_LEVEL_TEMPERATURE,
)
from pressure.units import FACTORS

_POWER = GRAVITY.value / (GAS_CONSTANT_OF_AIR.value * LAPSE_RATE.value)
_HIGHEST = 11_000.0
_PLACES = {"psi": 1, "kPa": 1, "bar": 3}


def standard_pressure(altitude: float) -> float:
    """Pascals at ``altitude`` metres above the sea: p = p₀ (1 − L H/T₀)^(g/(R L)), H geopotential.

    Raises ValueError below the sea or above 11 km, where the relation ends.
    """
    if not 0.0 <= altitude <= _HIGHEST:
        raise ValueError("The standard atmosphere of the lakes runs from the sea up to 11 km.")
    height = altitude * EARTH_RADIUS.value / (altitude + EARTH_RADIUS.value)
    warmth = 1.0 - LAPSE_RATE.value * height / SEA_LEVEL_TEMPERATURE.value
    return float(ATMOSPHERE.value * warmth**_POWER)


def barometer(altitude: float, length_unit: str, pressure_unit: str) -> float:
    """The standard pressure at ``altitude`` as a barometer on the shore shows it, three figures of it.

    Units: a length and a pressure of ``units.FACTORS``; psi, kPa or bar for the pressure.
    """
    pascals = standard_pressure(altitude * FACTORS[length_unit])
    return round(pascals / FACTORS[pressure_unit], _PLACES[pressure_unit])
