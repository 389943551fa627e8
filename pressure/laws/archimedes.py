"""Archimedes' principle: water pushes up on a body with the weight of the water the body displaces.

Source: OpenStax, College Physics 2e, §11.7. Weights and volumes are in any one pair of units, and
``heaviness`` is the weight of water for each unit of volume in that pair.
"""

from __future__ import annotations


def displaced_weight(volume: float, heaviness: float) -> float:
    """The upward push on a body that takes up ``volume`` of the water."""
    return volume * heaviness


def apparent_weight(weight: float, volume: float, heaviness: float) -> float:
    """What the body seems to weigh under water; less than nought for one that floats up."""
    return weight - displaced_weight(volume, heaviness)


def volume_to_carry(weight: float, heaviness: float) -> float:
    """The volume of water that must be displaced to carry ``weight``.

    Raises ValueError for water without weight.
    """
    if heaviness <= 0.0:
        raise ValueError("Only a liquid with a weight can carry anything.")
    return weight / heaviness


def share_submerged(density: float, liquid: float) -> float:
    """The share of a floating body below the surface, from two densities in one unit; at most 1."""
    return min(1.0, density / liquid)


def density_from_weighing(in_air: float, in_liquid: float, liquid: float) -> float:
    """The density of a body weighed in air and in a liquid of density ``liquid``, in that unit.

    Raises ValueError for a body that the liquid does not lighten.
    """
    if in_liquid >= in_air:
        raise ValueError("A body weighs less in a liquid than in air: check which is which.")
    return liquid * in_air / (in_air - in_liquid)
