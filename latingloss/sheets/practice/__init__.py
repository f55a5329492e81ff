"""Exercises made from an annotated text, each with its answers; the same variant gives the same page.

One module a kind of exercise; `exercise` says what they have in common, and the formats of the sheets set it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from latingloss.document import Document
from latingloss.errors import OptionError
from latingloss.sheets.practice.cloze import cloze
from latingloss.sheets.practice.exercise import Exercise, Item, Part
from latingloss.sheets.practice.matching import match
from latingloss.sheets.practice.naming import name_endings
from latingloss.sheets.practice.ordering import order
from latingloss.sheets.practice.recitation import recitation

__all__ = ["KINDS", "Exercise", "Item", "Part", "exercises"]

KINDS: dict[str, Callable[[Document, Random], tuple[Exercise, ...]]] = {
    "match": match,
    "cloze": cloze,
    "order": order,
    "endings": name_endings,
    "recitation": recitation,
}


def exercises(document: Document, kinds: Sequence[str] = tuple(KINDS), *, variant: int = 1) -> tuple[Exercise, ...]:
    """Return the exercises of some kinds on a text, in the order given; another `variant` chooses other words.

    A kind for which the text is too short is an exercise without items that says so. What a kind chooses does not
    depend on the other kinds. Raises OptionError for another kind.

    >>> from latingloss import annotate
    >>> made = exercises(annotate("Vesper venit et stellae noctis lucent."), ["match", "order"])
    >>> [(exercise.title, len(exercise.items)) for exercise in made]
    [('Match words and meanings', 5), ('Put the line back in order', 1)]
    """
    for kind in kinds:
        if kind not in KINDS:
            raise OptionError(f"no exercise {kind!r}: choose any of {', '.join(map(repr, KINDS))}")
    return tuple(made for kind in kinds for made in KINDS[kind](document, Random(f"{variant} {kind}")))
