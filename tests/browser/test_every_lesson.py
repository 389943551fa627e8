"""Every lesson with all its apparatus set loose: accessible at both widths, by day and by night."""

import pytest
from django.urls import reverse

from course.lessons import library
from course.lessons.apparatus.address import UNSAID
from tests.browser.audit import faults

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("slug", library.lessons())
def test_a_lesson_is_accessible_with_its_apparatus_set_loose(visit, quay, slug):
    page = visit(quay.people["trainee"])
    loose = "&".join(f"{name}-said={UNSAID}" for name in library.lessons()[slug].apparatus)
    found = []
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)  # before the page loads: colours fade over when it turns
        page.goto(reverse("lessons:lesson", args=[slug]) + f"?{loose}")
        for width in (1280, 390):
            page.set_viewport_size({"width": width, "height": 900})
            found += faults(page)
    assert found == []
