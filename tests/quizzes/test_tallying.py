"""The kept counts stand in step with the answers, can be proved against them, and made anew."""

from datetime import timedelta
from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.actions import tallying
from quizzes.competencies import COMPETENCIES
from quizzes.models import AnswerCount, Attempt, CountedBlock, ItemTally, Sitting, Standing
from quizzes.proofs import disagreements
from quizzes.reviews import Ruled
from quizzes.statistics.drift import ALARM, WRONG
from quizzes.statistics.keeping import LONGEST, draw_class
from tests.quizzes.conftest import NOON, give

EIGHT = COMPETENCIES["boyle-at-work"]
KINDS = len(EIGHT.families)
MIXED = ("+-" * KINDS)[:KINDS]


def check_of(learner, competency=EIGHT):
    Standing.objects.get_or_create(learner=learner, competency=competency.slug)
    Standing.objects.filter(learner=learner).update(state="ready", streak=3, held_until=None, waits=False)
    return actions.start_check(learner=learner, competency=competency, now=NOON)


def first_answers():
    return {row.item: row.counts.tally().split for row in ItemTally.objects.all()}


def test_a_first_block_is_counted_with_its_last_answer_and_not_before(learner):
    sitting = check_of(learner)
    give(sitting, "+" * (KINDS - 1))
    assert not CountedBlock.objects.exists()
    give(sitting, "-")
    assert CountedBlock.objects.get().sitting == sitting
    assert {
        item: split.answers for item, split in first_answers().items() if "/" not in item
    } == dict.fromkeys(EIGHT.families, 1)


def test_every_answer_is_counted_against_the_others_of_its_block(learner):
    give(check_of(learner), "-" + "+" * (KINDS - 1))
    wrong = Attempt.objects.get(number=1)
    assert ItemTally.objects.get(item=wrong.family).rests == {f"{KINDS}/{KINDS - 1}": [0, 1]}
    right = Attempt.objects.get(number=2)
    assert ItemTally.objects.get(item=right.family).rests == {f"{KINDS}/{KINDS - 2}": [1, 0]}


def test_a_question_of_a_lesson_is_counted_beside_its_family(learner):
    give(check_of(learner), "+" * KINDS)
    asked = Attempt.objects.get(family="boyle-questions", diagnostic=True)
    item = f"boyle-questions/{asked.shown['item']}"
    assert first_answers()[item] == first_answers()["boyle-questions"] == (1, 0)


def test_only_the_first_answer_of_a_person_counts(learner, stranger):
    give(check_of(learner), "-" * KINDS)
    give(check_of(learner), "+" * KINDS)
    give(check_of(stranger), "+" * KINDS)
    assert {first_answers()[family] for family in EIGHT.families} == {(1, 1)}
    assert list(disagreements()) == []


def test_what_follows_the_block_and_what_is_practised_does_not_count(learner, boyle):
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+++")
    assert not ItemTally.objects.exists()
    give(check_of(learner, boyle), "++---")
    assert {split.answers for split in first_answers().values()} == {1}


def test_the_first_answer_in_practice_is_kept_as_the_one_before(learner, boyle):
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "-++")
    first = Attempt.objects.first().family
    give(check_of(learner, boyle), "++", NOON + timedelta(hours=1))
    before = {row.item: row.counts.before for row in ItemTally.objects.all()}
    other = next(family for family in boyle.families if family != first)
    assert before == {first: [0, 1], other: [1, 0]}


def test_slips_times_and_draws_are_counted(learner, boyle):
    give(check_of(learner, boyle), "--")
    for attempt in Attempt.objects.filter(diagnostic=True):
        row = ItemTally.objects.get(item=attempt.family)
        took = round((attempt.answered_at - attempt.asked_at).total_seconds())
        assert row.chosen == {attempt.slip: 1}
        assert row.seconds == ({str(min(took, LONGEST)): 1} if took else {})
        assert row.draws == {draw_class(attempt.shown): [0, 1]}


def test_the_alarm_sounds_after_eight_people_were_wrong(learner, stranger, boyle):
    for _ in range(ALARM // WRONG):
        give(check_of(PersonFactory(), boyle), "--")
    assert {row.drift_alarm for row in ItemTally.objects.all()} == {ALARM // WRONG}


def test_every_answer_of_a_person_is_counted_by_what_it_came_to(learner, boyle):
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+-+-+")
    counts = AnswerCount.objects.filter(learner=learner)
    assert sum(row.answers for row in counts if row.verdict == "right") == 3
    assert sum(row.answers for row in counts if row.verdict == "wrong") == 2


def test_the_counts_are_proved_rebuilt_and_proved_again(learner, stranger):
    give(check_of(learner), MIXED)
    give(check_of(stranger), MIXED[::-1])
    kept = [list(model.objects.values()) for model in (ItemTally, CountedBlock)]
    said = StringIO()
    call_command("tallies", "--prove", stdout=said)
    assert "agree" in said.getvalue()
    call_command("tallies", "--rebuild", stdout=said)
    assert [list(model.objects.values()) for model in (ItemTally, CountedBlock)] == kept


@pytest.mark.parametrize(
    "spoil",
    [
        lambda: ItemTally.objects.filter(item="air-table").update(rests={"9/3": [4, 1]}),
        lambda: ItemTally.objects.filter(item="air-table").update(drift_score=9),
        lambda: ItemTally.objects.filter(item="air-table").delete(),
        lambda: CountedBlock.objects.all().delete(),
        lambda: AnswerCount.objects.filter(family="air-table").update(answers=7),
    ],
)
def test_a_count_that_was_spoilt_is_found_and_mended(learner, spoil):
    give(check_of(learner), MIXED)
    spoil()
    with pytest.raises(CommandError, match="do not agree"):
        call_command("tallies", "--prove", stdout=StringIO())
    call_command("tallies", "--rebuild", stdout=StringIO())
    assert list(disagreements()) == []


@pytest.mark.parametrize("ruled", [Ruled.RIGHT, Ruled.ASIDE])
def test_a_ruling_on_an_answer_is_followed_into_the_counts(learner, stranger, ruled):
    give(check_of(learner), "-" + "+" * (KINDS - 1))
    give(check_of(stranger), "+" * KINDS)
    wrong = Attempt.objects.get(learner=learner, number=1)
    Attempt.objects.filter(pk=wrong.pk).note_ruling(ruled)
    tallying.follow_ruling(Attempt.objects.get(pk=wrong.pk))
    assert first_answers()[wrong.family] == ((2, 0) if ruled is Ruled.RIGHT else (1, 0))
    assert list(disagreements()) == []


def test_a_block_without_an_end_is_not_counted(learner):
    sitting = check_of(learner)
    give(sitting, "--")
    Sitting.objects.filter(pk=sitting.pk).update(ended=NOON, outcome="held")
    tallying.rebuild()
    assert not CountedBlock.objects.exists()
    assert list(disagreements()) == []


@pytest.mark.parametrize(
    ("shown", "named"),
    [
        ({"item": "the-jack", "facts": {"place": 3}, "system": "us"}, "the-jack"),
        ({"item": "", "facts": {"scene": 2.0, "depth_ft": 42.0}, "system": "us"}, "us, 33 to 66 ft"),
        ({"item": "", "facts": {"scene": 2.0, "depth_m": 9.5}, "system": "metric"}, "metric, 0 to 10 m"),
        ({"item": "", "facts": {"scene": 2.0, "warm": 9.0}, "system": "us"}, "us, scene 2"),
        ({"facts": {}, "system": "us"}, "us"),
    ],
)
def test_draws_that_are_alike_share_a_class(shown, named):
    assert draw_class(shown) == named
