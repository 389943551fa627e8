"""Benchmarks print their figures whether they pass or fail."""

from functools import partial

import pytest

from tests.benchmarks import floor


@pytest.fixture
def say(capsys):
    """Print past pytest's capture."""

    def aloud(line: str) -> None:
        with capsys.disabled():
            print(f"\n  {line}", end="", flush=True)

    return aloud


@pytest.fixture
def compare(say):
    """``floor.compare``, printed even when the test passes."""
    return partial(floor.compare, say=say)
