"""The values of a problem in a list, where no drawing lays them out: what is given, and what was found.

Facts: ``title`` and the lines of ``rest`` that every drawing has.
"""

from __future__ import annotations

from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.figures.parts import WIDE, finish, line


def draw(facts: Facts) -> Sketch:
    return finish(str(facts["title"]), line(f"M8 6H{WIDE - 8:g}", "fig-deep"), 14, facts)


FIGURE = Drawing("values", "", draw)
