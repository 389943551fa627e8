"""What a trainee is certified in: each competency, the families that test it, how strict the rule is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class Competency:
    """One thing a diver must command. ``tier`` names the decision rule in rules.py."""

    slug: str
    title: str
    promise: str
    families: tuple[str, ...]
    tier: str = "standard"


COMPETENCIES: Mapping[str, Competency] = MappingProxyType(
    {
        competency.slug: competency
        for competency in (
            Competency(
                "gauge-absolute",
                "Gauge and absolute",
                "Turns a gauge reading into absolute pressure, and back.",
                ("gauge-to-absolute", "absolute-to-gauge"),
            ),
            Competency(
                "depth-pressure",
                "Depth and pressure",
                "Says what a gauge reads, and what the pressure is, at any depth.",
                ("depth-to-gauge", "depth-to-absolute"),
            ),
            Competency(
                "boyle",
                "Boyle's law",
                "Says what becomes of a volume of air on the way down and on the way up.",
                ("depth-to-volume", "volume-on-ascent"),
            ),
        )
    }
)
