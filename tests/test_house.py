"""The house keeps its order: floors, rooms, budgets, names; templates a strict content policy can serve."""

import ast
import re
import shutil
import subprocess
from pathlib import Path

import pytest
from importlinter.cli import lint_imports

HOUSE = Path(__file__).resolve().parent.parent
FLOORS = ("course", "quizzes", "pressure")
TOP = {"README.md", "DEVELOPERS.md", "manage.py", "pyproject.toml", *FLOORS, "templates", "static", "tests"}
FILE_LINES, FUNCTION_LINES, VIEW_LINES, TEST_LINES, TEMPLATE_LINES = 300, 40, 25, 20, 120
RECORDS = {"Attempt", "Cohort", "DecisionRecord", "Person", "Sitting", "Standing"}

MODULES = sorted(
    path
    for path in [
        HOUSE / "manage.py",
        *(file for top in (*FLOORS, "tests") for file in (HOUSE / top).rglob("*.py")),
    ]
    if "migrations" not in path.parts
)
MIGRATIONS = sorted(path for path in HOUSE.glob("*/**/migrations/*.py") if ".venv" not in path.parts)
TEMPLATES = sorted((HOUSE / "templates").rglob("*.html"))
SCRIPTS = sorted([*(HOUSE / "static").rglob("*.js"), *(HOUSE / "static").rglob("*.css")])

INLINE = re.compile(
    r"<style\b|\sstyle\s*=|\son[a-z]+\s*=|\shx-on|javascript:|<script\b(?![^>]*\bsrc=)|\s(?:src|srcset)\s*=\s*[\"']?https?:",
    re.IGNORECASE,
)
URL_TAG = re.compile(r"{%\s*url\s+[\"']([^\"']+)[\"']")


def name(path):
    return str(path.relative_to(HOUSE))


def functions(path):
    return [
        node
        for node in ast.walk(ast.parse(path.read_text()))
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    ]


def length(function):
    """Lines from ``def`` to the end; a table of cases above it does not count."""
    return function.end_lineno - function.lineno + 1


def is_view(function):
    """Takes a request first and stands at the top of a module of views."""
    return bool(function.args.args) and function.args.args[0].arg == "request"


def views():
    return [
        (path, function)
        for path in MODULES
        if not path.is_relative_to(HOUSE / "tests")
        for function in functions(path)
        if is_view(function)
    ]


def over(limit, measured):
    return [f"{where}: {lines} lines, at most {limit}" for where, lines in measured if lines > limit]


def test_imports_lean_only_downwards(monkeypatch):
    monkeypatch.chdir(HOUSE)
    assert lint_imports(no_cache=True, no_logo=True) == 0


@pytest.mark.skipif(
    not (HOUSE / ".git").exists() or not shutil.which("git"), reason="not a checkout, so nothing is tracked"
)
def test_the_top_level_holds_only_what_the_map_shows():
    tracked = subprocess.run(
        ["git", "-c", f"safe.directory={HOUSE}", "ls-files", "-z"],
        cwd=HOUSE,
        capture_output=True,
        text=True,
        check=True,
    ).stdout.split("\0")
    found = {path.split("/")[0] for path in tracked if path and not path.startswith(".")}
    assert found == TOP


def test_no_file_is_longer_than_its_budget():
    lines = [(name(path), len(path.read_text().splitlines())) for path in (*MODULES, *SCRIPTS)]
    assert over(FILE_LINES, lines) == []


def test_no_function_is_longer_than_its_budget():
    lines = [(f"{name(path)}:{f.lineno} {f.name}", length(f)) for path in MODULES for f in functions(path)]
    assert over(FUNCTION_LINES, lines) == []


def test_views_are_thin():
    assert over(VIEW_LINES, [(f"{name(path)} {f.name}", length(f)) for path, f in views()]) == []


def test_tests_fit_on_half_a_screen():
    lines = [
        (f"{name(path)} {f.name}", length(f))
        for path in MODULES
        if path.name.startswith("test_")
        for f in functions(path)
        if f.name.startswith("test_")
    ]
    assert over(TEST_LINES, lines) == []


def test_no_template_is_longer_than_its_budget():
    assert (
        over(TEMPLATE_LINES, [(name(path), len(path.read_text().splitlines())) for path in TEMPLATES]) == []
    )


def test_modules_have_names_that_say_what_they_hold():
    vague = {"utils", "util", "helpers", "helper", "manager", "managers", "misc"}
    assert [name(path) for path in MODULES if path.stem in vague or path.parent.name in vague] == []


def test_every_module_says_in_a_sentence_what_it_is_for():
    silent = [
        name(path)
        for path in MODULES
        if path.read_text().strip() and ast.get_docstring(ast.parse(path.read_text())) is None
    ]
    assert silent == []


def test_migrations_are_named_by_hand():
    assert [name(path) for path in MIGRATIONS if "_auto_" in path.name] == []


def test_templates_hold_nothing_that_the_content_policy_would_block():
    found = [
        f"{name(path)}: {match.group().strip()}"
        for path in TEMPLATES
        for match in INLINE.finditer(path.read_text())
    ]
    assert found == []


@pytest.mark.parametrize("owner", ["quizzes", "pressure"])
def test_lower_floors_link_to_nothing_above_them(owner):
    """A link upwards is an import in disguise; a page above hands its address down in the context."""
    linked = {
        (name(path), url)
        for path in TEMPLATES
        if path.is_relative_to(HOUSE / "templates" / owner)
        for url in URL_TAG.findall(path.read_text())
    }
    assert {(where, url) for where, url in linked if not url.startswith("quizzes:")} == set()


def gets(function):
    """The calls that fetch a record or answer "not found"."""
    calls = [node for node in ast.walk(function) if isinstance(node, ast.Call)]
    return [call for call in calls if getattr(call.func, "id", "") == "get_object_or_404"]


def test_views_fetch_records_only_within_the_readers_reach():
    scoped = {"learner=request.user", "learner__in=within"}
    fetched = [
        (f.name, {ast.unparse(word) for word in call.keywords}) for _, f in views() for call in gets(f)
    ]
    assert fetched
    assert [where for where, words in fetched if not words & scoped] == []


def test_views_call_no_managers_of_records():
    """Gates (access.py), queries and actions do; a view that did could forget whose record it is."""
    found = []
    for path, view in views():
        gated = {id(node) for call in gets(view) for node in ast.walk(call)}
        for node in ast.walk(view):
            if isinstance(node, ast.Attribute) and node.attr == "objects" and id(node) not in gated:
                found += [f"{name(path)} {view.name}"] if ast.unparse(node.value) in RECORDS else []
    assert found == []


def test_nothing_names_a_place_on_somebodys_machine():
    places = re.compile("/(?:" + "|".join(["work", "root", "home", "Users"]) + r")/\w")
    files = [*MODULES, *TEMPLATES, *SCRIPTS, *HOUSE.glob("*.md"), HOUSE / ".ci" / "run"]
    assert [name(path) for path in files if places.search(path.read_text())] == []
