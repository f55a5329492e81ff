"""Plain English for what the models hold: a word's grammar, its dictionary form, its pronunciation, its cut."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from functools import lru_cache

from latingloss.document import Document, Passage, Reading, Token, Word
from latingloss.errors import LatinglossError
from latingloss.morphology.lexicon import find
from latingloss.morphology.naming import form_name
from latingloss.pronunciation import pronounce
from latingloss.text.orthography import plain, printed
from latingloss.text.tokens import word_text

_KINDS = {
    "NOUN": "noun", "PROPN": "name", "ADJ": "adjective", "VERB": "verb", "AUX": "verb", "ADV": "adverb",
    "PRON": "pronoun", "DET": "determiner", "NUM": "numeral", "ADP": "preposition", "CCONJ": "conjunction",
    "SCONJ": "conjunction", "INTJ": "interjection", "PART": "particle", "X": "unknown",
}  # fmt: skip


def kind_of(upos: str) -> str:
    """Return the plain name of a part of speech.

    >>> kind_of("ADP")
    'preposition'
    """
    return _KINDS.get(upos, upos.lower())


def grammar_of(reading: Word | Reading) -> str:
    """Say in plain English what a reading's form is.

    >>> from latingloss import analyze
    >>> grammar_of(analyze("noctem")[0])
    'noun, accusative singular'
    """
    return ", ".join(filter(None, (kind_of(reading.upos), form_name(reading))))


@lru_cache(maxsize=4096)
def dictionary_form(lemma: str, upos: str) -> str:
    """Return a lemma as a dictionary shows it, with genitive and gender or principal parts where known.

    >>> dictionary_form("nox", "NOUN"), dictionary_form("levō", "VERB")
    ('nox, noctis f.', 'levō, levāre, levāvī, levātum')
    """
    entries = [x for x in find(lemma) if x.upos == upos or (upos == "VERB" and x.stems and x.upos == "AUX")]
    parts = printed(entries[0].parts) if entries else ""
    return f"{bare_lemma(lemma)}, {parts}" if parts else bare_lemma(lemma)


def bare_lemma(lemma: str) -> str:
    """Return a lemma without the number that tells homographs apart.

    >>> bare_lemma("lēgō#2")
    'lēgō'
    """
    return lemma.partition("#")[0]


def respelling_of(token: Token, tradition: str) -> str:
    """Return how a word is said, respelled for English readers; empty if it cannot be told."""
    enclitic = token.words[1].form if len(token.words) == 2 and _joins(token) else ""
    accented = any(c in "\u0301\u0304" for c in unicodedata.normalize("NFD", token.text))
    try:
        spelled = word_text(token.text) if accented else "".join(w.marked_form for w in token.words)
        return pronounce(spelled, tradition, enclitic=enclitic).respelling
    except LatinglossError:
        return ""


def parts_of(token: Token) -> tuple[str, ...]:
    """Return a token's text cut at its enclitics: `noctísque` gives `noctís`, `-que`."""
    if len(token.words) < 2:
        return (word_text(token.text),)
    if not _joins(token):
        return tuple(word.form for word in token.words)
    text, tails = word_text(token.text), []
    for word in reversed(token.words[1:]):
        text, tail = text[: -len(word.form)], text[-len(word.form) :]
        tails.append(f"-{tail}")
    return (text, *reversed(tails))


def _joins(token: Token) -> bool:
    """Tell whether the words stand in the token as they are: not in `viden`, for `vides` and `ne`."""
    return plain("".join(w.form for w in token.words)) == plain(token.text) and bool(token.words[0].form)


def rendering_of(document: Document, passage: Passage) -> str:
    """Return the English of a passage on one line; empty if it has none.

    >>> from latingloss import annotate
    >>> document = annotate("Vesper venit.", "Evening comes.")
    >>> rendering_of(document, document.passages[0])
    'Evening comes.'
    """
    if not passage.rendering or document.english is None:
        return ""
    return " ".join(document.english[passage.rendering[0].start : passage.rendering[-1].end].split())


def listed(items: Sequence[str]) -> str:
    """Join items as English does.

    >>> listed(["a", "b", "c"])
    'a, b and c'
    """
    return " and ".join(filter(None, (", ".join(items[:-1]), *items[-1:])))
