"""Readings out of context, ranked: what `latingloss.analyze` returns."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from math import exp
from operator import attrgetter
from typing import NamedTuple
from unicodedata import combining

from latingloss.document import Reading
from latingloss.errors import TextError
from latingloss.morphology.analysis import analyses
from latingloss.morphology.endings import Features
from latingloss.morphology.guessing import guesses
from latingloss.morphology.lexicon import Lexeme, lexemes
from latingloss.morphology.priors import weight
from latingloss.text.checking import check_string
from latingloss.text.orthography import has_lengths, lengths, plain, printed
from latingloss.text.tokens import word_text

# parts of speech that grammars and treebanks divide differently
_SAME_KIND = {"AUX": "VERB", "PROPN": "NOUN", "DET": "PRON"}


class Candidate(NamedTuple):
    """A reading with its prior; what the chooser chooses from."""

    lexeme: Lexeme
    form: str
    upos: str
    features: Features
    prior: float
    guessed: bool = False


_Unweighed = tuple[Lexeme, str, str, Features, float]  # a candidate with a prior of any scale
_prior = attrgetter("prior")

Weighed = tuple[tuple[Candidate, float], ...]  # readings with probabilities that sum to 1, best first


def by_score(readings: Sequence[Candidate], scores: Sequence[float]) -> Weighed:
    """Return readings with the softmax of their scores, best first."""
    top = max(scores)
    powers = [exp(score - top) for score in scores]
    total = sum(powers)
    return tuple(sorted(((c, p / total) for c, p in zip(readings, powers, strict=True)), key=lambda pair: -pair[1]))


def same_kind(one: str, other: str) -> bool:
    """Tell whether two parts of speech are one to those who divide them otherwise.

    >>> same_kind("PROPN", "NOUN"), same_kind("ADJ", "NOUN")
    (True, False)
    """
    return _SAME_KIND.get(one, one) == _SAME_KIND.get(other, other)


_CAPITAL_UNUSED = 0.3  # a common word with a capital: it may open a sentence or be held sacred
_SMALL_NAME = 0.02  # a name without a capital
_AGAINST_WRITTEN = 1e-4  # a reading that contradicts a written length stays, far behind


def _fits(written: str, form: str) -> bool:
    """Tell whether a form's vowel lengths agree with those written: a macron needs one, a breve forbids one."""
    own = lengths(form)
    if len(own) != len(written):
        return True
    return all(w == "." or (w == "-") == (o == "-") for w, o in zip(written, own, strict=True))


def candidates(form: str) -> tuple[Candidate, ...]:
    """Return the readings of a printed form with priors that sum to 1, best first; never empty.

    Vowel lengths written on the form count as evidence. A form outside the lexicon gets guesses.
    """
    return _known(form) or _guessed(form)


@lru_cache(maxsize=1 << 16)
def _known(form: str) -> tuple[Candidate, ...]:
    return _shared_out(form, _weighed(form), guessed=False)


@lru_cache(maxsize=4096)  # guesses are many for one form, and such a form seldom comes again
def _guessed(form: str) -> tuple[Candidate, ...]:
    return _shared_out(form, guesses(form), guessed=True)


def _shared_out(form: str, found: Sequence[_Unweighed], *, guessed: bool) -> tuple[Candidate, ...]:
    """Return readings with priors that sum to 1, best first."""
    if has_lengths(form):
        written = lengths(form)
        found = [(*r[:4], r[4] if _fits(written, r[1]) else r[4] * _AGAINST_WRITTEN) for r in found]
    total = sum(r[4] for r in found)
    shares = [
        Candidate(lexeme, marked, upos, features, prior / total, guessed)
        for lexeme, marked, upos, features, prior in found
    ]
    return tuple(sorted(shares, key=_prior, reverse=True))


def _weighed(form: str) -> list[_Unweighed]:
    """Return the lexicon's readings of a printed form with their unnormalised priors."""
    entries, capital = lexemes(), form[:1].isupper()
    found = []
    for i, marked, features, share in analyses(plain(form)):
        lexeme = entries[i]
        upos = "VERB" if "VerbForm" in features and lexeme.upos != "AUX" else lexeme.upos
        prior = share * weight(i, features)
        if (upos == "PROPN") != capital:
            prior *= _CAPITAL_UNUSED if capital else _SMALL_NAME
        found.append((lexeme, marked, upos, features, prior))
    return found


def analyze(form: str) -> tuple[Reading, ...]:
    """Return every reading of a form out of context, best first.

    Vowel lengths may be written or not; where they are, readings that contradict them come last. Forms outside
    the lexicon get guessed readings. Probabilities sum to 1. Raises `TextError` if it is not one word,
    `InputTypeError` if it is no string.

    >>> [(r.lemma, r.features["Case"]) for r in analyze("rosā")[:1]]
    [('rosa', 'Abl')]
    """
    check_string(form, "form")
    word = word_text(form.strip())
    if not any(c.isalpha() for c in word):
        raise TextError(f"{form!r} has no letter; give one Latin word")
    if not all(c.isalpha() or combining(c) or c in "'’-" for c in word):
        raise TextError(f"{form!r} is not one word; give one Latin word, without punctuation")
    return tuple(reading(c, probability=c.prior) for c in candidates(word))


def reading(candidate: Candidate, *, probability: float) -> Reading:
    """Return a candidate as the published model."""
    return Reading(
        lemma=printed(candidate.lexeme.lemma),
        upos=candidate.upos,
        features=candidate.features,
        form=printed(candidate.form),
        gloss=candidate.lexeme.gloss,
        probability=min(1.0, probability),
        guessed=candidate.guessed,
    )
