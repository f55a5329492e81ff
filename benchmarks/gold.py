"""Gold words beside what was predicted for them, word by word, for the figures that need more than a rate."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import NamedTuple

import latingloss
from benchmarks.sources import Sentence, Sources, scored, sentences
from latingloss import Word


class GoldWord(NamedTuple):
    """A gold word that has a case, number or person, and the predicted word at its place, if there is one."""

    form: str
    lemma: str
    upos: str
    want: dict[str, str]  # Case, Number, and Person of VERB, AUX, PRON
    word: Word | None

    def agrees(self, features: dict[str, str]) -> bool:
        """Tell whether a reading has the gold case, number and person."""
        return all(features.get(name) == value for name, value in self.want.items())

    @property
    def right(self) -> bool:
        """Tell whether the chosen reading is right."""
        return self.word is not None and self.agrees(self.word.features)

    @property
    def within_reach(self) -> bool:
        """Tell whether some reading is right."""
        return self.right or (self.word is not None and any(self.agrees(a.features) for a in self.word.alternatives))


@cache
def gold_words(sources: Sources, treebank: str) -> tuple[GoldWord, ...]:
    """Return the gold words of a check treebank with their predictions.

    Which words count is defined by the scoring tool; that both agree is checked, so that they cannot drift apart.
    """
    given = sentences(sources, treebank)
    document = latingloss.annotate_tokens([[text for text, _ in sentence] for sentence in given])
    found: list[GoldWord] = []
    for sentence, passage in zip(given, document.passages, strict=True):
        found += _compared(sentence, [token.words for token in passage.tokens])
    rate = round(100 * sum(word.right for word in found) / len(found), 2)
    if abs(rate - scored(sources, treebank)["CNP"]) > 0.011:
        raise SystemExit(f"{treebank}: CNP is {rate} here, {scored(sources, treebank)['CNP']} by score_treebank.py")
    return tuple(found)


def wanted(columns: list[str]) -> dict[str, str]:
    """Return the case, number and person that a gold word, given as its CoNLL-U columns, asks for."""
    if columns[3] in ("PUNCT", "SYM", "X"):
        return {}
    features = dict(pair.split("=", 1) for pair in columns[5].split("|")) if columns[5] != "_" else {}
    names = ("Case", "Number", "Person") if columns[3] in ("VERB", "AUX", "PRON") else ("Case", "Number")
    return {name: features[name] for name in names if name in features}


def _compared(sentence: Sentence, predicted: list[tuple[Word, ...]]) -> Iterator[GoldWord]:
    for (_, gold), words in zip(sentence, predicted, strict=True):
        for i, columns in enumerate(gold):
            if want := wanted(columns):
                yield GoldWord(columns[1], columns[2], columns[3], want, words[i] if i < len(words) else None)
