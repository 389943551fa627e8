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
    }
)


def slip(name: str, mend: str, *values: float) -> Misstep:
    """One entry of ``Posed.missteps``: the values the slip leads to under each convention."""
    return name, LABELS[name], mend, values
