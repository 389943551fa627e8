"""Practice as a trainee meets it: with plain forms, and with parts swapped by htmx."""

import pytest
from django.urls import reverse
from django.utils import timezone
from django.utils.html import conditional_escape

from pressure import catalogue, record
from pressure.draw import draw
from pressure.mixing import mix
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, Standing
from tests.quizzes.conftest import right_text, waiting, wrong_text

PRACTICE = reverse("quizzes:practice", args=["boyle"])
HTMX = {"HX-Request": "true"}


@pytest.fixture
def site(client, learner):
    client.force_login(learner)
    return client


@pytest.fixture
def attempt(site, learner, boyle):
    return waiting(actions.start_practice(learner=learner, competency=boyle))


def post(site, attempt, typed, **extra):
    return site.post(reverse("quizzes:answer", args=[attempt.pk]), {"answer": typed}, **extra)


def test_reading_the_page_writes_nothing(site):
    assert "Begin practice" in site.get(PRACTICE).text
    assert not Attempt.objects.exists()


def test_beginning_leads_to_a_problem_that_a_reload_shows_again(site):
    first = site.post(reverse("quizzes:practice-start", args=["boyle"]), follow=True)
    assert (
        first.context["attempt"].shown["situation"]
        == site.get(PRACTICE).context["attempt"].shown["situation"]
    )


def test_no_part_of_the_key_is_on_the_page_before_the_answer(site, attempt):
    text = site.get(PRACTICE).text
    key = attempt.key
    secrets = [key["answer_text"], key["sense"], *(slip["mend"] for slip in key["slips"])]
    assert not [secret for secret in secrets if secret and secret in text]


def test_without_javascript_an_answer_redirects_to_its_verdict(site, attempt):
    response = post(site, attempt, right_text(attempt))
    assert response.status_code == 302
    assert "Right." in site.get(response.url).text


def test_with_htmx_only_the_card_comes_back(site, attempt):
    response = post(site, attempt, right_text(attempt), headers=HTMX)
    assert "Right." in response.text
    assert "<html" not in response.text
    assert 'id="card"' in response.text


def test_a_wrong_answer_offers_the_solution_one_step_at_a_time(site, attempt):
    url = post(site, attempt, wrong_text(attempt)).url
    whys = [conditional_escape(step["why"]) for step in attempt.key["steps"]]
    assert site.get(url).text.count("<math") == 0
    assert whys[0] in site.get(f"{url}?steps=1").text
    assert whys[1] not in site.get(f"{url}?steps=1").text
    assert whys[-1] in site.get(f"{url}?steps=99").text


@pytest.mark.parametrize("nonsense", ["-1", "x", "1e9", "٣", "9" * 50, ""])
def test_a_nonsense_number_of_steps_shows_none(site, attempt, nonsense):
    url = post(site, attempt, wrong_text(attempt)).url
    assert site.get(url, {"steps": nonsense}).status_code == 200


def test_what_was_typed_is_kept_beside_the_sentence_that_says_what_is_wrong(site, attempt):
    response = post(site, attempt, "about 3 <b>")
    assert 'value="about 3 &lt;b&gt;"' in response.text
    assert 'aria-invalid="true"' in response.text
    assert "Nothing was counted" in response.text
    assert not Attempt.objects.get(pk=attempt.pk).is_answered


def test_an_answer_sent_again_says_that_the_first_counts(site, attempt):
    post(site, attempt, right_text(attempt))
    response = post(site, attempt, wrong_text(attempt))
    assert "The first answer counts" in site.get(response.url).text
    assert Standing.objects.get().practised == 1


def test_anothers_attempt_reads_like_one_that_does_not_exist(client, stranger, attempt):
    client.force_login(stranger)
    urls = [reverse(name, args=[pk]) for name in ("quizzes:attempt",) for pk in (attempt.pk, 10**9)]
    mine, none = (client.get(url) for url in urls)
    assert (mine.status_code, mine.content) == (none.status_code, none.content)
    assert mine.status_code == 404
    assert post(client, attempt, "1 ft3").status_code == 404


