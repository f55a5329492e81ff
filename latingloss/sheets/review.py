"""The review list: what the author should look at before a sheet is printed, the riskiest first."""

from __future__ import annotations

from collections.abc import Iterator
from math import prod
from typing import NamedTuple

from latingloss.alignment.grammar import FUNCTION_WORDS
from latingloss.corrections import Corrections, LineCorrections, WordCorrection, write
from latingloss.corrections.matching import name_of
from latingloss.document import Document, Passage, Reading, Token, Word
from latingloss.english.words import base_forms
from latingloss.sheets.wording import bare_lemma, grammar_of, listed
from latingloss.text.tokens import word_text

LEAST_RISK = 0.2
_CONTENT = frozenset(("NOUN", "PROPN", "VERB", "ADJ", "ADV", "NUM"))
# Chances that the page is wrong, set by judgement: no count of authors' corrections exists yet.
_GUESSED_RISK, _UNLINKED_RISK, _LOOSE_RISK, _NO_LINK_RISK, _NO_RENDERING_RISK = 0.6, 0.3, 0.25, 0.7, 0.5
_LIKELY = 0.03  # a reading less probable than this is not worth the author's time
_SAID = ("Case", "Number", "Person", "Tense", "Aspect", "Mood", "Voice", "VerbForm")


class ReviewItem(NamedTuple):
    """One thing to look at."""

    passage: int  # counts from 1, as printed
    token: int | None  # index in Passage.tokens; None if it concerns the whole passage
    text: str  # the word as printed, or the words
    what: str  # the kind of doubt
    why: str  # what the sheet says now, and why that may be wrong
    alternatives: tuple[str, ...]  # other readings in plain English, best first
    risk: float  # 0..1, about how likely the page is wrong here
    correction: str = ""  # lines to paste under `passages:` for the first alternative, or if none, for what it says now


class _Doubt(NamedTuple):
    what: str
    why: str
    risk: float


def review(document: Document, *, least_risk: float = LEAST_RISK) -> tuple[ReviewItem, ...]:
    """List what to look over before printing, riskiest first, leaving out what is less risky than `least_risk`.

    Uncertain readings with the others that are possible, words outside the lexicon, words of weight that no
    English word renders and English ones that render no Latin, and passages without rendering or without links.
    Words that the author has corrected are left out; `correction` is what to paste into the corrections.

    >>> from latingloss import annotate
    >>> [item.text for item in review(annotate("Flabrigo canit.")) if item.what == "not in the lexicon"]
    ['Flabrigo']
    """
    found = [
        item
        for number, passage in enumerate(document.passages, 1)
        for item in (
            *_of_passage(passage, number, rendered=document.english is not None),
            *_of_words(document, number),
        )
        if item.risk >= least_risk
    ]
    return tuple(sorted(found, key=lambda item: (-item.risk, item.passage, item.token or 0)))


def _of_words(document: Document, number: int) -> Iterator[ReviewItem]:
    passage = document.passages[number - 1]
    linked = {link.latin for link in passage.links}
    for index, token in enumerate(passage.tokens):
        if any(word.corrected for word in token.words):
            continue
        doubts = [doubt for word in token.words for doubt in _about_reading(word)]
        if passage.links and index not in linked and token.words and token.words[0].upos in _CONTENT:
            doubts.append(_Doubt("no English word", "no word of the rendering is tied to it", _UNLINKED_RISK))
        if doubts:
            item = _merged(doubts, token, (number, index))
            yield item._replace(correction=_correction(document.source[passage.start : passage.end], passage, index))


def _about_reading(word: Word) -> Iterator[_Doubt]:
    others = sum(r.probability for r in word.alternatives if not _says_the_same(r, word))
    if word.guessed:
        why = f"read as {bare_lemma(word.lemma)} ({grammar_of(word)}) from its ending"
        yield _Doubt("not in the lexicon", why, _GUESSED_RISK)
    if others >= _LIKELY:
        why = f"read as {bare_lemma(word.lemma)} ({grammar_of(word)}) with {_percent(word.confidence)} certainty"
        yield _Doubt("uncertain reading", why, min(1.0, others))


