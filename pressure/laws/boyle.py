"""Boyle's law: at one temperature, absolute pressure times volume stays the same.

Source: OpenStax, Chemistry 2e, §9.2 (P₁V₁ = P₂V₂).
"""

from __future__ import annotations


def volume_after(volume: float, before: float, after: float) -> float:
    """Volume, in the unit of ``volume``, when absolute pressure goes from ``before`` to ``after``.

    Raises ValueError for a pressure that is not above vacuum.
    """
    if before <= 0.0 or after <= 0.0:
        raise ValueError("Boyle's law needs absolute pressures above zero; a gauge reading will not do.")
    return volume * before / after


def pressure_after(before: float, volume: float, volume_after: float) -> float:
    """Absolute pressure, in the unit of ``before``, when the gas goes from ``volume`` to ``volume_after``.

    Raises ValueError for a volume that is not above zero.
    """
    if volume <= 0.0 or volume_after <= 0.0:
        raise ValueError("Boyle's law needs volumes above zero.")
    return before * volume / volume_after


def density_after(density: float, before: float, after: float) -> float:
    """Density, in the unit of ``density``, when absolute pressure goes from ``before`` to ``after``.

    The same gas in less room: ρ₂ = ρ₁ P₂/P₁ (OpenStax, College Physics 2e, §13.3). Raises ValueError for a
    pressure that is not above vacuum.
    """
    return volume_after(density, after, before)
