"""A fold of a dry suit in section on the skin, with gas let into it or none."""

from __future__ import annotations

from course.lessons.apparatus.contract import Apparatus, Bench, Guess, Place
from course.lessons.apparatus.parts import shown as there
from course.lessons.apparatus.sections import Sea, Section, Setting, bench, sea, shut_since, unmeasured
from course.lessons.apparatus.walls import FOOT, TOP, WIDE, bow, names, pressing, pressures, pushing, wall
from pressure.airspaces.spaces import SPACES
from pressure.problem import System

_GIVING = SPACES["suit"].pressed
_SKIN, _HIGH, _LOW = 112.0, 64.0, 130.0
_FED = f"M148 {TOP:g}V40C148 56 226 40 226 97C226 154 148 138 148 154V{FOOT:g}"
_UNFED = f"M116 {TOP:g}V40C116 56 226 40 226 97C226 154 116 138 116 154V{FOOT:g}"


def build(system: System) -> Bench:
    water = sea(system)
    return bench(
        system,
        Section(
            title="A fold of the dry suit",
            what="A dry suit in section: skin, gas, the suit with a stiff fold, and the water",
            note="The soft suit follows the water; the stiff fold does not, and its pocket is taken to keep "
            "its room. On the way up gas leaves by the valve. No source read here says at which difference "
            "harm begins.",
            label="Gas",
            settings=_settings(water),
            guess=_guess(water),
            words="With gas {set}, at {depth} the water presses on the suit, and the blood on the skin, with "
            "{outside} absolute, the gas in the fold with {inside} absolute",
            inner="in the fold",
            rest="Equal: the skin lies at rest",
            ladders={"outside": unmeasured("Skin is drawn in; it can bruise", _GIVING)},
            wall_at=_SKIN,
            drawing=_drawing(),
        ),
    )


def _settings(water: Sea) -> tuple[Setting, ...]:
    return (
        Setting("open", "let in a little at a time", "suit-fed"),
        *shut_since(water, "not let in", "suit-unconnected"),
    )


def _guess(water: Sea) -> Guess:
    unit = water.water.depth_unit
    return Guess(
        question="No gas is let into the suit, and a stiff fold holds some. From where on is its pressure "
        "below the water's?",
        options=(
            ("first", f"from the first {'foot' if unit == 'ft' else '10 cm'} on"),
            ("atmosphere", f"from {water.water.column:.0f} {unit} on, one atmosphere of water"),
            ("pinch", "from where the diver feels it pinch"),
            ("never", "nowhere: the suit is soft"),
        ),
        right="first",
        because="A fold that stands keeps its gas at the old pressure, and every bit of water adds to the "
        "difference. Let gas in before you feel it.",
        place=Place(1, ("surface",)),
    )


def _drawing() -> str:
    """From the left: flesh, skin, gas, the suit, water."""
    pocket = f"{_SKIN:g} {_HIGH:g}{bow(_SKIN, _HIGH, _LOW)}"
    skin = f"M{_SKIN:g} {TOP:g}V{_HIGH:g}M{_SKIN:g} {_LOW:g}V{FOOT:g}"
    return (
        f'<rect class="fig-water" y="{TOP:g}" width="{WIDE}" height="{FOOT - TOP:g}"/>'
        f"{there('clear', _suit(_FED, 'gas let in'))}{there('shut', _suit(_UNFED, 'gas not let in'))}"
        f'<path class="fig-body" d="M0 {TOP:g}H{_SKIN:g}L{pocket}V{FOOT:g}H0Z"/>'
        f'<path class="fig-line" d="{skin}" stroke-width="2"/><path class="fig-line" d="M72 150H108"/>'
        f"{wall(f'M{pocket}')}{pressing(_SKIN, 92)}{pushing(219, 112, 'right')}"
        f"{pushing(231, 112, 'left', turn=180)}"
        f"{names((40, 44, 'flesh'), (56, 150, 'skin'), (192, 38, 'suit'), (262, 44, 'water'))}"
        f"{pressures('{outside}', (54, 74), (276, 92))}{pressures('{inside}', (174, 74))}"
    )


def _suit(shell: str, words: str) -> str:
    """The suit, the gas under it, and whether any is let in."""
    return (
        f'<path class="fig-air" d="{shell}H80V{TOP:g}Z"/>'
        f'<path class="fig-line" d="{shell}" stroke-width="5"/>{names((250, 178, words))}'
    )


APPARATUS = Apparatus("suit", build)
