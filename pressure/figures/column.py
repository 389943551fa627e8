"""A straight column of water on a flat face, with its height and the area it stands on.

Facts: ``height`` and ``area`` as they are written, with their units, and the ``water``, "sea" or "fresh".
"""

from __future__ import annotations

from pressure.figures.drawing import Drawing, Facts, Sketch, text

_VIEW = (0.0, 0.0, 260.0, 240.0)
WATER = (
    '<path class="fig-water" d="M110 44L130 34H180V184L160 194H110Z"/>'
    '<path class="fig-deep" d="M110 44H160L180 34M130 34H180" stroke-width="1.5"/>'
    '<path class="fig-line" d="M110 44V194M160 44V194M180 34V184" stroke-width="1" stroke-dasharray="4 3"/>'
)
FACE = (
    '<path class="fig-face" d="M110 194H160L180 184H130Z" stroke-width="2"/>'
    '<path class="fig-line" d="M70 206H196" stroke-width="2"/>'
)
SPAN = (
    '<path class="fig-line" d="M84 44H100M84 194H100M92 44V194" stroke-width="1"/>'
    '<path class="fig-solid" d="M92 44l-4 9h8ZM92 194l-4 -9h8Z"/>'
)


def draw(facts: Facts) -> Sketch:
    height, area, water = str(facts["height"]), str(facts["area"]), str(facts["water"])
    words = (
        text(80, 119, height, anchor="end"),
        text(145, 224, area),
        text(145, 18, f"{water} water", muted=True),
    )
    return Sketch(f"A column of {water} water on a flat face", _VIEW, f"{WATER}{FACE}{SPAN}{''.join(words)}")


FIGURE = Drawing("column", "column of water", draw)
