"""Why a lemma is not the treebank's: the misses by cause, told apart by rule, conventions counted apart.

The rules, in order; the first that holds counts. What none of them explains is a lemma of ours that differs, to be
looked at.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import NamedTuple

from benchmarks.conventions import CONVENTIONS, convention
from benchmarks.figures import Figure
from benchmarks.gold import GoldWord, all_words
from benchmarks.sources import Sources, tool
from latingloss.text.orthography import plain

CAUSES = {
    "split otherwise": "the token has more or fewer words in the treebank",
    "wrong word chosen": "a reading with the treebank's lemma was among the alternatives",
    **{f"convention, {name}": told for name, told in CONVENTIONS.items()},
    "abbreviation": "only the beginning is written",
    "placeholder": "the treebank has the name of a kind of token where the lemma stands",
    "unknown word": "the lexicon has no such form, so the lemma is guessed",
    "our lemma differs": "none of these",
}
_PLACEHOLDERS = {"expression", "greek.expression", "calendar", "foreign", "unknown", "punc", "_"}  # not Latin
_MOST_EXAMPLES = 8


class Miss(NamedTuple):
    """A word with the treebank's lemma and ours, as the scoring tool's keys; `others` are of the alternatives."""

    gold: GoldWord
    theirs: str
    ours: str
    others: tuple[str, ...] = ()

    @property
    def convention(self) -> str | None:
        """The convention that would explain it, if there is one."""
        parts = (self.gold.upos, self.gold.word.upos if self.gold.word else "")
        return convention(self.theirs, self.ours, number=self.gold.want.get("Number"), parts=parts)

    @property
    def cause(self) -> str:
        """The first cause whose rule holds."""
        word = self.gold.word
        if word is None or not self.gold.split_alike:
            return "split otherwise"
        if self.theirs in self.others:
            return "wrong word chosen"
        if kind := self.convention:
            return f"convention, {kind}"
        if word.guessed and _abbreviated(plain(self.gold.form), plain(self.theirs)):
            return "abbreviation"
        if self.gold.lemma in _PLACEHOLDERS:
            return "placeholder"
        return "unknown word" if word.guessed else "our lemma differs"


def figures(sources: Sources, treebank: str) -> Iterator[Figure]:
    """Yield how many lemmas of a treebank are missed for each cause, and the lemma rate with conventions right."""
    words = all_words(sources, treebank)
    key = tool(sources, "treebank").key
    found: dict[str, list[Miss]] = {cause: [] for cause in CAUSES}
    for miss in filter(lambda miss: miss.theirs != miss.ours, (_compared(word, key) for word in words)):
        found[miss.cause].append(miss)
    missed = sum(map(len, found.values()))
    for cause, misses in found.items():
        note = f"{100 * len(misses) / max(1, missed):.1f} % of misses; {_note(cause, misses)}"
        yield Figure(f"lemma misses: {treebank}, {cause}", len(misses), "words", note=note)
    apart = missed - sum(len(misses) for cause, misses in found.items() if cause.startswith("convention"))
    rate, strict = (round(100 * (1 - wrong / len(words)), 2) for wrong in (apart, missed))
    note = f"{strict} with conventions as misses; {len(words):,} words"
    yield Figure(f"lemma misses: {treebank}, lemma, conventions apart", rate, "%", note=note)


def _compared(gold: GoldWord, key: Callable[[str], str]) -> Miss:
    if gold.word is None:
        return Miss(gold, key(gold.lemma), "")
    return Miss(gold, key(gold.lemma), key(gold.word.lemma), tuple(key(a.lemma) for a in gold.word.alternatives))


def _abbreviated(form: str, lemma: str) -> bool:
    if form.endswith("."):
        return True
    alike = lemma[:1] == form[:1] or (form[:1], lemma[:1]) == ("c", "g")  # C. and Cn. are Gaius and Gnaeus
    return alike and (not set(form) & set("aeiouy") or (lemma.startswith(form) and len(lemma) > len(form) + 3))


def _note(cause: str, misses: list[Miss]) -> str:
    told = CAUSES[cause]
    if cause == "wrong word chosen":
        told += f" ({sum(miss.convention is not None for miss in misses)} of them would fit a convention too)"
    shown = dict.fromkeys(f"{m.gold.form} ({m.theirs}, not {m.ours or 'parted so'})" for m in misses)
    return f"{told}: {', '.join(list(shown)[:_MOST_EXAMPLES])}" if misses else told
