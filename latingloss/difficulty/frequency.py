"""How common Latin words are, on the Zipf scale (van Heuven et al. 2014): log10 of uses in 10^9 words.

Counted over the Clementine Vulgate and the learn treebanks, about 650,000 words; an unseen word has half a count.
"""

from __future__ import annotations

from math import log10

from latingloss.morphology.lexicon import Lexeme
from latingloss.morphology.priors import lexeme_count
from latingloss.tables import built_once, read_table
from latingloss.text.orthography import plain

_UNSEEN = 0.5


@built_once
def _form_counts() -> dict[str, int]:
    return {form: int(count) for form, count in read_table("statistics/forms.tsv")}


@built_once
def corpus_words() -> int:
    """Return how many running words were counted."""
    return sum(int(count) for _, count in read_table("statistics/forms.tsv"))


def zipf(count: float, total: float) -> float:
    """Return the Zipf value of a count among a total of running words, smoothed by half a count.

    >>> round(zipf(100, 1_000_000), 2)
    5.0
    """
    return log10((count + _UNSEEN) / (total + _UNSEEN) * 1e9)


def form_zipf(form: str) -> float:
    """Return how common a form is as spelled, vowel lengths and u/v aside.

    >>> form_zipf("et") > 7 > form_zipf("sagittam")
    True
    """
    return zipf(_form_counts().get(plain(form), 0), corpus_words())


def lexeme_zipf(lexeme: Lexeme) -> float:
    """Return how common a lexeme is, all its forms together (their readings shared out by expectation)."""
    return zipf(lexeme_count(lexeme) - _UNSEEN, corpus_words())


def per_million(value: float) -> str:
    """Say a Zipf value in words.

    >>> per_million(5.0), per_million(2.5)
    ('about 100 in a million words', 'less than 1 in a million words')
    """
    times = 10 ** (value - 3)
    if times < 1:
        return "less than 1 in a million words"
    digits = 10 ** max(0, len(str(int(times))) - 2)
    return f"about {round(times / digits) * digits:,} in a million words"
