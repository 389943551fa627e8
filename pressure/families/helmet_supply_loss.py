"""A helmet's non-return valve fails and the hose parts; how hard does the water press?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.laws.differences import across, allowed_in
from pressure.problem import (
    Asked,
    Axis,
    Facts,
    Family,
    Given,
    Posed,
    Problem,
    Quantity,
    Step,
    System,
    WorkedExample,
)
from pressure.slips import Misstep, other_water, slip
from pressure.units import shown
from pressure.walls import difference_step
from pressure.waters import Convention, Water

_SCENES = (
    "A helmeted diver works at {depth} of {water} water. The hose tears off {place}, and the non-return "
    "valve stays open.",
    "At {depth} of {water} water a helmet's non-return valve is jammed by grit when a hose coupling parts "
    "{place}.",
    "A diver is under a helmet at {depth} of {water} water. The supply hose is cut {place}, and the "
    "non-return valve does not shut.",
)
_UNITS: dict[System, tuple[str, ...]] = {"us": ("psi",), "metric": ("bar", "kPa"), "si": ("kPa",)}
_CAUTION = (
    "A squeeze like this kills: the non-return valve is tested before every dive, and nobody enters the "
    f"water without it. {STANDARD}"
)


def _waters(facts: Facts) -> tuple[Water, Water]:
    """The water of the problem, and the other one."""
    return ("fresh", "sea") if facts["is_fresh"] else ("sea", "fresh")


def _unit(system: System, facts: Facts) -> str:
    return _UNITS[system][int(facts["asked_in"])]


def pose(system: System, facts: Facts) -> Posed:
    (water, other), unit = _waters(facts), _unit(system, facts)
    conventions = allowed_in(system, water, unit)
    named = conventions[0]
    foot = named.depth_unit
    depth, broken = facts[f"depth_{foot}"], facts[f"break_{foot}"]
    place = f"under water, at {shown(broken, foot, given=True)}" if broken else "on deck, in the open air"
    scene = _SCENES[int(facts["scene"])].format(
        depth=shown(depth, foot, given=True), water=water, place=place
    )
    under = (Given("D₂", "depth of the break", Quantity(broken, foot)),) if broken else ()
    return Posed(
        situation=f"{scene} The helmet's gas goes to the pressure at the break. How much greater is the "
        f"water's pressure on the diver, in {unit}?",
        convention=named.sentence,
        givens=(Given("D₁", "depth of the diver", Quantity(depth, foot)), *under),
        asked=Asked("Δp", "water's pressure above the helmet's", "pressure", unit, "difference"),
        accepted=tuple([across(c.gradient, depth, broken) for c in conventions]),
        missteps=(
            *_missteps(depth, broken, conventions),
            other_water(water, *[across(c.gradient, depth, broken) for c in allowed_in(system, other, unit)]),
            *_UNIT_SLIPS[unit](depth - broken, conventions),
        ),
        sense="The water between the diver and the break does it all; the air above presses on both.",
        caution=_CAUTION,
    )


def _missteps(depth: float, broken: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    absolute = slip(
        "absolute-for-difference",
        "{typed} is the absolute pressure on the diver. The gas in the helmet presses back: take its "
        "pressure off.",
        *[c.absolute(depth) for c in conventions],
    )
    if not broken:
        taken = slip(
            "atmosphere-subtracted",
            "{typed} has the atmosphere taken off the water's own pressure. It was never in it: take nothing "
            "off.",
            *[c.gauge(depth) - c.surface for c in conventions],
        )
        return absolute, taken
    surface = slip(
        "from-the-surface",
        "{typed} is the difference from the surface. The hose is open under water: there the gas has the "
        "pressure of that depth.",
        *[c.gauge(depth) for c in conventions],
    )
    added = slip(
        "atmosphere-added",
        "The atmosphere presses on the water at the diver and at the break alike. Add nothing.",
        *[c.absolute(depth - broken) for c in conventions],
    )
    return absolute, surface, added


def _psi_slips(water: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    return (
        slip(
            "depth-for-pressure",
            f"A foot of water is not a pound per square inch: {conventions[0].column:g} ft weigh 14.7 psi.",
            water,
        ),
        slip(
            "atmospheres-not-converted",
            "{typed} is the difference in atmospheres. Each of them is 14.7 psi.",
            *[c.gauge(water) / c.surface for c in conventions],
        ),
    )


def _bar_slips(water: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    column = conventions[0].column
    return (
        slip("depth-for-pressure", f"A metre of water is not a bar: it takes {column:g} m.", water),
        slip(
            "decimal-point",
            f"The point slipped one place. Divide the depth by {column:g}, once.",
            *[c.gauge(water) / 10 for c in conventions],
        ),
    )


def _kilopascal_slips(water: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    return (
        slip(
            "decimal-point",
            "The point slipped one place: a metre of water makes about 10 kPa.",
            *[c.gauge(water) / 10 for c in conventions],
        ),
    )


_UNIT_SLIPS = {"psi": _psi_slips, "bar": _bar_slips, "kPa": _kilopascal_slips}


def solve(problem: Problem) -> tuple[Step, ...]:
    unit = _unit(problem.system, problem.facts)
    named = allowed_in(problem.system, _waters(problem.facts)[0], unit)[0]
    foot = named.depth_unit
    depth, broken = problem.facts[f"depth_{foot}"], problem.facts[f"break_{foot}"]
    if broken:
        why = (
            "Through the open valve the helmet's gas takes the pressure of the water at the break; on the "
            "diver lies the water of the full depth. The atmosphere is in both and drops out."
        )
    else:
        why = (
            "Through the open valve the helmet's gas falls to the pressure of the air on deck. Left over is "
            "the weight of the water alone, the gauge pressure."
        )
    return (
        difference_step(why, depth, broken, named),
        Step("A non-return valve that shuts keeps the gas in the helmet at the water's pressure."),
    )


def _axes(system: System, foot: str, depths: tuple[int, ...], breaks: tuple[int, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"depth_{foot}", tuple(map(float, depths))),
        Axis(f"break_{foot}", tuple(map(float, breaks))),
        Axis("is_fresh", (0.0, 1.0)),
        Axis("asked_in", tuple(map(float, range(len(_UNITS[system]))))),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


_DEPTHS_M = (12, 14, 16, 18, 22, 24, 26, 28, 32, 34, 36, 38)
_BREAKS_M = (0, 3, 4, 5, 6, 8)

FAMILY = Family(
    slug="helmet-supply-loss",
    edition=1,
    title="A helmet loses its supply pressure",
    topic="air spaces",
    axes={
        "us": _axes(
            "us",
            "ft",
            (40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 99, 105, 110, 115, 120, 130),
            (0, 8, 10, 12, 15, 20, 25),
        ),
        "metric": _axes("metric", "m", _DEPTHS_M, _BREAKS_M),
        "si": _axes("si", "m", _DEPTHS_M, _BREAKS_M),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"depth_ft": 99.0, "break_ft": 0.0, "is_fresh": 0.0, "asked_in": 0.0, "scene": 0.0},
            44.1,
            "three atmospheres of sea water against the air on deck; common practice, no source",
        ),
        WorkedExample(
            "us",
            {"depth_ft": 57.0, "break_ft": 0.0, "is_fresh": 1.0, "asked_in": 0.0, "scene": 0.0},
            24.6,
            "57 ft of fresh water: 24.6 psi above the surface; teaching sheet, undated (low authority)",
        ),
        WorkedExample(
            "metric",
            {"depth_m": 30.0, "break_m": 0.0, "is_fresh": 0.0, "asked_in": 0.0, "scene": 0.0},
            3.0,
            "10 m of sea water to a bar; common practice, no source",
        ),
    ),
)
