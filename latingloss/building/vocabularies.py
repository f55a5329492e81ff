"""The two vocabularies that number what English can show."""

from __future__ import annotations

from typing import NamedTuple

from latingloss.context.columns import Vocabulary


class Vocabularies(NamedTuple):
    """Numbers of the tags that English can show, and of its signs."""

    tags: Vocabulary
    signs: Vocabulary
