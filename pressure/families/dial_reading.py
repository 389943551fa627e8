"""A drawn dial is read; what is the absolute pressure?"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from pressure.constants import ATMOSPHERE, SURFACE_BAR, SURFACE_PSI
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.hydrostatics import absolute
from pressure.problem import (
    Asked,
    Axis,
    Facts,
    Family,
    Figure,
    Posed,
    Problem,
    Step,
    System,
    WorkedExample,
)
from pressure.slips import Misstep, slip
from pressure.units import FACTORS, unit_text

_SCENES = (
    "The dial of the pneumo line on the quay-wall panel is drawn here. Read it.",
    "The dial on the air lock of a caisson is drawn here. Read it.",
    "The dial outside the chamber on the work barge is drawn here. Read it.",
)


class _Face(NamedTuple):
    """A dial: numbered every ``step`` to ``top``, ``fine`` marks to a step."""

    unit: str
    top: float
    step: float
    fine: int


_FACES: Mapping[System, tuple[_Face, ...]] = {
    "us": (
        _Face("psi", 60, 10, 5),
        _Face("psi", 100, 20, 10),
        _Face("psi", 200, 50, 10),
        _Face("psi", 120, 20, 8),
    ),
    "metric": (
        _Face("bar", 6, 1, 5),
        _Face("bar", 4, 0.5, 5),
        _Face("bar", 10, 2, 8),
        _Face("bar", 16, 4, 10),
    ),
}


def _needles(faces: tuple[_Face, ...]) -> tuple[tuple[int, int], ...]:
    """Every dial with every small mark past its first number: on a number there is nothing to count."""
    return tuple(
        [
            (place, at)
            for place, face in enumerate(faces)
            for at in range(face.fine, round(face.top / face.step) * face.fine)
            if at % face.fine
        ]
    )


_NEEDLES = {system: _needles(faces) for system, faces in _FACES.items()}
_SURFACES = {
    # The trade's 14.7 psi is named; the standard atmosphere, 14.696 psi, is accepted.
    "us": (SURFACE_PSI.value, ATMOSPHERE.value / FACTORS["psi"]),
    "metric": (SURFACE_BAR.value,),
}
_ASKED: dict[System, tuple[str, str]] = {"us": ("psi", "atm"), "metric": ("bar", "kPa")}
_ONES = {"us": 1.0, "metric": 0.1}
"""What a small mark is taken for when nobody counts how many there are between two numbers."""


def _per(system: System, into: str) -> tuple[float, ...]:
    """What the dial's own unit is divided by to reach the unit asked for, under each convention."""
    surfaces = _SURFACES[system]
    return {"atm": surfaces, "kPa": (0.01,)}.get(into, (1.0,) * len(surfaces))


def _reading(face: _Face, at: float) -> float:
    return round(at * face.step / face.fine, 6)


def pose(system: System, facts: Facts) -> Posed:
    face, at = _face(system, facts)
    into = _ASKED[system][int(facts["is_turned"])]
    surfaces, per = _SURFACES[system], _per(system, into)
    reading = _reading(face, at)
    return Posed(
        situation=f"{_SCENES[int(facts['scene'])]} What is the absolute pressure, in {unit_text(into)}?",
        convention=_convention(system, into),
        givens=(),
        asked=Asked("P_abs", "absolute pressure", "pressure", into, "absolute"),
        accepted=tuple(
            [absolute(reading, surface) / each for surface, each in zip(surfaces, per, strict=True)]
        ),
        missteps=(
            *_atmosphere_slips(reading, surfaces, per),
            *_reading_slips(system, face, at, surfaces[0], per[0]),
        ),
        sense="Absolute counts the atmosphere as well, so it is always more than the dial shows.",
        figure=Figure(
            "dial",
            {"top": face.top, "step": face.step, "fine": face.fine, "at": at, "unit": face.unit},
            _words(face, at),
        ),
    )


def _face(system: System, facts: Facts) -> tuple[_Face, int]:
    """The dial, and the mark its needle stands on, counted from nought."""
    face, at = _NEEDLES[system][int(facts["needle"])]
    return _FACES[system][face], at


def _words(face: _Face, at: int) -> str:
    whole, more = divmod(at, face.fine)
    return (
        f"A dial numbered from 0 to {face.top:g} {face.unit} in steps of {face.step:g}, with {face.fine - 1} "
        f"smaller marks between one number and the next. The needle stands {more} "
        f"mark{'s' if more > 1 else ''} past the number "
        f"{whole * face.step:g}."
    )


def _convention(system: System, into: str) -> str:
    if system == "metric":
        return "Take the atmosphere as 1 bar" + ("; 1 bar is 100 kPa." if into == "kPa" else ".")
    return "Take one atmosphere as 14.7 psi."


