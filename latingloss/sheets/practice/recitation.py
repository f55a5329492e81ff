"""Fading recitation: the text again and again, each round with fewer of its words, the hardest leaving last."""

from __future__ import annotations

from collections import Counter
from random import Random

from latingloss.document import Document
from latingloss.sheets.practice.exercise import Exercise, key_of, too_short, with_gaps

_ROUNDS = 4
_FEWEST_WORDS = 2 * _ROUNDS
_MOST_LINES = 12
_TITLE = "Recite"


def recitation(document: Document, random: Random) -> tuple[Exercise, ...]:
    """Return four rounds; words that are alike leave together, words equally hard in an order that `random` sets.

    A text of more than twelve lines is recited to its twelfth.

    >>> from latingloss import annotate
    >>> rounds = recitation(annotate("Vesper venit et stellae noctis lucent, dum luna surgit."), Random(1))
    >>> [sum(len(item.answers) for item in exercise.items) for exercise in rounds]
    [3, 5, 7, 9]
    """
    passages = document.passages[:_MOST_LINES]
    tokens = [token for passage in passages for token in passage.tokens if token.words]
    if len(tokens) < _FEWEST_WORDS:
        return (too_short(_TITLE, f"{_FEWEST_WORDS} words"),)
    counts = Counter(key_of(token.text) for token in tokens)
    hardness = {key_of(t.text): t.difficulty.score if t.difficulty else 0.0 for t in tokens}
    order = sorted(counts, key=lambda key: (hardness[key], random.random()))
    cut = f", lines 1 to {_MOST_LINES}" if len(document.passages) > _MOST_LINES else ""
    rounds = []
    for number in range(1, _ROUNDS + 1):
        gone = _easiest(order, counts, share=number / _ROUNDS)
        items = tuple(
            with_gaps(
                document, passage, [i for i, t in enumerate(passage.tokens) if t.words and key_of(t.text) in gone],
                hint=False,
            )
            for passage in passages
        )  # fmt: skip
        rounds.append(Exercise(f"{_TITLE}{cut}: round {number}", _task(number), items=items, keyed=False))
    return tuple(rounds)


def _task(number: int) -> str:
    if number == 1:
        return "Say the whole text aloud. The easiest words are left out; the text itself is the key."
    return "Now more words are left out. Say the whole text aloud again." if number < _ROUNDS else "Now from memory."


def _easiest(order: list[str], counts: Counter[str], *, share: float) -> set[str]:
    """Return the easiest words that make up a share of the running words, 0..1, or a little more."""
    gone: set[str] = set()
    for word in order:
        if sum(counts[key] for key in gone) >= share * counts.total():
            break
        gone.add(word)
    return gone
