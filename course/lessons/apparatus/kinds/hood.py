"""The outer ear in section, its canal open to the water or shut by a hood or a plug."""

from __future__ import annotations

from course.lessons.apparatus.contract import Apparatus, Bench, Guess, Place, Row
from course.lessons.apparatus.heads import EARDRUM, FLOOR, MOUTH, ROOF, head
from course.lessons.apparatus.parts import shown as there
from course.lessons.apparatus.sections import Rung, Section, Setting, bench, can_follow, sea
from course.lessons.apparatus.walls import FOOT, TOP
from pressure.airspaces.spaces import SPACES
from pressure.problem import System

_GIVING = SPACES["outer-ear"].pressed
SEEN = _GIVING.begins[0]
_SETTINGS = (
    Setting("open", "open, with water in it", "canals-wet"),
    Setting("hood", "shut by a tight hood", "ear-hood"),
    Setting("plug", "shut by a plug", "ear-plugs"),
)


def build(system: System) -> Bench:
    return bench(
        system,
        Section(
            title="The outer ear under a hood",
            what="The ear in section: ear canal under a hood or behind a plug, eardrum, cleared middle ear",
            note="Its tube is open throughout: the ears are cleared all the way, the canal was shut at the "
            f"surface. Harm is said to be seen from {SEEN:g} mmHg (a web copy of Diving and Subaquatic "
            "Medicine, attribution inferred).",
            label="The ear canal",
            settings=_SETTINGS,
            guess=_guess(sea(system).reached(SEEN)),
            words="With the ear canal {set}, at {depth} the air in the cleared middle ear presses on the "
            "eardrum with {outside} absolute, the {filling} in the ear canal with {inside} absolute",
            inner="in the ear canal",
            outer="in the middle ear",
            rest="Equal: the eardrum lies flat",
            ladders={"outside": _ladder()},
            wall_at=EARDRUM,
            drawing=head("{inside}", "{outside}", "tube open", _shut(), fill="{fill}"),
            shapes=_shapes,
            low_left=True,
        ),
    )


def _guess(at: int) -> Guess:
    return Guess(
        question="A tight hood shuts air into the ear canal. The diver goes down and clears the ears all the "
        "way. Which way does the eardrum bow?",
        options=(
            ("in", "inwards, to the middle ear"),
            ("out", "outwards, into the canal"),
            ("flat", "neither way: the ears are cleared"),
        ),
        right="out",
        because="Clearing keeps the middle ear at the water's pressure. The air under the hood stays at the "
        "surface's, so the lower side is outside.",
        place=Place(at, ("hood",)),
    )


def _ladder() -> tuple[Rung, ...]:
    harm = can_follow(_GIVING, f"seen from {SEEN:g} mmHg on")
    return (
        Rung(0, "The eardrum bows out into the canal", _GIVING.does),
        Rung(SEEN, f"Blisters can form: seen from {SEEN:g} mmHg", f"{_GIVING.does} {harm}"),
    )


def _shut() -> str:
    """The hood, with a gap at the canal while water comes in, and the plug."""
    gap = f"M{MOUTH:g} {TOP:g}V{ROOF - 6:g}M{MOUTH:g} {FLOOR + 6:g}V{FOOT:g}"
    cup = f'<path class="fig-line" d="{gap}" stroke-width="7"/>'
    lid = f'<path class="fig-line" d="M{MOUTH:g} {TOP:g}V{FOOT:g}" stroke-width="7"/>'
    size = f'width="22" height="{FLOOR - ROOF:g}" rx="4"'
    plug = f'<rect class="fig-solid" x="{MOUTH - 6:g}" y="{ROOF:g}" {size}/>'
    return there("vent", cup) + there("hood", lid) + there("plug", plug)


def _shapes(setting: Setting, bulge: float) -> Row:
    on = {name: "inline" if setting.name == way else "none" for name, way in _COVERS}
    filling = ("air", "fig-air") if setting.is_shut else ("water", "fig-water")
    return {"filling": filling[0], "fill": filling[1], **on}


_COVERS = (("vent", "open"), ("hood", "hood"), ("plug", "plug"))
APPARATUS = Apparatus("hood", build)
