"""Papers for the tests: one laid down without drawing, and ways to write on it."""

from random import Random

from django.utils import timezone
from factory.declarations import LazyAttribute, LazyFunction, Sequence, SubFactory
from factory.django import DjangoModelFactory

from course.demo.factories import CohortFactory
from course.demo.learners import SimulatedLearner
from course.papers.models import Paper, Run
from course.people.models import Person
from quizzes.models import Attempt
from quizzes.rules import RULES


class RunFactory(DjangoModelFactory):
    class Meta:
        model = Run

    cohort = SubFactory(CohortFactory)
    competency = "boyle"
    sheet = "A4"
    at = LazyFunction(timezone.now)
    by_key = 1
    by_name = "Given Instructor"


class PaperFactory(DjangoModelFactory):
    """A paper of one question, unless it is given others."""

    class Meta:
        model = Paper

    run = SubFactory(RunFactory)
    number = Sequence(lambda number: number + 1)
    code = Sequence(lambda number: f"AC{number + 3000:04}".replace("0", "X"))
    name = LazyAttribute(lambda paper: paper.learner.name if paper.learner else "")
    learner = None
    purpose = "check"
    holds = 0
    rule = LazyFunction(RULES["standard"].as_record)
    policy = 1
    system = "us"
    seed = 1
    families = LazyAttribute(lambda paper: [one["shown"]["family"] for one in paper.questions])


def written(paper, marks):
    """What stands on a paper: "+" right, "-" wrong, " " blank, as the fields of its page."""
    said = {"answered_on": timezone.localdate().isoformat(), "watched_by": "Ada Moor"}
    for number, (question, mark) in enumerate(zip(paper.questions, marks, strict=True), start=1):
        for name, text in form_of(question, mark).items():
            said[f"q{number}-{name}"] = text
    return said


def form_of(question, mark):
    """The form somebody fills in who is right, wrong or silent."""
    if mark == " ":
        return {}
    writer = SimulatedLearner(Person(), Person(), Random(5))
    return writer.fill_in(Attempt(shown=question["shown"], key=question["key"]), right=mark == "+")
