"""A paused item is not asked; checks under way finish as they began; something is always left to ask."""

from datetime import timedelta

import pytest

from course.people.models import Person, Role
from quizzes import actions
from quizzes.aids import aid_for
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.items import item_of, questions_of
from quizzes.models import Attempt, Deal, ItemPause, ItemTally, JournalLine, Standing
from quizzes.models.appendonly import WrittenOnce
from quizzes.models.pauses import paused_items
from quizzes.subjects import WHOLE
from tests.quizzes.conftest import NOON, give, waiting

WHY = "Two of us read the key otherwise."
SHELF = "boyle-questions"


@pytest.fixture
def staff(db):
    return Person.objects.create_user("ines@quay.example", name="Ines Halloran", role=Role.INSTRUCTOR)


@pytest.fixture
def paused(staff):
    return actions.pause(item="depth-to-volume", by=staff, why=WHY)


def begun(learner, competency):
    Standing.objects.create(learner=learner, competency=competency.slug, state="ready", streak=3)
    return actions.start_check(learner=learner, competency=competency, now=NOON)


def families_of(sitting):
    return set(sitting.attempts.values_list("family", flat=True))


def test_a_paused_family_is_not_asked_in_practice(learner, boyle, paused):
    sitting = actions.start_practice(learner=learner, competency=boyle, now=NOON)
    give(sitting, "+-+-+-+")
    assert families_of(sitting) == {"volume-on-ascent"}


def test_a_paused_family_is_not_in_a_check_begun_afterwards(learner, boyle, paused):
    sitting = begun(learner, boyle)
    assert sitting.kinds == ["volume-on-ascent"]
    give(sitting, "+++")
    assert families_of(sitting) == {"volume-on-ascent"}


def test_a_check_under_way_finishes_with_the_families_it_began_with(learner, boyle, staff):
    sitting = begun(learner, boyle)
    actions.pause(item="depth-to-volume", by=staff, why=WHY)
    give(sitting, "++++")
    assert families_of(sitting) == set(boyle.families)


def test_practice_leaves_a_family_from_the_next_problem_on(learner, boyle, staff):
    sitting = actions.start_practice(learner=learner, competency=boyle, now=NOON)
    first = waiting(sitting).family
    actions.pause(item=first, by=staff, why=WHY)
    give(sitting, "+---")
    asked = list(sitting.attempts.order_by("number").values_list("family", flat=True))
    assert asked[0] == first
    assert first not in asked[1:]


def test_the_check_of_the_whole_course_leaves_it_out(learner, paused):
    day = NOON.date()
    for slug in COMPETENCIES:
        Standing.objects.create(
            learner=learner, competency=slug, state="met", met_on=day, due_on=day, confirmed_on=day
        )
    sitting = actions.start_course_check(learner=learner, now=NOON)
    assert sitting.competency == WHOLE
    assert sitting.asks["boyle"] == ["volume-on-ascent"]


def test_a_paused_question_is_passed_over_in_the_walk(learner, staff):
    first, *others = questions_of(SHELF)
    for question in others[:-1]:
        actions.pause(item=item_of(SHELF, question), by=staff, why=WHY)
    sitting = actions.start_practice(learner=learner, competency=COMPETENCIES["boyle-at-work"], now=NOON)
    give(sitting, "+" * 12)
    asked = {one.shown["item"] for one in Attempt.objects.filter(family=SHELF)}
    assert asked
    assert asked <= {first, others[-1]}


def test_what_was_passed_over_is_not_dealt_again(learner, staff):
    for question in questions_of(SHELF)[:-1]:
        actions.pause(item=item_of(SHELF, question), by=staff, why=WHY)
    sitting = begun(learner, COMPETENCIES["boyle-at-work"])
    before = Deal.objects.get(family=SHELF).next_seed
    give(sitting, "+" * (len(sitting.kinds) - 1))
    last = Attempt.objects.get(family=SHELF)
    assert last.shown["item"] == questions_of(SHELF)[-1]
    assert Deal.objects.get(family=SHELF).next_seed == last.seed + 1 > before - 1


