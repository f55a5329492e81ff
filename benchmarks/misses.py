"""Why the right reading is out of reach: the oracle's misses by cause, told apart by rule.

The rules, in order; the first that holds counts. What none of them explains is a missing form, to be looked at.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from benchmarks.figures import Figure
from benchmarks.gold import GoldWord, gold_words
from benchmarks.sources import Sources, tool
from latingloss.morphology.endings import Table, endings
from latingloss.morphology.lexicon import find, lexemes
from latingloss.morphology.ranking import candidates
from latingloss.text.orthography import plain

CAUSES = {
    "split otherwise": "the treebank has more words in the token",
    "abbreviation": "only the beginning is written, so no ending",
    "thought too unlikely": "the analyser has the reading, the document leaves it out",
    "convention": "same lemma, but a feature that the handbooks' tables do not mark",
    "unknown word": "the lexicon has no such lemma",
    "treebank slip": "no table of the language has an ending of these letters that says so",
    "missing form": "the lexicon has the lemma, not the form",
}
_MOST_EXAMPLES = 8


def figures(sources: Sources, treebank: str) -> Iterator[Figure]:
    """Yield how many of a treebank's words are out of reach for each cause, with examples."""
    found: dict[str, list[GoldWord]] = {cause: [] for cause in CAUSES}
    for word in gold_words(sources, treebank):
        if not word.within_reach:
            found[_cause(word, sources)].append(word)
    for cause, words in found.items():
        shown = dict.fromkeys(f"{w.form} ({w.lemma} {' '.join(w.want.values())})" for w in words)
        note = f"{CAUSES[cause]}: {', '.join(list(shown)[:_MOST_EXAMPLES])}" if words else CAUSES[cause]
        yield Figure(f"oracle misses: {treebank}, {cause}", len(words), "words", note=note)


def _cause(gold: GoldWord, sources: Sources) -> str:
    if gold.word is None:
        return "split otherwise"
    key = tool(sources, "treebank").key
    lemma = key(gold.lemma)
    if gold.word.guessed and _abbreviated(plain(gold.form), lemma):
        return "abbreviation"
    readings = candidates(gold.word.form)
    if any(gold.agrees(reading.features) for reading in readings):
        return "thought too unlikely"
    same = [reading.features for reading in readings if key(reading.lexeme.lemma) == lemma and not reading.guessed]
    if any(all(features.get(name) in (value, None) for name, value in gold.want.items()) for features in same):
        return "convention"
    if not find(lemma):
        return "unknown word"
    said = {name: value for name, value in gold.want.items() if name != "Person" or gold.upos != "PRON"}
    return "missing form" if _some_ending_says(plain(gold.word.form), said) else "treebank slip"


def _abbreviated(form: str, lemma: str) -> bool:
    return not set(form) & set("aeiouy") or (lemma.startswith(form) and len(lemma) > len(form) + 3)


def _some_ending_says(key: str, want: dict[str, str]) -> bool:
    wanted = frozenset(want.items())
    return any(wanted <= said for cut in range(len(key) + 1) for said in _endings().get(key[cut:], ()))


@cache
def _endings() -> dict[str, set[frozenset[tuple[str, str]]]]:
    """Return what each plain ending can say, over all tables that the lexicon uses."""
    found: dict[str, set[frozenset[tuple[str, str]]]] = {}
    tables: set[Table] = {table for lexeme in lexemes() for _, table in lexeme.stems}
    for table in tables:
        for ending in endings(table):
            found.setdefault(plain(ending.text), set()).add(frozenset(ending.features.items()))
    return found
