"""The air spaces of a diver and the gear: their openings, their walls, and what gives when they are shut.

Sources for what gives: US Navy Diving Manual, Revision 4 Change A, p. 19-9 (mask, suit, tooth); Edmonds et
al., Diving and Subaquatic Medicine (sinus; outer ear and face in a web copy, attribution inferred); Atlas of
Emergency Medicine, 5th edition, 2021 (middle ear); Encyclopaedia Britannica, thoracic squeeze (lungs on the
way down); MSD Manual, barotrauma (lungs on the way up); whole body: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

STIFF = (1.0, 1.0)
ANY_DIFFERENCE = (0.0, 500.0)
"""mmHg within which harm begins, where sources give one or none: nothing to the most said of an eardrum."""


@dataclass(frozen=True, slots=True)
class Giving:
    """What gives under a difference in one direction: the tissue, what it does, and the harm.

    ``injury`` names an entry of ``injuries.INJURIES``. ``begins`` is the range of differences, in mmHg, at
    which harm is said to begin.
    """

    injury: str
    tissue: str
    does: str
    harm: str
    begins: tuple[float, float] = ANY_DIFFERENCE


@dataclass(frozen=True, slots=True)
class Space:
    """One air space. ``pressed`` is what gives when it is below its surroundings, ``blown`` when above.

    ``stiff`` is the part of its wall that stands. A yielding space shrinks freely to the share ``yields`` of
    its full volume, given from the lowest to the highest that is published; a stiff one not at all.
    """

    name: str
    text: str
    opening: str
    stiff: str
    pressed: Giving
    blown: Giving | None = None
    yields: tuple[float, float] = STIFF


_MIDDLE_EAR = Space(
    "middle-ear",
    "the middle ear",
    "the tube from the throat",
    "the bone round the middle ear",
    # Pain near 60 mmHg, rupture at 100 to 500 mmHg: both recalled from texts that repeat them.
    Giving(
        "middle-ear-squeeze",
        "the lining of the middle ear and the eardrum, inwards",
        "The eardrum bows inwards, and the lining of the middle ear swells.",
        "Small vessels burst, blood fills the middle ear, and the eardrum may tear.",
        (60.0, 500.0),
    ),
    Giving(
        "middle-ear-reverse",
        "the eardrum, outwards",
        "The eardrum bows outwards.",
        "The eardrum is bruised and may tear, and the diver may turn dizzy.",
        (60.0, 500.0),
    ),
)
_OUTER_EAR = Space(
    "outer-ear",
    "the outer ear canal",
    "the mouth of the ear canal",
    "the bone and gristle of the ear canal",
    # Edmonds et al.: seen from 150 mmHg, 2 m of water.
    Giving(
        "outer-ear-squeeze",
        "the skin of the ear canal and the eardrum, towards the canal",
        "The eardrum bows out into the canal, and the canal's skin swells.",
        "Blood blisters form in the ear canal, and it may bleed.",
        (150.0, 500.0),
    ),
)
_SINUS = Space(
    "sinus",
    "the sinus",
    "the passage from the nose to the sinus",
    "the bone round the sinus",
    Giving(
        "sinus-squeeze",
        "the lining of the sinus, swelling inwards",
        "The lining of the sinus swells into it.",
        "The lining tears from the bone and bleeds into the sinus.",
    ),
    Giving(
        "sinus-reverse",
        "the lining of the sinus, pressed against its bone",
        "The lining of the sinus is pressed against its bone.",
        "The brow or cheek hurts, and the lining is bruised and bleeds.",
    ),
)
_TOOTH = Space(
    "tooth",
    "the hollow in the tooth",
    "any way into the hollow tooth",
    "the enamel of the tooth",
    Giving(
        "tooth-squeeze",
        "the soft pulp of the tooth, towards the hollow",
        "The soft pulp is drawn towards the hollow.",
        "The pulp swells and bleeds, and the tooth aches.",
    ),
    Giving(
        "tooth-reverse",
        "the pulp, pressed by the hollow, and the filling",
        "The air in the hollow presses on the pulp and the filling.",
        "The tooth aches, and a filling may loosen or the tooth crack.",
    ),
)
_MASK = Space(
    "mask",
    "the mask",
    "the way for air into the mask",
    "the glass of the mask",
    Giving(
        "face-squeeze",
        "the skin and small vessels of the face and eyes, into the mask",
        "The face is drawn into the mask, and the lids swell.",
        "Small vessels burst in the skin and in the whites of the eyes.",
    ),
)
_SUIT = Space(
    "suit",
    "the pocket in the dry suit",
    "the way for gas into that pocket",
    "the stiffened shell of the suit",
    Giving(
        "suit-squeeze",
        "the skin, drawn into the pocket",
        "Skin is drawn into the pocket and pinched.",
        "Small vessels in the skin burst and leave weals and bruises.",
    ),
)
_LUNGS = Space(
    "lungs",
    "the lungs",
    "the airway",
    "the ribs",
    Giving(
        "lung-squeeze",
        "the fine vessels of the lungs",
        "Blood is drawn into the vessels of the lungs, and they swell.",
        "Vessels burst and bleed into the air sacs.",
    ),
    # 70 to 110 cmH2O, as in pressure/laws/lungs.py.
    Giving(
        "lung-overexpansion",
        "the walls of the air sacs in the lungs",
        "The air sacs are stretched beyond what they bear.",
        "The air sacs tear, and air escapes from the lung.",
        (51.0, 81.0),
    ),
    # Residual volume to total capacity: 1.2/6.0 (OpenStax A&P 2e, §22.3; residual recalled) to 1.1/4.2.
    yields=(0.20, 0.2620),
)
_LUNG_PART = Space(
    "lung-part",
    "the shut-off part of the lungs",
    "the airway to it",
    "the ribs",
    _LUNGS.pressed,
    _LUNGS.blown,
    _LUNGS.yields,
)
_HELMET = Space(
    "helmet",
    "the helmet",
    "the supply to the helmet",
    "the metal shell of the helmet",
    Giving(
        "body-squeeze",
        "the flesh and vessels of head, neck and chest, towards the helmet",
        "Flesh and blood are driven up towards the helmet.",
        "Vessels burst in face, eyes, neck and lungs.",
    ),
)
SPACES: Mapping[str, Space] = MappingProxyType(
    {
        each.name: each
        for each in (_MIDDLE_EAR, _OUTER_EAR, _SINUS, _TOOTH, _MASK, _SUIT, _LUNGS, _LUNG_PART, _HELMET)
    }
)
"""Every space by name."""
