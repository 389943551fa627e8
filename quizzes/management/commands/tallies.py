"""``manage.py tallies``: proves that the kept counts agree with the attempts, or makes them anew."""

from __future__ import annotations

from argparse import ArgumentParser
from typing import Any

from django.core.management.base import BaseCommand, CommandError

from quizzes.actions.tallying import rebuild
from quizzes.proofs import disagreements

_SHOWN = 20


class Command(BaseCommand):
    help = (
        "Compares the counts behind the statistics with the attempts (--prove), or counts anew (--rebuild)."
    )

    def add_arguments(self, parser: ArgumentParser) -> None:
        deed = parser.add_mutually_exclusive_group(required=True)
        deed.add_argument("--prove", action="store_true", help="count a second way and say where it differs")
        deed.add_argument("--rebuild", action="store_true", help="make all counts anew, then prove them")

    def handle(self, *args: Any, **options: Any) -> None:
        if options["rebuild"]:
            rebuild()
            self.stdout.write("All counts were made anew.")
        found = list(disagreements())
        for line in found[:_SHOWN]:
            self.stdout.write(line)
        if found:
            raise CommandError(
                f"{len(found)} counts do not agree with the attempts. "
                "“tallies --rebuild” makes them anew; nothing else depends on them."
            )
        self.stdout.write("The counts agree with the attempts.")
