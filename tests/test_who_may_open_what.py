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
    "glossary": (ANY, WRONG),
    "search": (ANY, WRONG),
    "booklet": (ANY, WRONG),
    "lessons:lesson": (ANY, WRONG),
    "lessons:place": (WRONG, SENT_ON),
    "quizzes:practice": (ANY, WRONG),
    "quizzes:practice-start": (WRONG, SENT_ON),
    "quizzes:review-start": (WRONG, SENT_ON),
    "quizzes:check": (ANY, WRONG),
    "quizzes:check-start": (WRONG, SENT_ON),
    "quizzes:across": (ANY, WRONG),
    "quizzes:across-next": (WRONG, SENT_ON),
    "quizzes:course-check": (ANY, WRONG),
    "quizzes:course-check-start": (WRONG, SENT_ON),
    "quizzes:attempt": (OWN, WRONG),
    "quizzes:answer": (WRONG, "in 302 404 404 404 404 404"),
    "quizzes:hint": (WRONG, "in 302 404 404 404 404 404"),
    "quizzes:doubt": (OWN, "in 302 404 404 404 404 404"),
    "quizzes:sitting": (OWN, WRONG),
    "quizzes:record": (ANY, WRONG),
    "classroom:mine": ("in 302 302 200 200 200 200", WRONG),
    "classroom:hand": (OWN, WRONG),
    "classroom:answer": (WRONG, "in 302 404 404 404 404 404"),
    "classroom:hand-news": (OWN, WRONG),
    "classroom:wall": (DESK_OF_COHORT, WRONG_AT_DESK),
    "classroom:put-up": (WRONG_AT_DESK, "in 404 404 302 404 302 404"),
    "classroom:move": (WRONG_AT_DESK, "in 404 404 302 404 302 404"),
    "classroom:step": (WRONG_AT_DESK, "in 404 404 302 404 302 404"),
    "classroom:wall-news": (DESK_OF_COHORT, WRONG_AT_DESK),
    "desks:cohorts": (DESK, WRONG_AT_DESK),
    "desks:rules": (DESK, WRONG_AT_DESK),
    "desks:families": (DESK, WRONG_AT_DESK),
    "desks:problem": (DESK, WRONG_AT_DESK),
    "desks:items": (DESK, WRONG_AT_DESK),
    "desks:item": (DESK, "in 404 404 302 302 302 404"),
    "desks:question": (DESK, "in 404 404 302 302 302 404"),
    "desks:board": (DESK_OF_COHORT, WRONG_AT_DESK),
    "desks:teaching": (DESK_OF_COHORT, WRONG_AT_DESK),
    "desks:assign": (WRONG_AT_DESK, "in 404 404 302 404 302 404"),
    "desks:slots": (DESK_OF_COHORT, DESK_OF_COHORT),
    "desks:close-slot": (WRONG_AT_DESK, "in 404 404 302 404 302 404"),
    "desks:accommodations": (DESK_OF_COHORT, DESK_OF_COHORT),
    "desks:trainee": (DESK_OF_COHORT, WRONG_AT_DESK),
    "desks:decide": (DESK_OF_COHORT, DESK_OF_COHORT),
    "desks:open-check": (WRONG_AT_DESK, "in 404 404 302 404 302 404"),
    "desks:reviews": (DESK, WRONG_AT_DESK),
    "desks:review": (DESK_OF_COHORT, "in 404 404 302 404 302 404"),
    "desks:attempt": (DESK_OF_COHORT, WRONG_AT_DESK),
    "appointments:index": (DESK_OF_COHORT, WRONG_AT_DESK),
    "appointments:new": (DESK_OF_COHORT, DESK_OF_COHORT),
    "appointments:draws": (DESK, WRONG_AT_DESK),
    "appointments:appointment": (DESK_OF_COHORT, WRONG_AT_DESK),
    "appointments:change": (DESK_OF_COHORT, DESK_OF_COHORT),
    "appointments:send": (WRONG_AT_DESK, "in 404 404 302 404 302 404"),
    "appointments:discard": (WRONG_AT_DESK, "in 404 404 302 404 302 404"),
    "appointments:take-back": (WRONG_AT_DESK, DESK_OF_COHORT),
    "signing:index": (DESK_OF_COHORT, WRONG_AT_DESK),
    "signing:holds": (DESK_OF_COHORT, DESK_OF_COHORT),
    "signing:sign": (DESK_OF_COHORT, DESK_OF_COHORT),
    "papers:runs": (DESK_OF_COHORT, DESK_OF_COHORT),
    "papers:run": (DESK_OF_COHORT, WRONG_AT_DESK),
    "papers:sheets": ("in 404 404 file 404 file 404", WRONG_AT_DESK),
    "papers:key": ("in 404 404 file 404 file 404", WRONG_AT_DESK),
    "papers:find": (DESK, WRONG_AT_DESK),
    "papers:enter": (DESK_OF_COHORT, DESK_OF_COHORT),
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

OF_THE_COHORT = [name for name in TABLE if name.startswith("classroom:") and name != "classroom:mine"]


