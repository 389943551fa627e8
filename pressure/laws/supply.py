"""Breathing gas: what a cylinder holds, what divers use at depth, what a supply must press with.

Source: US Navy Diving Manual, Revision 4, Change A, 7-4.1: C = (D + 33)/33 × RMV, Vₐ = (P_c − P_m)/14.7 ×
FV × N and T = Vₐ/C. Plain floats; free gas is gas at surface pressure. The gas is ideal: what real air does
is in ``real_gas``.
"""

from __future__ import annotations


def free_gas(room: float, pressure: float, surface: float) -> float:
    """Free gas, in the unit of ``room``, that a vessel holds for ``pressure``.

    A gauge pressure gives what can be let out until the gauge stands at nought; an absolute one gives all
    that is in it; the fall of a gauge gives what was used. Raises ZeroDivisionError without a surface.
    """
    return room * pressure / surface


def used_at_depth(rate: float, atmospheres: float) -> float:
    """Free gas a minute, in the unit of ``rate``, for a diver who breathes ``rate`` at the pressure there."""
    return rate * atmospheres


def rate_at_surface(used: float, minutes: float, atmospheres: float) -> float:
    """What the same breathing takes in a minute at the surface. Raises ZeroDivisionError without time."""
    return used / (minutes * atmospheres)


def endurance(usable: float, use: float) -> float:
    """Minutes that ``usable`` free gas lasts at ``use`` a minute. Raises ZeroDivisionError without use."""
    return usable / use


def supply_pressure(bottom: float, margin: float) -> float:
    """What the gauge of a surface supply must show: the water's pressure at the bottom and the margin."""
    return bottom + margin


def over_bottom(supply: float, bottom: float) -> float:
    """What a supply presses with beyond the water's pressure, all by gauge."""
    return supply - bottom


def demand(divers: float, rate: float, atmospheres: float) -> float:
    """Free air a minute that a compressor must give ``divers`` who each take ``rate`` at depth."""
    return divers * used_at_depth(rate, atmospheres)
