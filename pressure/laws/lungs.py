"""The lungs as a bag of air: a held breath by Boyle's law, and where the rigid chest sets its limits.

The chest gives way freely from its total capacity down to the residual volume and no further. That limit is
only arithmetic: trained breath-hold divers pass it, because blood shifts into the chest (review "Nota sui
limiti fisiologici delle immersioni profonde in apnea", abstract). Body temperature is left out: the air in
the lungs stays at one temperature.
"""

from __future__ import annotations

TEARS_CM_WATER = (70.0, 110.0)
"""Over-pressures in cmH2O at which lungs are said to tear, from lowest to highest.

Published figures spread: 90 cmH2O (IAFF, diving medicine page), 80 mmHg (text beside a demonstration, 2008),
about 70 mmHg and 95 to 110 cmH2O (Malhotra and Wright, 1961, recalled). MSD Manual: as little as 4 ft, 1 m.
"""


def residual_depth(total: float, residual: float, column: float) -> float:
    """Depth at which a full breath has shrunk to the residual volume: D = h (TLC/RV − 1).

    Both volumes in one unit, ``column`` the water that weighs as much as the atmosphere; the depth comes in
    its unit. Boyle's law with the surface pressure at the top. Raises ValueError unless 0 < RV < TLC.
    """
    if not 0.0 < residual < total:
        raise ValueError("The residual volume lies between nothing and the total capacity.")
    return column * (total / residual - 1.0)
