"""Air as a real gas, up to 350 bar and from −10 to 70 °C: the compressibility factor Z = PV/(nRT).

Source: B. I. Lee and M. G. Kesler, A generalized thermodynamic correlation based on three-parameter
corresponding states, AIChE Journal 21:510 (1975), table 1, with the critical point of air. Within 0.7 % of
the reference equation for air up to 300 bar and within 1 % up to 350 (tested). Pressures in bar absolute,
temperatures in K.
"""

from __future__ import annotations

from math import exp
from typing import NamedTuple

from pressure.constants import (
    AIR_ACENTRICITY,
    AIR_CRITICAL_PRESSURE,
    AIR_CRITICAL_TEMPERATURE,
    CELSIUS_ZERO_EXACT,
)

ROOM_TEMPERATURE = 20.0 + CELSIUS_ZERO_EXACT.value
"""K: what is taken where a problem names no temperature."""

_HIGHEST, _COLDEST, _WARMEST = 350.0, 263.15, 350.0
_REFERENCE_ACENTRICITY = 0.3978


class _Fluid(NamedTuple):
    """The twelve constants of one fluid in the correlation."""

    b1: float
    b2: float
    b3: float
    b4: float
    c1: float
    c2: float
    c3: float
    c4: float
    d1: float
    d2: float
    beta: float
    gamma: float


_SIMPLE = _Fluid(
    0.1181193, 0.265728, 0.154790, 0.030323, 0.0236744, 0.0186984, 0.0, 0.042724,
    0.155488e-4, 0.623689e-4, 0.65392, 0.060167,
)  # fmt: skip
_REFERENCE = _Fluid(
    0.2026579, 0.331511, 0.027655, 0.203488, 0.0313385, 0.0503618, 0.016901, 0.041577,
    0.48736e-4, 0.0740336e-4, 1.226, 0.03754,
)  # fmt: skip


def compressibility(pressure: float, temperature: float) -> float:
    """Z of air at ``pressure`` in bar absolute and ``temperature`` in K; 1 for an ideal gas.

    Raises ValueError above 350 bar or outside 263.15 to 350 K.
    """
    if not 0.0 < pressure <= _HIGHEST or not _COLDEST <= temperature <= _WARMEST:
        raise ValueError("Real air is reckoned up to 350 bar absolute and from 263.15 to 350 K.")
    warmth = temperature / AIR_CRITICAL_TEMPERATURE.value
    press = pressure / AIR_CRITICAL_PRESSURE.value
    simple = _factor(_SIMPLE, press, warmth)
    share = AIR_ACENTRICITY.value / _REFERENCE_ACENTRICITY
    return simple + share * (_factor(_REFERENCE, press, warmth) - simple)


def free_volume(room: float, pressure: float, surface: float, temperature: float) -> float:
    """Air in a vessel as a volume at ``surface``, in the unit of ``room``; the ideal gas law has Z = 1.

    ``pressure`` and ``surface`` in bar absolute. Raises ValueError as ``compressibility`` does.
    """
    here, outside = compressibility(pressure, temperature), compressibility(surface, temperature)
    return room * (pressure / here) / (surface / outside)


def pressure_warmed(pressure: float, before: float, after: float) -> float:
    """Bar absolute when air in a closed vessel goes from ``before`` to ``after``, both in K.

    Raises ValueError as ``compressibility`` does.
    """
    density = pressure / (compressibility(pressure, before) * before)
    found = pressure * after / before
    for _ in range(60):  # each round brings it at least three times nearer
        following = density * after * compressibility(found, after)
        if abs(following / found - 1.0) < 1e-12:
            break
        found = following
    return found


def _factor(fluid: _Fluid, pressure: float, temperature: float) -> float:
    """Z of one fluid by Newton's method on the reduced volume, from the ideal gas onwards."""
    volume = temperature / pressure
    for _ in range(60):
        z, slope = _factor_and_slope(fluid, volume, temperature)
        miss = z * temperature / volume - pressure
        step = miss / (temperature * (slope * volume - z) / volume**2)
        volume = max(volume - step, volume / 2)
        if abs(step) < 1e-13 * volume:
            break
    return pressure * volume / temperature


def _factor_and_slope(fluid: _Fluid, volume: float, temperature: float) -> tuple[float, float]:
    """Z at a reduced volume, and how fast it changes with it."""
    t, v = temperature, volume
    b = fluid.b1 - fluid.b2 / t - fluid.b3 / t**2 - fluid.b4 / t**3
    c = fluid.c1 - fluid.c2 / t + fluid.c3 / t**3
    d = fluid.d1 + fluid.d2 / t
    g = fluid.gamma / v**2
    tail = fluid.c4 / (t**3 * v**2) * exp(-g)
    z = 1.0 + b / v + c / v**2 + d / v**5 + tail * (fluid.beta + g)
    bend = tail * (2 * g * (fluid.beta + g) - 2 * (fluid.beta + g) - 2 * g) / v
    return z, -b / v**2 - 2 * c / v**3 - 5 * d / v**6 + bend
