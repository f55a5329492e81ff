"""Which part of speech an English word is, as the lexicon's own glosses use it: give a verb, thanks a noun."""

from __future__ import annotations

from collections import Counter
from functools import cache

from latingloss.english.bases import bases
from latingloss.english.verbs import past_participle
from latingloss.english.vocabulary import listed_bases
from latingloss.morphology.lexicon import lexemes

_KINDS = ("NOUN", "VERB", "ADJ")


@cache
def _uses() -> dict[str, Counter[str]]:
    """How often each English word is by itself the gloss of a noun, a verb, an adverb and so on."""
    uses: dict[str, Counter[str]] = {}
    for lexeme in lexemes():
        for gloss in lexeme.gloss.split("; "):
            if gloss.islower() and " " not in gloss:
                uses.setdefault(gloss, Counter())[lexeme.upos] += 1
    return uses


def fits(word: str, kind: str) -> bool:
    """Tell whether an English word in lower case is a NOUN, VERB or ADJ, not only by a rare use.

    >>> fits("give", "VERB"), fits("give", "NOUN"), fits("thanks", "NOUN"), fits("thanks", "VERB")
    (True, False, True, False)
    """
    found = bases(word, kind)
    if any(_uses().get(w, Counter())[kind] for w in (word, *found)):
        return True
    return bool(found) and not _other(word, kind)


def _other(word: str, kind: str) -> bool:
    """Tell whether the glosses have a word, or what it is a form of, as another kind of word."""
    if word in _uses():
        return True
    return any(_uses().get(w, Counter())[k] for k in _KINDS if k != kind for w in bases(word, k))


def is_participle(word: str) -> bool:
    """Tell whether an English word in lower case is a participle, so that it may stand for an adjective.

    >>> is_participle("sent"), is_participle("loving"), is_participle("give")
    (True, True, False)
    """
    return any(word != b and (word.endswith("ing") or word == past_participle(b)) for b in bases(word, "VERB"))


def is_known(word: str) -> bool:
    """Tell whether a word in lower case is one of English that glosses or the table of forms have.

    >>> is_known("give"), is_known("teraphim")
    (True, False)
    """
    return word in _uses() or any(bases(word, kind) for kind in _KINDS)


def is_common(word: str) -> bool:
    """Tell whether English has a word in lower case that is no name, as the Ten of the Ten Cities.

    >>> is_common("ten"), is_common("esaias")
    (True, False)
    """
    return word in _uses() or any(listed_bases(word, kind) for kind in _KINDS)
