"""Every write: one function per deed, one transaction each, safe to send twice.

Locks are always taken in one order, so that two tabs, two workers or a practice beside a check never wait
for each other in a circle: the standing (that of the whole course before those of the competencies, and
these by key), the slot of a supervised check, the counts of items (by name), and then the deal of the
family asked next. An answered attempt is its own line of record; every other deed adds a line to the journal.
"""

from quizzes.actions.accommodations import set_accommodation
from quizzes.actions.answers import Answered, answer, take_hint
from quizzes.actions.assignments import assign_practice
from quizzes.actions.checks import start_check, start_course_check
from quizzes.actions.decisions import grant, open_check_again, require_supervision, revoke, sign_off, waive
from quizzes.actions.pauses import pause, take_up
from quizzes.actions.policies import set_policy
from quizzes.actions.reviews import doubt, rule_on
from quizzes.actions.rounds import release_round, sign_off_round
from quizzes.actions.sittings import start_practice, start_review
from quizzes.actions.supervision import close_slot, open_slot

__all__ = [
    "Answered",
    "answer",
    "assign_practice",
    "close_slot",
    "doubt",
    "grant",
    "open_check_again",
    "open_slot",
    "pause",
    "release_round",
    "require_supervision",
    "revoke",
    "rule_on",
    "set_accommodation",
    "set_policy",
    "sign_off",
    "sign_off_round",
    "start_check",
    "start_course_check",
    "start_practice",
    "start_review",
    "take_hint",
    "take_up",
    "waive",
]
