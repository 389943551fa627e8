"""The misunderstandings that families share: one name and one label for each.

A slip keeps its name from family to family, so that answers can be counted by what was misunderstood.
The sentence that mends it belongs to the family, which knows the numbers.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from pressure.problem import Misstep as Misstep

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
        # Columns, faces, dials and units.
        "area-left-out": "the area was left out",
        "area-counted": "the area was counted in the pressure",
        "area-unit": "square inches, feet or centimetres were mixed up",
        "side-for-area": "a unit of length was counted for a unit of area",
        "gravity-left-out": "gravity was left out",
        "water-for-liquid": "the liquid was counted as water",
        "absolute-for-difference": "an absolute pressure was used for the difference",
        "inside-left-out": "the pressure on the other side was left out",
        "inside-added": "the pressures of the two sides were added",
        "inside-alone": "only the pressure of the other side was used",
        "marks-counted-as-ones": "every small mark was counted as one",
        "counted-backwards": "the marks were counted back from the wrong number",
        "nearest-number": "the nearest number was read",
        "inverted-factor": "the factor was upside down",
        "not-converted": "the unit changed and the number did not",
        "atm-for-bar": "one atmosphere was counted as one bar",
        "fresh-column": "34 ft of fresh water were counted for 33 ft of sea water",
        "salt-column": "33 ft of sea water were counted for 34 ft of fresh water",
    }
)


def slip(name: str, mend: str, *values: float) -> Misstep:
    """One entry of ``Posed.missteps``: the values the slip leads to under each convention."""
    return name, LABELS[name], mend, values
