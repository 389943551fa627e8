"""Every write: one function per deed, one transaction each, safe to send twice.

Locks are always taken in one order, the standing and then the deal of the family asked next, so that two
tabs, two workers or a practice beside a check never wait for each other in a circle. An answered attempt
is its own line of record; every other deed adds a line to the journal.
"""

from quizzes.actions.answers import Answered, answer, take_hint
from quizzes.actions.decisions import grant, open_check_again, revoke, sign_off
from quizzes.actions.policies import set_policy
from quizzes.actions.sittings import start_check, start_practice, start_review

__all__ = [
    "Answered",
    "answer",
    "grant",
    "open_check_again",
    "revoke",
    "set_policy",
    "sign_off",
    "start_check",
    "start_practice",
    "start_review",
    "take_hint",
]
