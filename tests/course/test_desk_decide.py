"""Deciding by hand: each deed, its refusals, and what stays in the record."""

import pytest
from django.urls import reverse

from quizzes.models import DecisionRecord, JournalLine, Standing

WHY = "Seen at the slipway on Tuesday."


@pytest.fixture
def decide(client, quay):
    client.force_login(quay.people["instructor"])
    url = reverse("desks:decide", args=[quay.people["trainee"].pk])
    return lambda **said: client.post(url, {"competency": "boyle", "why": WHY, **said}, follow=True)


@pytest.mark.parametrize(
    ("said", "decided", "state"),
    [
        ({"deed": "sign", "part": "pool"}, "signed", "held"),
        ({"deed": "open"}, "opened", "ready"),
        ({"deed": "grant"}, "granted", "met"),
    ],
)
def test_each_deed_is_recorded_with_name_and_reason(decide, quay, said, decided, state):
    assert "for Given Trainee." in decide(**said).text
    entry, trainee = DecisionRecord.objects.first(), quay.people["trainee"]
    assert (entry.decided, entry.why, entry.by_name) == (decided, WHY, "Given Instructor")
    assert Standing.objects.get(learner=trainee, competency="boyle").state == state
    assert JournalLine.objects.first().details == {"why": WHY}


def test_the_part_that_was_signed_off_stands_in_both_records(decide, quay, client):
    assert "signed off: pool" in decide(deed="sign", part="pool").text
    client.force_login(quay.people["trainee"])
    assert "signed off: pool" in client.get(reverse("quizzes:record")).text


def test_what_was_granted_can_be_revoked_and_both_stay(decide):
    decide(deed="grant")
    decide(deed="revoke")
    assert list(DecisionRecord.objects.values_list("decided", flat=True)[:2]) == ["revoked", "granted"]


@pytest.mark.parametrize(
    ("said", "sentence"),
    [
        ({"deed": "sign"}, "Say which part is signed off"),
        ({"deed": "revoke"}, "Only a competency that is met can be revoked."),
        ({"deed": "open", "competency": "mixtures"}, "This check is not held."),
        ({"deed": "grant", "why": " "}, "This field is required."),
        ({}, "This field is required."),
    ],
)
def test_a_refusal_says_why_keeps_what_was_typed_and_writes_nothing(decide, said, sentence):
    before = DecisionRecord.objects.count()
    page = decide(**said)
    assert sentence in page.text
    assert DecisionRecord.objects.count() == before
    assert said.get("why", WHY).strip() in page.text
