"""What shuts an air space so that its diver is hurt. Each source is that of the injury (``injuries``)."""

from __future__ import annotations

from pressure.airspaces.circumstances import BOTH, IN, OUT, Circumstance

_SHUT_ON_THE_WAY_DOWN = (
    Circumstance(
        "ear-cold",
        "middle-ear",
        "down",
        BOTH,
        "congestion",
        "A head cold has swollen the tubes from throat to ears shut.",
    ),
    Circumstance(
        "ear-uncleared",
        "middle-ear",
        "down",
        IN,
        "uncleared",
        "The tubes from throat to ears stay shut: busy with the line, the diver never clears the ears.",
    ),
    Circumstance(
        "ear-plugs",
        "outer-ear",
        "down",
        BOTH,
        "plugs",
        "Tight plugs sit in the ear canals; the ears are cleared all the way.",
    ),
    Circumstance(
        "ear-hood",
        "outer-ear",
        "down",
        BOTH,
        "hood",
        "A tight dry hood seals the ear canals with air in them; the ears are cleared all the way.",
    ),
    Circumstance(
        "sinus-cold",
        "sinus",
        "down",
        BOTH,
        "congestion",
        "A cold has swollen the passage from the nose to a sinus shut; the ears clear well.",
    ),
    Circumstance(
        "tooth-hollow-down",
        "tooth",
        "down",
        BOTH,
        "hollow tooth",
        "Under an old filling there is a hollow with air in it and no way in.",
    ),
    Circumstance(
        "mask-forgotten",
        "mask",
        "down",
        IN,
        "nose",
        "The diver breathes by the mouth alone and lets no air into the mask.",
    ),
    Circumstance(
        "goggles",
        "mask",
        "down",
        IN,
        "goggles",
        "In place of a mask the diver wears swimming goggles, into which the nose does not lead.",
    ),
    Circumstance(
        "suit-unconnected",
        "suit",
        "down",
        IN,
        "suit gas",
        "The dry suit was left unconnected to its gas, so that none can be let in.",
    ),
    Circumstance(
        "suit-fold",
        "suit",
        "down",
        BOTH,
        "fold",
        "A fold of the dry suit, caught under a strap, cuts off a pocket of air from the rest.",
    ),
    Circumstance(
        "helmet-fall",
        "helmet",
        "down",
        BOTH,
        "fall",
        "In helmet and closed suit the diver falls, too fast for the supply: no air reaches the helmet in "
        "that time.",
    ),
    Circumstance(
        "lungs-deep",
        "lungs",
        "deep breath",
        BOTH,
        "too deep",
        "The whole way is made on one full breath taken at the surface.",
        "surface",
    ),
)
_SHUT_AT_DEPTH = (
    Circumstance(
        "helmet-valve-fails",
        "helmet",
        "stays",
        IN,
        "valve",
        "The supply hose of the helmet bursts at the surface, and the non-return valve does not hold: the "
        "air in helmet and suit runs up the hose.",
        "surface",
    ),
    Circumstance(
        "mask-valve-missing",
        "mask",
        "stays",
        IN,
        "valve",
        "The hose of a full-face mask bursts at the surface; with no non-return valve that works, the air "
        "in the mask runs up the hose.",
        "surface",
    ),
)
_SHUT_ON_THE_WAY_UP = (
    Circumstance(
        "ear-spray",
        "middle-ear",
        "up",
        OUT,
        "spray",
        "A nose spray opened the ears on the way down; it has worn off, and the tubes are swollen shut.",
    ),
    Circumstance(
        "sinus-spray",
        "sinus",
        "up",
        OUT,
        "spray",
        "A nose spray opened the passage to a sinus on the way down; it has worn off, and the passage is "
        "swollen shut.",
    ),
    Circumstance(
        "sinus-polyp",
        "sinus",
        "up",
        OUT,
        "polyp",
        "A growth in the nose let air into a sinus on the way down and hangs over its passage like a flap.",
    ),
    Circumstance(
        "tooth-hollow-up",
        "tooth",
        "up",
        OUT,
        "hollow tooth",
        "Air has seeped under an old filling during the work below, and none can leave it on the way up.",
    ),
    Circumstance(
        "lungs-held",
        "lungs",
        "up",
        BOTH,
        "held breath",
        "The diver fills the lungs from the set, shuts the throat and holds that breath all the way.",
    ),
    Circumstance(
        "lungs-panic",
        "lungs",
        "up",
        BOTH,
        "held breath",
        "The set runs empty; frightened, the diver clamps the throat shut on a last full breath from it.",
    ),
    Circumstance(
        "lungs-shared",
        "lungs",
        "up",
        BOTH,
        "held breath",
        "It is a breath-hold diver, who took a full breath from another's set before rising and holds it.",
    ),
    Circumstance(
        "lungs-mucus",
        "lung-part",
        "up",
        OUT,
        "mucus",
        "After a chest infection, thick mucus shuts off one part of the lungs; the diver breathes steadily.",
    ),
)
HARMFUL: tuple[Circumstance, ...] = (*_SHUT_ON_THE_WAY_DOWN, *_SHUT_AT_DEPTH, *_SHUT_ON_THE_WAY_UP)
"""Those that end in an injury."""
