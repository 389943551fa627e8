"""The office: who may add and change whom, what it writes down, and what the pages say."""

from datetime import date

import pytest
from django.urls import reverse

from course.people import roster
from course.people.models import Cohort, Person, Role
from quizzes.errors import Refused
from quizzes.models import JournalLine

ROSTER, ADD = reverse("people:roster"), reverse("people:person-add")
COHORTS, ADD_COHORT = reverse("people:cohorts"), reverse("people:cohort-add")


def make(name, role, **fields):
    return Person.objects.create_user(
        f"{name.split()[0].lower()}@quay.example", name=name, role=role, **fields
    )


@pytest.fixture
def officer(db):
    return make("Ines Holm", Role.OFFICER)


@pytest.fixture
def administrator(db):
    return make("Per Lund", Role.ADMINISTRATOR)


@pytest.fixture
def mara(db):
    return make("Mara Quill", Role.TRAINEE)


@pytest.fixture
def cohort(db):
    return Cohort.objects.create(name="Quay 26A", started=date(2026, 1, 12))


def address(person):
    return reverse("people:person", args=[person.pk])


def entry(**fields):
    return {
        "name": "Otto Brandt",
        "email": "otto@quay.example",
        "role": "trainee",
        "is_active": "on",
    } | fields


def lines():
    return list(JournalLine.objects.values_list("actor_name", "verb", "subject_name"))


@pytest.mark.parametrize("role", [Role.TRAINEE, Role.INSTRUCTOR])
@pytest.mark.parametrize("page", [ROSTER, ADD, COHORTS, ADD_COHORT])
def test_the_office_does_not_exist_for_others(client, db, role, page):
    client.force_login(make("Ada Fenn", role))
    assert client.get(page).status_code == 404
    assert client.post(page, entry()).status_code in (404, 405)
    assert not Person.objects.filter(email="otto@quay.example").exists()


def test_a_person_added_signs_in_through_the_link_that_the_officer_hands_on(client, officer, cohort):
    client.force_login(officer)
    page = client.post(ADD, entry(email="Otto@Quay.Example", learns_in=[cohort.pk]))
    otto = Person.objects.get(email="otto@quay.example")
    assert list(otto.cohorts.all()) == [cohort]
    assert not otto.has_usable_password()
    assert "Set your password" in client.get(page.context["link"], follow=True).text
    assert ("Ines Holm", "person added", "Otto Brandt") in lines()


def test_a_link_asked_for_later_is_written_down(client, officer, mara):
    client.force_login(officer)
    page = client.post(reverse("people:person-link", args=[mara.pk]))
    assert page.context["link"] in page.text
    assert lines() == [("Ines Holm", "person changed", "Mara Quill")]


@pytest.mark.parametrize("role", ["officer", "administrator"])
def test_an_officer_gives_neither_their_own_role_nor_the_one_above(client, officer, role):
    client.force_login(officer)
    assert f'value="{role}"' not in client.get(ADD).text
    page = client.post(ADD, entry(role=role))
    assert "role" in page.context["form"].errors
    assert Person.objects.count() == 1
    assert lines() == []


def test_an_administrator_makes_an_officer(client, administrator):
    client.force_login(administrator)
    client.post(ADD, entry(role="officer"))
    assert Person.objects.get(email="otto@quay.example").role == Role.OFFICER


def test_an_officer_reads_an_administrators_entry_but_changes_nothing(client, officer, administrator):
    client.force_login(officer)
    assert "Only an administrator changes" in client.get(address(administrator)).text
    assert client.post(address(administrator), entry()).status_code == 403
    link = client.post(reverse("people:person-link", args=[administrator.pk]), follow=True)
    assert "Only an administrator changes this person." in link.text
    assert lines() == []


def test_nobody_changes_their_own_role_or_shuts_themselves_out(client, administrator):
    client.force_login(administrator)
    client.post(address(administrator), entry(email=administrator.email, role="trainee"))
    client.post(address(administrator), entry(email=administrator.email, role="administrator", is_active=""))
    administrator.refresh_from_db()
    assert administrator.role == Role.ADMINISTRATOR
    assert administrator.is_active


