"""Every address, by everybody, with GET and POST: the answers stand in one table, and none is missing.

"Exists but not yours" answers byte for byte like "does not exist", and no page or file that somebody may
open names a person or a cohort outside their reach.
"""

import re
from urllib.parse import quote, urlencode

import pytest
from django.db import transaction
from django.test import Client
from django.urls import URLPattern, get_resolver, reverse
from django.utils import timezone

WHO = ("nobody", "trainee", "stranger", "instructor", "outsider", "officer", "administrator")
METHODS = ("get", "post")
NOWHERE = 10**9

# What each of WHO gets, in that order: "in" is a redirect to the sign-in page, "file" a download.
ALL = "200 200 200 200 200 200 200"
ANY = "in 200 200 200 200 200 200"
OWN = "in 200 404 404 404 404 404"
DESK = "in 404 404 200 200 200 404"
DESK_OF_COHORT = "in 404 404 200 404 200 404"
OFFICE = "in 404 404 404 404 200 200"
WRONG = "in 405 405 405 405 405 405"
WRONG_AT_DESK = "in 404 404 405 405 405 404"
SENT_ON = "in 302 302 302 302 302 302"

TABLE = {
    # address: (what GET gets, what POST gets)
    "home": (ANY, WRONG),
    "lessons:lesson": (ANY, WRONG),
    "quizzes:practice": (ANY, WRONG),
    "quizzes:practice-start": (WRONG, SENT_ON),
    "quizzes:review-start": (WRONG, SENT_ON),
    "quizzes:check": (ANY, WRONG),
    "quizzes:check-start": (WRONG, SENT_ON),
    "quizzes:attempt": (OWN, WRONG),
    "quizzes:answer": (WRONG, "in 302 404 404 404 404 404"),
    "quizzes:hint": (WRONG, "in 302 404 404 404 404 404"),
    "quizzes:sitting": (OWN, WRONG),
    "quizzes:record": (ANY, WRONG),
    "desks:cohorts": (DESK, WRONG_AT_DESK),
    "desks:rules": (DESK, WRONG_AT_DESK),
    "desks:families": (DESK, WRONG_AT_DESK),
    "desks:problem": (DESK, WRONG_AT_DESK),
    "desks:board": (DESK_OF_COHORT, WRONG_AT_DESK),
    "desks:trainee": (DESK_OF_COHORT, WRONG_AT_DESK),
    "desks:decide": (DESK_OF_COHORT, DESK_OF_COHORT),
    "desks:open-check": (WRONG_AT_DESK, "in 404 404 302 404 302 404"),
    "desks:attempt": (DESK_OF_COHORT, WRONG_AT_DESK),
    "exports:index": (DESK, WRONG_AT_DESK),
    "exports:download": ("in 404 404 file 400 file 404", WRONG_AT_DESK),
    "people:sign-in": ("200 302 302 302 302 302 302", "200 302 302 302 302 302 302"),
    "people:sign-out": (WRONG, SENT_ON),
    "people:password": (ANY, ANY),
    "people:password-forgotten": (ALL, ALL),
    "people:password-sent": (ALL, "405 405 405 405 405 405 405"),
    "people:password-set": (ALL, ALL),
    "people:units": (ANY, ANY),
    "people:roster": (OFFICE, WRONG),
    "people:person-add": (OFFICE, OFFICE),
    "people:person": (OFFICE, OFFICE),
    "people:person-link": (WRONG, OFFICE),
    "people:cohorts": (OFFICE, WRONG),
    "people:cohort-add": (OFFICE, OFFICE),
    "people:cohort": (OFFICE, OFFICE),
}


def names_in(patterns, space=""):
    """Every name in the URLconf, and the bare pattern of what has none."""
    for entry in patterns:
        if isinstance(entry, URLPattern):
            yield f"{space}{entry.name}" if entry.name else f"unnamed {entry.pattern}"
        else:
            yield from names_in(
                entry.url_patterns, f"{space}{entry.namespace}:" if entry.namespace else space
            )