def test_an_unknown_competency_is_not_found(site):
    assert site.get(reverse("quizzes:practice", args=["boil"])).status_code == 404
    assert site.post(reverse("quizzes:check-start", args=["boil"])).status_code == 404


def test_an_answer_needs_a_post(site, attempt):
    assert site.get(reverse("quizzes:answer", args=[attempt.pk])).status_code == 405


def test_a_first_problem_stands_below_one_worked_through_and_says_why_it_was_chosen(site, attempt):
    text = site.get(PRACTICE).text
    assert "First, one worked through" in text
    assert "New: you have not met this kind of problem yet." in text


def test_hints_open_one_step_at_a_time_and_leave_the_row_as_it_was(site, learner, attempt):
    Standing.objects.update(streak=2)
    steps = attempt.key["steps"]
    for _ in range(len(steps) + 2):
        site.post(reverse("quizzes:hint", args=[attempt.pk]))
    assert Attempt.objects.get(pk=attempt.pk).hints == len(steps)
    assert "Another hint" not in site.get(PRACTICE).text
    post(site, attempt, right_text(attempt))
    assert Standing.objects.get().streak == 2


def test_a_hint_is_for_ones_own_open_problem_only(client, stranger, site, attempt):
    post(site, attempt, right_text(attempt))
    assert site.post(reverse("quizzes:hint", args=[attempt.pk])).status_code == 404
    client.force_login(stranger)
    assert client.post(reverse("quizzes:hint", args=[attempt.pk + 1])).status_code == 404


@pytest.mark.parametrize("stage", [0, 1, 2, 3])
@pytest.mark.parametrize("competency", COMPETENCIES)
def test_no_stage_of_help_gives_the_answer_away(site, learner, competency, stage):
    attempt = waiting(actions.start_practice(learner=learner, competency=COMPETENCIES[competency]))
    Attempt.objects.filter(pk=attempt.pk).update(help=stage, hints=9)
    text = site.get(reverse("quizzes:practice", args=[competency])).text.split("</details>")[-1]
    cells = attempt.key.get("cells", [attempt.key])
    assert not [cell for cell in cells if f">{cell['answer_text'].split()[0]}<" in text]


@pytest.mark.parametrize("slug", list(catalogue.families()))
def test_no_hint_gives_the_answer_of_a_mixed_form_away(site, attempt, slug):
    form = next(filter(None, (mix(draw(slug, seed, "us")) for seed in range(20))), None)
    if form is None:
        pytest.skip("has no mixed form")
    Attempt.objects.filter(pk=attempt.pk).update(
        hints=9, help=3, family=slug, shown=record.shown(form), key=record.key(form)
    )
    text = site.get(PRACTICE).text
    for number in (record.key(form)["answer_text"], record.key(form.plain)["answer_text"]):
        assert f">{number.split()[0]}<" not in text
        assert number not in text
    assert not [one for one in form.key.slips if one.label in text or one.mend in text]


def test_a_review_that_has_come_round_is_offered_asked_and_then_over(site, learner, boyle):
    row = Standing.objects.create(learner=learner, competency="boyle", review_on=timezone.localdate())
    assert "has come round" in site.get(reverse("home")).text
    page = site.post(reverse("quizzes:review-start", args=["boyle"]), follow=True)
    for _ in boyle.families:
        attempt = page.context["attempt"]
        assert attempt.sitting.purpose == "review"
        post(site, attempt, right_text(attempt))
        page = site.get(PRACTICE)
    row.refresh_from_db()
    assert (row.reviews, page.context["attempt"]) == (1, None)
    assert "has come round" not in page.text


def test_a_review_that_has_not_come_round_is_refused_in_a_sentence(site):
    page = site.post(reverse("quizzes:review-start", args=["boyle"]), follow=True)
    assert "No review has come round here" in page.text
