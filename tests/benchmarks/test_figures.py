"""Figures: a first curve against matplotlib's bare savefig, one from the cache against a page."""

from io import StringIO

import pytest
from django.urls import reverse
from matplotlib.figure import Figure

from course.demo.factories import PersonFactory
from pressure.figures import curves
from pressure.figures.catalogue import figures, render

FIRST, SHARE = 2.0, 0.1
US = {"system": "us"}
CURVES = [name for name in figures() if name.endswith("-curve")]


def first(name):
    def work():
        curves.sketch.cache_clear()
        render(name, US)

    return work


def bare():
    """The least that matplotlib can do: an empty plot saved as SVG."""
    figure = Figure(figsize=(5, 3.75))
    figure.add_subplot()
    figure.savefig(StringIO(), format="svg")


@pytest.mark.benchmark
@pytest.mark.parametrize("name", CURVES)
def test_a_first_curve_costs_at_most_twice_a_bare_savefig(name, compare):
    compare(f"first {name}:", first(name), bare, FIRST, rounds=9, against="Figure().savefig")


@pytest.mark.benchmark
@pytest.mark.django_db
@pytest.mark.parametrize("name", CURVES)
def test_a_curve_from_the_cache_costs_less_than_a_tenth_of_a_page(name, compare, client):
    client.force_login(PersonFactory())
    page = reverse("lessons:lesson", args=["boyle"])
    client.get(page)
    render(name, US)
    compare(
        f"cached {name}:", lambda: render(name, US), lambda: client.get(page), SHARE, against="a lesson page"
    )
