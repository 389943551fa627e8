"""The learner's type, without importing the floor above: any signed-in person.

Beyond what Django asks of a user it has ``system`` (the units of its problems), ``deal_group`` (who shares
fresh numbers with whom) and ``code_groups`` (whose codes for supervised checks are good for them).
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from django.contrib.auth.models import _User

    Learner = _User
