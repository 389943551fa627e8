"""What can go wrong on this floor, each with a sentence that a person can read."""

from __future__ import annotations


class PressureError(Exception):
    """The root of this floor's own errors."""


class UnknownFamily(PressureError):
    """No family of problems has this name."""


class UnknownSystem(PressureError):
    """The family is not set in this system of units."""


class BadSeed(PressureError):
    """A seed is a whole number that is not negative and fits a database."""


class BrokenFamily(PressureError):
    """A file in the families folder does not hold what it must hold."""
