"""A random sample of lexicon entries, or of English relatives, for a Latinist to read."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

from latingloss.kin import relatives_of
from latingloss.morphology.lexicon import Lexeme, lexemes

SIZE = 200


def words(number: int, *, size: int = SIZE) -> Iterator[str]:
    """Yield so many entries as tab-separated lines; the same number gives the same entries of the same lexicon."""
    yield "lemma\tpart of speech\tforms\tgloss\tchurch\tgoverns\tEnglish relatives"
    chosen = Random(number).sample(range(len(lexemes())), size)
    for i in sorted(chosen):
        yield "\t".join(_cells(lexemes()[i]))


def _cells(lexeme: Lexeme) -> tuple[str, ...]:
    kin = ", ".join(relative.word for relative in relatives_of(lexeme)[:4])
    return lexeme.lemma, lexeme.upos, lexeme.parts, lexeme.gloss, lexeme.church, lexeme.governs, kin


def relatives(number: int, *, size: int = SIZE) -> Iterator[str]:
    """Yield so many pairs of a lexeme and an English relative; the same number gives the same pairs."""
    yield "lemma\tpart of speech\tgloss\tEnglish\tkind\tchain"
    pairs = [(lexeme, relative) for lexeme in lexemes() for relative in relatives_of(lexeme)]
    for i in sorted(Random(number).sample(range(len(pairs)), size)):
        lexeme, found = pairs[i]
        yield "\t".join((lexeme.lemma, lexeme.upos, lexeme.gloss, found.word, found.kind, found.chain))
