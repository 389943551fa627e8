"""The misunderstandings that families share: one name and one label for each.

A slip keeps its name from family to family, so that answers can be counted by what was misunderstood.
The sentence that mends it belongs to the family, which knows the numbers.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Any

from pressure.constants import FOOT, GRAVITY
from pressure.problem import Misstep as Misstep
from pressure.waters import Water

LABELS: Mapping[str, str] = MappingProxyType(
    {
        "atmosphere-left-out": "the atmosphere was left out",
        "atmosphere-subtracted": "the atmosphere was subtracted",
        "atmosphere-added": "the atmosphere was added",
        "atmosphere-kept": "the atmosphere was not taken off",
        "atmosphere-twice": "the atmosphere was counted twice",
        "one-for-psi": "one atmosphere was counted as 1 psi",
        "depth-for-atmosphere": "the depth of one atmosphere was counted as its pressure",
        "psi-for-bar": "14.7 was counted in bar",
        "depth-for-pressure": "the depth was read as the pressure",
        "atmospheres-not-converted": "atmospheres were not turned into psi",
        "other-length-unit": "feet and metres were mixed up",
        "decimal-point": "the decimal point slipped one place",
        "inverted-ratio": "the ratio was upside down",
        "fresh-for-salt": "fresh water was used for sea water",
        "salt-for-fresh": "sea water was used for fresh water",
        "gauge-ratio": "gauge pressures were used in the ratio",
        "surface-ratio": "the air was taken all the way to the surface",
        "fixed-share": "the same share was counted for every atmosphere",
        "halved-each-time": "the volume was halved again for every atmosphere",
        "doubled-each-time": "the volume was doubled again for every atmosphere",
        "other-part": "the part lost was given for the part left",
        "gain-only": "only the growth was given",
        # depth and Boyle
        "pressure-for-depth": "the pressure was read as the depth",
        "atmospheres-for-depth": "atmospheres were given for the depth",
        "kilo-left-out": "kilopascals were counted as pascals",
        "sea-level-air": "the air of sea level was used above it",
        "water-scaled-with-air": "the water was taken to weigh less where the air does",
        "start-at-surface": "the start was taken to be at the surface",
        "depths-subtracted": "only the way between the depths was counted",
        "spilling-ignored": "the spilling was left out",
        "volume-at-depth": "the volume at depth was given for surface air",
        "box-not-converted": "the air left in the box was not turned into surface air",
        "contents-forgotten": "the air already inside was left out of account",
        "rest-counted-lost": "the air still in the box was counted as lost",
        # Lungs, and air spaces that are closed.
        "supply-for-held": "a held breath was treated as supplied air",
        "kept-air-counted": "the air that may stay was counted too",
        "measured-at-surface": "the air was measured at the surface",
        "measured-below": "the air was measured at the greater depth",
        "measured-above": "the air was measured at the lesser depth",
        "from-the-surface": "the change was counted from the surface",
        "depth-pressure-for-atmosphere": "the pressure at depth was counted for one atmosphere",
        "mercury-for-water": "millimetres of mercury and centimetres of water were mixed up",
        # Columns, faces, dials and units.
        "area-left-out": "the area was left out",
        "height-left-out": "the height was left out",
        "area-counted": "the area was counted in the pressure",
        "area-unit": "square inches, feet or centimetres were mixed up",
        "side-for-area": "a unit of length was counted for a unit of area",
        "gravity-left-out": "gravity was left out",
        "water-for-liquid": "the liquid was counted as water",
        "absolute-for-difference": "an absolute pressure was used for the difference",
        "inside-left-out": "the pressure on the other side was left out",
        "sides-added": "the pressures of the two sides were added",
        "weaker-alone": "only the weaker of the two pressures was used",
        "marks-counted-as-ones": "every small mark was counted as one",
        "counted-backwards": "the marks were counted back from the wrong number",
        "inverted-factor": "the factor was upside down",
        "not-converted": "the unit changed and the number did not",
        "atm-for-bar": "one atmosphere was counted as one bar",
        # Mixtures and buoyancy.
        "part-left": "the part left was given for the part lost",
        "share-doubled": "the share was doubled again for every atmosphere",
        "share-halved": "the share was halved again for every atmosphere",
        "percent-for-fraction": "per cent was counted as the fraction",
        "surface-pressure": "the depth was left out of account",
        "other-gas": "the share of the other gas was used",
        "whole-for-partial": "the whole pressure was given for one gas",
        "air-for-mix": "air was counted for the mix",
        "partial-for-equivalent": "the partial pressure was given for the share",
        "displaced-for-apparent": "the weight of the displaced water was given",
        "weight-in-air": "the weight in air was used",
        "buoyancy-added": "the push of the water was added to the weight",
        "volume-for-weight": "a volume was counted as a weight",
        "whole-for-change": "the whole was given for the change",
        "ballast-before": "the ballast of before was given for the change",
        "ballast-after": "the ballast of after was given for the change",
        # Supply and temperature.
        "psi-not-converted": "psi were not turned into atmospheres",
        "full-cylinder": "the cylinder was counted as full",
        "one-cylinder": "one cylinder was counted for all",
        "reserve-forgotten": "the reserve was not kept back",
        "surface-rate": "the use at the surface was counted at depth",
        "rate-at-depth": "the use at depth was given for the use at the surface",
        "time-left-out": "the time was left out",
        "reading-for-fall": "a reading was used for the fall of the gauge",
        "bottom-left-out": "the pressure at the bottom was left out",
        "bottom-added": "the pressure at the bottom was added, not taken off",
        "margin-left-out": "the margin was left out",
        "margin-subtracted": "the margin was subtracted",
        "one-diver": "one diver was counted for all",
        "degrees-ratio": "degrees were used in the ratio, not absolute temperatures",
        "other-scale": "the number for the other scale was added to the degrees",
        "rule-of-thumb": "a rule of thumb was used for the law",
        "temperature-left-out": "the temperature was left out",
        "temperatures-inverted": "the ratio of temperatures was upside down",
        "pressure-left-out": "the pressure was left out",
        "pressure-counted": "a change of pressure was counted where there is none",
    }
)


_ADDED = ("plus P atmosphere", "plus P air", "1 plus D", "minus 1 close")
_TAKEN_OFF = ("minus P atmosphere", "minus P air", "minus 1 close")
_WATER = ("h of one atmosphere", "h atm", "psi/ft", "w times", "column named")
_DIFFERENCE = ("Δp equals",)
_LAW = ("Boyle's law",)
_SHARE = ("over F ", "equals F ")
_SCALE = ("absolute zero",)

LANDMARKS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        **dict.fromkeys(("atmosphere-left-out", "atmosphere-subtracted", "atmosphere-twice"), _ADDED),
        **dict.fromkeys(("one-for-psi", "depth-for-atmosphere", "psi-for-bar", "gauge-ratio"), _ADDED),
        **dict.fromkeys(("atmosphere-kept", "atmosphere-added"), _TAKEN_OFF),
        **dict.fromkeys(("other-length-unit", "fresh-for-salt", "salt-for-fresh"), _WATER),
        **dict.fromkeys(("depth-for-pressure", "atmospheres-not-converted"), _WATER),
        **dict.fromkeys(("absolute-for-difference", "sides-added", "weaker-alone"), _DIFFERENCE),
        **dict.fromkeys(("inside-left-out", "from-the-surface"), _DIFFERENCE),
        **dict.fromkeys(("inverted-ratio", "surface-ratio", "fixed-share"), _LAW),
        **dict.fromkeys(("halved-each-time", "doubled-each-time"), _LAW),
        **dict.fromkeys(("percent-for-fraction", "other-gas", "air-for-mix"), _SHARE),
        **dict.fromkeys(("degrees-ratio", "other-scale"), _SCALE),
        "temperatures-inverted": ("T 2 over T 1",),
        "sea-level-air": ("plus P air", "minus P air"),
        "weight-in-air": ("minus B", "minus w"),
        "reserve-forgotten": ("minus P reserve",),
        "psi-not-converted": ("over P atmosphere",),
        "one-cylinder": ("N times",),
        "reading-for-fall": ("minus P 2",),
        "surface-rate": ("C 0 times n",),
        "gravity-left-out": ("times g", " g "),
    }
)
"""The words by which the step is known that a slip departs from, in the order they are looked for.