def address(quay, name, *, missing=False):
    """Where ``name`` leads for the trainee's things, or for numbers never given out."""

    def pk(thing):
        return NOWHERE if missing else thing.pk

    trainee, today = quay.people["trainee"], timezone.localdate()
    arguments = {
        "lessons:lesson": ["gauge-absolute-boyle"],
        "quizzes:practice": ["depth-pressure"],
        "quizzes:practice-start": ["depth-pressure"],
        "quizzes:review-start": ["depth-pressure"],
        "quizzes:check": ["depth-pressure"],
        "quizzes:check-start": ["depth-pressure"],
        "quizzes:attempt": [pk(quay.attempt)],
        "quizzes:answer": [pk(quay.waiting)],
        "quizzes:hint": [pk(quay.waiting)],
        "quizzes:sitting": [pk(quay.attempt.sitting)],
        "desks:board": [pk(quay.cohort)],
        "desks:trainee": [pk(trainee)],
        "desks:problem": ["depth-to-volume", "us", "7"],
        "desks:decide": [pk(trainee)],
        "desks:open-check": [pk(trainee), "boyle"],
        "desks:attempt": [pk(quay.attempt)],
        "exports:download": ["competency-records"],
        "people:password-set": ["MQ", "no-such-token"],
        "people:person": [pk(trainee)],
        "people:person-link": [pk(trainee)],
        "people:cohort": [pk(quay.cohort)],
    }
    url = reverse(name, args=arguments.get(name, []))
    if name == "exports:download":
        url += "?" + urlencode({"cohort": pk(quay.cohort), "first": today, "last": today})
    return url


FIELDS = {"quizzes:answer": {"answer": "1 psi"}, "desks:open-check": {"why": "Worked through together."}}


def ask(quay, who, method, name, **where):
    """What ``who`` gets, as (status, response, body); whatever it changed is undone."""
    with transaction.atomic():
        client = Client()
        if who != "nobody":
            client.force_login(quay.people[who])
        url = address(quay, name, **where)
        response = client.get(url) if method == "get" else client.post(url, FIELDS.get(name, {}))
        body = (b"".join(response) if response.streaming else response.content).decode()
        transaction.set_rollback(True)
    return told(response), response, body


def told(response):
    """The status as the table writes it."""
    if response.status_code == 302 and response.url.startswith(f"{reverse('people:sign-in')}?next="):
        return "in"
    return "file" if response.has_header("Content-Disposition") else str(response.status_code)


def stripped(body, url):
    """The page without what must differ: the token against forged posts, and its own address."""
    body = re.sub(r'name="csrfmiddlewaretoken" value="\w+"', "", body)
    path = url.split("?")[0]
    for own in (url, quote(url), path, quote(path)):
        body = body.replace(own, "")
    return body


def test_the_table_holds_every_address_and_no_other():
    assert sorted(names_in(get_resolver().url_patterns)) == sorted(TABLE)


@pytest.mark.parametrize("name", TABLE)
def test_everybody_gets_what_the_table_says(quay, name):
    got = tuple(" ".join(ask(quay, who, method, name)[0] for who in WHO) for method in METHODS)
    assert got == TABLE[name]


@pytest.mark.parametrize("name", TABLE)
def test_what_is_not_yours_answers_like_what_does_not_exist(quay, name):
    there, nowhere = address(quay, name), address(quay, name, missing=True)
    refused = [
        (who, method)
        for method, row in zip(METHODS, TABLE[name], strict=True)
        for who, status in zip(WHO, row.split(), strict=True)
        if there != nowhere and status not in ({"file"} if "file" in row else {"200", "302"})
    ]
    for who, method in refused:
        status, _, body = ask(quay, who, method, name)
        blank_status, _, blank = ask(quay, who, method, name, missing=True)
        assert (who, method, status) == (who, method, blank_status)
        assert stripped(body, there) == stripped(blank, nowhere)


@pytest.mark.parametrize("name", TABLE)
@pytest.mark.parametrize(
    ("who", "hidden"),
    [
        ("trainee", "stranger outsider officer administrator Boathouse"),
        ("instructor", "stranger outsider officer administrator Boathouse"),
        ("stranger", "trainee instructor officer administrator Slipway"),
        ("outsider", "trainee instructor officer administrator Slipway"),
    ],
)
def test_no_page_and_no_file_names_anybody_out_of_reach(quay, name, who, hidden):
    _, response, body = ask(quay, who, "get", name)
    if response.status_code == 200:
        marks = {"Boathouse", "Slipway"} & set(hidden.split())
        marks |= {mark for word in hidden.split() for mark in (f"{word}@quay", f"Given {word.title()}")}
        assert [mark for mark in marks if mark in body] == []
