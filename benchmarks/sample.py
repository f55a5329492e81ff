"""A random sample of lexicon entries, for a Latinist to read."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

from latingloss import relatives
from latingloss.morphology.lexicon import Lexeme, lexemes

SIZE = 200


def sample(number: int, *, size: int = SIZE) -> Iterator[str]:
    """Yield so many entries as tab-separated lines; the same number gives the same entries of the same lexicon."""
    yield "lemma\tpart of speech\tforms\tgloss\tchurch\tgoverns\tEnglish relatives"
    chosen = Random(number).sample(range(len(lexemes())), size)
    for i in sorted(chosen):
        yield "\t".join(_cells(lexemes()[i]))


def _cells(lexeme: Lexeme) -> tuple[str, ...]:
    kin = ", ".join(relative.word for relative in relatives(lexeme.lemma, upos=lexeme.upos)[:4])
    return lexeme.lemma, lexeme.upos, lexeme.parts, lexeme.gloss, lexeme.church, lexeme.governs, kin
