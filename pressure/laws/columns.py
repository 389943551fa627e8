"""What a column of water weighs, what it holds up and what it pushes with. Plain floats.

Source of the formulas: OpenStax, College Physics 2e, §11.3 (P = F/A), §11.4 (P = h ρ g) and §11.5 (Pascal's
principle: F₁/A₁ = F₂/A₂).
"""

from __future__ import annotations

SQUARE_INCHES = 144.0
"""Square inches to a square foot."""


def force(pressure: float, area: float) -> float:
    """What ``pressure`` pushes with on ``area``: lb from psi and in², kN from kPa and m²."""
    return pressure * area


def pressure_of(force_on_it: float, area: float) -> float:
    """Pressure under a force spread over ``area``, in its units. Raises ZeroDivisionError for no area."""
    return force_on_it / area


def height_held(pressure: float, gradient: float) -> float:
    """The height of water that weighs ``pressure``, in lengths of which each weighs ``gradient``."""
    return pressure / gradient


def force_passed_on(force_put_in: float, area: float, other_area: float) -> float:
    """The force on ``other_area`` of a closed liquid pushed with ``force_put_in`` on ``area``.

    Both stand at one level; friction and the pistons' own weight are left out.
    """
    return force(pressure_of(force_put_in, area), other_area)
