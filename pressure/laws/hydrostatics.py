"""The column of water: pressure from depth. Plain floats; each function names its units.

Source of the formulas: OpenStax, College Physics 2e, §11.4 (P = h ρ g) and §11.6 (absolute = gauge +
atmospheric).
"""

from __future__ import annotations


def column_pressure(height: float, density: float, gravity: float) -> float:
    """Pascals under a column: ``height`` in m, ``density`` in kg/m³, ``gravity`` in m/s². P = h ρ g."""
    return height * density * gravity


def column_height(pressure: float, density: float, gravity: float) -> float:
    """Metres of a liquid that weigh ``pressure`` in Pa. Raises ZeroDivisionError for a weightless one."""
    return pressure / (density * gravity)


def column_weight(height: float, area: float, weight: float) -> float:
    """Pounds in a column: ``height`` in ft, ``area`` in ft², ``weight`` in lb/ft³."""
    return height * area * weight


def absolute(gauge: float, surface: float) -> float:
    """Absolute pressure, all in one unit: what the gauge reads and what presses on the surface."""
    return gauge + surface


def gauge(absolute_pressure: float, surface: float) -> float:
    """What a gauge set to zero at the surface reads, all in one unit."""
    return absolute_pressure - surface


def atmospheres(depth: float, depth_per_atmosphere: float) -> float:
    """Absolute pressure in atmospheres (ata): P = 1 + D/κ, both depths in one unit.

    Source: OSHA, commercial diving, gas laws (κ = 33.1 ft or 10.1 m in sea water).
    """
    return 1.0 + depth / depth_per_atmosphere
