"""Paper checks: what was printed for a cohort, the papers and their key as PDF, and entering by code."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from django.contrib import messages
from django.http import HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.utils.http import content_disposition_header
from django.utils.text import slugify
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods, require_safe

from course.papers.entering import enter as enter_answers
from course.papers.forms import EntryForm, PrintForm
from course.papers.models import Paper, Run
from course.papers.printing import open_to, paper_or_404, plain, print_papers, run_or_404, runs_of
from course.people.access import Deed, cohort_or_404, needs, people_for
from course.people.http import PersonRequest
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.models import journal


@needs(Deed.PAPERS)
@never_cache
@require_http_methods(["GET", "HEAD", "POST"])
def runs(request: PersonRequest, pk: int) -> HttpResponseBase:
    """What was printed for a cohort, and the form that prints more."""
    cohort = cohort_or_404(request.user, Deed.PAPERS, pk)
    trainees = people_for(request.user, Deed.PAPERS).filter(cohorts=cohort, is_active=True)
    form = PrintForm(trainees, request.user.system, request.POST or None)
    if form.is_valid():
        said = form.cleaned_data | {"competency": COMPETENCIES[form.cleaned_data["competency"]]}
        try:
            run = print_papers(cohort=cohort, by=request.user, **said)
        except Refused as refusal:
            form.add_error("competency", str(refusal))
        else:
            messages.success(request, "The papers are ready. Print them and the key from here.")
            return redirect(run)
    return render(request, "papers/runs.html", {"cohort": cohort, "form": form, "runs": runs_of(cohort)})


@needs(Deed.PAPERS)
@never_cache
@require_safe
def run(request: PersonRequest, pk: int) -> HttpResponse:
    """The papers of one run, with their codes and what became of each."""
    found = run_or_404(request.user, pk)
    papers = list(found.papers.select_related("learner", "sitting"))
    rules = dict.fromkeys(one.told for one in papers)
    return render(request, "papers/run.html", {"run": found, "papers": papers, "rules": [*rules]})


@needs(Deed.PAPERS)
@never_cache
@require_safe
def sheets(request: PersonRequest, pk: int) -> HttpResponse:
    """The papers of a run, to be printed and handed out."""
    from course.papers.sheets import papers_as_pdf  # what sets a page is loaded where it is used

    return _file(run_or_404(request.user, pk), papers_as_pdf, "papers")


@needs(Deed.PAPERS)
@never_cache
@require_safe
def key(request: PersonRequest, pk: int) -> HttpResponse:
    """The key to a run in a file of its own; that it was opened is noted."""
    from course.papers.keys import key_as_pdf

    found = run_or_404(request.user, pk)
    journal.write(actor=request.user, verb="paper key opened", subject=found)
    return _file(found, key_as_pdf, "key")


def _file(found: Run, setter: Callable[[Run, Sequence[Paper]], bytes], what: str) -> HttpResponse:
    name = f"{found.competency}_{slugify(found.cohort.name) or 'cohort'}_{found.pk}_{what}.pdf"
    return HttpResponse(
        setter(found, list(found.papers.select_related("run"))),
        content_type="application/pdf",
        headers={"Content-Disposition": content_disposition_header(True, name)},
    )


@needs(Deed.PAPERS)
@never_cache
@require_safe
def find(request: PersonRequest) -> HttpResponse:
    """A paper by the code printed on it."""
    typed = request.GET.get("code", "")[:64]
    paper = open_to(request.user).filter(code=plain(typed)).first() if typed.strip() else None
    if paper:
        return redirect(paper)
    return render(request, "papers/find.html", {"typed": typed})


@needs(Deed.PAPERS)
@never_cache
@require_http_methods(["GET", "HEAD", "POST"])
def enter(request: PersonRequest, code: str) -> HttpResponseBase:
    """Enter what was written on a paper: typed, read back, entered. An entered paper is shown instead."""
    paper = paper_or_404(request.user, code)
    if paper.is_entered:
        return _entered(request, paper)
    form = EntryForm(paper, people_for(request.user, Deed.PAPERS), request.POST or None)
    context = {"paper": paper, "form": form}
    step = request.POST.get("step", "")
    if form.is_valid() and step != "mend":
        if step != "enter":
            return render(request, "papers/read_back.html", context)
        try:
            if enter_answers(form, request.user):
                messages.success(request, f"Paper {paper.spaced_code} is entered.")
            return redirect(paper)
        except Refused as refusal:
            form.add_error(None, str(refusal))
    return render(request, "papers/enter.html", context)


def _entered(request: PersonRequest, paper: Paper) -> HttpResponse:
    if request.method == "POST":
        messages.info(request, "This paper was entered before. The first entry counts.")
    attempts = paper.sitting.attempts.filter(number__lte=len(paper.questions)) if paper.sitting else ()
    return render(request, "papers/entered.html", {"paper": paper, "attempts": attempts})
