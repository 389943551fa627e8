"""Where a learner says that a question is wrong, or what they meant by an answer."""

from __future__ import annotations

from typing import TYPE_CHECKING

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods

from quizzes import actions, queries
from quizzes.errors import Refused
from quizzes.forms import DoubtForm
from quizzes.models import Attempt
from quizzes.pages import page, sitting_url
from quizzes.subjects import subject

if TYPE_CHECKING:
    from quizzes.pages import LearnerRequest


@never_cache
@require_http_methods(["GET", "HEAD", "POST"])
def doubt(request: LearnerRequest, pk: int) -> HttpResponse:
    """Ask for a review of an answer of one's own; a refusal comes back with what was typed."""
    found = get_object_or_404(Attempt.objects.select_related("sitting"), pk=pk, learner=request.user)
    if not found.is_answered or (found.sitting.is_check and not found.sitting.ended):
        return redirect(sitting_url(found.sitting))
    if request.method != "POST" and (found.ruled or queries.doubt_about(found)):
        return redirect("quizzes:attempt", found.pk)
    form = DoubtForm(request.POST or None)
    if form.is_valid():
        try:
            actions.doubt(learner=request.user, attempt_id=found.pk, **form.cleaned_data)
        except Refused as refusal:
            form.add_error("said", str(refusal))
        else:
            messages.success(request, "Your instructor sees it now. What they rule on it will stand here.")
            return redirect("quizzes:attempt", found.pk)
    context = {"attempt": found, "competency": subject(found.sitting.competency), "form": form}
    return page(request, "quizzes/doubt.html", context, current=found.sitting.competency)
