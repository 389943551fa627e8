"""Prints a problem with its worked solution, lists the families, or audits them."""

from __future__ import annotations

import json
from argparse import ArgumentParser
from typing import Any

from django.core.management.base import BaseCommand, CommandError

from pressure import catalogue, record
from pressure.audit import audit
from pressure.draw import DELTA, draw, sound
from pressure.errors import PressureError
from pressure.problem import Family, Problem, System
from pressure.units import unit_text

_WRONG_WORDS = 2  # the exit code of a command that was asked for something it does not know


class Command(BaseCommand):
    help = "Print a problem of a family with its solution; --list names the families, --audit proves them."
    requires_system_checks: list[str] = []

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("family", nargs="?", metavar="FAMILY", help="the slug of a family")
        parser.add_argument("--seed", default="0", help="a whole number, not negative (default 0)")
        parser.add_argument("--system", default="us", help="us or metric (default us)")
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
            self._audit(options["draws"])
        elif options["family"] is None:
            raise CommandError("Name a family, or ask for --list.", returncode=_WRONG_WORDS)
        else:
            self._print(options["family"], options["seed"], options["system"], as_json=options["json"])

    def _list(self, *, as_json: bool) -> None:
        families = catalogue.families().values()
        if as_json:
            self.stdout.write(
                json.dumps([_family(family) for family in families], indent=2, ensure_ascii=False)
            )
            return
        for family in families:
            self.stdout.write(f"{family.slug:<20} {family.title} ({', '.join(family.systems)})")

    def _audit(self, draws: int) -> None:
        broken = 0
        for family in catalogue.families().values():
            for system in family.systems:
                faults = list(audit(family, system, draws))
                broken += len(faults)
                self.stdout.write(f"{family.slug} {system}: {draws} draws, {len(faults)} faults")
                for fault in faults:
                    self.stderr.write(fault)
        if broken:
            raise CommandError(f"{broken} faults found.")

    def _print(self, slug: str, seed: str, system: System, *, as_json: bool) -> None:
        try:
            problem = draw(slug, _seed(seed), system)
        except PressureError as error:
            raise CommandError(str(error), returncode=_WRONG_WORDS) from error
        if as_json:
            self.stdout.write(json.dumps(_whole(problem), indent=2, ensure_ascii=False))
        else:
            self.stdout.write("\n".join(_text(problem)))


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


def _whole(problem: Problem) -> dict[str, Any]:
    """The shown form and the key in one, with the answer and its tolerance gathered."""
    shown, key = record.shown(problem), record.key(problem)
    answer = {"value": key["answer"], "unit": key["unit"], "kind": key["kind"], "text": key["answer_text"]}
    tolerance = {"low": key["low"], "high": key["high"], "allowance": DELTA}
    rest = {name: key[name] for name in ("slips", "sense", "steps")}
    return {**shown, "version": problem.edition, "answer": answer, "tolerance": tolerance, **rest}


def _text(problem: Problem) -> list[str]:
    key = record.key(problem)
    lines = [problem.situation, problem.convention, ""]
    for number, step in enumerate(key["steps"], start=1):
        lines.append(f"{number}. {step['why']}")
        lines.extend(f"   {step[part]['words']}" for part in ("relation", "substitution", "result"))
    asked = unit_text(problem.asked.unit)
    lines += ["", f"Answer: {key['answer_text']} (accepted: {key['low']:.4g} to {key['high']:.4g} {asked})"]
    lines.append(problem.sense)
    lines += [
        f"Slip: {slip['label']}: {slip['low']:.4g} to {slip['high']:.4g} {asked}" for slip in key["slips"]
    ]
    return [*lines, *([problem.caution] if problem.caution else [])]
