"""The middle ear in section, behind the eardrum, with its tube to the throat open or blocked."""

from __future__ import annotations

from course.lessons.apparatus.contract import Apparatus, Bench, Guess, Place
from course.lessons.apparatus.heads import EARDRUM, head
from course.lessons.apparatus.sections import Rung, Sea, Section, Setting, bench, can_follow, sea, shut_since
from course.lessons.apparatus.walls import stopper
from pressure.airspaces.spaces import SPACES, Giving
from pressure.problem import System
from pressure.units import shown

LOCKS = {"us": 4.0, "metric": 1.2}
"""The difference at which the tube is said to lock, in ft or m of water: Atlas of Emergency Medicine, 5th
edition, 2021, which gives both."""
TEARS = (100.0, 500.0)
"""mmHg at which texts let an eardrum tear: recalled, as in ``pressure.airspaces.spaces``."""
_EAR = SPACES["middle-ear"]
PAIN = _EAR.pressed.begins[0]


def build(system: System) -> Bench:
    water = sea(system)
    return bench(
        system,
        Section(
            title="The middle ear",
            what="The ear in section: ear canal, eardrum, middle ear and its tube to the throat",
            note=f"Pain near {PAIN:g} mmHg and tears at {TEARS[0]:g} to {TEARS[1]:g} mmHg are figures that "
            "texts repeat; the lock is that of the Atlas of Emergency Medicine. No ear is bound to them.",
            label="The tube to the throat",
            settings=_settings(water),
            guess=_guess(system, water),
            words="With the tube {set}, at {depth} the water presses on the eardrum with {outside} absolute, "
            "the air in the middle ear with {inside} absolute",
            inner="in the middle ear",
            rest="Equal: the eardrum lies flat",
            ladders={"outside": _down(system, water), "inside": _up()},
            wall_at=EARDRUM,
            drawing=head("{outside}", "{inside}", "tube {passage}", stopper(238, 164)),
        ),
    )


def _settings(water: Sea) -> tuple[Setting, ...]:
    return (
        Setting("open", "open, cleared all the way", "ear-cleared"),
        *shut_since(water, "blocked", "ear-cold"),
        Setting("bottom", f"blocked on the way up from {water.said(water.top)}", "ear-spray", water.top),
    )


def _guess(system: System, water: Sea) -> Guess:
    near, far, further = {"us": ("3 ft", "12 ft", "33 ft"), "metric": ("1 m", "4 m", "10 m")}[system]
    deep = PAIN / water.mercury(water.water.gradient)
    return Guess(
        question="The tube is blocked from the surface on. How deep is the diver when pain sets in?",
        options=(
            ("near", f"not even {near}"),
            ("far", f"about {far}"),
            ("further", f"about {further}, one atmosphere of water"),
            ("never", "at no depth, while breathing goes well"),
        ),
        right="near",
        because=f"Pain is put near {PAIN:g} mmHg, and {shown(deep, water.water.depth_unit)} of sea water "
        "weigh that much. Breathing keeps the lungs equal; the ear has only its tube.",
        place=Place(water.reached(PAIN), ("surface",)),
    )


def _down(system: System, water: Sea) -> tuple[Rung, ...]:
    locks = shown(LOCKS[system], water.water.depth_unit, given=True)
    lock = water.mercury(water.water.gauge(LOCKS[system]))
    return (
        Rung(0, "The eardrum bows inwards", _EAR.pressed.does),
        Rung(PAIN, f"Pain is put near {PAIN:g} mmHg", f"{_EAR.pressed.does} Pain is put near {PAIN:g} mmHg."),
        Rung(
            lock,
            f"The tube is said to lock: {locks} of water",
            f"Pain is to be expected, and at about {locks} of difference the tube is said to lock: it can "
            "no longer be cleared.",
        ),
        *_tears(_EAR.pressed),
    )


def _up() -> tuple[Rung, ...]:
    blown = _EAR.blown or _EAR.pressed
    return (
        Rung(0, "The eardrum bows outwards", blown.does),
        Rung(PAIN, f"Pain is put near {PAIN:g} mmHg", f"{blown.does} Pain is put near {PAIN:g} mmHg."),
        *_tears(blown),
    )


def _tears(giving: Giving) -> tuple[Rung, ...]:
    least, most = TEARS
    can = can_follow(giving, "at a difference that texts do not agree on")
    return (
        Rung(
            least,
            f"It may tear: texts say {least:g} to {most:g} mmHg",
            f"{can} Texts let an eardrum tear anywhere from {least:g} to {most:g} mmHg.",
        ),
        Rung(
            most,
            f"Beyond {most:g} mmHg, the most texts give",
            f"{can} The most that texts give an eardrum is {most:g} mmHg.",
        ),
    )


APPARATUS = Apparatus("ear", build)
