"""A mask in section before the face, with air coming in through the nose or none."""

from __future__ import annotations

from course.lessons.apparatus.contract import Apparatus, Bench, Guess, Place
from course.lessons.apparatus.parts import shown as there
from course.lessons.apparatus.parts import told
from course.lessons.apparatus.sections import Sea, Section, Setting, bench, sea, shut_since, unmeasured
from course.lessons.apparatus.walls import (
    FOOT,
    TOP,
    WIDE,
    bow,
    names,
    pressing,
    pressures,
    pushing,
    stopper,
    wall,
)
from pressure.airspaces.spaces import SPACES
from pressure.problem import System

_GIVING = SPACES["mask"].pressed
_SKIN, _BROW, _NOSE, _GLASS = 112.0, 60.0, 124.0, 222.0


def build(system: System) -> Bench:
    water = sea(system)
    return bench(
        system,
        Section(
            title="The mask",
            what="A mask in section: face, the air in the mask, the glass and the water",
            note="The mask is taken as stiff; a soft skirt gives a little before the face does. On the way "
            "up air leaves under its edge. No source read here says at which difference harm begins.",
            label="The nose",
            settings=_settings(water),
            guess=_guess(water.later),
            words="With the nose {set}, at {depth} the water presses on the glass, and the blood on the "
            "face, with {outside} absolute, the air in the mask with {inside} absolute",
            inner="in the mask",
            rest="Equal: the face lies at rest",
            ladders={"outside": unmeasured("The face is drawn in; it can bleed", _GIVING)},
            wall_at=_SKIN,
            drawing=_drawing(),
        ),
    )


def _settings(water: Sea) -> tuple[Setting, ...]:
    return (
        Setting("open", "letting a little air into the mask", "mask-cleared"),
        *shut_since(water, "letting none in", "mask-forgotten"),
    )


def _guess(at: int) -> Guess:
    return Guess(
        question="A set gives a diver air at the water's pressure, breathed by the mouth alone. On the way "
        "down, does the mask keep up with the water?",
        options=(
            ("mouth", "yes: the air comes at the water's pressure"),
            ("glass", "yes: the glass passes the pressure on"),
            ("no", "no: only the nose lets air into it"),
        ),
        right="no",
        because="The supply reaches the lungs. The air in the mask stays at its old pressure until the nose "
        "lets some in; the glass stands, and the face is drawn in.",
        place=Place(at, ("surface",)),
    )


def _drawing() -> str:
    """From the left: face, air, glass, water. The nose stands in the mask."""
    eyes = f"{_SKIN:g} {_BROW:g}{bow(_SKIN, _BROW, _NOSE)}"
    nose = f"{_SKIN:g} {_NOSE:g}L148 150Q154 162 142 162H124L118 {FOOT:g}"
    breath = '<path class="fig-deep" d="M140 165v12m-8 -12l-5 10m21 -10l5 10" stroke-width="2"/>'
    return (
        f'<rect class="fig-water" y="{TOP:g}" width="{WIDE}" height="{FOOT - TOP:g}"/>'
        '<rect class="fig-air" x="100" y="46" width="122" height="138"/>'
        f'<path class="fig-body" d="M0 {TOP:g}H{_SKIN:g}L{eyes}L{nose}H0Z"/>{wall(f"M{eyes}")}'
        f'<path class="fig-line" d="M{_SKIN:g} {TOP:g}V{_BROW:g}M{nose}" stroke-width="1.5"/>{_mask()}'
        f"{pressing(_SKIN, 92)}{pushing(_GLASS - 4, 112, 'right')}"
        f"{pushing(_GLASS + 10, 112, 'left', turn=180)}{stopper(140, 172)}{there('clear', breath)}"
        f"{names((40, 44, 'face'), (186, 138, 'air'), (225, 35, 'glass'), (286, 138, 'water'))}"
        f"{told(112, 148, 'nose {passage}', anchor='end', size=12)}"
        f"{pressures('{outside}', (54, 74), (272, 92))}{pressures('{inside}', (186, 72))}"
    )


def _mask() -> str:
    """The skirt above and below, and the glass."""
    return (
        f'<rect class="fig-solid" x="{_SKIN - 4:g}" y="42" width="{_GLASS - _SKIN + 8:g}" height="7"/>'
        f'<rect class="fig-solid" x="{_SKIN + 2:g}" y="181" width="{_GLASS - _SKIN + 2:g}" height="7"/>'
        f'<rect class="fig-face" x="{_GLASS:g}" y="42" width="6" height="146" stroke-width="1.5"/>'
    )


APPARATUS = Apparatus("mask", build)
