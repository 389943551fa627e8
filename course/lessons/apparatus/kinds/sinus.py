"""A sinus in section: a hollow in bone, its lining, and its passage to the nose open or blocked."""

from __future__ import annotations

from course.lessons.apparatus.contract import Apparatus, Bench, Guess, Place, Row
from course.lessons.apparatus.parts import shown as there
from course.lessons.apparatus.parts import told
from course.lessons.apparatus.sections import Sea, Section, Setting, bench, sea, shut_since, unmeasured
from course.lessons.apparatus.walls import BULGE, FOOT, TOP, leaning, names, pressures, pushing, stopper
from pressure.airspaces.spaces import SPACES
from pressure.problem import System

_SINUS = SPACES["sinus"]
_LEFT, _RIGHT, _ROOF, _FLOOR = 134.0, 284.0, 46.0, 152.0
_LINING = 10.0


def build(system: System) -> Bench:
    water = sea(system)
    return bench(
        system,
        Section(
            title="A sinus",
            what="A sinus in section: bone, lining, the air in it and its passage to the nose",
            note="The blood brings the water's pressure to the lining. The air is taken to keep its room; in "
            "life the swelling makes up for part of the difference. No source read here says at which "
            "difference harm begins.",
            label="The passage to the nose",
            settings=_settings(water),
            guess=_guess(water.later),
            words="With the passage {set}, at {depth} the blood presses on the lining with {outside} "
            "absolute, as hard as the water, the air in the sinus with {inside} absolute",
            inner="in the sinus",
            rest="Equal: the lining lies at rest",
            ladders={
                "outside": unmeasured("The lining swells; it can tear and bleed", _SINUS.pressed),
                "inside": unmeasured("The lining is pressed; it can bleed", _SINUS.blown or _SINUS.pressed),
            },
            wall_at=_LEFT,
            drawing=_drawing(),
            shapes=_shapes,
        ),
    )


def _settings(water: Sea) -> tuple[Setting, ...]:
    return (
        Setting("open", "open", "sinus-healthy"),
        *shut_since(water, "blocked", "sinus-cold"),
        Setting("bottom", f"blocked on the way up from {water.said(water.top)}", "sinus-spray", water.top),
    )


def _guess(at: int) -> Guess:
    return Guess(
        question="A sinus has walls of bone. Its passage is blocked, and the diver goes down. What gives?",
        options=(
            ("bone", "the bone, a little"),
            ("passage", "the passage: it is pushed open"),
            ("lining", "the lining: it swells inwards"),
            ("nothing", "nothing: bone bears the pressure"),
        ),
        right="lining",
        because="Bone stands, but blood reaches the lining at the water's pressure. Towards the lower "
        "pressure of the air it swells, and it can tear and bleed.",
        place=Place(at, ("surface",)),
    )


def _drawing() -> str:
    high = FOOT - TOP
    neck = f'<rect class="fig-air" x="206" y="{_FLOOR - 1:g}" width="22" height="30"/>'
    mouth = (
        f'<rect class="fig-air" x="206" y="{_FLOOR - _LINING - 1:g}" width="22" height="{_LINING + 3:g}"/>'
    )
    left = pushing(_LEFT - 3, 110, "left")
    right = leaning(pushing(_LEFT + 4, 110, "right", turn=180))
    swollen = f'<rect class="{{lining}}" x="206" y="{_FLOOR - 1:g}" width="22" height="24" stroke-width="2"/>'
    return (
        f'<rect class="fig-water" y="{TOP:g}" width="48" height="{high:g}"/>'
        f'<rect class="fig-body" x="48" y="{TOP:g}" width="272" height="{high:g}"/>'
        f'<rect class="fig-air" x="124" y="176" width="196" height="{FOOT - 176:g}"/>'
        f'<path class="fig-line" d="M48 {TOP:g}V{FOOT:g}M206 {_FLOOR:g}V176H124V196M228 {_FLOOR:g}V176H320" '
        'stroke-width="1.5"/>'
        f'<rect class="{{lining}}" x="{_LEFT:g}" y="{_ROOF:g}" width="{_RIGHT - _LEFT:g}" '
        f'height="{_FLOOR - _ROOF:g}" rx="16" stroke-width="2"/>'
        '<rect class="fig-face" x="{x}" y="{y}" width="{wide}" height="{high}" rx="12" stroke-width="1.5"/>'
        f"{neck}{there('clear', mouth)}{there('shut', swollen)}{left}{right}{stopper(217, 162)}"
        f"{names((22, 44, 'water'), (90, 140, 'bone'), (209, 36, 'lining'), (152, 187, 'nose'))}"
        f"{told(200, 163, 'passage {passage}', anchor='end', size=12)}"
        f"{pressures('{outside}', (90, 88))}{pressures('{inside}', (209, 86))}"
    )


def _shapes(setting: Setting, bulge: float) -> Row:
    """The lining swells to two thirds of what a wall bulges, or is pressed thin."""
    inset = _LINING + bulge * (2 / 3 if bulge > 0 else (_LINING - 3) / BULGE)
    return {
        "lining": "fig-harm" if bulge else "fig-flesh",
        "x": f"{_LEFT + inset:.1f}",
        "y": f"{_ROOF + inset:.1f}",
        "wide": f"{_RIGHT - _LEFT - 2 * inset:.1f}",
        "high": f"{_FLOOR - _ROOF - 2 * inset:.1f}",
        "lean": f"{inset:.1f}",
    }


APPARATUS = Apparatus("sinus", build)
