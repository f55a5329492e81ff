"""Cognate distance: how little an English word recalls a Latin one, from its letters and from what is known."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache
from math import exp, sqrt
from typing import NamedTuple

from latingloss.kin.correspondences import english_stems, letters
from latingloss.kin.derivations import family
from latingloss.kin.letters import weights
from latingloss.kin.looks import Shapes, form_shapes, lexeme_shapes, likeness, without_ending
from latingloss.kin.relations import etymons, natives, relations, roots_of
from latingloss.morphology.analysis import analyses
from latingloss.morphology.lexicon import Lexeme, find, lexemes
from latingloss.text.checking import check_string
from latingloss.text.orthography import plain, printed

_HALFWAY, _STEEPNESS = 0.42, 7.0  # likeness at which kin and chance are equally likely; slope of the curve
_INHERITED = 0.3  # likeness taken off an alignment by the rules of cousins, which chance meets more often
_BY_CHANCE = 0.2  # likeness taken off a native word not known to be kin: it was not borrowed
_SAME_ETYMON, _SAME_ROOT = 0.35, 0.6  # largest distance of a word known to come from the Latin one; to share its root
_SAME_WORD = 0.48  # likeness from which a recorded etymon is taken for the Latin word or its family
_NONE: frozenset[str] = frozenset()
_LEAST = 0.02  # of words that differ in spelling
_SMALL_WORDS = frozenset({"a", "an", "the", "to", "of", "be", "in", "on", "at", "for", "with", "by", "or", "and"})
_WORD = re.compile(r"[^\W\d_]+(?:'s)?")


class _Latin(NamedTuple):
    shapes: Shapes
    etymon: frozenset[str]  # folded stems of English words of the same etymon or family
    cousins: frozenset[str]  # folded stems of native English words that share its root
    roots: frozenset[str]  # Indo-European roots of the words of its etymon


def cognate_distance(latin: str, english: str) -> float:
    """Return how little an English word recalls a Latin one: 0 the same word, 1 nothing in common.

    Letters are aligned with weights learned from kin (see `letters`), against every stem of the lemma; a form is
    traced to its lemmas. An English word known to come from the Latin word is near, one that only shares its root
    less so. Of several English words the root mean square counts, so that one word that recalls nothing weighs more
    than one that does; articles and the like are left out. Not symmetric: the first word is taken as Latin. Any text
    is allowed; raises `InputTypeError` for anything but a `str`.

    >>> cognate_distance("vīta", "vita"), cognate_distance("viridis", "green") > 0.9
    (0.0, True)
    >>> cognate_distance("aqua", "aquatic") < cognate_distance("aqua", "ewer") < cognate_distance("aqua", "water")
    True
    """
    check_string(latin, "latin")
    check_string(english, "english")
    if plain(latin) == plain(english):
        return 0.0
    words = _WORD.findall(plain(english))
    words = [word for word in words if word not in _SMALL_WORDS] or words
    key = plain(latin)
    if not words or not letters(key):
        return 1.0
    known = _latin(key)
    return sqrt(sum(_one_word(known, key, word) ** 2 for word in words) / len(words))


def _one_word(known: _Latin, key: str, word: str) -> float:
    if word == key:
        return 0.0
    variants = english_stems(word)
    if not variants:
        return 1.0
    listed = (word, word.removesuffix("s"), word.removesuffix("es"), word.removesuffix("ed"), word.removesuffix("ing"))
    factor = _recorded(known, key, variants, listed=dict.fromkeys(listed))
    alike = likeness(known.shapes.borrowed, variants, weights())
    if not natives().isdisjoint(listed):
        inherited = likeness(known.shapes.inherited, variants[:1], weights("cousins")) - _INHERITED
        alike = max(inherited, alike - _BY_CHANCE if factor == 1.0 else alike)
    return max(factor / (1.0 + exp(_STEEPNESS * (alike - _HALFWAY))), _LEAST)


def _recorded(known: _Latin, key: str, variants: tuple[str, ...], *, listed: Iterable[str]) -> float:
    """Return the largest distance of a word, given as its folded stems and listed forms, by what is recorded of it."""
    if not known.etymon.isdisjoint(variants) or any(_comes_from(known, form) for form in listed):
        return _SAME_ETYMON
    if not known.cousins.isdisjoint(variants) or any(known.roots & roots_of().get(form, _NONE) for form in listed):
        return _SAME_ROOT
    return 1.0 if _family(key).isdisjoint(variants) else _SAME_ROOT


def _comes_from(known: _Latin, word: str) -> bool:
    """Tell whether the word's recorded etymon is the Latin word or of its family: `duke` from `ductus`."""
    return any(
        likeness(known.shapes.borrowed, tuple(dict.fromkeys((etymon, without_ending(etymon)))), weights()) > _SAME_WORD
        for etymon in etymons().get(word, ())
    )


@lru_cache(maxsize=20_000)
def _latin(key: str) -> _Latin:
    """Gather what is known of a Latin lemma or form, given as a plain key."""
    entries = find(key)
    if not entries:
        every = lexemes()
        entries = tuple({a.lexeme: every[a.lexeme] for a in analyses(key)}.values())
    pair = weights(), weights("cousins")
    found = [_shapes(entry) for entry in entries] or [form_shapes(key, *pair)]
    shapes = Shapes(*(tuple(dict.fromkeys(scored for one in found for scored in one[side])) for side in (0, 1)))
    related = [relation for entry in entries for relation in relations(entry)]
    borrowed = [relation.word for relation in related if relation.kind != "shared root"]
    cousins = [relation.word for relation in related if relation.kind == "shared root"]
    roots = (root for word in borrowed for root in roots_of().get(word, ()))
    return _Latin(shapes, frozenset(_recognised(borrowed)), frozenset(_recognised(cousins)), frozenset(roots))


@lru_cache(maxsize=20_000)
def _family(key: str) -> frozenset[str]:
    """Return what tells the English kin of words made from the same root as a Latin lemma: of `faciō` for `efficiō`."""
    made = {found for entry in find(key) for found in family((printed(entry.lemma), entry.upos))}
    kin = (relation.word for lemma, upos in made for entry in find(lemma) for relation in relations(entry))
    return frozenset(_recognised(kin))


def _recognised(words: Iterable[str]) -> Iterator[str]:
    """Yield what tells that an English word is one of `words` or made from one: each whole, and its longer stems."""
    for word in words:
        for i, stem in enumerate(english_stems(word)):
            if i == 0 or len(stem) > 3:
                yield stem


def _shapes(entry: Lexeme) -> Shapes:
    return lexeme_shapes(entry, weights(), weights("cousins"))