What is not here departs from the step whose result is the answer.
"""


def step_of(steps: Sequence[Mapping[str, Any]], name: str) -> int | None:
    """Which step of a stored solution the slip departs from; None where no step has a result."""
    with_result = [place for place, step in enumerate(steps) if step["result"]]
    for landmark in LANDMARKS.get(name, ()):
        for place in with_result:
            relation = steps[place]["relation"]
            if landmark in f"{steps[place]['why']} {relation['words'] if relation else ''}":
                return place
    return with_result[-1] if with_result else None


def slip(name: str, mend: str, *values: float) -> Misstep:
    """One entry of ``Posed.missteps``: the values the slip leads to under each convention."""
    return name, LABELS[name], mend, values


def other_water(water: Water, *values: float) -> Misstep:
    """The slip of reckoning with the water that the problem's own ``water`` is not."""
    if water == "sea":
        return slip(
            "fresh-for-salt", "Sea water is the heavier: the number you used is for fresh water.", *values
        )
    return slip(
        "salt-for-fresh", "Fresh water is the lighter: the number you used is for sea water.", *values
    )


def by_density(depth: float) -> tuple[Misstep, ...]:
    """The slips on the way from kilopascals to metres by density and gravity; ``depth`` is the right one."""
    return (
        slip(
            "gravity-left-out",
            "{typed} is pressure over density alone. A column presses by its weight: divide by gravity too.",
            depth * GRAVITY.value,
        ),
        slip(
            "kilo-left-out",
            "A kilopascal is 1000 Pa, and density and gravity go with pascals.",
            depth / 1000,
        ),
        slip("other-length-unit", "{typed} is the depth in feet. Asked are metres.", depth / FOOT.value),
    )
