"""What a trainee is certified in: each competency, the families that test it, how strict the rule is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class Competency:
    """One thing a diver must command. ``tier`` names the decision rule in rules.py."""

    slug: str
    title: str
    promise: str
    families: tuple[str, ...]
    tier: str = "standard"


_STANDARD, _STRICTER = "standard", "stricter"

# A misunderstanding that injures at once is tested by the stricter rule.
_IN_ORDER = (
    Competency(
        "water-columns",
        "Columns of water",
        "Says what a column of water weighs, how it presses, and what it does to a face.",
        ("column-weight", "column-pressure", "atmosphere-column", "face-force", "level-surfaces"),
    ),
    Competency(
        "gauge-absolute",
        "Gauge and absolute",
        "Turns a gauge reading into absolute pressure, and back.",
        ("gauge-to-absolute", "absolute-to-gauge"),
    ),
    Competency(
        "dials-units",
        "Dials and units",
        "Reads a dial and says the same pressure in every unit of the trade.",
        ("dial-reading", "unit-conversion"),
    ),
    Competency(
        "depth-pressure",
        "Depth and pressure",
        "Says what a gauge reads, and what the pressure is, at any depth.",
        ("depth-to-gauge", "depth-to-absolute"),
    ),
    Competency(
        "depth-found",
        "Depth found",
        "Finds the depth from a pressure, and works in a mountain lake.",
        ("gauge-to-depth", "absolute-to-depth", "lake-pressure", "lake-depth"),
    ),
    Competency(
        "boyle",
        "Boyle's law",
        "Says what becomes of a volume of air on the way down and on the way up.",
        ("depth-to-volume", "volume-on-ascent"),
    ),
    Competency(
        "boyle-at-work",
        "Boyle's law at work",
        "Works with air between depths: refilled, spilling, shrunk to a part, and grown dense.",
        (
            *("between-depths", "depth-for-fraction", "box-on-ascent", "spill-depth"),
            *("air-to-refill", "air-table", "shallow-metres", "density-at-depth"),
        ),
    ),
    Competency(
        "held-breath",
        "The held breath",
        "Says what a held breath does going down and coming up, and how small a rise can injure.",
        (
            *("held-breath-down", "residual-volume-depth", "held-breath-up"),
            *("volume-to-vent", "overpressure-rise"),
        ),
        _STRICTER,
    ),
    Competency(
        "closed-spaces",
        "Closed air spaces",
        "Says how hard the water presses on a space that is not equalised, from ear to helmet.",
        ("closed-space-difference", "air-to-restore", "helmet-fall", "helmet-supply-loss"),
        _STRICTER,
    ),
    Competency(
        "mechanisms",
        "How each injury comes about",
        "Says of a scene what is injured, which way the difference runs, and what would have prevented it.",
        (
            *("name-the-injury", "greater-pressure", "what-prevents"),
            *("what-gives-first", "chain-of-events"),
        ),
        _STRICTER,
    ),
    Competency(
        "air-supply",
        "Air supply",
        "Says how much air there is, how fast it goes at depth, and how long it lasts.",
        (
            *("cylinder-content", "surface-rate", "use-at-depth"),
            *("cylinder-endurance", "overbottom-pressure", "compressor-demand"),
        ),
        _STRICTER,
    ),
    Competency(
        "heat-and-gas",
        "Heat and gas",
        "Says what warming and cooling do to a gas that is shut in or free to grow.",
        (
            *("cylinder-heating", "cylinder-cooling", "bell-cooling"),
            *("general-gas-law", "receiver-temperature"),
        ),
    ),
    Competency(
        "mixtures",
        "Mixtures of gases",
        "Says what each gas of a mixture presses by itself, and what depth makes of a trace.",
        ("partial-pressure", "depth-for-partial-pressure", "surface-equivalent", "contaminant-at-depth"),
    ),
    Competency(
        "buoyancy",
        "Buoyancy",
        "Says what floats, what a lift bag carries and how it runs away, and what depth takes from a suit.",
        (
            *("float-or-sink", "apparent-weight", "salt-to-fresh"),
            *("lift-bag-fill", "lift-bag-growth", "suit-compression"),
        ),
    ),
)

_BY_SLUG = {one.slug: one for one in _IN_ORDER}

COMPETENCIES: Mapping[str, Competency] = MappingProxyType(_BY_SLUG)
"""Every competency by slug, in the order of the course. A slug is kept in records and never changes."""


def enlist(competency: str, family: str) -> None:
    """Let one family more test a competency; whoever holds ``COMPETENCIES`` sees it. Twice counts once.

    Raises KeyError for a competency that does not exist.
    """
    known = _BY_SLUG[competency]
    if family not in known.families:
        _BY_SLUG[competency] = replace(known, families=(*known.families, family))
