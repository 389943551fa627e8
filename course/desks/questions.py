"""The desk's pages about the questions: what first answers say of them, and pausing one that goes wrong."""

from __future__ import annotations

from dataclasses import asdict
from functools import cache, lru_cache
from typing import Any

from django import forms
from django.contrib import messages
from django.http import HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.template.loader import render_to_string
from django.utils.safestring import SafeString
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods, require_safe

from course.desks.portraits import item_or_404, portrait
from course.desks.statistics import FLAGGED, KINDS, PAUSED, QUESTIONS, Wish, address, sheet
from course.people.access import Deed, needs
from course.people.http import PersonRequest
from course.people.models import Person
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.items import title_of
from quizzes.statistics.flags import FIRM, LEAST, Flag


class ItemsForm(forms.Form):
    """Which items the table shows. It is never refused: what is wrong is said and left out."""

    show = forms.ChoiceField(
        label="Show",
        required=False,
        choices=[(KINDS, "Kinds of problem"), (QUESTIONS, "Single questions")],
        error_messages={"invalid_choice": "There is no such choice. Kinds of problem are shown."},
    )
    competency = forms.ChoiceField(
        label="Competency",
        required=False,
        choices=[("", "All"), *((one.slug, one.title) for one in COMPETENCIES.values())],
        error_messages={"invalid_choice": "The course has no such competency. All are shown."},
    )
    flag = forms.ChoiceField(
        label="Flag",
        required=False,
        choices=[
            *[("", "With or without"), (FLAGGED, "any flag"), (PAUSED, "paused")],
            *((one.name, one.value) for one in Flag),
        ],
        error_messages={"invalid_choice": "There is no such flag. All are shown."},
    )

    def __init__(self, query: Any) -> None:
        super().__init__(query, auto_id="items-%s")

    @property
    def wish(self) -> Wish:
        """What could be read of it."""
        self.full_clean()
        said = {name: value for name, value in self.cleaned_data.items() if value}
        return Wish(**said)


class PauseForm(forms.Form):
    """Pausing an item or taking it up again, with the reason; the deeds say what they refuse."""

    deed = forms.ChoiceField(
        choices=[("pause", "Pause"), ("take-up", "Take up again")], required=False, widget=forms.HiddenInput
    )
    why = forms.CharField(
        label="Reason",
        max_length=400,
        required=False,
        help_text="It is kept in the journal, with your name.",
        widget=forms.Textarea(attrs={"rows": 3}),
        error_messages={"max_length": "Keep the reason to 400 characters; it is %(show_value)d now."},
    )


@needs(Deed.READ_RECORDS)
@never_cache
@require_safe
def items(request: PersonRequest) -> HttpResponse:
    """Every kind of problem, or every question, with its figures and flags."""
    form = ItemsForm(request.GET)
    wish = form.wish
    context = {
        "form": form,
        "wish": wish,
        "fields": _choices(wish) if form.is_valid() else _render_choices(form),
        "sheet": sheet(wish),
        "firm": FIRM,
        "sources": _sources(),
    }
    return render(request, "desks/items.html", context)


@lru_cache(maxsize=512)
def _choices(wish: Wish) -> SafeString:
    """The choices above the table, which take longer to render than all its rows; once for each wish."""
    return _render_choices(ItemsForm(asdict(wish)))


def _render_choices(form: ItemsForm) -> SafeString:
    return render_to_string("desks/_items_form.html", {"form": form})


@cache
def _sources() -> SafeString:
    least = [(flag.value, count) for flag, count in LEAST.items()]
    return render_to_string("desks/_item_sources.html", {"least": least, "firm": FIRM})


@needs(Deed.PAUSE)
@never_cache
@require_http_methods(["GET", "HEAD", "POST"])
def item(request: PersonRequest, family: str, question: str = "") -> HttpResponseBase:
    """One item's figures, and the form that pauses it or takes it up again."""
    found = item_or_404(family, question)
    form = PauseForm(request.POST or None) if request.method == "POST" else PauseForm()
    if form.is_valid():
        try:
            messages.success(request, _turn(request.user, found, form.cleaned_data))
            return redirect(address(found))
        except Refused as refusal:
            form.add_error("why", str(refusal))
    return render(request, "desks/item.html", portrait(found, request.user) | {"form": form})


def _turn(by: Person, item: str, said: dict[str, Any]) -> str:
    """Pause it or take it up again; what was done, in a sentence."""
    if said["deed"] == "take-up":
        actions.take_up(item=item, by=by, why=said["why"])
        return f"“{title_of(item)}” is asked again."
    actions.pause(item=item, by=by, why=said["why"])
    return f"“{title_of(item)}” is paused: it is not asked any more. Checks under way finish as they began."
