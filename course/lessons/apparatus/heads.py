"""The ear in section, as two apparatus draw it: canal on the left, eardrum, middle ear, tube and throat."""

from __future__ import annotations

from course.lessons.apparatus.parts import told
from course.lessons.apparatus.walls import FOOT, TOP, WIDE, bow, names, pressing, pressures, wall

EARDRUM = 150.0
"""Where the eardrum stands."""
MOUTH = 48.0
"""Where the ear canal begins, at the water."""
THROAT = 272.0
"""Where the throat begins."""
ROOF, FLOOR = 74.0, 126.0
"""The heights between which the canal lies."""
_CAVITY = (
    f"M150 {ROOF:g}V64Q150 58 158 58H232Q244 58 244 70V130Q244 142 232 142H158Q150 142 150 136V{FLOOR:g}"
)


_DRUM = f"{EARDRUM:g} {ROOF:g}{bow(EARDRUM, ROOF, FLOOR)}"
_CANAL = f"M{MOUTH:g} {ROOF:g}L{_DRUM}H{MOUTH:g}Z"


def head(left: str, right: str, tube: str, over: str, fill: str = "fig-water") -> str:
    """The drawing: the pressures on either side and how the tube is, as forms; ``over`` lies over the rest.

    ``fill`` is what the canal is filled with, a class or a form for one.
    """
    return (
        f"{_ground()}{_cavities(fill)}{wall(f'M{_DRUM}')}{pressing(EARDRUM, 90, 110)}{_names()}"
        f"{pressures(left, (99, 61))}{pressures(right, (200, 72))}"
        f"{told(192, 174, tube, anchor='end', size=12)}{over}"
    )


def _ground() -> str:
    """Water, flesh and bone, and the throat."""
    high = FOOT - TOP
    return (
        f'<rect class="fig-water" y="{TOP:g}" width="{MOUTH:g}" height="{high:g}"/>'
        f'<rect class="fig-body" x="{MOUTH:g}" y="{TOP:g}" width="{THROAT - MOUTH:g}" height="{high:g}"/>'
        f'<rect class="fig-air" x="{THROAT:g}" y="{TOP:g}" width="{WIDE - THROAT:g}" height="{high:g}"/>'
    )


def _cavities(fill: str) -> str:
    """The middle ear behind what fills the canal; the tube leads out of its floor."""
    return (
        f'<path class="fig-air" d="{_CAVITY}H110V{ROOF:g}Z"/><path class="{fill}" d="{_CANAL}"/>'
        f'<path class="fig-line" d="{_CAVITY}" stroke-width="1.5"/>'
        f'<path class="fig-air" d="M194 140H216L{THROAT + 2:g} 172V190L194 144Z"/>'
        f'<path class="fig-line" d="M{MOUTH:g} {TOP:g}V{ROOF:g}H150M{MOUTH:g} {FOOT:g}V{FLOOR:g}H150'
        f'M{THROAT:g} {TOP:g}V171L216 142M{THROAT:g} {FOOT:g}V189L194 142" stroke-width="1.5"/>'
    )


def _names() -> str:
    leader = f'<path class="fig-line" d="M{EARDRUM:g} 48V71" stroke-width="1"/>'
    throat = ((THROAT + WIDE) / 2, 44, "throat")
    inside = ((EARDRUM, 41, "eardrum"), (99, 141, "ear canal"), (199, 129, "middle ear"))
    return leader + names((22, 44, "water"), throat, *inside)
