"""Cylinders: what families about stored gas share. Units, surfaces, and what real air does."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from pressure.constants import ATMOSPHERE, SURFACE_BAR, SURFACE_PSI
from pressure.laws import real_gas
from pressure.problem import System
from pressure.units import FACTORS, shown

PRESSURE_UNITS: Mapping[System, str] = MappingProxyType({"us": "psi", "metric": "bar"})
VOLUME_UNITS: Mapping[System, str] = MappingProxyType({"us": "ft3", "metric": "L"})
FLOW_UNITS: Mapping[System, str] = MappingProxyType({"us": "ft3/min", "metric": "L/min"})

SURFACES: Mapping[System, tuple[float, ...]] = MappingProxyType(
    {
        # The trade's 14.7 psi is named; the standard atmosphere, 14.696 psi, is accepted.
        "us": (SURFACE_PSI.value, ATMOSPHERE.value / FACTORS["psi"]),
        "metric": (SURFACE_BAR.value,),
    }
)
"""What the atmosphere is taken as, in the unit of pressure, the one the prompt names first."""

AIR_SENTENCE: Mapping[System, str] = MappingProxyType(
    {
        system: f"Take the atmosphere as {each[0]:g} {PRESSURE_UNITS[system]}"
        for system, each in SURFACES.items()
    }
)
"""How a prompt names the surface; a family puts what else it assumes behind it."""

REAL_FROM: Mapping[System, float] = MappingProxyType({"us": 2900.0, "metric": 200.0})
"""By gauge: from here on, the solution says what real air does."""


def cylinder_words(system: System, room: float, count: float) -> str:
    """``a cylinder of 12 L water capacity`` or ``2 cylinders, each of 0.399 ft³ floodable volume,``."""
    size = shown(room, VOLUME_UNITS[system], given=True)
    inside = "floodable volume" if system == "us" else "water capacity"
    return (
        f"a cylinder of {size} {inside}" if count == 1 else f"{count:g} cylinders, each of {size} {inside},"
    )


def real_free_air(system: System, room: float, gauge: float) -> float:
    """Free air of 20 °C that a cylinder gives until its gauge stands at nought, in the unit of ``room``.

    ``gauge`` is in the pressure unit of the system. Raises ValueError above 350 bar.
    """
    air = FACTORS["atm"] / FACTORS["bar"] if system == "us" else SURFACES[system][0]
    full = gauge * FACTORS[PRESSURE_UNITS[system]] / FACTORS["bar"] + air
    return real_gas.free_volume(room, full, air, real_gas.ROOM_TEMPERATURE) - room