def names_in(patterns, space=""):
    """Every name in the URLconf, and the bare pattern of what has none."""
    for entry in patterns:
        if isinstance(entry, URLPattern):
            yield f"{space}{entry.name}" if entry.name else f"unnamed {entry.pattern}"
        else:
            yield from names_in(
                entry.url_patterns, f"{space}{entry.namespace}:" if entry.namespace else space
            )


def own_things(quay, pk):
    """What leads to the learner's own pages."""
    return {
        "lessons:lesson": ["boyle"],
        "lessons:place": ["boyle"],
        "quizzes:practice": ["depth-pressure"],
        "quizzes:practice-start": ["depth-pressure"],
        "quizzes:review-start": ["depth-pressure"],
        "quizzes:check": ["depth-pressure"],
        "quizzes:check-start": ["depth-pressure"],
        "quizzes:attempt": [pk(quay.attempt)],
        "quizzes:answer": [pk(quay.waiting)],
        "quizzes:hint": [pk(quay.waiting)],
        "quizzes:doubt": [pk(quay.attempt)],
        "quizzes:sitting": [pk(quay.attempt.sitting)],
    }


def things_at_the_desk(quay, pk):
    """What leads to the pages of the desk and the office."""
    trainee = quay.people["trainee"]
    return {
        "desks:board": [pk(quay.cohort)],
        "desks:teaching": [pk(quay.cohort)],
        "desks:assign": [pk(quay.cohort)],
        "desks:slots": [pk(quay.cohort)],
        "desks:close-slot": [pk(quay.cohort), pk(quay.slot)],
        "desks:accommodations": [pk(trainee)],
        "desks:trainee": [pk(trainee)],
        "desks:problem": ["depth-to-volume", "us", "7"],
        "desks:item": ["depth-to-volume"],
        "desks:question": ["boyle-questions", "fills-in-a-full-bell"],
        "desks:decide": [pk(trainee)],
        "desks:open-check": [pk(trainee), "boyle"],
        "desks:review": [pk(quay.attempt)],
        "desks:attempt": [pk(quay.attempt)],
        "exports:download": ["competency-records"],
        "people:password-set": ["MQ", "no-such-token"],
        "people:person": [pk(trainee)],
        "people:person-link": [pk(trainee)],
        "people:cohort": [pk(quay.cohort)],
    }


def things_of_a_cohort(quay, pk):
    """What leads to the rooms in which a cohort is taught and checked."""
    return {
        **{one: [pk(quay.cohort)] for one in OF_THE_COHORT},
        "appointments:index": [pk(quay.cohort)],
        "appointments:new": [pk(quay.cohort)],
        "appointments:draws": ["depth-to-volume", "us", 1],
        "appointments:appointment": [pk(quay.appointment)],
        "appointments:change": [pk(quay.appointment)],
        "appointments:send": [pk(quay.appointment)],
        "appointments:discard": [pk(quay.appointment)],
        "appointments:take-back": [pk(quay.appointment)],
        "signing:index": [pk(quay.cohort)],
        "signing:holds": [pk(quay.cohort)],
        "signing:sign": [pk(quay.cohort), "boyle"],
        "papers:runs": [pk(quay.cohort)],
        **{f"papers:{one}": [pk(quay.paper.run)] for one in ("run", "sheets", "key")},
        "papers:enter": ["ZZZZZZ" if pk(quay.paper) == NOWHERE else quay.paper.code],
    }


def address(quay, name, *, missing=False):
    """Where ``name`` leads for the trainee's things, or for numbers never given out."""

    def pk(thing):
        return NOWHERE if missing else thing.pk

    arguments = own_things(quay, pk) | things_at_the_desk(quay, pk) | things_of_a_cohort(quay, pk)
    url = reverse(name, args=arguments.get(name, []))
    if name == "exports:download":
        today = timezone.localdate()
        url += "?" + urlencode({"cohort": pk(quay.cohort), "first": today, "last": today})
    return url


FIELDS = {
    "classroom:put-up": {"family": "depth-to-gauge", "system": "us", "after": "0"},
    "lessons:place": {"finished": "1"},
    "quizzes:answer": {"answer": "1 psi"},
    "quizzes:doubt": {"doubted": "question", "said": "Two answers fit."},
    "desks:review": {"ruled": "set aside", "why": "Two answers fit.", "seen": "0"},
    "desks:open-check": {"why": "Worked through together."},
    "desks:item": {"deed": "pause", "why": "The key is in doubt."},
    "desks:question": {"deed": "pause", "why": "The key is in doubt."},
}


def ask(quay, who, method, name, **where):
    """What ``who`` gets, as (status, response, body); whatever it changed is undone."""
    with transaction.atomic():
        client = Client()
        if who != "nobody":
            client.force_login(quay.people[who])
        url = address(quay, name, **where)
        response = client.get(url) if method == "get" else client.post(url, FIELDS.get(name, {}))
        body = (b"".join(response) if response.streaming else response.content).decode(errors="replace")
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
