"""Gauge, absolute and difference: three kinds of pressure that cannot be mixed up unseen.

A gauge pressure means nothing until one says what it was measured from, so the only way from one kind to
the other names the surface: ``Gauge.absolute(surface)`` and ``Absolute.gauge(surface)``. Everything else
that would mix kinds raises TypeError, and mypy refuses it beforehand.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Self, final, overload

from pressure.units import FACTORS


@dataclass(frozen=True, slots=True, eq=False)
class _Pressure:
    """A pressure in pascals; compares only with its own kind."""

    pascals: float

    @classmethod
    def of(cls, value: float, unit: str) -> Self:
        """So many of ``unit``, a canonical pressure symbol of ``units.FACTORS``."""
        return cls(value * FACTORS[unit])

    def to(self, unit: str) -> float:
        return self.pascals / FACTORS[unit]

    def __lt__(self, other: Self) -> bool:
        return self.pascals < self._alike(other)

    def __le__(self, other: Self) -> bool:
        return self.pascals <= self._alike(other)

    def __gt__(self, other: Self) -> bool:
        return self.pascals > self._alike(other)

    def __ge__(self, other: Self) -> bool:
        return self.pascals >= self._alike(other)

    def __hash__(self) -> int:
        return hash((type(self), self.pascals))

    if not TYPE_CHECKING:  # without it mypy sees no equality of our own, and refuses one kind == another

        def __eq__(self, other: object) -> bool:
            if isinstance(other, _Pressure):
                return self.pascals == self._alike(other)
            return NotImplemented

    def _alike(self, other: _Pressure) -> float:
        if type(other) is not type(self):
            raise _mixed(self, other)
        return other.pascals


def _mixed(one: object, other: object) -> TypeError:
    return TypeError(
        f"{type(one).__name__} and {type(other).__name__} cannot be compared, added or subtracted: "
        "name the surface pressure first, with Gauge.absolute(surface) or Absolute.gauge(surface)."
    )


@final
@dataclass(frozen=True, slots=True, eq=False)
class Difference(_Pressure):
    """What one pressure is above another."""

    def __add__(self, other: Difference) -> Difference:
        return Difference(self.pascals + self._alike(other))

    def __sub__(self, other: Difference) -> Difference:
        return Difference(self.pascals - self._alike(other))

    def __neg__(self) -> Difference:
        return Difference(-self.pascals)


@final
@dataclass(frozen=True, slots=True, eq=False)
class Absolute(_Pressure):
    """A pressure measured from vacuum. A difference may be added to it or taken from it."""

    def gauge(self, surface: Absolute) -> Gauge:
        """What a gauge set to zero at the surface reads."""
        return Gauge(self.pascals - self._alike(surface))

    def __add__(self, other: Difference) -> Absolute:
        if not isinstance(other, Difference):
            raise _mixed(self, other)
        return Absolute(self.pascals + other.pascals)

    @overload
    def __sub__(self, other: Absolute) -> Difference: ...
    @overload
    def __sub__(self, other: Difference) -> Absolute: ...
    def __sub__(self, other: Absolute | Difference) -> Difference | Absolute:
        if isinstance(other, Difference):
            return Absolute(self.pascals - other.pascals)
        return Difference(self.pascals - self._alike(other))


@final
@dataclass(frozen=True, slots=True, eq=False)
class Gauge(_Pressure):
    """A pressure measured from the surface pressure of the place."""

    def absolute(self, surface: Absolute) -> Absolute:
        """Gauge plus surface pressure."""
        if not isinstance(surface, Absolute):
            raise _mixed(self, surface)
        return Absolute(self.pascals + surface.pascals)

    def __add__(self, other: Difference) -> Gauge:
        if not isinstance(other, Difference):
            raise _mixed(self, other)
        return Gauge(self.pascals + other.pascals)

    @overload
    def __sub__(self, other: Gauge) -> Difference: ...
    @overload
    def __sub__(self, other: Difference) -> Gauge: ...
    def __sub__(self, other: Gauge | Difference) -> Difference | Gauge:
        if isinstance(other, Difference):
            return Gauge(self.pascals - other.pascals)
        return Difference(self.pascals - self._alike(other))