def _merged(doubts: list[_Doubt], token: Token, place: tuple[int, int]) -> ReviewItem:
    """Make one item of all doubts about a word; the worst names it, and each adds to the risk."""
    doubts = sorted(doubts, key=lambda doubt: -doubt.risk)
    likely = [_alternative(r, token.words[w]) for r, w in _others(token)]
    return ReviewItem(
        *place,
        text=token.text,
        what=doubts[0].what,
        why="; ".join(doubt.why for doubt in doubts),
        alternatives=tuple(dict.fromkeys(likely)),
        risk=round(1 - prod(1 - doubt.risk for doubt in doubts), 3),
    )


def _others(token: Token) -> list[tuple[Reading, int]]:
    """Return the likely readings that would print something else, each with the number of its word in the token."""
    readings = [(r, w) for w, word in enumerate(token.words) for r in word.alternatives]
    return [(r, w) for r, w in readings if r.probability >= _LIKELY and not _says_the_same(r, token.words[w])]


def _correction(line: str, passage: Passage, index: int) -> str:
    """Return the lines that choose the best other reading of a token, or that keep its reading if it has no other."""
    token = passage.tokens[index]
    others: list[tuple[Reading | Word, int]] = [*_others(token), (token.words[0], 0)]
    reading, w = others[0]
    texts = [t.text for t in passage.tokens]
    word = name_of(texts, [bool(t.words) for t in passage.tokens], (index, w))
    said = WordCorrection(word=word, lemma=reading.lemma, upos=reading.upos, features=reading.features or None)
    latin = " ".join(word_text(line).split())
    lines = write(Corrections(passages=(LineCorrections(latin=latin, words=(said,)),)))
    return lines.removeprefix("passages:\n")


def _of_passage(passage: Passage, number: int, *, rendered: bool) -> Iterator[ReviewItem]:
    if not rendered:
        return
    text = " ".join(token.text for token in passage.tokens[:4]) + " …"
    if not passage.rendering:
        yield ReviewItem(number, None, text, "no rendering", "no English stands beside it", (), _NO_RENDERING_RISK)
    elif not passage.links:
        why = "no English word could be tied to a Latin one; is this the rendering of this line?"
        yield ReviewItem(number, None, text, "rendering not tied", why, (), _NO_LINK_RISK)
    else:
        tied = {link.english for link in passage.links}
        loose = [
            t.text
            for i, t in enumerate(passage.rendering)
            if i not in tied and t.kind == "word" and FUNCTION_WORDS.isdisjoint(base_forms(t.text))
        ]
        if loose:
            why = "these English words are tied to no Latin word: free rendering, or a link is missing"
            yield ReviewItem(number, None, listed(loose), "free English", why, (), _LOOSE_RISK)


def _says_the_same(reading: Reading, word: Word) -> bool:
    """Tell whether a reading would print the same: same dictionary form, same case, number, person, tense and mood."""
    same = reading.lemma == word.lemma and reading.upos == word.upos
    return same and all(reading.features.get(name) == word.features.get(name) for name in _SAID)


def _alternative(reading: Reading, word: Word) -> str:
    """Tell another reading; of the same dictionary form, only what its ending says."""
    grammar, chance = grammar_of(reading), _percent(reading.probability)
    if (reading.lemma, reading.upos) == (word.lemma, word.upos):
        return f"{grammar.partition(', ')[2] or grammar} ({chance})"
    sense = f" “{reading.gloss.partition(';')[0]}”" if reading.gloss else ""
    return f"{bare_lemma(reading.lemma)}{sense}, {grammar} ({chance})"


def _percent(probability: float) -> str:
    return f"{min(99, max(1, round(100 * probability)))}%"
