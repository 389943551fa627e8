"""Signing in and out, passwords from one-time links, and one's own settings."""

import re

import pytest
from django.urls import reverse

from course.people.address import client_address
from course.people.models import Person

SIGN_IN, SIGN_OUT = reverse("people:sign-in"), reverse("people:sign-out")
UNITS, PASSWORD = reverse("people:units"), reverse("people:password")
FORGOTTEN, SENT = reverse("people:password-forgotten"), reverse("people:password-sent")
SECRET, ANOTHER = "over-the-harbour-wall-7", "nine-slack-tides-a-week"
MISMATCH = "That address and password do not go together."


@pytest.fixture
def mara(db):
    return Person.objects.create_user("mara@quay.example", SECRET, name="Mara Quill")


def try_to_sign_in(client, email="mara@quay.example", password=SECRET):
    return client.post(SIGN_IN, {"username": email, "password": password})


def signed_in(client):
    return "_auth_user_id" in client.session


def link_in(text):
    return re.search(r"/people/password/set/\S+/", text).group()


def set_password(client, link, password=ANOTHER):
    page = client.get(link, follow=True)
    form = {"new_password1": password, "new_password2": password}
    return client.post(page.request["PATH_INFO"], form, follow=True)


def test_whoever_is_not_signed_in_is_asked_to_and_brought_back(client, mara):
    asked = client.get(UNITS)
    assert asked.url == f"{SIGN_IN}?next={UNITS}"
    assert f'name="next" value="{UNITS}"' in client.get(asked.url).text


def test_the_address_may_be_typed_in_capitals_and_with_blanks(client, mara):
    assert try_to_sign_in(client, " Mara@Quay.Example ").status_code == 302
    assert signed_in(client)


@pytest.mark.parametrize(
    ("email", "password"), [("mara@quay.example", "wrong"), ("nobody@quay.example", SECRET)]
)
def test_a_refusal_never_says_which_was_wrong_and_keeps_the_address(client, mara, email, password):
    page = try_to_sign_in(client, email, password)
    assert MISMATCH in page.text
    assert f'value="{email}"' in page.text
    assert password not in page.text


def test_a_shut_entry_cannot_sign_in(client, mara):
    Person.objects.update(is_active=False)
    assert MISMATCH in try_to_sign_in(client).text
    assert not signed_in(client)


def test_an_entry_shut_while_signed_in_is_out_at_once(client, mara):
    client.force_login(mara)
    Person.objects.update(is_active=False)
    assert client.get(UNITS).url == f"{SIGN_IN}?next={UNITS}"


def test_five_wrong_passwords_close_the_door_also_to_the_right_one(client, mara):
    answers = [try_to_sign_in(client, password="wrong").status_code for _ in range(5)]
    assert answers == [200, 200, 200, 200, 429]
    shut = try_to_sign_in(client, "MARA@quay.example")
    assert shut.status_code == 429
    assert "Too many tries" in shut.text
    assert not signed_in(client)


def test_guessing_at_one_address_leaves_the_others_open(client, mara):
    for _ in range(6):
        try_to_sign_in(client, "otto@quay.example", "wrong")
    assert try_to_sign_in(client).status_code == 302


def test_signing_out_takes_a_form_not_a_link(client, mara):
    client.force_login(mara)
    assert client.get(SIGN_OUT).status_code == 405
    assert signed_in(client)
    assert client.post(SIGN_OUT).url == SIGN_IN
    assert not signed_in(client)


@pytest.mark.parametrize("password", [SECRET, None], ids=["forgotten", "never set"])
def test_a_mailed_link_sets_a_password_once(client, db, mailoutbox, password):
    Person.objects.create_user("mara@quay.example", password, name="Mara Quill")
    assert client.post(FORGOTTEN, {"email": "MARA@quay.example"}).url == SENT
    link = link_in(mailoutbox[0].body)
    assert mailoutbox[0].to == ["mara@quay.example"]
    assert "Your password is set" in set_password(client, link).text
    assert try_to_sign_in(client, password=ANOTHER).status_code == 302
    assert "was used before" in client.get(link, follow=True).text


@pytest.mark.parametrize("email", ["nobody@quay.example", "shut@quay.example"])
def test_asking_for_a_link_never_tells_who_is_on_the_roster(client, mara, mailoutbox, email):
    Person.objects.create_user("shut@quay.example", SECRET, name="Otto Brandt", is_active=False)
    assert client.post(FORGOTTEN, {"email": email}).url == SENT
    assert mailoutbox == []


def test_a_weak_password_is_refused_in_words_beside_its_field(client, mara, mailoutbox):
    client.post(FORGOTTEN, {"email": mara.email})
    page = set_password(client, link_in(mailoutbox[0].body), "12345678")
    assert "entirely numeric" in page.text
    assert 'aria-describedby="id_new_password2_helptext id_new_password2_error"' in page.text
    assert 'href="#id_new_password2"' in page.text


def test_a_made_up_link_offers_another(client, mara):
    page = client.get(reverse("people:password-set", args=["MQ", "no-token"]))
    assert "Get another link" in page.text


def test_changing_the_password_asks_for_the_old_one(client, mara):
    client.force_login(mara)
    new = {"new_password1": ANOTHER, "new_password2": ANOTHER}
    assert "old password" in client.post(PASSWORD, {"old_password": "wrong", **new}).text
    assert client.post(PASSWORD, {"old_password": SECRET, **new}).url == UNITS
    mara.refresh_from_db()
    assert mara.check_password(ANOTHER)


def test_units_are_kept_and_lead_back_to_the_page_one_came_from(client, mara):
    client.force_login(mara)
    assert client.post(UNITS, {"system": "metric", "next": "/record/"}).url == "/record/"
    mara.refresh_from_db()
    assert mara.system == "metric"


@pytest.mark.parametrize(
    "elsewhere", ["https://elsewhere.example/", "//elsewhere.example", "javascript:alert(1)"]
)
def test_units_never_lead_off_the_site(client, mara, elsewhere):
    client.force_login(mara)
    assert client.post(UNITS, {"system": "metric", "next": elsewhere}).url == UNITS
    assert "elsewhere" not in client.get(UNITS, {"next": elsewhere}).context["next"]


def test_unknown_units_are_refused_at_the_field(client, mara):
    client.force_login(mara)
    page = client.post(UNITS, {"system": "furlongs"})
    assert 'id="id_system_error"' in page.text
    assert 'href="#id_system_0"' in page.text
    mara.refresh_from_db()
    assert mara.system == "us"


@pytest.mark.parametrize(
    ("behind", "noted", "address"),
    [
        (True, "203.0.113.9, 198.51.100.7", "198.51.100.7"),
        (True, "", "127.0.0.1"),
        (False, "203.0.113.9", "127.0.0.1"),
    ],
)
def test_the_address_that_is_throttled_is_the_one_our_proxy_noted(rf, settings, behind, noted, address):
    settings.BEHIND_PROXY = behind
    request = rf.get("/", headers={"X-Forwarded-For": noted} if noted else {})
    assert client_address(request) == address
