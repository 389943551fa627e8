"""An open box goes down by equal steps; fill the table of absolute pressure and volume."""

from __future__ import annotations

from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.boyle import volume_after
from pressure.problem import (
    Asked,
    Axis,
    Cell,
    Facts,
    Family,
    Given,
    PosedTable,
    Problem,
    Quantity,
    Step,
    System,
    WorkedExample,
)
from pressure.slips import Misstep, slip
from pressure.units import shown
from pressure.waters import ALLOWED, Convention

_STOPS = ("depth of the first stop", "depth of the second", "depth of the third", "depth of the fourth")
_SCENES = (
    "An open-bottomed box full of surface air, {volume}, is lowered in sea water and stopped at {depths}.",
    "An upturned drum takes {volume} of surface air down in sea water, with stops at {depths}.",
    "A soft float of {volume} at the surface is drawn down in sea water and held at {depths}.",
)
_VOLUMES = {"us": "ft3", "metric": "L"}


def _depths(facts: Facts, foot: str) -> tuple[float, ...]:
    first, step = facts[f"first_{foot}"], facts[f"step_{foot}"]
    return tuple([first + row * step for row in range(len(_STOPS))])


def pose(system: System, facts: Facts) -> PosedTable:
    conventions, unit = ALLOWED[system, "sea"], _VOLUMES[system]
    foot = conventions[0].depth_unit
    volume, depths = facts[f"volume_{unit}"], _depths(facts, foot)
    told = [shown(depth, foot, given=True) for depth in depths]
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, unit, given=True), depths=f"{', '.join(told[:-1])} and {told[-1]}"
    )
    return PosedTable(
        situation=f"{scene} No air is added or lost. Fill in the absolute pressure and the volume at each.",
        convention=conventions[0].sentence,
        givens=(
            Given("V₁", "volume at the surface", Quantity(volume, unit)),
            *[
                Given("D", meaning, Quantity(depth, foot))
                for meaning, depth in zip(_STOPS, depths, strict=True)
            ],
        ),
        cells=tuple(
            [
                cell
                for depth, text in zip(depths, told, strict=True)
                for cell in (
                    _pressure_cell(depth, text, conventions),
                    _volume_cell(depth, text, volume, unit, conventions),
                )
            ]
        ),
        sense="Down the table the pressure rises by equal steps; the volume falls by less at each.",
    )


def _pressure_cell(depth: float, told: str, conventions: tuple[Convention, ...]) -> Cell:
    named = conventions[0]
    unit, column = named.pressure_unit, f"{named.column:g} {named.depth_unit}"
    return Cell(
        Asked("P", f"absolute pressure at {told}", "pressure", unit, "absolute"),
        tuple([each.absolute(depth) for each in conventions]),
        (
            slip(
                "atmosphere-left-out",
                "{typed} is the gauge pressure, the water alone. The atmosphere presses on the water: add "
                "it.",
                *[each.gauge(depth) for each in conventions],
            ),
            slip(
                "atmosphere-twice",
                "{typed} has the atmosphere in it twice. Add it once to the water's pressure.",
                *[each.absolute(depth) + each.surface for each in conventions],
            ),
            slip(
                "depth-for-pressure",
                f"{{typed}} has the depth added as if it were a pressure. {column} weigh {named.surface:g} "
                f"{unit}.",
                depth + named.surface,
            ),
        ),
    )


def _volume_cell(
    depth: float, told: str, volume: float, unit: str, conventions: tuple[Convention, ...]
) -> Cell:
    gauges = [each.gauge(depth) / each.surface for each in conventions]
    return Cell(
        Asked("V", f"volume at {told}", "volume", unit),
        tuple([volume_after(volume, each.surface, each.absolute(depth)) for each in conventions]),
        (*_volume_slips(volume, gauges), *_halved(volume, gauges)),
    )


def _volume_slips(volume: float, gauges: list[float]) -> tuple[Misstep, ...]:
    """Each works on the gauge pressure in atmospheres, under every convention."""
    return (
        slip(
            "gauge-ratio",
            "A ratio of gauge pressures leaves the atmosphere out. Boyle's law takes absolute pressures: "
            "divide by the absolute pressure in atmospheres.",
            *[volume / each for each in gauges],
        ),
        slip(
            "inverted-ratio",
            "{typed} is more than there was at the surface. Deeper means smaller: turn the ratio over.",
            *[volume * (1 + each) for each in gauges],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice at depth. Add it once to the water's pressure.",
            *[volume / (2 + each) for each in gauges],
        ),
    )


