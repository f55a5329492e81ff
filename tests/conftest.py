"""Where the measuring data lies, for the tests that need it."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import settings

settings.register_profile("latingloss", deadline=None, max_examples=100, derandomize=True)
settings.load_profile("latingloss")


@pytest.fixture(scope="session")
def shared() -> Path:
    """Return the folder of checks and corpora, or skip: a user has none of it."""
    path = Path(os.environ.get("LATINGLOSS_SHARED", Path(__file__).parents[2] / "shared"))
    if not path.is_dir():
        pytest.skip("needs the folder of checks and corpora (set LATINGLOSS_SHARED)")
    return path
