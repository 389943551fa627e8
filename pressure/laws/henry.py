"""Henry's law: the gas that a liquid holds at rest is in proportion to the gas's partial pressure.

Source: OpenStax, Chemistry 2e, §11.3 (C = k P). It explains why depth loads the body with gas; how fast it
does so is a matter of decompression, which this course leaves alone.
"""

from __future__ import annotations


def dissolved(constant: float, partial: float) -> float:
    """Gas in solution: ``constant`` in mol/L per unit of pressure, ``partial`` in that unit; mol/L."""
    return constant * partial


def henry_constant(concentration: float, partial: float) -> float:
    """The constant in mol/L per unit of pressure from a measured ``concentration`` in mol/L.

    Raises ValueError without a pressure.
    """
    if partial <= 0.0:
        raise ValueError("Without a partial pressure above zero there is nothing to measure.")
    return concentration / partial
