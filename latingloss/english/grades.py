"""English degrees: `higher`, `more powerful`, `best`."""

from __future__ import annotations

import re
from functools import lru_cache

from latingloss.english.bases import base
from latingloss.english.vocabulary import forms

_GRADES = {
    "good": "better best", "well": "better best", "bad": "worse worst", "badly": "worse worst", "evil": "worse worst",
    "ill": "worse worst", "much": "more most", "many": "more most", "little": "less least", "far": "farther farthest",
    "free": "freer freest", "fierce": "fiercer fiercest", "old": "older oldest", "late": "later latest",
    "soon": "sooner soonest", "often": "oftener oftenest", "upper": "higher highest", "former": "former foremost",
}  # fmt: skip
_NO_ENDING = frozenset(("like", "just", "right", "choice", "exact", "wrong", "real", "dead", "golden", "wooden"))


def _syllables(word: str) -> int:
    return len(re.findall("[aeiouy]+", re.sub("(?<=[^aeiouyl])e$", "", word)))


@lru_cache(maxsize=10_000)
def _graded(adjective: str, degree: int) -> str:
    first = adjective.removeprefix("very ")
    if first in _GRADES:
        return _GRADES[first].split()[degree]
    lemma = base(first, "ADJ")
    if lemma != first and first.endswith(("er", "est")):
        return first if degree == 0 and first.endswith("er") else _graded(lemma, degree)
    short = _syllables(first) == 1 or (_syllables(first) == 2 and first.endswith(("y", "le", "ow")))
    if short and first not in _NO_ENDING and (found := forms(first, "ADJ")):
        return found[degree]
    return ("more ", "most ")[degree] + first


def comparative(adjective: str) -> str:
    """Return the comparative of an adjective, adverb or phrase.

    >>> comparative("high"), comparative("powerful"), comparative("good"), comparative("full of light")
    ('higher', 'more powerful', 'better', 'more full of light')
    """
    return _graded(adjective, 0)


def superlative(adjective: str) -> str:
    """Return the superlative of an adjective, adverb or phrase.

    >>> superlative("holy"), superlative("powerful")
    ('holiest', 'most powerful')
    """
    return _graded(adjective, 1)
