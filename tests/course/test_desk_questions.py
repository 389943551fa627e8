"""Questions in figures: what the table and one item's page say, and pausing from the page."""

import pytest
from django.urls import reverse
from scipy import stats

from course.desks.portraits import portrait
from course.desks.statistics import FLAGGED, KINDS, QUESTIONS, Counted, Wish, figures, kept_counts, sheet
from pressure import catalogue
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import ItemPause, ItemTally
from quizzes.models.pauses import paused_items
from quizzes.statistics.flags import Flag
from quizzes.statistics.keeping import Answer, Counts, add_block
from tests.benchmarks.ready_counts import fill
from tests.quizzes.test_statistics import PEOPLE

WHY = "Two of us read the key otherwise."
QUESTION = "boyle-questions/fills-in-a-full-bell"


def tallied(item="air-table", **counts):
    family = item.partition("/")[0]
    return ItemTally.objects.create(item=item, family=family, **counts)


def open_as(client, quay, who, name="desks:items", *arguments, **query):
    client.force_login(quay.people[who])
    return client.get(reverse(name, args=arguments), query)


def test_every_kind_of_problem_of_the_course_has_a_row_before_any_answer(quay):
    found = sheet(Wish())
    assert found.shown == found.among == len({f for one in COMPETENCIES.values() for f in one.families})
    assert "no first answers yet" in found.rows


def test_the_table_shows_share_and_correlation_with_their_intervals(client, quay):
    tallied(rests={"9/8": [60, 10], "9/4": [20, 10]}, chosen={"": 20})
    page = open_as(client, quay, "instructor", competency="boyle-at-work").text
    row = page[page.index("/desk/questions/air-table/") :].split("</tr>")[0]
    assert "80 % (71 to 87)" in row  # Wilson, 80 of 100: 0.711 to 0.867, see test_statistics.py
    r = stats.pearsonr([8] * 70 + [4] * 30, [1] * 60 + [0] * 10 + [1] * 20 + [0] * 10)
    low, high = r.confidence_interval()  # Fisher's
    assert f"{r.statistic:.2f} ({low:.2f} to {high:.2f})" in row
    assert "100" in row


@pytest.mark.parametrize(
    ("counted", "flag"),
    [
        (Counted('{"9/8": [2, 30], "9/3": [30, 2]}', "{}"), Flag.SUSPECT),
        (Counted('{"9/8": [10, 40]}', "{}"), Flag.TOO_HARD),
        (Counted('{"9/8": [40, 60]}', '{"": 40, "inverted": 20}'), Flag.UNEXPLAINED),
        (Counted('{"9/8": [99, 1]}', "{}", 100, 0), Flag.TELLS_NOTHING),
        (Counted('{"9/8": [70, 30], "9/2": [70, 30]}', "{}"), Flag.SORTS_POORLY),
        (Counted('{"9/8": [60, 40]}', "{}", 58, 42), Flag.TEACHING_IDLE),
        (Counted('{"9/8": [30, 8]}', "{}", 0, 0, 24, 20, 3, 20), Flag.DRIFT),
    ],
)
def test_each_flag_is_raised_by_the_counts_that_call_for_it(counted, flag):
    assert flag in [one.flag for one in figures(counted).findings]


def test_a_good_item_and_one_with_too_few_answers_have_no_flag():
    good = Counted('{"9/8": [150, 10], "9/4": [20, 20]}', '{"inverted": 30}', 80, 120)
    few = Counted('{"9/8": [2, 20]}', "{}")
    assert [figures(one).findings for one in (good, few)] == [(), ()]


def test_the_table_is_narrowed_by_flag_by_competency_and_to_questions(quay):
    tallied(rests={"9/8": [10, 40]})
    tallied(QUESTION, rests={"9/8": [10, 40]})
    assert sheet(Wish(flag=FLAGGED)).shown == 1
    assert sheet(Wish(flag=Flag.TOO_HARD.name, competency="boyle")).shown == 0
    narrowed = sheet(Wish(show=QUESTIONS, flag="TOO_HARD", competency="boyle-at-work"))
    assert (narrowed.shown, narrowed.among) == (1, 16)
    assert "Fills in a full bell" in narrowed.rows


def test_what_cannot_be_read_of_the_choice_is_said_and_left_out(client, quay):
    page = open_as(client, quay, "officer", flag="no-such", competency="nowhere", show="nothing")
    assert page.status_code == 200
    assert "There is no such flag. All are shown." in page.text
    assert "The course has no such competency. All are shown." in page.text