def _atmosphere_slips(
    reading: float, surfaces: tuple[float, ...], per: tuple[float, ...]
) -> tuple[Misstep, ...]:
    pairs = list(zip(surfaces, per, strict=True))
    return (
        slip(
            "atmosphere-left-out",
            "{typed} is what the dial shows. It reads nought in air, where the atmosphere already presses: "
            "add it.",
            *[reading / each for _, each in pairs],
        ),
        slip(
            "atmosphere-subtracted",
            "{typed} is less than the dial shows. The atmosphere comes on top: add it.",
            *[(reading - surface) / each for surface, each in pairs],
        ),
        slip(
            "atmosphere-twice",
            "{typed} has the atmosphere in it twice. Add it once.",
            *[(reading + 2 * surface) / each for surface, each in pairs],
        ),
    )


def _reading_slips(system: System, face: _Face, at: int, surface: float, per: float) -> tuple[Misstep, ...]:
    """What goes wrong at the needle itself; each adds the atmosphere well. Only where it makes a "
    "difference."""
    whole, more = divmod(at, face.fine)
    low, mark = whole * face.step, face.step / face.fine
    missteps = []
    if more * 2 != face.fine:
        missteps.append(
            slip(
                "counted-backwards",
                f"The marks were counted back from the next number. They run on from {low:g}.",
                ((whole + 1) * face.step - more * mark + surface) / per,
            )
        )
    if abs(mark - _ONES[system]) > 1e-9:
        missteps.append(
            slip(
                "marks-counted-as-ones",
                f"A small mark is not {_ONES[system]:g} {face.unit} here: {face.fine} of them make "
                f"{face.step:g}, so each is {mark:g}.",
                (low + more * _ONES[system] + surface) / per,
            )
        )
    return tuple(missteps)


def solve(problem: Problem) -> tuple[Step, ...]:
    face, at = _face(problem.system, problem.facts)
    whole, more = divmod(at, face.fine)
    into, surface = problem.asked.unit, _SURFACES[problem.system][0]
    reading, total = Symbol("P", "g", "gauge"), Symbol("P", "abs", "absolute")
    gauge, mark = _reading(face, at), Symbol("m", "", "one small mark")
    steps = (
        Step(
            "Find what one small mark is worth: a step of the numbers shared among its marks.",
            substitution=equation(mark, given(face.step, face.unit) / given(face.fine)),
            result=result(mark, face.step / face.fine, face.unit),
        ),
        Step(
            "Count on from the last number the needle has passed.",
            substitution=equation(
                reading,
                given(whole * face.step, face.unit) + given(more) * given(face.step / face.fine, face.unit),
            ),
            result=result(reading, gauge, face.unit, "gauge", figures=4),
        ),
        Step(
            "The dial leaves the atmosphere out; absolute pressure counts it.",
            equation(total, reading + Symbol("P", "atm", "atmosphere")),
            equation(total, given(gauge, face.unit) + given(surface, face.unit)),
            result(total, gauge + surface, face.unit, "absolute", figures=4),
        ),
    )
    if into == face.unit:
        last = steps[-1]
        closing = result(total, problem.answer.value, into, "absolute")
        return *steps[:-1], Step(last.why, last.relation, last.substitution, closing)
    return *steps, _turning(total, gauge + surface, face.unit, into, problem.answer.value)


def _turning(total: Symbol, pressure: float, unit: str, into: str, answer: float) -> Step:
    whole = computed(pressure, unit, figures=4)
    if into == "kPa":
        return Step(
            "One bar is 100 kPa.",
            substitution=equation(total, whole * given(100, "kPa/bar")),
            result=result(total, answer, into, "absolute"),
        )
    return Step(
        "One atmosphere is 14.7 psi.",
        substitution=equation(total, whole / given(SURFACE_PSI.value, "psi/atm")),
        result=result(total, answer, into, "absolute"),
    )


def _axes(system: System) -> tuple[Axis, ...]:
    return (
        Axis("needle", tuple(map(float, range(len(_NEEDLES[system]))))),
        Axis("is_turned", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


def _example(
    system: System, needle: tuple[int, int], is_turned: bool, answer: float, source: str
) -> WorkedExample:
    place = float(_NEEDLES[system].index(needle))
    return WorkedExample(
        system, {"needle": place, "is_turned": float(is_turned), "scene": 0.0}, answer, source
    )


_PRACTICE = "common practice, no source"

FAMILY = Family(
    slug="dial-reading",
    edition=1,
    title="Read a dial and give the absolute pressure",
    topic="gauge and absolute",
    level=2,
    axes={"us": _axes("us"), "metric": _axes("metric")},
    pose=pose,
    solve=solve,
    examples=(
        _example(
            "us", (0, 17), False, 48.7, "OpenStax College Physics 2e, §11.6: 34 psi gauge, 48.7 psi absolute"
        ),
        _example("metric", (0, 12), False, 3.4, f"24 m of sea water, 2.4 bar gauge; {_PRACTICE}"),
        _example("metric", (1, 28), True, 380.0, f"28 m of sea water, 2.8 bar gauge; {_PRACTICE}"),
    ),
)
