"""Gold words beside what was predicted for them, word by word, for the figures that need more than a rate."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any, NamedTuple

import latingloss
from benchmarks.sources import Sentence, Sources, scored, sentences, tool
from latingloss import Word

UNCOUNTED = ("PUNCT", "SYM", "X")


class GoldWord(NamedTuple):
    """A gold word and the predicted word at its place, if there is one."""

    form: str
    lemma: str
    upos: str
    want: dict[str, str]  # Case, Number, and Person of VERB, AUX, PRON; empty if it has none
    word: Word | None
    split_alike: bool  # the token has as many words here as there

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
def all_words(sources: Sources, treebank: str) -> tuple[GoldWord, ...]:
    """Return the gold words of a check treebank with their predictions, all that have a lemma to be right.

    Which words count is defined by the scoring tool; that both agree is checked, so that they cannot drift apart.
    """
    given = sentences(sources, treebank)
    document = latingloss.annotate_tokens([[text for text, _ in sentence] for sentence in given])
    found: list[GoldWord] = []
    for sentence, passage in zip(given, document.passages, strict=True):
        found += _compared(sentence, [token.words for token in passage.tokens])
    key = tool(sources, "treebank").key
    said = scored(sources, treebank)
    _agree(treebank, "lemma", [w.word is not None and key(w.word.lemma) == key(w.lemma) for w in found], said)
    _agree(treebank, "CNP", [w.right for w in found if w.want], said)
    return tuple(found)


@cache
def gold_words(sources: Sources, treebank: str) -> tuple[GoldWord, ...]:
    """Return those of the gold words that have a case, number or person."""
    return tuple(word for word in all_words(sources, treebank) if word.want)


def _agree(treebank: str, measure: str, hits: list[bool], said: dict[str, Any]) -> None:
    rate = round(100 * sum(hits) / len(hits), 2)
    if abs(rate - said[measure]) > 0.011:
        raise SystemExit(f"{treebank}: {measure} is {rate} here, {said[measure]} by score_treebank.py")


def wanted(columns: list[str]) -> dict[str, str]:
    """Return the case, number and person that a gold word, given as its CoNLL-U columns, asks for."""
    if columns[3] in UNCOUNTED:
        return {}
    features = dict(pair.split("=", 1) for pair in columns[5].split("|")) if columns[5] != "_" else {}
    names = ("Case", "Number", "Person") if columns[3] in ("VERB", "AUX", "PRON") else ("Case", "Number")
    return {name: features[name] for name in names if name in features}


def _compared(sentence: Sentence, predicted: list[tuple[Word, ...]]) -> Iterator[GoldWord]:
    for (_, gold), words in zip(sentence, predicted, strict=True):
        for i, (_, form, lemma, upos, *_) in enumerate(gold):
            if upos not in UNCOUNTED:
                word = words[i] if i < len(words) else None
                yield GoldWord(form, lemma, upos, wanted(gold[i]), word, len(words) == len(gold))
