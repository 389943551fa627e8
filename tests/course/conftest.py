"""What the tests of the top floor share."""

import pytest

from quizzes.competencies import COMPETENCIES


@pytest.fixture
def boyle():
    return COMPETENCIES["boyle"]
