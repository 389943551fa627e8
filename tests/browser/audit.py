"""What is wrong with the page in the window: axe-core's findings, and lines that run off the side."""

from importlib.resources import files

AXE = (files("axe_playwright_python") / "axe.min.js").read_text(encoding="utf-8")
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
RUN = "tags => axe.run({ runOnly: tags, resultTypes: ['violations', 'incomplete'] })"
OVERHANG = "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"

# Contrast that axe leaves undecided, and why it is in order all the same. Every ink is measured against
# every ground that it may stand on, in both modes, in tests/course/test_colours.py.
IN_FORMULAS = {"shortTextContent", "nonBmp"}  # one sign alone: it has the ink of the words around it
IN_FIGURES = {"bgOverlap", "imgNode"}  # text drawn over shapes of the same figure
UNDER_AN_EDGE = {"elmPartiallyObscured"}  # a cell of a table that scrolls in its box, on a narrow page only
WHOLE_TABLES_FROM = 1280


def faults(page):
    """A line for each fault; none for a page in order.

    The script is evaluated, not added: the content policy lets no foreign script tag in.
    """
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(AXE)
    found = page.evaluate(RUN, TAGS)
    narrow = page.viewport_size["width"] < WHOLE_TABLES_FROM
    lines = [
        f"{page.url} {rule['id']} at {node['target']}: {node['failureSummary']}"
        for kind in ("violations", "incomplete")
        for rule in found[kind]
        for node in rule["nodes"]
        if kind == "violations" or not in_order(node, narrow)
    ]
    overhang = page.evaluate(OVERHANG)
    return [*lines, f"{page.url} runs {overhang} px off the side"] if overhang > 0 else lines


def in_order(node, narrow):
    """Whether what axe left undecided is decided above; a reason without a name never is."""
    why = {
        (check["data"] or {}).get("messageKey", "?") for check in (*node["any"], *node["all"], *node["none"])
    }
    figure = IN_FIGURES if node["html"].startswith(("<text", "<tspan")) else set()
    return why <= IN_FORMULAS | figure | (UNDER_AN_EDGE if narrow else set())
