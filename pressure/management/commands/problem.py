"""Prints a problem with its worked solution, lists the families, or audits them."""

from __future__ import annotations

import json
from argparse import ArgumentParser
from collections.abc import Iterator, Mapping
from typing import Any

from django.core.management.base import BaseCommand, CommandError

from pressure import catalogue, record
from pressure.audit import Findings, audit
from pressure.draw import DELTA, draw, sound
from pressure.errors import PressureError
from pressure.mixing import mix
from pressure.problem import Family, Key, Problem, System
from pressure.units import unit_text

_WRONG_WORDS = 2  # the exit code of a command that was asked for something it does not know


class Command(BaseCommand):
    help = "Print a problem of a family with its solution; --list names the families, --audit proves them."
    requires_system_checks: list[str] = []

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("family", nargs="?", metavar="FAMILY", help="the slug of a family")
        parser.add_argument("--seed", default="0", help="a whole number, not negative (default 0)")
        parser.add_argument("--system", default="us", help="us, metric or, where it is set, si (default us)")
        parser.add_argument("--mixed", action="store_true", help="ask for the answer in another unit")
        parser.add_argument("--json", action="store_true", help="print JSON")
        parser.add_argument("--list", action="store_true", help="list the families")
        parser.add_argument("--audit", action="store_true", help="prove the separation of answers and slips")
        parser.add_argument(
            "--draws", type=int, default=1000, help="draws to audit in each family and system"
        )

    def handle(self, *args: Any, **options: Any) -> None:
        if options["list"]:
            self._list(as_json=options["json"])
        elif options["audit"]:
            self._audit(options["family"], options["draws"])
        elif options["family"] is None:
            raise CommandError("Name a family, or ask for --list.", returncode=_WRONG_WORDS)
        else:
            self._print(_drawn(options), as_json=options["json"])

    def _list(self, *, as_json: bool) -> None:
        families = catalogue.families().values()
        if as_json:
            self.stdout.write(
                json.dumps([_family(family) for family in families], indent=2, ensure_ascii=False)
            )
            return
        for family in families:
            self.stdout.write(f"{family.slug:<20} {family.title} ({', '.join(family.systems)})")

    def _audit(self, slug: str | None, draws: int) -> None:
        broken = 0
        try:
            families = [catalogue.family(slug)] if slug else list(catalogue.families().values())
        except PressureError as error:
            raise CommandError(str(error), returncode=_WRONG_WORDS) from error
        for family in families:
            for system in family.systems:
                found = audit(family, system, draws)
                broken += len(found.faults)
                self.stdout.write(f"{family.slug} {system}: {_said(found)}")
                for fault in found.faults:
                    self.stderr.write(fault)
        if broken:
            raise CommandError(f"{broken} faults found.")

    def _print(self, problem: Problem, *, as_json: bool) -> None:
        if as_json:
            self.stdout.write(json.dumps(_whole(problem), indent=2, ensure_ascii=False))
        else:
            self.stdout.write("\n".join(_text(problem)))


def _drawn(options: Mapping[str, Any]) -> Problem:
    system: System = options["system"]
    try:
        problem = draw(options["family"], _seed(options["seed"]), system)
    except PressureError as error:
        raise CommandError(str(error), returncode=_WRONG_WORDS) from error
    mixed = mix(problem) if options["mixed"] else problem
    if mixed is None:
        raise CommandError("These numbers are not asked for in another unit.", returncode=_WRONG_WORDS)
    return mixed


def _seed(text: str) -> int:
    return sound(int(text) if text.isdecimal() and len(text) < 20 else text)


def _family(family: Family) -> dict[str, Any]:
    return {
        "family": family.slug,
        "version": family.edition,
        "title": family.title,
        "topic": family.topic,
        "systems": list(family.systems),
    }


def _said(found: Findings) -> str:
    answers = ""
    if found.lowest is not None and found.highest is not None:
        answers = f" answers {found.lowest:.3g} to {found.highest:.3g} {unit_text(found.unit)},"
    return (
        f"{len(found.faults)} faults, {found.distinct} distinct,{answers} "
        f"draw {found.median_us:.0f} µs, slowest {found.slowest_us:.0f} µs"
    )


def _whole(problem: Problem) -> dict[str, Any]:
    """The shown form and the key in one; for a number the answer and its tolerance gathered."""
    shown, key = record.shown(problem), record.key(problem)
    whole = {**shown, "version": problem.edition, "solution_figure": key.pop("figure")}
    if not isinstance(problem.key, Key):
        return {**whole, **key}
    answer = {"value": key["answer"], "unit": key["unit"], "kind": key["kind"], "text": key["answer_text"]}
    tolerance = {"low": key["low"], "high": key["high"], "allowance": DELTA}
    rest = {name: key[name] for name in ("slips", "sense", "steps")}
    return {**whole, "answer": answer, "tolerance": tolerance, **rest}


def _text(problem: Problem) -> Iterator[str]:
    shown, key = record.shown(problem), record.key(problem)
    yield from filter(None, (problem.situation, problem.convention, shown.get("question")))
    yield from (f"({option['letter']}) {option['text']}" for option in shown.get("options", ()))
    if problem.figure:
        yield problem.figure.words
    yield ""
    for number, step in enumerate(key["steps"], start=1):
        yield f"{number}. {step['why']}"
        yield from (f"   {line['words']}" for line in list(step.values())[1:] if line)
    yield from ("", f"Answer: {key['answer_text']}")
    for cell in key.get("cells") or ([key] if "low" in key else []):
        yield from _ranges(cell)
    yield from (f"{option['text']}: {option['why']}" for option in key.get("options", ()))
    yield from filter(None, (problem.sense, problem.caution))


def _ranges(cell: Mapping[str, Any]) -> Iterator[str]:
    unit = unit_text(cell["unit"])
    yield f"Accepted: {cell['low']:.4g} to {cell['high']:.4g} {unit}"
    for slip in cell["slips"]:
        yield f"Slip: {slip['label']}: {slip['low']:.4g} to {slip['high']:.4g} {unit}"
