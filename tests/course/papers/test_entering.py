"""Entering a paper: marked as on the screen, in the same records, once; or a sentence that says why not."""

import re
from dataclasses import replace
from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from course.appointments import deeds
from course.papers.models import Paper
from pressure.marking import judge
from pressure.remarks import told_more
from quizzes import actions, queries
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, DecisionRecord, JournalLine, Sitting, Standing
from quizzes.policy import DEFAULT
from tests.course.papers.conftest import SLUG
from tests.course.papers.factories import form_of, written
from tests.quizzes.conftest import form_for, waiting

WHY = "Worked through together."


@pytest.fixture
def named(make, ready):
    """The ready trainee's paper in gauge and absolute; the rule is met with ten right."""
    return make(spares=0).papers.get()


def test_a_paper_answered_right_meets_the_competency_and_says_who_entered_it(send, named, trainee):
    page = send(named, written(named, "+" * len(named.questions)))
    record = DecisionRecord.objects.get(learner=trainee, competency=SLUG)
    assert (record.decided, record.score, record.supervised_by) == ("met", 10, "Ada Moor")
    assert "on paper, entered by Given Instructor" in record.accommodation
    assert len(record.evidence) == len(named.questions)
    assert Standing.objects.get(learner=trainee, competency=SLUG).state == "met"
    assert f"Paper {named.spaced_code} is entered." in page.text
    assert "met: The score reached 10" in page.text


def test_both_records_say_that_it_was_on_paper(send, named, trainee, desk):
    send(named, written(named, "+" * len(named.questions)))
    assert (
        "on paper, entered by Given Instructor" in desk.get(reverse("desks:trainee", args=[trainee.pk])).text
    )
    desk.force_login(trainee)
    assert "on paper, entered by Given Instructor" in desk.get(reverse("quizzes:record")).text


def test_a_blank_is_a_wrong_answer(send, named, trainee):
    send(named, written(named, "  " + "+" * (len(named.questions) - 2)))
    answers = Sitting.objects.get(entered_paper=named).attempts.order_by("number")
    assert [one.verdict for one in answers][:3] == ["wrong", "wrong", "right"]
    assert [one.understood for one in answers][:2] == ["left blank", "left blank"]
    row = Standing.objects.get(learner=trainee, competency=SLUG)
    until = DEFAULT.opens_again_on(timezone.localdate())
    assert (row.state, row.holds, row.held_until) == ("held", 1, until)


@pytest.mark.parametrize("slug", ["depth-pressure", "boyle-at-work", "mechanisms"])
@pytest.mark.parametrize("mark", ["+", "-"])
def test_a_paper_is_marked_as_the_page_marks(send, make, trainee, slug, mark):
    Standing.objects.update_or_create(
        learner=trainee, competency=slug, defaults={"state": "ready", "waits": False}
    )
    paper = make(slug, spares=0).papers.get()
    send(paper, written(paper, mark * len(paper.questions)))
    entered = Sitting.objects.get(entered_paper=paper).attempts.filter(number__lte=len(paper.questions))
    for attempt, question in zip(entered.order_by("number"), paper.questions, strict=True):
        marked = judge(form_of(question, mark), attempt.marking_key)
        said = told_more(marked, attempt.shown, attempt.key)
        kept = (attempt.verdict, attempt.typed, attempt.understood, attempt.slip, attempt.mend)
        assert kept == (said.verdict, said.typed, said.understood, said.slip, said.mend)
        assert (attempt.shown, attempt.key) == (question["shown"], question["key"])


def test_what_a_paper_leaves_undecided_goes_on_on_the_screen_from_the_score_reached(send, named, trainee):
    send(named, written(named, "-+" + "+" * (len(named.questions) - 5) + "-++"))
    sitting = Sitting.objects.get(entered_paper=named)
    asked = waiting(sitting)
    assert (sitting.ended, asked.number, sitting.purpose) == (None, len(named.questions) + 1, "check")
    assert Standing.objects.get(learner=trainee, competency=SLUG).holds == 0
    score = sitting.score
    actions.answer(learner=trainee, attempt_id=asked.pk, form=form_for(asked, right=True))
    assert Sitting.objects.get(pk=sitting.pk).score == score + 1


