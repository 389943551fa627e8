"""The learner's type, without importing the floor above: any signed-in person with a chosen ``system``."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from django.contrib.auth.models import _User

    Learner = _User