def test_no_worked_example_is_a_question_that_is_paused(learner, staff):
    asked, shown, *others = questions_of(SHELF)
    sitting = begun(learner, COMPETENCIES["boyle-at-work"])
    give(sitting, "+" * len(sitting.kinds))
    attempt = Attempt.objects.get(family=SHELF, diagnostic=True)
    attempt.sitting.purpose, attempt.help = "practice", 0
    left = next(one for one in (asked, shown) if one != attempt.shown["item"])
    for question in {asked, shown, *others} - {left}:
        actions.pause(item=item_of(SHELF, question), by=staff, why=WHY)
    assert aid_for(attempt).example["shown"]["item"] == left


def test_it_is_asked_again_once_taken_up(learner, boyle, staff, paused):
    actions.take_up(item="depth-to-volume", by=staff, why="Mended in edition 2.")
    assert paused_items() == frozenset()
    assert set(begun(learner, boyle).kinds) == set(boyle.families)


def test_taking_up_begins_the_watch_for_drift_anew(staff, paused):
    ItemTally.objects.filter(item="depth-to-volume").update(
        rests={"2/1": [4, 20]}, drift_score=24, drift_answers=24, drift_alarm=24
    )
    actions.take_up(item="depth-to-volume", by=staff, why="Mended in edition 2.")
    row = ItemTally.objects.get(item="depth-to-volume")
    assert (row.drift_from, row.drift_score, row.drift_answers, row.drift_alarm) == (24, 0, 0, None)


def test_both_deeds_stand_in_the_journal_and_cannot_be_changed(staff, paused):
    actions.take_up(item="depth-to-volume", by=staff, why="Mended.", now=NOON + timedelta(days=1))
    lines = JournalLine.objects.filter(subject_type="quizzes.itempause").order_by("pk")
    assert [(line.verb, line.details["why"]) for line in lines] == [
        ("item paused", WHY), ("item taken up again", "Mended."),
    ]  # fmt: skip
    with pytest.raises(WrittenOnce):
        paused.delete()


@pytest.mark.parametrize(
    ("item", "why", "said"),
    [
        ("depth-to-volume", "  ", "Give the reason"),
        ("no-such-family", WHY, "There is no such kind of problem"),
        (f"{SHELF}/no-such-question", WHY, "no such question"),
        ("depth-to-volume/", WHY, "no such question"),
        ("depth-to-volume", WHY, "is paused already"),
        ("volume-on-ascent", WHY, "the last kind of problem of Boyle's law"),
    ],
)
def test_what_cannot_be_paused_is_refused_with_a_sentence(staff, paused, item, why, said):
    with pytest.raises(Refused, match=said):
        actions.pause(item=item, by=staff, why=why)
    assert ItemPause.objects.count() == 1


def test_the_last_question_of_a_family_is_not_paused_by_itself(staff):
    *all_but_one, last = questions_of(SHELF)
    for question in all_but_one:
        actions.pause(item=item_of(SHELF, question), by=staff, why=WHY)
    with pytest.raises(Refused, match="the last question"):
        actions.pause(item=item_of(SHELF, last), by=staff, why=WHY)


def test_what_is_not_paused_cannot_be_taken_up(staff):
    with pytest.raises(Refused, match="is not paused"):
        actions.take_up(item="depth-to-volume", by=staff, why=WHY)


def test_where_everything_is_paused_nothing_begins_and_a_sentence_says_so(learner, boyle, staff):
    entries = [ItemPause(item=one, paused=True, at=NOON, by_name="Ines", why=WHY) for one in boyle.families]
    ItemPause.objects.bulk_create(entries)
    with pytest.raises(Refused, match="Every kind of problem of Boyle's law is paused"):
        actions.start_practice(learner=learner, competency=boyle, now=NOON)
