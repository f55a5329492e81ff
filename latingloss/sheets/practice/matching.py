"""Match words to meanings: dictionary forms on one side, what they mean on the other."""

from __future__ import annotations

from random import Random
from string import ascii_lowercase

from latingloss.document import Document
from latingloss.sheets.practice.exercise import Exercise, Item, Part, key_of, too_short
from latingloss.sheets.wording import bare_lemma

_TITLE = "Match words and meanings"
_TASK = "Write beside each word the letter of its meaning. The words are in their dictionary form."
_KINDS = frozenset(("NOUN", "VERB", "ADJ", "ADV", "NUM"))
_FEWEST, _MOST = 4, 10
_SENSES = 2  # shown of each word


def match(document: Document, random: Random) -> tuple[Exercise, ...]:
    """Return one exercise of four to ten words; no two share a sense, so that each has one meaning that fits.

    >>> from latingloss import annotate
    >>> (made,) = match(annotate("Vesper venit et stellae noctis lucent."), Random(1))
    >>> [part.text for part in made.bank][0], len(made.items)
    ('a\\u2002come; arrive', 5)
    """
    senses = _senses(document)
    words = list(senses)
    random.shuffle(words)
    chosen: list[str] = []
    for word in words:
        taken = {sense for other in chosen for sense in senses[other]}
        if len(chosen) < _MOST and not taken & set(senses[word]):
            chosen.append(word)
    if len(chosen) < _FEWEST:
        return (too_short(_TITLE, f"{_FEWEST} words whose meaning is known"),)
    meanings = {word: "; ".join(senses[word][:_SENSES]) for word in chosen}
    letters = dict(zip(sorted(meanings.values()), ascii_lowercase, strict=False))
    items = tuple(
        Item((Part("latin", f"{word} "), Part("letter")), (Part("english", letters[meanings[word]]),))
        for word in chosen
    )
    bank = tuple(Part("english", f"{letter}\u2002{meaning}") for meaning, letter in letters.items())
    return (Exercise(_TITLE, _TASK, items=items, bank=bank, beside=True),)


def _senses(document: Document) -> dict[str, list[str]]:
    """Return the senses of the words by dictionary form; a word that is its own meaning (a name) is left out."""
    found: dict[str, list[str]] = {}
    for word in (t.words[0] for passage in document.passages for t in passage.tokens if t.words):
        senses = [sense for sense in word.senses.split("; ") if sense]
        known = word.upos in _KINDS and not word.guessed and bool(senses)
        if known and key_of(bare_lemma(word.lemma)) not in " ".join(senses[:_SENSES]).lower().split():
            found.setdefault(bare_lemma(word.lemma), senses)
    return found
