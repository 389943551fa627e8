"""Signing off and releasing for a cohort at once: ticked, looked over, then written in one go."""

import pytest
from django.urls import reverse
from django.utils import timezone

from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.models import DecisionRecord, Standing


@pytest.fixture
def mate(quay):
    """A second trainee of the cohort."""
    mate = PersonFactory(name="Mara Quill")
    quay.cohort.trainees.add(mate)
    return mate


@pytest.fixture
def desk(client, quay):
    client.force_login(quay.people["instructor"])
    return client


@pytest.fixture
def sign(quay):
    return reverse("signing:sign", args=[quay.cohort.pk, "boyle"])


@pytest.fixture
def holds(quay):
    return reverse("signing:holds", args=[quay.cohort.pk])


def ticked(*boxes, **said):
    return {"sign": boxes, "seen_on": f"{timezone.localdate()}", "remark": "Told me why.", "other": ""} | said


def test_what_is_ticked_is_listed_first_and_written_only_when_confirmed(desk, quay, mate, sign):
    trainee = quay.people["trainee"]
    said = ticked(f"{trainee.pk}:oral", f"{mate.pk}:pool")
    page = desk.post(sign, said).text
    assert "Write 2 signatures?" in page
    assert "Given Trainee: oral" in page
    assert "Mara Quill: pool" in page
    assert not DecisionRecord.objects.filter(decided="signed").exists()
    assert "2 signatures written." in desk.post(sign, said | {"confirmed": "1"}, follow=True).text
    today = timezone.localdate()
    why = f"Seen on {today.day} {today:%B %Y}. Told me why."
    signed = DecisionRecord.objects.filter(decided="signed").values_list("learner", "part", "why")
    assert set(signed) == {(trainee.pk, "oral", why), (mate.pk, "pool", why)}


def test_confirmed_twice_it_is_written_once_and_said_so(desk, quay, sign):
    said = ticked(f"{quay.people['trainee'].pk}:oral", confirmed="1")
    desk.post(sign, said)
    assert (
        "nothing was written. You signed off the oral part before" in desk.post(sign, said, follow=True).text
    )
    assert DecisionRecord.objects.filter(decided="signed").count() == 1


def test_one_can_go_back_and_change_with_everything_as_it_was(desk, quay, sign):
    box = f"{quay.people['trainee'].pk}:pool"
    page = desk.post(sign, ticked(box, back="1"))
    assert "Told me why." in page.text
    assert [cell.value for row in page.context["rows"] for cell in row.cells if cell.is_ticked] == [box]


def test_the_third_column_stands_for_a_part_with_a_name(desk, quay, sign):
    box = f"{quay.people['trainee'].pk}:other"
    assert "Say which part" in desk.post(sign, ticked(box)).text
    page = desk.post(sign, ticked(box, other="Open water", confirmed="1"), follow=True).text
    assert "Open water, signed" in page


@pytest.mark.parametrize(
    ("said", "sentence"),
    [
        ({"sign": []}, "Tick at least one box."),
        ({"seen_on": "2999-01-01"}, "still to come"),
        ({"seen_on": "1999-01-01"}, "more than a year ago"),
        ({"remark": " "}, "Say what you saw"),
        ({"remark": "x" * 341}, "340 characters; it is 341"),
    ],
)
def test_what_cannot_be_signed_comes_back_with_a_sentence(desk, quay, sign, said, sentence):
    box = f"{quay.people['trainee'].pk}:oral"
    assert sentence in desk.post(sign, ticked(box) | said | {"confirmed": "1"}).text
    assert not DecisionRecord.objects.filter(decided="signed").exists()


@pytest.mark.parametrize("who", ["stranger", "instructor"])
def test_nobody_signs_for_another_cohort_or_for_themselves(desk, quay, sign, who):
    quay.cohort.trainees.add(quay.people["instructor"])
    desk.post(sign, ticked(f"{quay.people[who].pk}:oral", confirmed="1"))
    assert not DecisionRecord.objects.filter(decided="signed").exists()
    assert desk.get(sign).text.count('name="sign"') == 3


def test_a_competency_that_does_not_exist_is_not_found(desk, quay):
    assert desk.get(reverse("signing:sign", args=[quay.cohort.pk, "no-such"])).status_code == 404


def test_the_sums_count_each_trainee_once(desk, quay, mate, sign):
    desk.post(sign, ticked(f"{mate.pk}:oral", confirmed="1"))
    desk.post(sign, ticked(f"{mate.pk}:oral", confirmed="1", remark="Again."))
    sums = desk.get(reverse("signing:index", args=[quay.cohort.pk])).context["sums"]
    assert next(one[2:] for one in sums if one[0] == "boyle") == (1, 0)


def test_held_checks_are_listed_and_opened_once_confirmed(desk, quay, holds):
    box = f"{quay.people['trainee'].pk}:boyle"
    assert "waits for an instructor" in desk.get(holds).text
    said = {"held": [box], "what": "open", "why": "Worked through together."}
    assert "Write 1 entry?" in desk.post(holds, said).text
    assert Standing.objects.filter(competency="boyle", waits=True, learner=quay.people["trainee"]).exists()
    assert "1 entry written." in desk.post(holds, said | {"confirmed": "1"}, follow=True).text
    assert "not held any more" in desk.post(holds, said | {"confirmed": "1"}).text
    assert DecisionRecord.objects.filter(decided="opened").count() == 1


def test_where_nothing_of_the_kind_is_asked_for_the_page_says_so(desk, quay, holds):
    said = {
        "held": [f"{quay.people['trainee'].pk}:boyle"],
        "what": "rest",
        "why": "As agreed.",
        "confirmed": "1",
    }
    page = desk.post(holds, said, follow=True).text
    assert "Given Trainee: nothing was written. This check waits for an instructor." in page


@pytest.mark.parametrize(
    ("said", "sentence"),
    [
        ({"held": []}, "Tick at least one"),
        ({"what": ""}, "Choose what to do"),
        ({"why": ""}, "Give the reason"),
    ],
)
def test_what_cannot_be_released_comes_back_with_a_sentence(desk, quay, holds, said, sentence):
    whole = {"held": [f"{quay.people['trainee'].pk}:boyle"], "what": "open", "why": "As agreed."}
    assert sentence in desk.post(holds, whole | said | {"confirmed": "1"}).text


def test_nobody_elses_holds_are_listed_or_released(desk, quay, holds):
    stranger = quay.people["stranger"]
    assert "Given Stranger" not in desk.get(holds).text
    desk.post(holds, {"held": [f"{stranger.pk}:boyle"], "what": "open", "why": "No.", "confirmed": "1"})
    assert Standing.objects.get(learner=stranger, competency="boyle").waits


def test_a_table_of_many_costs_no_more_queries(desk, quay, sign, holds, boyle, django_assert_num_queries):
    desk.get(sign)
    with django_assert_num_queries(5):
        desk.get(sign)
    many = PersonFactory.create_batch(25)
    quay.cohort.trainees.add(*many)
    signatures = [(one, "oral") for one in many]
    actions.sign_off_round(signatures=signatures, competency=boyle, by=quay.people["instructor"], why="Seen.")
    with django_assert_num_queries(5):
        desk.get(sign)
