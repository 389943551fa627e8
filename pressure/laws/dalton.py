"""Dalton's law: in a mixture each gas presses as if it were alone, and the parts add up to the whole.

Source: OpenStax, Chemistry 2e, §9.3 (P_A = X_A × P_total). Pressures are absolute, in any one unit; a share
is a part of one, not per cent.
"""

from __future__ import annotations


def partial_pressure(share: float, total: float) -> float:
    """What a gas presses that makes up ``share`` of a mixture at the absolute pressure ``total``."""
    return share * total


def share(partial: float, total: float) -> float:
    """The share of a gas that presses ``partial`` in a mixture at ``total``. Raises ZeroDivisionError."""
    return partial / total


def total_for(partial: float, share: float) -> float:
    """The absolute pressure at which a gas of ``share`` presses ``partial``.

    Raises ValueError for a gas that is not there.
    """
    if share <= 0.0:
        raise ValueError("A gas that is not in the mixture reaches no partial pressure: name its share.")
    return partial / share


def surface_equivalent(share: float, atmospheres: float) -> float:
    """The share that would press as much at the surface, in the unit of ``share`` (per cent or ppm too).

    ``atmospheres`` is the absolute pressure as a multiple of the surface pressure. Source: the US Navy's
    surface equivalent value, partial pressure in ata × 100, recalled.
    """
    return share * atmospheres
