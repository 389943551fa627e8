"""How little water gives under pressure from all sides. Plain floats.

Source: OpenStax, College Physics 2e, §5.3 (ΔV = V₀ ΔP / B; 5.00 km of sea take about 2.3 % of the volume).
"""

from __future__ import annotations

from pressure.constants import Constant

WATER = Constant(
    "B", "bulk modulus of water", 2.2e9, "Pa", "OpenStax College Physics 2e, §5.3", "2022 (year recalled)"
)


def share_lost(added: float, stiffness: float = WATER.value) -> float:
    """The part of its volume that a stiff thing loses when ``added`` presses on it more, both in Pa.

    For small parts only: the stiffness itself grows with the pressure. Raises ZeroDivisionError for
    something without stiffness.
    """
    return added / stiffness