@pytest.fixture
def lsat():
    """The answers of LSAT-6, kept as those to five kinds of problem; see tests/quizzes/test_statistics.py."""
    families = COMPETENCIES["depth-found"].families
    counts = {family: Counts() for family in families}
    for pattern in PEOPLE:
        marks = zip(families, pattern, strict=True)
        block = [Answer(family, "", mark == "1", "", "", None, "us") for family, mark in marks]
        add_block(counts, block, frozenset())
    for family, counted in counts.items():
        row = ItemTally(item=family, family=family)
        row.counts = counted
        row.save()
    return families


def test_the_published_figures_of_lsat_6_come_out_of_the_kept_counts(quay, lsat):
    counted = kept_counts(KINDS)
    found = [figures(counted[family]).item for family in lsat]
    assert [round(one.right.value, 3) for one in found] == [0.924, 0.709, 0.553, 0.763, 0.870]
    assert [round(one.discrimination.value, 4) for one in found] == [0.1128, 0.1532, 0.1728, 0.1444, 0.1216]


def test_the_published_alpha_of_lsat_6_stands_on_the_page(client, quay, lsat):
    page = open_as(client, quay, "instructor", competency="depth-found").text
    assert "alpha of its first blocks is 0.29 " in page or "alpha of its first blocks is 0.30 " in page
    assert sheet(Wish(competency="depth-found")).together.alpha.value == pytest.approx(0.2950, abs=5e-5)


def test_one_item_says_its_slips_times_draws_and_drift(client, quay):
    fill(people=60)
    page = open_as(client, quay, "instructor", "desks:item", "air-table").text
    for said in ("Slip of kind 1", "Half of 60 answers took between", "Chi-square is"):
        assert said in page
    assert "The alarm sounded at answer" in page or "the sum stands at" in page
    assert page.count("<svg") >= 2
    assert page.count('role="img"') == page.count("<desc ")


def test_every_family_and_question_opens(client, quay):
    client.force_login(quay.people["officer"])
    fill(people=3)
    for item in (*catalogue.families(), QUESTION):
        name = "desks:question" if "/" in item else "desks:item"
        assert client.get(reverse(name, args=item.split("/"))).status_code == 200


@pytest.mark.parametrize("address", ["no-such-family/", "boyle-questions/no-such-question/", "air-table/x/"])
def test_what_the_shelf_does_not_hold_does_not_exist(client, quay, address):
    client.force_login(quay.people["officer"])
    assert client.get(f"{reverse('desks:items')}{address}").status_code == 404


def post(client, quay, who, item="depth-to-volume", **form):
    client.force_login(quay.people[who])
    return client.post(reverse("desks:item", args=[item]), form, follow=True)


def test_an_instructor_pauses_with_a_reason_and_takes_it_up_again(client, quay):
    page = post(client, quay, "instructor", deed="pause", why=WHY).text
    assert "is paused: it is not asked any more" in page
    assert paused_items() == {"depth-to-volume"}
    assert "paused" in open_as(client, quay, "outsider", "desks:families").text
    assert "Not asked for now" in open_as(client, quay, "outsider", "desks:rules").text
    page = post(client, quay, "officer", deed="take-up", why="Mended.").text
    assert "is asked again" in page
    assert paused_items() == frozenset()


def test_a_refusal_stands_at_the_field_and_keeps_what_was_typed(client, quay):
    actions.pause(item="volume-on-ascent", by=quay.people["officer"], why=WHY)
    page = post(client, quay, "instructor", deed="pause", why="So is this one.").text
    assert "the last kind of problem of Boyle" in page
    assert "So is this one." in page
    page = post(client, quay, "instructor", item="air-table", deed="pause", why=" ").text
    assert "Give the reason" in page
    assert ItemPause.objects.count() == 1


def test_the_same_pause_sent_twice_counts_once(client, quay):
    post(client, quay, "instructor", deed="pause", why=WHY)
    page = post(client, quay, "instructor", deed="pause", why=WHY).text
    assert "is paused already" in page
    assert ItemPause.objects.get().paused


def test_an_instructor_reads_no_name_out_of_reach_in_the_journal(client, quay):
    post(client, quay, "officer", deed="pause", why=WHY)
    assert "By a colleague." in open_as(client, quay, "instructor", "desks:item", "depth-to-volume").text
    assert "By Given Officer." in open_as(client, quay, "officer", "desks:item", "depth-to-volume").text


def test_the_pages_take_a_fixed_number_of_queries(quay, django_assert_num_queries):
    for people in (2, 40):
        fill(people=people)
        with django_assert_num_queries(2):
            sheet(Wish())
        with django_assert_num_queries(3):
            portrait("boyle-questions", quay.people["officer"])
    assert len(kept_counts(QUESTIONS)) > 100
