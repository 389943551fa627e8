"""A closed, rigid vessel of gas warmed or cooled: what the families about it share."""

from __future__ import annotations

from pressure.cylinders import AIR_SENTENCE, PRESSURE_UNITS, SURFACES
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws import real_gas
from pressure.laws.charles import gauge_warmed
from pressure.problem import Step, System
from pressure.slips import Misstep, slip
from pressure.temperatures import SCALES, absolute_steps, ratio_slips
from pressure.units import FACTORS, rounded, unit_text

_REAL_FROM = {"us": 1500.0, "metric": 100.0}
"""By gauge: from here on warmth moves real air clearly more than the ideal gas."""


def convention(system: System) -> str:
    """What the prompt fixes: the atmosphere, the absolute scale, and that the gas is ideal."""
    return f"{AIR_SENTENCE[system]}, {SCALES[system].sentence}, and air as an ideal gas."


def gauges_after(system: System, gauge: float, before: float, after: float) -> tuple[float, ...]:
    """What the gauge shows at ``after`` degrees under each convention, the one the prompt names first."""
    ends, surfaces = SCALES[system].ends(before, after), SURFACES[system]
    return tuple([gauge_warmed(gauge, air, first, last) for first, last in ends for air in surfaces])


def missteps(system: System, gauge: float, before: float, after: float) -> tuple[Misstep, ...]:
    """The slips of the temperature, worked through from gauge to gauge."""
    surfaces = SURFACES[system]
    return ratio_slips(
        SCALES[system],
        before,
        after,
        lambda ratio: tuple([(gauge + air) * ratio - air for air in surfaces]),
    )


def change_alone(gauge: float, answers: tuple[float, ...]) -> Misstep:
    """The slip of giving the rise or the fall for the reading."""
    if answers[0] > gauge:
        mend = "{typed} is what was gained. Asked is what the gauge shows: add what it showed before."
        return slip("gain-only", mend, *[answer - gauge for answer in answers])
    mend = (
        "{typed} is what was lost. Asked is what the gauge still shows: take it from what it showed before."
    )
    return slip("other-part", mend, *[gauge - answer for answer in answers])


def steps(system: System, gauge: float, before: float, after: float) -> tuple[Step, ...]:
    """From gauge to absolute, both temperatures absolute, the ratio, and back to the gauge."""
    unit, air, scale = PRESSURE_UNITS[system], SURFACES[system][0], SCALES[system]
    start, end, start_gauge, end_gauge = (
        Symbol("P", "abs 1", "absolute 1"),
        Symbol("P", "abs 2", "absolute 2"),
        Symbol("P", "g 1", "gauge 1"),
        Symbol("P", "g 2", "gauge 2"),
    )
    surface, kelvins = Symbol("P", "atm", "atmosphere"), scale.absolute_unit
    warm_1, warm_2 = scale.absolute(before), scale.absolute(after)
    whole = gauge + air
    return (
        Step(
            "The law takes absolute pressures: add the atmosphere to the gauge.",
            equation(start, start_gauge + surface),
            equation(start, given(gauge, unit) + given(air, unit)),
            result(start, whole, unit, "absolute", figures=5),
        ),
        *absolute_steps(scale, before, after),
        Step(
            "In a closed, rigid vessel the absolute pressure goes with the absolute temperature.",
            equation(end, start * (Symbol("T", "2") / Symbol("T", "1"))),
            equation(
                end,
                computed(whole, unit, figures=5)
                * (computed(warm_2, kelvins, figures=4) / computed(warm_1, kelvins, figures=4)),
            ),
            result(end, whole * warm_2 / warm_1, unit, "absolute", figures=5),
        ),
        Step(
            "Back to the gauge: take the atmosphere off again.",
            equation(end_gauge, end - surface),
            equation(end_gauge, computed(whole * warm_2 / warm_1, unit, figures=5) - given(air, unit)),
            result(end_gauge, whole * warm_2 / warm_1 - air, unit, "gauge"),
        ),
        *_remark(system, gauge, before, after),
    )


def _remark(system: System, gauge: float, before: float, after: float) -> tuple[Step, ...]:
    """What real air does in a full cylinder, where the ideal gas misleads; nothing at low pressure."""
    ideal = gauges_after(system, gauge, before, after)[0]
    if gauge < _REAL_FROM[system]:
        return ()
    unit = PRESSURE_UNITS[system]
    real = real_gauge(system, gauge, before, after)
    share = abs(real / ideal - 1)
    how = f"{rounded(100 * share, 2)} per cent {'more' if real > ideal else 'less'}"
    return (
        Step(
            "In a full cylinder the atmosphere added and taken off hardly shows; at low pressure it does. "
            "It is "
            "part of the law in both."
        ),
        Step(
            f"Real air is not ideal at such a pressure: the gauge of a cylinder would show about "
            f"{rounded(real)} {unit_text(unit)}, {how} (B. I. Lee and M. G. Kesler, 1975)."
        ),
    )


def real_gauge(system: System, gauge: float, before: float, after: float) -> float:
    """What the gauge would show with real air, in the pressure unit of the system; degrees go in.

    Raises ValueError above 350 bar.
    """
    bar, scale = FACTORS[PRESSURE_UNITS[system]] / FACTORS["bar"], SCALES[system]
    per_kelvin = 1.8 if scale.unit == "°F" else 1.0
    kelvins = [(degrees + scale.zeros[1]) / per_kelvin for degrees in (before, after)]
    air = SURFACES[system][0]
    return real_gas.pressure_warmed((gauge + air) * bar, *kelvins) / bar - air
