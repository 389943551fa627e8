"""Degrees and absolute temperatures: the scales of the trade, and the slips and steps that go with them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from pressure.constants import (
    CELSIUS_ZERO,
    CELSIUS_ZERO_EXACT,
    FAHRENHEIT_ZERO,
    FAHRENHEIT_ZERO_EXACT,
)
from pressure.formula import Symbol, equation, given, result
from pressure.laws.charles import absolute_temperature
from pressure.problem import Step, System
from pressure.slips import Misstep, slip


@dataclass(frozen=True, slots=True)
class Scale:
    """A scale of degrees: what makes them absolute (the number the prompt names first), and the other's."""

    unit: str
    absolute_unit: str
    zeros: tuple[float, ...]
    other: float
    sentence: str

    def absolute(self, degrees: float) -> float:
        """On the absolute scale that the prompt names."""
        return absolute_temperature(degrees, self.zeros[0])

    def ends(self, before: float, after: float) -> tuple[tuple[float, float], ...]:
        """Both absolute temperatures under each convention, the one the prompt names first."""
        return tuple([(before + zero, after + zero) for zero in self.zeros])


SCALES: Mapping[System, Scale] = MappingProxyType(
    {
        "us": Scale(
            "°F",
            "°R",
            (FAHRENHEIT_ZERO.value, FAHRENHEIT_ZERO_EXACT.value),
            CELSIUS_ZERO.value,
            f"absolute temperature as °F + {FAHRENHEIT_ZERO.value:g}",
        ),
        "metric": Scale(
            "°C",
            "K",
            (CELSIUS_ZERO.value, CELSIUS_ZERO_EXACT.value),
            FAHRENHEIT_ZERO.value,
            f"absolute temperature as °C + {CELSIUS_ZERO.value:g}",
        ),
    }
)


def ratio_slips(
    scale: Scale, before: float, after: float, answers: Callable[[float], tuple[float, ...]]
) -> tuple[Misstep, ...]:
    """What goes wrong with a ratio of temperatures; ``answers`` gives what a wrong ratio leads to.

    ``before`` and ``after`` are in degrees.
    """
    unit, zero = scale.unit, scale.zeros[0]
    return (
        slip(
            "degrees-ratio",
            f"A ratio of degrees means nothing: 0 {unit} is not the coldest there is. Add {zero:g} to both "
            "first.",
            *answers(after / before),
        ),
        slip(
            "other-scale",
            f"{scale.other:g} belongs to the other scale. With {unit}, add {zero:g}.",
            *answers((after + scale.other) / (before + scale.other)),
        ),
        slip(
            "temperatures-inverted",
            "The ratio of temperatures is upside down: the one at the end stands on top.",
            *[answer for first, last in scale.ends(before, after) for answer in answers(first / last)],
        ),
    )


def absolute_steps(scale: Scale, before: float, after: float) -> tuple[Step, Step]:
    """Both temperatures on the absolute scale."""
    return (
        _absolute_step("The gas laws count temperature from absolute zero.", scale, "1", before),
        _absolute_step("The same for the temperature at the end.", scale, "2", after),
    )


def _absolute_step(why: str, scale: Scale, which: str, degrees: float) -> Step:
    warm, shown = Symbol("T", which), Symbol("t", which)
    zero = given(scale.zeros[0])
    return Step(
        why,
        equation(warm, shown + zero),
        equation(warm, given(degrees) + zero),
        result(warm, scale.absolute(degrees), scale.absolute_unit, figures=4),
    )
