"""Running it for real: production refuses what is unsafe, and says so; what it sends is locked down."""

import os
import re
import secrets
import subprocess
import sys
from pathlib import Path

import pytest
from django.urls import reverse

HOUSE = Path(__file__).resolve().parent.parent
POLICY = {
    "default-src": "'none'",
    "script-src": "'self'",
    "style-src": "'self'",
    "img-src": "'self'",
    "font-src": "'self'",
    "connect-src": "'self'",
    "form-action": "'self'",
    "frame-ancestors": "'none'",
    "base-uri": "'none'",
}

# One process as a server would run it: files collected, tables made, then the first page and a sign-in.
FIRST_VISIT = """
import sys
from django.conf import settings
settings.STATIC_ROOT = sys.argv[1]
import django
django.setup()
from django.core.management import call_command
from django.test import Client
from django.urls import reverse
call_command("collectstatic", interactive=False, verbosity=0)
call_command("migrate", interactive=False, verbosity=0)
from course.people.models import Person
Person.objects.create_user("ines@quay.example", "a long enough phrase", name="Ines")
browser = Client(headers={"host": "course.example"})
plain = browser.get(reverse("people:sign-in"))
print("PLAIN", plain.status_code, plain.headers["Location"])
page = browser.get(reverse("people:sign-in"), secure=True)
print("PAGE", page.status_code)
for name, value in page.headers.items():
    print("HEADER", name.lower(), value)
fields = {"username": "ines@quay.example", "password": "a long enough phrase"}
done = browser.post(reverse("people:sign-in"), fields, secure=True)
print("SIGNED", done.status_code)
for cookie in browser.cookies.values():
    print("COOKIE", cookie.OutputString())
print(page.content.decode())
"""


def production(**changes):
    """The environment of a server, with ``None`` taking a variable away."""
    ours = {"DATABASE_URL", "DEBUG", "DJANGO_ALLOW_ASYNC_UNSAFE", "HTTPS"}
    kept = {name: value for name, value in os.environ.items() if name not in ours}
    named = {
        "COURSE_ENV": "production",
        "DJANGO_SETTINGS_MODULE": "course.settings",
        "SECRET_KEY": secrets.token_urlsafe(64),
        "ALLOWED_HOSTS": "course.example",
    }
    return kept | {name: value for name, value in (named | changes).items() if value is not None}


def run(*arguments, **changes):
    return subprocess.run(
        [sys.executable, *arguments],
        cwd=HOUSE, env=production(**changes), capture_output=True, text=True, timeout=120,
    )  # fmt: skip


def check(**changes):
    return run("manage.py", "check", "--deploy", "--fail-level", "WARNING", **changes)


@pytest.fixture(scope="module")
def first_visit(tmp_path_factory):
    place = tmp_path_factory.mktemp("server")
    seen = run("-c", FIRST_VISIT, str(place / "static"), DATABASE_URL=f"sqlite:///{place / 'served.sqlite3'}")
    assert seen.returncode == 0, seen.stderr
    return seen.stdout


def test_the_deployment_checks_find_nothing_to_say():
    found = check()
    assert (found.returncode, "no issues" in found.stdout) == (0, True), found.stderr


@pytest.mark.parametrize(
    ("missing", "sentence"), [("SECRET_KEY", "Set SECRET_KEY"), ("ALLOWED_HOSTS", "Set ALLOWED_")]
)
def test_production_refuses_to_start_without_its_secrets_and_names(missing, sentence):
    refused = check(**{missing: None})
    assert refused.returncode != 0
    assert sentence in refused.stderr


def test_plain_http_is_sent_on_to_https(first_visit):
    assert re.search(r"^PLAIN 301 https://course\.example/", first_visit, re.MULTILINE)


def test_the_first_page_is_served_with_files_that_name_their_content(first_visit):
    assert "PAGE 200" in first_visit
    assert re.search(r'href="/static/css/[\w/-]+\.[0-9a-f]{12}\.css"', first_visit)


@pytest.mark.parametrize(
    ("header", "value"),
    [
        ("strict-transport-security", "max-age=31536000; includeSubDomains; preload"),
        ("x-content-type-options", "nosniff"),
        ("referrer-policy", "same-origin"),
        ("x-frame-options", "DENY"),
        ("cross-origin-opener-policy", "same-origin"),
    ],
)
def test_pages_carry_the_protecting_headers(first_visit, header, value):
    assert f"HEADER {header} {value}\n" in first_visit


@pytest.mark.parametrize("cookie", ["__Host-session", "__Host-csrf"])
def test_cookies_stay_on_this_host_over_https_and_out_of_scripts(first_visit, cookie):
    assert "SIGNED 302" in first_visit
    set_cookie = re.search(rf"^COOKIE {cookie}=.*$", first_visit, re.MULTILINE).group()
    flags = {flag.strip() for flag in set_cookie.split(";")[1:]}
    assert {"Secure", "HttpOnly", "Path=/", "SameSite=Lax"} <= flags
    assert not any(flag.startswith("Domain") for flag in flags)


def test_the_content_policy_is_exactly_the_strict_one(client, db):
    sent = client.get(reverse("people:sign-in")).headers["Content-Security-Policy"]
    assert dict(part.strip().split(" ", 1) for part in sent.split(";")) == POLICY