@pytest.mark.parametrize("change", [{"role": Role.TRAINEE}, {"is_active": False}])
def test_the_rule_on_oneself_holds_below_the_page_too(administrator, change):
    fields = {"name": "Per Lund", "email": administrator.email, "role": Role.ADMINISTRATOR} | change
    with pytest.raises(Refused, match="Nobody"):
        roster.change_person(actor=administrator, person=administrator, entry=roster.PersonEntry(**fields))


def test_a_change_is_written_down_with_what_was_before(client, officer, mara, cohort):
    client.force_login(officer)
    new = entry(name="Mara Quill", email=mara.email, role="instructor", teaches=[cohort.pk])
    client.post(address(mara), new)
    line = JournalLine.objects.get()
    assert line.verb == "person changed"
    assert line.details == {"role": ["trainee", "instructor"], "teaches": [[], ["Quay 26A"]]}


def test_an_entry_sent_again_unchanged_writes_no_line(client, officer, mara):
    client.force_login(officer)
    client.post(address(mara), entry(name=mara.name, email=mara.email))
    assert lines() == []


def test_an_address_in_use_is_refused_at_its_field_and_what_was_typed_stays(client, officer, mara):
    client.force_login(officer)
    page = client.post(ADD, entry(email="MARA@quay.example")).text
    assert 'aria-describedby="id_email_helptext id_email_error"' in page
    assert 'href="#id_email"' in page
    assert 'value="Otto Brandt"' in page
    assert Person.objects.count() == 2


def test_the_database_refuses_a_twin_that_came_in_between(officer, mara):
    twin = roster.PersonEntry(name="Mara Twin", email="MARA@quay.example", role=Role.TRAINEE)
    with pytest.raises(Refused, match="has this address"):
        roster.add_person(actor=officer, entry=twin)
    assert lines() == []


def test_a_trainee_teaches_no_cohort(client, officer, cohort):
    client.force_login(officer)
    page = client.post(ADD, entry(teaches=[cohort.pk]))
    assert "A trainee teaches no cohort." in page.text
    assert Person.objects.count() == 1


def test_a_search_looks_in_names_addresses_and_cohorts(client, officer, mara, cohort):
    cohort.trainees.add(mara)
    client.force_login(officer)
    for sought in ("quill", "mara@", "26a"):
        assert list(client.get(ROSTER, {"q": sought}).context["page"]) == [mara]
    assert "Nobody found" in client.get(ROSTER, {"q": "<b>nobody</b>"}).text
    assert "<b>nobody</b>" not in client.get(ROSTER, {"q": "<b>nobody</b>"}).text


def test_the_roster_is_paged_by_fifty_at_the_same_cost(
    client, officer, cohort, django_assert_max_num_queries
):
    Person.objects.bulk_create(Person(email=f"t{n}@quay.example", name=f"T {n:03}") for n in range(120))
    cohort.trainees.set(Person.objects.filter(role=Role.TRAINEE))
    client.force_login(officer)
    with django_assert_max_num_queries(6):
        page = client.get(ROSTER, {"page": 2, "q": "quay"})
    assert len(page.context["page"]) == 50
    assert "?q=quay&amp;page=3" in page.text


def test_a_cohort_is_opened_closed_and_written_down(client, officer):
    client.force_login(officer)
    client.post(ADD_COHORT, {"name": "Quay 26B", "started": "2026-03-02"})
    made = Cohort.objects.get()
    form = {"name": "Quay 26B", "started": "2026-03-02", "closed": "on"}
    client.post(reverse("people:cohort", args=[made.pk]), form)
    made.refresh_from_db()
    assert made.closed
    assert [verb for _, verb, _ in lines()] == ["cohort changed", "cohort added"]
    assert JournalLine.objects.first().details == {"closed": [False, True]}


def test_two_cohorts_of_one_name_are_refused_at_the_field(client, officer, cohort):
    client.force_login(officer)
    page = client.post(ADD_COHORT, {"name": cohort.name, "started": "2026-03-02"})
    assert "There is a cohort of this name." in page.text
    assert 'aria-invalid="true"' in page.text
    assert Cohort.objects.count() == 1