def _halved(volume: float, gauges: list[float]) -> tuple[Misstep, ...]:
    """Over the first atmosphere it halves indeed; a little deeper it cannot be told from another slip."""
    if gauges[0] < 2.2:
        return ()
    return (
        slip(
            "halved-each-time",
            "The first atmosphere of water halves the air; the second leaves a third, not a quarter. Divide "
            "by the absolute pressure in atmospheres.",
            *[volume / 2**each for each in gauges],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, unit = ALLOWED[problem.system, "sea"][0], _VOLUMES[problem.system]
    volume = problem.facts[f"volume_{unit}"]
    return tuple(
        step
        for depth in _depths(problem.facts, named.depth_unit)
        for step in (_pressure_step(depth, named), _volume_step(depth, volume, unit, named))
    )


def _pressure_step(depth: float, named: Convention) -> Step:
    unit, foot = named.pressure_unit, named.depth_unit
    total, air = Symbol("P", "abs", "absolute"), Symbol("P", "atm", "atmosphere")
    return Step(
        f"At {shown(depth, foot, given=True)}: the atmosphere, and as much again for every {named.column:g} "
        f"{foot} of water.",
        equation(total, air + air * (Symbol("D") / Symbol("h", "atm", "of one atmosphere"))),
        equation(
            total,
            given(named.surface, unit)
            + given(named.surface, unit) * (given(depth, foot) / given(named.column, foot)),
        ),
        result(total, named.absolute(depth), unit, "absolute"),
    )


def _volume_step(depth: float, volume: float, unit: str, named: Convention) -> Step:
    air, total, after = (
        Symbol("P", "atm", "atmosphere"),
        Symbol("P", "abs", "absolute"),
        Symbol("V", "2"),
    )
    absolute = named.absolute(depth)
    return Step(
        "Boyle's law: pressure times volume is what it was at the surface.",
        equation(after, Symbol("V", "1") * (air / total)),
        equation(
            after,
            given(volume, unit)
            * (
                given(named.surface, named.pressure_unit) / computed(absolute, named.pressure_unit, figures=4)
            ),
        ),
        result(after, volume_after(volume, named.surface, absolute), unit),
    )


def _axes(
    foot: str, firsts: tuple[int, ...], steps: tuple[int, ...], unit: str, volumes: tuple[float, ...]
) -> tuple[Axis, ...]:
    return (
        Axis(f"first_{foot}", tuple(map(float, firsts))),
        Axis(f"step_{foot}", tuple(map(float, steps))),
        Axis(f"volume_{unit}", volumes),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="air-table",
    edition=1,
    title="Table of pressure and volume going down",
    topic="Boyle",
    level=3,
    axes={
        "us": _axes(
            "ft",
            (18, 20, 24, 25, 33, 36, 45),
            (22, 24, 25, 30, 33),
            "ft3",
            (1.0, 2.0, 4.0, 6.0, 8.0, 9.0, 12.0),
        ),
        "metric": _axes(
            "m",
            (6, 7, 8, 10, 12, 14),
            (6, 7, 8, 9, 10),
            "L",
            (24.0, 36.0, 80.0, 100.0, 120.0, 150.0, 180.0, 240.0),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"first_ft": 33.0, "step_ft": 33.0, "volume_ft3": 1.0, "scene": 0.0},
            (29.4, 1 / 2, 44.1, 1 / 3, 58.8, 1 / 4, 73.5, 1 / 5),
            "one cubic foot of surface air in an open box at 33, 66, 99 and 132 ft; common practice, no "
            "source",
        ),
        WorkedExample(
            "metric",
            {"first_m": 10.0, "step_m": 10.0, "volume_L": 120.0, "scene": 0.0},
            (2.0, 60.0, 3.0, 40.0, 4.0, 30.0, 5.0, 24.0),
            "a bar for every 10 m; common practice, no source",
        ),
    ),
)
