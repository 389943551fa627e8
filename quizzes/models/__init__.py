"""The records: attempts and sittings, reviews, standings and decisions, supervision, counts, the journal."""

from quizzes.models.assignments import Assignment
from quizzes.models.attempt import Attempt, Sitting
from quizzes.models.competency import DecisionRecord, Standing
from quizzes.models.dealing import Deal
from quizzes.models.journal import JournalLine
from quizzes.models.pauses import ItemPause
from quizzes.models.policy import PolicyVersion
from quizzes.models.reviews import Doubt, Doubted, Ruling
from quizzes.models.supervision import Accommodation, CodeTries, Slot
from quizzes.models.tallies import AnswerCount, CountedBlock, ItemTally

__all__ = [
    "Accommodation",
    "AnswerCount",
    "Assignment",
    "Attempt",
    "CodeTries",
    "CountedBlock",
    "Deal",
    "DecisionRecord",
    "Doubt",
    "Doubted",
    "ItemPause",
    "ItemTally",
    "JournalLine",
    "PolicyVersion",
    "Ruling",
    "Sitting",
    "Slot",
    "Standing",
]
