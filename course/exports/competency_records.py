"""One row for each decision about a competency: what, when, under which rule, on what evidence."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from django.utils import timezone

from course.exports.contract import Cell, Column, Export, Scope
from quizzes.models import DecisionRecord, Ruling


def rows(scope: Scope) -> Iterator[list[Cell]]:
    """The decisions about the cohort's trainees within the days chosen, oldest first."""
    decisions = (
        DecisionRecord.objects.filter(learner__in=scope.cohort.trainees.values("pk"))
        .filter(at__gte=scope.begins, at__lt=scope.ends)
        .select_related("learner", "ruling")
        .order_by("at", "pk")
    )
    for decision in decisions.iterator(chunk_size=500):
        yield _row(scope, decision)


def _row(scope: Scope, decision: DecisionRecord) -> list[Cell]:
    person: Any = decision.learner
    rule = decision.rule
    return [
        person.name,
        person.email,
        scope.cohort.name,
        decision.competency,
        decision.title,
        decision.decided,
        decision.part,
        timezone.localtime(decision.at).isoformat(timespec="seconds"),
        decision.due_on.isoformat() if decision.due_on else "",
        decision.by_name,
        "" if decision.score is None else decision.score,
        *(rule.get(part, "") for part in ("name", "edition", "target", "loss", "floor", "maximum")),
        decision.why,
        len(decision.evidence),
        " ".join(map(str, decision.evidence)),
        decision.sitting_id or "",
        decision.supervised_by,
        decision.accommodation,
        *_review(decision.ruling),
    ]


def _review(ruling: Ruling | None) -> list[Cell]:
    return [ruling.attempt_id, ruling.ruled, ruling.why] if ruling else ["", "", ""]


EXPORT = Export(
    slug="competency-records",
    title="Competency records",
    summary="One row for each decision: a competency met or held, a check opened again by an instructor.",
    columns=(
        Column("person", "Full name, as on the roster today."),
        Column("email", "The address the person signs in with."),
        Column("cohort", "The cohort chosen for this file."),
        Column("competency", "The competency's short name; it stays the same when the title is reworded."),
        Column("competency_title", "The competency as pages show it."),
        Column(
            "decided",
            "By rule: met, confirmed, renewed, held, reopened, undecided (after a review). By hand: opened, "
            "waived, supervise, signed, granted, revoked.",
        ),
        Column("part", "What was signed off (oral, pool) or waived (rest, practice); empty otherwise."),
        Column("decided_at", "Date and time, ISO 8601, with the offset of the site's time zone."),
        Column("due_on", "The day a met competency falls due again, ISO 8601; empty otherwise."),
        Column("decided_by", "“the rule” for a check, the name of whoever decided by hand otherwise."),
        Column(
            "score", "The score of the check when it ended: right answers add one, wrong ones take the loss."
        ),
        Column("rule", "Name of the decision rule in force; empty where no rule decided."),
        Column("rule_edition", "Edition of that rule."),
        Column("rule_target", "The score that meets the competency."),
        Column("rule_loss", "What a wrong answer takes from the score."),
        Column("rule_floor", "The score at which the competency is held."),
        Column("rule_maximum", "The most questions the check could ask."),
        Column("why", "The reason in a sentence."),
        Column("answers", "How many answers the decision rests on."),
        Column(
            "evidence",
            "The numbers of those answers, with a space between; each can be opened from the desk.",
        ),
        Column("sitting", "The number of the check; empty where none."),
        Column("supervised_by", "Who showed the code that opened the check; empty for one not supervised."),
        Column("accommodation", "Extra time or anything else the check was held with; empty for none."),
        Column(
            "reviewed_answer",
            "After a review: the number of the answer ruled on. The row of the check as it ended stays.",
        ),
        Column("ruling", "After a review: right (accepted), set aside, or left; empty otherwise."),
        Column("ruling_why", "After a review: the reason of whoever ruled."),
    ),
    rows=rows,
)
