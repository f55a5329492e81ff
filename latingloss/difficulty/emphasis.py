"""Which words of a passage are worth picking out: the hardest, each once, never mere function words."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from latingloss.document import Token

_TAUGHT = frozenset(("NOUN", "VERB", "ADJ", "ADV", "NUM", "PROPN"))
_HARD_ENOUGH = 0.33  # one in three nouns, verbs, adjectives and adverbs of the Vulgate is as hard


def emphasized(tokens: Sequence[Token], seen: set[tuple[str, str]], *, share: float) -> frozenset[int]:
    """Return the indices of the tokens to pick out, at most `share` of the passage's words, at least one.

    `seen` holds the (lemma, form) pairs picked out before; it is added to, so that over a text a lemma comes
    again only with a new form.
    """
    most = ceil(share * sum(1 for t in tokens if t.words))
    ranked = sorted(
        (-t.difficulty.score, i)
        for i, t in enumerate(tokens)
        if t.words and t.words[0].upos in _TAUGHT and t.difficulty is not None
    )
    chosen: list[int] = []
    here: set[str] = set()
    for negative_score, i in ranked:
        word = tokens[i].words[0]
        key = (word.lemma, word.form.lower())
        if len(chosen) >= most or (chosen and -negative_score < _HARD_ENOUGH):
            break
        if key not in seen and word.lemma not in here:
            chosen.append(i)
            here.add(word.lemma)
            seen.add(key)
    return frozenset(chosen)
