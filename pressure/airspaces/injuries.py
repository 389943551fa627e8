"""What a pressure difference does to a diver: signs, cause, prevention, first response, each with its source.

General terms only; what is done for a hurt diver is settled by the local protocol and a diving physician.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from pressure.cautions import STANDARD

_NAVY = "US Navy Diving Manual, Revision 4 Change A, p. 19-9"
_NAVY_LUNG = "US Navy Diving Manual, Revision 4 Change A, §19-3.1"
_EDMONDS = "Edmonds et al., Diving and Subaquatic Medicine"
_EDMONDS_COPY = "a web copy of Edmonds et al., Diving and Subaquatic Medicine (attribution inferred)"
_MSD = "MSD Manual, Barotrauma, 2023"
_ATLAS = "Atlas of Emergency Medicine, 5th edition, 2021, middle ear squeeze"
_ANZCOR = "ANZCOR Guideline 9.3.5"
_PRACTICE = "common practice, no source"

CAUTION = (
    "Any sign of a pressure injury ends the dive and is reported; after an ascent it is an emergency until a "
    f"diving physician says otherwise. {STANDARD}"
)

NONE = "none"
"""The name that stands for no pressure injury."""


@dataclass(frozen=True, slots=True)
class Injury:
    """One injury, in sentences. ``title`` stands among the options; ``source`` is where it is said."""

    name: str
    title: str
    signs: str
    cause: str
    prevention: str
    response: str
    source: str


_STOP_DOWN = (
    "Stop the descent; if the space will not clear, go up a few feet and try gently, never with force; if it "
    "still will not, end the dive and report it."
)
_STOP_UP = (
    "Stop the ascent and go back down 2 to 4 ft, about a metre; then come up slowly and in stages, with no "
    "forceful clearing, and report it."
)
_LUNG_FIRST = (
    "Call the emergency services and diving medical advice, give oxygen as near to pure as can be, lay the "
    "diver level as the local protocol has it, keep watch, and start basic life support if needed."
)
_WAY = "A full breath held, or a part of the lung shut off, on the way up tears the lung"
_NEVER_HOLD = "Never hold the breath on the way up, and do not dive with an illness of the chest."

_ALL = (
    Injury(
        "middle-ear-squeeze",
        "Squeeze of the middle ear",
        "Pain and fullness in the ear on the way down, reddening, then blood behind the eardrum; if it "
        "tears, cold water in the ear can bring sudden dizziness.",
        "The tube from the throat stays shut while the pressure round the ear grows.",
        "Clear the ears early and often, and do not dive with a cold.",
        _STOP_DOWN,
        f"{_ATLAS}; {_NAVY}",
    ),
    Injury(
        "middle-ear-reverse",
        "Reverse squeeze of the middle ear",
        "Pressure and pain in the ear on the way up, sometimes with dizziness.",
        "Air that came in at depth cannot leave through the tube as it grows.",
        "Do not dive with a cold, nor rely on a medicine that may wear off below.",
        _STOP_UP,
        f"{_NAVY}; the medicine that wears off: {_PRACTICE}",
    ),
    Injury(
        "outer-ear-squeeze",
        "Squeeze of the outer ear canal",
        "Often mild: an ache in the ear, blood blisters in the canal, sometimes bleeding from it.",
        "A plug or a tight hood shuts air into the canal, and water cannot take its place.",
        "Wear no ear plugs, and let water in under the hood.",
        _STOP_DOWN,
        f"{_EDMONDS_COPY}; first response as for other squeezes, {_NAVY}",
    ),
    Injury(
        "sinus-squeeze",
        "Squeeze of a sinus",
        "Pain over brow or cheek on the way down; blood from the nose, often seen on the way up.",
        "The passage from nose to sinus is shut, and swelling and blood make up for the missing air.",
        "Do not dive with a stuffed nose or sinus.",
        _STOP_DOWN,
        f"{_EDMONDS}; {_NAVY}",
    ),
    Injury(
        "sinus-reverse",
        "Reverse squeeze of a sinus",
        "Pain over brow or cheek that grows on the way up.",
        "Air in the sinus cannot leave through its passage as it grows.",
        "Do not dive with a stuffed nose or sinus, and have growths in the nose seen to.",
        _STOP_UP,
        f"{_NAVY}; growths in the nose: {_PRACTICE}",
    ),
    Injury(
        "tooth-squeeze",
        "Squeeze of a tooth",
        "Toothache that comes on the way down.",
        "A hollow in a tooth or under a filling holds air that nothing can add to.",
        "Have teeth and fillings seen to before diving.",
        _STOP_DOWN,
        f"{_NAVY}; prevention: Zadik and Drucker, Australian Dental Journal 56:265 (2011), abstract",
    ),
    Injury(
        "tooth-reverse",
        "Reverse squeeze of a tooth",
        "Toothache that comes on the way up; a filling may come loose.",
        "Air that seeped into a hollow at depth cannot leave it as fast as it grows.",
        "Have teeth and fillings seen to before diving.",
        _STOP_UP,
        "Zadik and Drucker, Australian Dental Journal 56:265 (2011), abstract; first response as for ears "
        f"and sinuses, {_NAVY}",
    ),
    Injury(
        "face-squeeze",
        "Squeeze of the face by the mask",
        "Swollen lids, spots of blood in the skin under the mask and in the whites of the eyes.",
        "No air is let into the mask, or its supply fails and nothing keeps the air in.",
        "Breathe out through the nose into the mask; never dive in goggles; test the valves.",
        _STOP_DOWN,
        f"{_NAVY}; {_EDMONDS_COPY}",
    ),
    Injury(
        "suit-squeeze",
        "Squeeze by the dry suit",
        "Pinched skin, weals and bruises along the folds of the suit.",
        "A pocket of air in the suit gets no gas on the way down.",
        "Let gas into the suit a little at a time, and smooth out folds before the dive.",
        _STOP_DOWN,
        f"{_NAVY}; letting gas in: {_PRACTICE}",
    ),
    Injury(
        "lung-squeeze",
        "Squeeze of the lungs",
        "Pain in the chest, cough and blood in what is coughed up.",
        "On one breath the lungs are pressed to less than the chest can follow.",
        "Turn back long before that depth.",
        _LUNG_FIRST,
        f"Encyclopaedia Britannica, thoracic squeeze; signs and first response: {_PRACTICE}",
    ),
    Injury(
        "body-squeeze",
        "Squeeze of the whole body towards the helmet",
        "Swelling and bleeding of face, eyes and neck, hard breathing, collapse.",
        "The helmet loses its pressure, or its supply cannot follow a fall, while the water presses on.",
        "Test the non-return valve before every dive, and never go down faster than the supply can follow.",
        "Restore the pressure if it can be done, bring the diver up, call the emergency services and diving "
        "medical advice.",
        f"{_PRACTICE}; the same in a full-face mask without the valve: {_EDMONDS_COPY}",
    ),
    Injury(
        "lung-overexpansion",
        "Tearing of over-stretched lungs",
        "Any of: pain in the chest, short breath, a swollen neck, a changed voice, collapse or signs like a "
        "stroke soon after the ascent.",
        f"{_WAY}: the air in it has nowhere to grow.",
        _NEVER_HOLD,
        _LUNG_FIRST,
        f"{_MSD}; {_ANZCOR}",
    ),
    Injury(
        "pneumothorax",
        "Gas in the chest cavity (pneumothorax)",
        "Sharp pain on one side of the chest and short breath; breathing is heard poorly on that side.",
        f"{_WAY}, and the gas gets between lung and chest wall.",
        _NEVER_HOLD,
        "Call the emergency services; rest, oxygen and medical care at once. It grows worse with "
        "any further ascent.",
        f"{_MSD}; signs: Merck Manual, professional version, Pulmonary barotrauma",
    ),
    Injury(
        "mediastinal-emphysema",
        "Gas behind the breastbone (mediastinal emphysema)",
        "A dull ache or tightness behind the breastbone, worse with a deep breath, a cough or swallowing.",
        f"{_WAY}, and the gas runs along the airways to the middle of the chest.",
        _NEVER_HOLD,
        "Oxygen at the surface, and a doctor at once to rule out gas in the chest cavity.",
        _NAVY_LUNG,
    ),
    Injury(
        "subcutaneous-emphysema",
        "Gas under the skin of the neck (subcutaneous emphysema)",
        "A full, swollen neck, a changed voice, and skin that crackles under the fingers.",
        f"{_WAY}, and the gas rises from behind the breastbone to the neck.",
        _NEVER_HOLD,
        "Oxygen at the surface, and a doctor at once to rule out gas in the chest cavity.",
        _NAVY_LUNG,
    ),
    Injury(
        "gas-embolism",
        "Gas in the arteries (arterial gas embolism)",
        "Within about ten minutes of the ascent: signs like a stroke, a fit or collapse.",
        f"{_WAY}, and the gas enters torn vessels and goes through the heart to the brain.",
        _NEVER_HOLD,
        f"{_LUNG_FIRST} It needs recompression urgently.",
        f"{_ANZCOR}; {_MSD}; onset: a board-review text",
    ),
    Injury(
        NONE,
        "None: pressure inside and outside stays the same",
        "No sign of a pressure injury.",
        "No closed space is left below or above what lies round it.",
        "Nothing more is needed.",
        "None is needed.",
        _PRACTICE,
    ),
)
INJURIES: Mapping[str, Injury] = MappingProxyType({each.name: each for each in _ALL})
"""Every injury by name, and ``NONE``."""

ESCAPES = ("pneumothorax", "mediastinal-emphysema", "subcutaneous-emphysema", "gas-embolism")
"""Where gas from a torn lung goes."""
