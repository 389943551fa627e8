"""The people of the demo: an invented harbour-works dive unit at Orrowmouth, a place on no chart.

Each trainee's plan says, competency by competency, how far the simulated learner gets.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from quizzes.competencies import COMPETENCIES

DOMAIN = "orrowmouth.example"
"""Reserved for examples (RFC 2606): no letter to it ever arrives, and nobody real has an address there."""

PASSWORD = "slack water at noon"  # noqa: S105 (for invented people only; the demo refuses to mix with others)

QUICK = 6
"""How many trainees of each cohort ``--quick`` keeps; the first ones show every state between them."""


@dataclass(frozen=True, slots=True)
class Part:
    """One trainee's part: a name, and the plans that differ from "met", by competency."""

    name: str
    but: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Troupe:
    """A cohort: who teaches it, its units, when it began, how fast and how far it has come."""

    name: str
    instructor: str
    system: str
    days_ago: int
    first_topic: int
    between: int
    reached: int
    parts: tuple[Part, ...]


PLANS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "not started": (),
        "practising": ("practise a while",),
        "ready": ("practise a while", "practise until ready"),
        "checking": ("practise until ready", "begin a check"),
        "met": ("practise until ready", "pass a check", "confirm it"),
        "just met": ("practise until ready", "pass a check"),
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

_NORTH = (
    Part("Wren Talcott"),
    Part("Ishaan Borde", {"water-columns": "lapsed", "gauge-absolute": "due", "buoyancy": "practising"}),
    Part("Mireille Okafor-Lund", {"held-breath": "waits", "mixtures": "not started"}),
    Part("Tomasz Kettering", {"depth-pressure": "second try", "mechanisms": "held", "buoyancy": "ready"}),
    Part("Noor Vandersteen", {"air-supply": "ready", "buoyancy": "not started"}),
    Part("Callum Ardroy", {"mixtures": "checking", "buoyancy": "practising"}),
    Part("Beatriz Halvorsen"),
    Part("Jonah Pellworth", {"boyle": "second try", "heat-and-gas": "held"}),
    Part("Sunniva Achterberg", {"water-columns": "due", "depth-found": "second try"}),
    Part("Rashid Emberley", {"closed-spaces": "opened", "buoyancy": "not started"}),
    Part("Lucía Marchmont", {"boyle-at-work": "practising", "mechanisms": "ready"}),
    Part("Kofi Drummersby", {"buoyancy": "just met"}),
)
_SOUTH = (
    Part("Hester Quillon", {"boyle": "ready", "boyle-at-work": "not started"}),
    Part(
        "Dmitri Ashgrove",
        {"depth-found": "practising", "boyle": "not started", "boyle-at-work": "not started"},
    ),
    Part("Paloma Reinholt", {"boyle-at-work": "practising"}),
    Part("Ewan Skerritt", {"depth-pressure": "held", "boyle": "practising", "boyle-at-work": "not started"}),
    Part("Yuki Thornbury", dict.fromkeys(tuple(COMPETENCIES)[:7], "not started")),
    Part("Amara Lindqvist", {"boyle": "checking", "boyle-at-work": "not started"}),
    Part("Silas Venn", {"dials-units": "ready", "boyle": "not started", "boyle-at-work": "not started"}),
    Part("Odile Karpinska", {"boyle": "just met", "boyle-at-work": "practising"}),
    Part("Bram Oyelaran", {"gauge-absolute": "second try", "boyle-at-work": "not started"}),
    Part("Freya Castellane", {"depth-found": "held", "boyle": "practising", "boyle-at-work": "not started"}),
    Part("Mateus Holloway", {"boyle": "held", "boyle-at-work": "not started"}),
    Part("Ingrid Nakashima", {"water-columns": "practising", "boyle-at-work": "not started"}),
)

TROUPES: tuple[Troupe, ...] = (
    Troupe("North Mole cohort", "Gudrun Marlowe", "us", 404, 122, 8, len(COMPETENCIES), _NORTH),
    Troupe("South Quay cohort", "Pascal Tiernan", "metric", 42, 38, 4, 7, _SOUTH),
)
