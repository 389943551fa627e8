"""What a lesson weighs on the wire, and that it shows before any script has run.

Counted: the page as the site sends it to a browser that takes gzip, and every file of the site's own that the
page loads (style sheets, scripts, the icon, and the font where there is a formula), each as the production
server keeps it: gzip at level 9, or as it is where that is smaller. Headers are not counted.
"""

import gzip
import re
from functools import cache

import pytest
from django.contrib.staticfiles import finders
from django.urls import reverse
from django.utils import timezone

from course.demo.factories import PersonFactory
from course.lessons import booklet, library

MOST = 60_000
LOADED = re.compile(r'<(?:link|script)\b[^>]*?(?:href|src)="/static/([^"?]+)')
SCRIPT = re.compile(r"<script\b[^>]*>")


@pytest.fixture(params=library.SYSTEMS)
def browser(db, client, request):
    client.force_login(PersonFactory(system=request.param))
    return lambda url: client.get(url, headers={"accept-encoding": "gzip, br"})


@cache
def sent(name):
    """Bytes of a file of the site on the wire."""
    with open(finders.find(name), "rb") as file:
        whole = file.read()
    return min(len(whole), len(gzip.compress(whole, 9)))


def weight(response):
    assert response.headers["Content-Encoding"] == "gzip"
    text = gzip.decompress(response.content).decode()
    files = {*LOADED.findall(text), *(["fonts/course-math.woff2"] if "<math" in text else [])}
    assert len(files) > 8
    return len(response.content) + sum(map(sent, files))


@pytest.mark.parametrize("slug", library.lessons())
def test_a_lesson_with_all_its_files_weighs_at_most_60_kb(browser, slug):
    assert weight(browser(reverse("lessons:lesson", args=[slug]))) <= MOST


@pytest.mark.parametrize("part", ["", booklet.GLOSSARY, *library.lessons()])
def test_a_part_of_the_booklet_weighs_at_most_60_kb(browser, part):
    assert weight(browser(f"{reverse('booklet')}?part={part}")) <= MOST


def test_no_script_stands_in_the_way_of_the_first_paint(browser):
    text = gzip.decompress(browser(reverse("lessons:lesson", args=["squeeze"])).content).decode()
    scripts = SCRIPT.findall(text)
    assert scripts
    assert [tag for tag in scripts if " defer" not in tag and 'type="module"' not in tag] == []


def test_a_page_is_padded_at_random_so_that_its_length_tells_nothing(browser):
    lengths = {len(browser(reverse("glossary")).content) for _ in range(8)}
    assert len(lengths) > 1


@pytest.mark.django_db
def test_a_file_that_streams_arrives_whole(client, quay):
    client.force_login(quay.people["officer"])
    today = timezone.localdate()
    fields = {"cohort": quay.cohort.pk, "first": today, "last": today}
    url = reverse("exports:download", args=["competency-records"])
    plain, packed = client.get(url, fields), client.get(url, fields, headers={"accept-encoding": "gzip"})
    assert packed.headers["Content-Encoding"] == "gzip"
    assert gzip.decompress(b"".join(packed)) == b"".join(plain)
