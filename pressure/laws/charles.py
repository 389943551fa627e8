"""Gas and temperature: Charles's law, the law of constant volume, and both with Boyle's in one.

Source: OpenStax, Chemistry 2e, §9.2 (V₁/T₁ = V₂/T₂; P₁/T₁ = P₂/T₂; P₁V₁/T₁ = P₂V₂/T₂). Temperatures are
absolute, in K or °R; pressures are absolute.
"""

from __future__ import annotations


def absolute_temperature(degrees: float, zero: float) -> float:
    """Degrees Celsius or Fahrenheit on the absolute scale that counts ``zero`` at 0 °C or 0 °F.

    Raises ValueError where nothing can be so cold.
    """
    if degrees + zero <= 0.0:
        raise ValueError("No gas is as cold as absolute zero.")
    return degrees + zero


def volume_warmed(volume: float, before: float, after: float) -> float:
    """Volume, in the unit of ``volume``, when absolute temperature changes at one pressure.

    Raises ValueError for a temperature that is not above absolute zero.
    """
    return volume * _ratio(before, after)


def pressure_warmed(pressure: float, before: float, after: float) -> float:
    """Absolute pressure, in the unit of ``pressure``, when absolute temperature changes at one volume.

    Raises ValueError for a temperature that is not above absolute zero.
    """
    return pressure * _ratio(before, after)


def gauge_warmed(gauge: float, surface: float, before: float, after: float) -> float:
    """What a gauge shows when a closed vessel goes from one absolute temperature to another.

    ``gauge`` and ``surface`` are in one unit. Raises ValueError as ``pressure_warmed`` does.
    """
    return pressure_warmed(gauge + surface, before, after) - surface


def volume_moved(volume: float, shrinking: float, before: float, after: float) -> float:
    """Volume when absolute pressure grows ``shrinking`` times and absolute temperature changes.

    Raises ValueError for a pressure or temperature that is not above nought.
    """
    if shrinking <= 0.0:
        raise ValueError("The general gas law needs absolute pressures above zero.")
    return volume_warmed(volume, before, after) / shrinking


def _ratio(before: float, after: float) -> float:
    if before <= 0.0 or after <= 0.0:
        raise ValueError("The gas laws need absolute temperatures above zero; degrees will not do.")
    return after / before
