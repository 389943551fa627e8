"""``manage.py demo``: builds the invented dive unit, prints its accounts and, if asked, serves the site."""

from __future__ import annotations

import os
from argparse import ArgumentParser
from typing import Any

from django.conf import settings
from django.core.management import call_command
from django.core.management.base import BaseCommand, CommandError
from django.db import connection

from course.demo import unit
from course.demo.cast import ADMINISTRATOR, OFFICER, PASSWORD, TROUPES
from course.demo.factories import address
from course.people.models import Person


class Command(BaseCommand):
    help = "Builds the demo in an empty database, prints its accounts, and serves it with --serve."
    requires_migrations_checks = False

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument(
            "--serve", action="store_true", help="serve the site afterwards, on this machine only"
        )
        parser.add_argument("--port", type=int, default=8000, help="the port to serve on (8000)")
        parser.add_argument(
            "--quick", action="store_true", help="half the trainees, every state all the same"
        )

    def handle(self, *args: Any, **options: Any) -> None:
        self._refuse_where_it_may_not_be()
        call_command("migrate", interactive=False, verbosity=0)
        if Person.objects.exists():
            self.stdout.write("The demo is here already and is kept as it is.")
        else:
            self.stdout.write("Building the demo; this takes some seconds ...")
            unit.build(quick=options["quick"])
        self._print_accounts(options["port"], serving=options["serve"])
        self.stdout.flush()  # whoever reads through a pipe waits for the address
        if options["serve"]:
            _serve(options["port"])

    def _refuse_where_it_may_not_be(self) -> None:
        if settings.PRODUCTION:
            raise CommandError("The demo's password is known to everyone, so it is not built in production.")
        if Person._meta.db_table in connection.introspection.table_names() and unit.strangers():
            raise CommandError(
                "This database holds people who are not of the demo. Nothing was changed. "
                "Set DATABASE_URL to an empty database and try again."
            )

    def _print_accounts(self, port: int, *, serving: bool) -> None:
        self.stdout.write(
            f"\nAddress   http://127.0.0.1:{port}/" + ("" if serving else "  (once served: --serve)")
        )
        self.stdout.write(f"Password  {PASSWORD}  (the same for everyone)\n")
        self._print_account("training officer", OFFICER)
        self._print_account("administrator", ADMINISTRATOR)
        for troupe in TROUPES:
            self._print_account(f"instructor, {troupe.name}", troupe.instructor)
        for troupe in TROUPES:
            for part in troupe.parts:
                if Person.objects.filter(email=address(part.name)).exists():
                    self._print_account(f"trainee, {troupe.name}", part.name)

    def _print_account(self, what: str, name: str) -> None:
        self.stdout.write(f"{address(name):<42}{what}")


def _serve(port: int) -> None:
    """Django's own small server, static files through whitenoise as in service; for one machine only."""
    os.environ["DJANGO_RUNSERVER_HIDE_WARNING"] = "true"
    call_command("runserver", f"127.0.0.1:{port}", use_reloader=False)
