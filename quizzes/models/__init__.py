"""The records: attempts and sittings, standings and decisions, the journal."""

from quizzes.models.attempt import Attempt, Sitting
from quizzes.models.competency import DecisionRecord, Standing
from quizzes.models.dealing import Deal
from quizzes.models.journal import JournalLine
from quizzes.models.policy import PolicyVersion

__all__ = ["Attempt", "Deal", "DecisionRecord", "JournalLine", "PolicyVersion", "Sitting", "Standing"]
