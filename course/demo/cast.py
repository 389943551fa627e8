"""The people of the demo: an invented harbour-works dive unit at Orrowmouth, a place on no chart.

Each trainee's plan says, competency by competency, how far the simulated learner gets.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

DOMAIN = "orrowmouth.example"
"""Reserved for examples (RFC 2606): no letter to it ever arrives, and nobody real has an address there."""

PASSWORD = "slack water at noon"  # noqa: S105 (for invented people only; the demo refuses to mix with others)

QUICK = 6
"""How many trainees of each cohort ``--quick`` keeps; the first ones show every state between them."""


@dataclass(frozen=True, slots=True)
class Part:
    """One trainee's part: a name and a plan for each competency in turn."""

    name: str
    plans: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Troupe:
    """A cohort: who teaches it, the units it uses, how long ago it started, and the days between topics."""

    name: str
    instructor: str
    system: str
    days_ago: int
    first_topic: int
    between: int
    parts: tuple[Part, ...]


PLANS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "not started": (),
        "practising": ("practise a while",),
        "ready": ("practise a while", "practise until ready"),
        "checking": ("practise until ready", "begin a check"),
        "met": ("practise a while", "practise until ready", "pass a check", "confirm it"),
        "just met": ("practise a while", "practise until ready", "pass a check"),
        "due": ("practise until ready", "pass a check", "confirm it"),
        "lapsed": ("practise until ready", "pass a check", "confirm it"),
        "held": ("practise until ready", "fail a check", "practise a while"),
        "second try": (
            *("practise until ready", "fail a check", "practise until ready", "pass a check"),
            "confirm it",
        ),
        "waits": ("practise until ready", "fail a check") * 3,
        "opened": (
            *("practise until ready", "fail a check") * 3,
            "look at it together",
            "practise until ready",
        ),
    }
)
"""What happens on the evenings of each plan, one after another."""

LONG_AGO: Mapping[str, int] = MappingProxyType({"due": 340, "lapsed": 400})
"""Days before today on which these begin: a check met eleven months ago, and one met thirteen months ago."""

OFFICER = "Leonie Strand"
ADMINISTRATOR = "Ambrose Keel"

TROUPES: tuple[Troupe, ...] = (
    Troupe(
        name="North Mole cohort",
        instructor="Gudrun Marlowe",
        system="us",
        days_ago=404,
        first_topic=112,
        between=30,
        parts=(
            Part("Wren Talcott", ("met", "met", "met")),
            Part("Ishaan Borde", ("lapsed", "due", "met")),
            Part("Mireille Okafor-Lund", ("met", "met", "waits")),
            Part("Tomasz Kettering", ("met", "second try", "held")),
            Part("Noor Vandersteen", ("met", "met", "ready")),
            Part("Callum Ardroy", ("met", "met", "checking")),
            Part("Beatriz Halvorsen", ("met", "met", "met")),
            Part("Jonah Pellworth", ("second try", "met", "met")),
            Part("Sunniva Achterberg", ("due", "met", "met")),
            Part("Rashid Emberley", ("met", "met", "opened")),
            Part("Lucía Marchmont", ("met", "met", "practising")),
            Part("Kofi Drummersby", ("met", "met", "just met")),
        ),
    ),
    Troupe(
        name="South Quay cohort",
        instructor="Pascal Tiernan",
        system="metric",
        days_ago=42,
        first_topic=36,
        between=14,
        parts=(
            Part("Hester Quillon", ("met", "ready", "not started")),
            Part("Dmitri Ashgrove", ("practising", "not started", "not started")),
            Part("Paloma Reinholt", ("met", "practising", "not started")),
            Part("Ewan Skerritt", ("held", "practising", "not started")),
            Part("Yuki Thornbury", ("not started", "not started", "not started")),
            Part("Amara Lindqvist", ("met", "checking", "not started")),
            Part("Silas Venn", ("ready", "not started", "not started")),
            Part("Odile Karpinska", ("met", "just met", "practising")),
            Part("Bram Oyelaran", ("second try", "practising", "not started")),
            Part("Freya Castellane", ("practising", "practising", "not started")),
            Part("Mateus Holloway", ("met", "held", "not started")),
            Part("Ingrid Nakashima", ("ready", "practising", "not started")),
        ),
    ),
)
