"""What leaves an air space open, or lets it yield, so that no harm comes: common practice, no source."""

from __future__ import annotations

from pressure.airspaces.circumstances import BOTH, OPEN, Circumstance
from pressure.airspaces.harmful import HARMFUL

HARMLESS: tuple[Circumstance, ...] = (
    Circumstance(
        "ear-cleared",
        "middle-ear",
        "down",
        OPEN,
        "",
        "The ears are cleared early and often.",
    ),
    Circumstance(
        "canals-wet",
        "outer-ear",
        "down",
        OPEN,
        "",
        "Water runs in under the hood and fills the ear canals.",
    ),
    Circumstance(
        "sinus-healthy",
        "sinus",
        "down",
        OPEN,
        "",
        "The nose is clear and the passages to the sinuses are open.",
    ),
    Circumstance(
        "mask-cleared",
        "mask",
        "down",
        OPEN,
        "",
        "The diver breathes out a little into the mask through the nose.",
    ),
    Circumstance(
        "suit-fed",
        "suit",
        "down",
        OPEN,
        "",
        "The diver lets gas into the dry suit a little at a time, and it reaches every part.",
    ),
    Circumstance(
        "lungs-supplied",
        "lungs",
        "down",
        OPEN,
        "",
        "The diver breathes steadily from the set.",
    ),
    Circumstance(
        "helmet-followed",
        "helmet",
        "down",
        OPEN,
        "",
        "The stage is lowered so slowly that the supply to the helmet keeps up.",
    ),
    Circumstance(
        "lungs-short",
        "lungs",
        "short breath",
        BOTH,
        "",
        "The whole way is made on one full breath taken at the surface.",
        "surface",
    ),
    Circumstance(
        "helmet-valve-holds",
        "helmet",
        "stays",
        BOTH,
        "",
        "The supply hose of the helmet bursts at the surface; the non-return valve shuts at once and keeps "
        "the air in helmet and suit.",
    ),
    Circumstance(
        "ear-opens",
        "middle-ear",
        "up",
        OPEN,
        "",
        "The air leaves the ears by itself through the tubes to the throat.",
    ),
    Circumstance(
        "sinus-opens",
        "sinus",
        "up",
        OPEN,
        "",
        "The nose is clear and the passages to the sinuses let air out.",
    ),
    Circumstance(
        "mask-spills",
        "mask",
        "up",
        OPEN,
        "",
        "The air in the mask leaves by itself under its edge.",
    ),
    Circumstance(
        "suit-vents",
        "suit",
        "up",
        OPEN,
        "",
        "The valve of the dry suit lets gas out from every part of it.",
    ),
    Circumstance(
        "lungs-breathing",
        "lungs",
        "up",
        OPEN,
        "",
        "The diver breathes in and out steadily from the set, and no part of the lungs is shut off.",
    ),
    Circumstance(
        "lungs-streaming",
        "lungs",
        "up",
        OPEN,
        "",
        "The set runs empty; with open mouth the diver lets air stream from the lungs all the way.",
    ),
    Circumstance(
        "lungs-return",
        "lungs",
        "back on a breath",
        BOTH,
        "",
        "The whole dive is made on one breath taken at the surface, and no other.",
        "surface",
    ),
)
"""Those in which nothing happens."""

ALL: tuple[Circumstance, ...] = (*HARMFUL, *HARMLESS)
"""Every circumstance, those that do harm first."""