def test_sent_twice_it_counts_once(send, named, trainee):
    said = written(named, "+" * len(named.questions))
    send(named, said)
    again = send(named, said | {"q1-answer": "1 psi"})
    assert "This paper was entered before. The first entry counts." in again.text
    assert Sitting.objects.filter(learner=trainee, competency=SLUG, purpose="check").count() == 1
    assert DecisionRecord.objects.filter(learner=trainee, competency=SLUG).count() == 1
    assert JournalLine.objects.filter(verb="paper check entered").count() == 1


def test_it_is_read_back_first_without_a_verdict_and_nothing_is_entered_by_reading(send, named):
    said = written(named, "+-" + " " * (len(named.questions) - 2))
    page = send(named, said, step="read")
    for name in ("q1-answer", "q2-answer"):
        assert said.get(name, "") in page.text
    assert "left blank" in page.text
    assert not re.search(r">\s*(right|wrong|slip)\b", page.text)
    assert not Paper.objects.get(pk=named.pk).is_entered
    assert f'value="{said["answered_on"]}"' in send(named, said, step="mend").text


def test_text_that_cannot_be_read_gets_a_sentence_and_keeps_what_was_typed(send, make, trainee, ready):
    paper = make(spares=0).papers.get()
    number = 1 + next(at for at, one in enumerate(paper.questions) if one["shown"]["task"] == "number")
    said = written(paper, "+" * len(paper.questions)) | {f"q{number}-answer": "deep enough"}
    page = send(paper, said)
    assert 'value="deep enough"' in page.text
    assert list(page.context["form"].errors) == [f"q{number}-answer"]
    assert not Sitting.objects.filter(learner=trainee, competency=SLUG, purpose="check").exists()


def test_letters_may_be_capitals_and_others_are_refused(send, make, trainee):
    Standing.objects.create(learner=trainee, competency="mechanisms", state="ready")
    paper = make("mechanisms", spares=0).papers.get()
    at = 1 + next(at for at, one in enumerate(paper.questions) if one["shown"]["task"] == "choice")
    said = written(paper, "+" * len(paper.questions))
    page = send(paper, said | {f"q{at}-answer": "q"})
    assert "Give one letter from a to" in page.text
    send(paper, said | {f"q{at}-answer": said[f"q{at}-answer"].upper()})
    assert Attempt.objects.get(sitting__entered_paper=paper, number=at).verdict == "right"


def test_a_table_with_a_blank_is_wrong_and_keeps_what_was_written(send, make, trainee):
    Standing.objects.create(learner=trainee, competency="boyle-at-work", state="ready")
    paper = make("boyle-at-work", spares=0).papers.get()
    at = 1 + next(at for at, one in enumerate(paper.questions) if one["shown"]["task"] == "table")
    said = written(paper, "+" * len(paper.questions))
    del said[f"q{at}-answer-2"]
    send(paper, said)
    attempt = Attempt.objects.get(sitting__entered_paper=paper, number=at)
    assert (attempt.verdict, attempt.understood) == ("wrong", "left blank in part")
    assert said[f"q{at}-answer-1"] in attempt.typed


def test_a_check_that_is_not_open_says_why_until_it_is_opened_by_hand(send, make, quay, trainee):
    paper = make("boyle", spares=0).papers.get()
    said = written(paper, "+" * len(paper.questions))
    assert "is not open to Given Trainee" in send(paper, said).text
    assert not Paper.objects.get(pk=paper.pk).is_entered
    by = quay.people["instructor"]
    actions.open_check_again(learner=trainee, competency=COMPETENCIES["boyle"], by=by, why=WHY)
    assert "is entered" in send(paper, said).text
    assert queries.standing_for(trainee, "boyle").state == "met"


