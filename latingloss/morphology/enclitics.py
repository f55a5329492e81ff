"""Enclitics: small words that lean on the word before and are printed as one with it.

Splitting too much does more harm than splitting too little, so a word is cut only where it has no reading of its
own and what is left of it is a word. What that rule gets wrong is a closed list, `data/lexicon/enclitics.tsv`.
"""

from __future__ import annotations

import re
import unicodedata
from functools import cache, lru_cache

from latingloss.morphology.analysis import analyses, exact
from latingloss.morphology.lexicon import lexemes
from latingloss.tables import read_table
from latingloss.text.orthography import LONGEST_WORD, plain

# -que as part of a word, in every form of it: quicumque, ubicumque, vigintiquinque
_WHOLE = re.compile(r"(?:qu|ub|und|ut)[a-z]*cu[mn]que|[a-z]+gintaquinque|[a-z]+gintiquinque")
_WORD_LIKE = re.compile(r"[a-z]*[aeiouy][a-z]*[abcdeilmnorstux]")  # how Latin words and Hebrew names end
_ENCLITICS = frozenset(("que", "ne", "ue"))
_NAME = frozenset(("PROPN",))
_NOMINAL = _NAME | {"NOUN", "ADJ"}
_SHORT_HOSTS = frozenset(("me", "te", "se", "tu", "is", "id", "ea"))  # of fewer than three letters, before -ne, -ve


@lru_cache(maxsize=1 << 16)
def split(form: str) -> tuple[str, str] | None:
    """Return host and enclitic of a printed word (as `word_text` gives it), or None if it is one word.

    Both are cut from the form, marks and capitals kept, except in contractions, which are written out:
    `viden` is `vides`, `ne`; `bonumst` is `bonum`, `est`. A host may itself have one: `mecumque` gives `mecum`.

    >>> split("populúsque"), split("Itaque"), split("verumst"), split("nōbīscum")
    (('populús', 'que'), None, ('verum', 'est'), ('nōbīs', 'cum'))
    """
    key = plain(form)
    if len(key) > LONGEST_WORD or not key.endswith(("que", "ne", "ue", "cum", "st", "n")):
        return None
    row = _listed().get(key)
    if row and not (form[:1].isupper() and "PROPN" in _kinds(key)):  # the name Ain is not `do you say?`
        return _printed(form, key, row) if row[0] else None
    if key.endswith("que"):
        return _cut(form, 3) if _bears_que(key) else None
    if key.endswith(("ne", "ue")):
        return _cut(form, 2) if _bears_ne(key) else None
    if key.endswith("st") and (letters := _letters_of_est(key)):
        return _cut(form, letters)[0], "est"
    return None


@cache
def _listed() -> dict[str, tuple[str, str]]:
    return {plain(form): (host, enclitic) for form, host, enclitic, _ in read_table("lexicon/enclitics.tsv")}


def _printed(form: str, key: str, parts: tuple[str, str]) -> tuple[str, str]:
    host, enclitic = parts
    if plain(host + enclitic) == key:
        return _cut(form, len(enclitic))
    return (host.capitalize() if form[:1].isupper() else host), enclitic


def _cut(form: str, letters: int) -> tuple[str, str]:
    """Cut a form before its last letters, whatever combining marks they carry."""
    at = len(form)
    while letters:
        at -= 1
        letters -= not unicodedata.combining(form[at])
    return form[:at], form[at:]


def _is_word(key: str) -> bool:
    return bool(exact(key)) or (key in _listed() and _listed()[key][0] != "")


def _bears_que(key: str) -> bool:
    host = key[:-3]
    if len(host) < 2 or host in _ENCLITICS or exact(key) or _WHOLE.fullmatch(key):
        return False
    if _is_word(host):
        return True
    return not analyses(key) and (bool(analyses(host)) or _WORD_LIKE.fullmatch(host) is not None)


def _bears_ne(key: str) -> bool:
    """Tell whether -ne or -ve follows a word known exactly.

    Adjectives in -inus and -ivus, with adverbs in -e, are too many for any lexicon and look just so: of 641 words
    in -us of the UniMorph derivations (CC BY-SA), a third would be cut. So a noun or adjective in -i, a name in a
    vowel, and anything in -ti, -si before -ve are taken not to have one.
    """
    host = key[:-2]
    if (len(host) < 3 and host not in _SHORT_HOSTS) or host in _ENCLITICS or key.endswith(("tiue", "siue")):
        return False
    unlikely = _NOMINAL if host[-1] == "i" else _NAME if host[-1] in "aeou" else frozenset()
    return bool(_kinds(host) - unlikely) and not analyses(key)


def _kinds(key: str) -> set[str]:
    return {lexemes()[reading.lexeme].upos for reading in exact(key)}


def _letters_of_est(key: str) -> int:
    """Return how many last letters stand for `est` (dictust 1, bonumst 2), or 0."""
    if len(key) < 5 or analyses(key):
        return 0
    if key.endswith(("ust", "ist")) and exact(key[:-1]):
        return 1
    return 2 if key[-3] in "maeou" and exact(key[:-2]) else 0