def test_the_page_says_at_once_why_it_could_not_count_and_where_to_waive_it(desk, make, trainee):
    paper = make("depth-pressure", spares=0).papers.get()
    page = desk.get(reverse("papers:enter", args=[paper.code])).text
    assert "3 to go" in page
    assert reverse("desks:trainee", args=[trainee.pk]) in page


def test_a_paper_printed_before_a_hold_does_not_count_after_it(send, named, trainee):
    Standing.objects.filter(learner=trainee, competency=SLUG).update(holds=1)
    page = send(named, written(named, "+" * len(named.questions)))
    assert "printed for a mark of 10. With the holds of Given Trainee the mark to reach is 12" in page.text


def test_a_check_open_on_the_screen_is_finished_there(send, named, trainee):
    actions.start_check(learner=trainee, competency=COMPETENCIES[SLUG])
    assert "open on the screen" in send(named, written(named, "+" * len(named.questions))).text


def test_a_supervised_check_needs_to_know_who_watched(send, named, quay, trainee):
    policy = replace(DEFAULT, supervised=(SLUG,))
    actions.set_policy(policy=policy, by=quay.people["administrator"], why=WHY)
    said = written(named, "+" * len(named.questions))
    assert "Say who watched" in send(named, said | {"watched_by": " "}).text
    assert "is entered" in send(named, said).text


def test_a_check_set_for_another_hour_only_does_not_count_on_paper(send, named, quay, trainee):
    opens = timezone.now() + timedelta(days=1)
    plan = deeds.Plan(False, [trainee], [SLUG], opens, opens + timedelta(hours=1), only=True)
    one = deeds.draft(cohort=quay.cohort, by=quay.people["instructor"], plan=plan)
    deeds.send(appointment_id=one.pk, by=quay.people["instructor"])
    page = send(named, written(named, "+" * len(named.questions)))
    assert "and opens only then" in page.text


def test_a_paper_answered_on_the_day_it_was_set_for_counts_for_that_time(send, named, quay, trainee):
    now = timezone.now()
    plan = deeds.Plan(False, [trainee], [SLUG], now, now + timedelta(hours=1), supervised=True)
    one = deeds.draft(cohort=quay.cohort, by=quay.people["instructor"], plan=plan)
    deeds.send(appointment_id=one.pk, by=quay.people["instructor"])
    said = written(named, "+" * len(named.questions))
    assert "Say who watched" in send(named, said | {"watched_by": ""}).text
    send(named, said)
    assert Sitting.objects.get(entered_paper=named).began == now


@pytest.mark.parametrize(
    ("days", "sentence"), [(1, "has not come yet"), (-1, "printed later"), (None, "Give the day")]
)
def test_the_day_lies_between_the_printing_and_today(send, named, days, sentence):
    day = "" if days is None else (timezone.localdate() + timedelta(days=days)).isoformat()
    said = written(named, "+" * len(named.questions)) | {"answered_on": day}
    assert sentence in send(named, said).text


def test_a_spare_is_entered_for_a_trainee_of_the_cohort_and_for_nobody_else(send, make, quay, trainee, ready):
    spare = make(trainees=[]).papers.get()
    said = written(spare, "+" * len(spare.questions))
    assert "Say whose paper this is." in send(spare, said).text
    for who in ("stranger", "instructor"):
        assert "Choose from the list." in send(spare, said | {"trainee": quay.people[who].pk}).text
    send(spare, said | {"trainee": trainee.pk})
    assert Paper.objects.get(pk=spare.pk).learner == trainee


def test_a_code_is_found_as_it_is_typed_and_only_in_ones_own_cohorts(desk, named, quay):
    find = reverse("papers:find")
    typed = f" {named.code[:3].lower()}-{named.code[3:].lower()} "
    assert desk.get(find, {"code": typed}).url == named.get_absolute_url()
    desk.force_login(quay.people["outsider"])
    page = desk.get(find, {"code": named.code}).text
    assert "No paper of your cohorts has this code" in page
    assert f'value="{named.code}"' in page
