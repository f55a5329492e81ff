"""Treebank conventions of lemmas, told by rule: the same word, put under another headword than in the handbooks."""

from __future__ import annotations

import re

from latingloss.morphology.lexicon import find
from latingloss.morphology.ranking import Candidate, candidates
from latingloss.text.orthography import plain, spellings

CONVENTIONS = {
    "spelling": "the treebank's lemma is no headword of the lexicon but another spelling of ours",
    "number": "a singular headword against a plural one, of a form in the plural",
    "own lemma": "participle, adverb, comparative or substantive by itself, or under its verb or adjective",
    "short form": "a particle's short form against its long one",
    "closed class": "pronouns and esse under another headword",
}
_LEAST_STEM = 3  # letters
# singular and plural of the nominative, as headwords end in them
_PLURALS = (
    ("us", "i"), ("er", "eri"), ("er", "ri"), ("a", "ae"), ("es", "ae"), ("um", "a"), ("is", "es"), ("is", "ia"),
)  # fmt: skip
# two forms of one particle, as dictionaries refer the one to the other: common practice, no source
_SHORT_AND_LONG = {
    frozenset(pair.split("/"))
    for pair in (
        "ac/atque nec/neque e/ex a/ab a/abs ab/abs seu/siue neu/neue ut/uti ni/nisi nil/nihil dein/deinde"
    ).split()
}
_CLOSED = {
    frozenset(pair.split("/"))
    for pair in "quod/qui aliqui/aliquis esse/sum seipsum/seipse sui/se nos/ego uos/tu".split()
}
# endings of adverbs and degrees, then those of the adjectives they are made from; longest first
_MADE = re.compile(r"(issimus|issime|nter|iter|ter|ius|ior|e|o)$")
_BASE = re.compile(r"(ius|ns|us|er|is|e|o)$")


def convention(gold: str, ours: str, *, number: str | None, parts: tuple[str, str]) -> str | None:
    """Return which convention parts two lemmas, given as the scoring tool's keys; None if they are two words.

    `number` is the gold number of the form: a headword in the plural stands for forms in the plural. `parts` are the
    parts of speech, the treebank's and ours.
    """
    gold, ours = plain(gold), plain(ours)
    pair = frozenset((gold, ours))
    if not find(gold) and find(ours) and _spelled_alike(gold, ours):
        return "spelling"
    if number == "Plur" and _singular_and_plural(gold, ours):
        return "number"
    if any(_made_from(*two, adverb="ADV" in parts) for two in ((gold, ours), (ours, gold))):
        return "own lemma"
    if {"ADJ", "ADV"} & set(parts) and "PROPN" not in parts and _same_stem(gold, ours):
        return "own lemma"
    if pair in _SHORT_AND_LONG:
        return "short form"
    return "closed class" if pair in _CLOSED else None


def _spelled_alike(one: str, other: str) -> bool:
    if any(_cited(c) and _key(c) == other for c in candidates(one) if not c.guessed):
        return True  # the lexicon has it as another form of the headword: intelligibilis beside intellegibilis
    return any(_folded(a) in {_folded(b), *map(_folded, spellings(b))} for a, b in ((one, other), (other, one)))


def _folded(key: str) -> str:
    """Return a key without what spellings differ in most: h, ae and oe, doubled letters."""
    return re.sub(r"(.)\1", r"\1", re.sub("[ao]e", "e", key.replace("h", "")))


def _singular_and_plural(one: str, other: str) -> bool:
    return any(
        singular.endswith(s) and len(singular) - len(s) >= _LEAST_STEM and singular[: -len(s)] + p == plural
        for singular, plural in ((one, other), (other, one))
        for s, p in _PLURALS
    )


def _made_from(form: str, lemma: str, *, adverb: bool) -> bool:
    """Tell whether a headword is, in the lexicon, a participle, a degree or an adjective's form of another."""
    if len(form) < _LEAST_STEM:
        return False
    return any(_nominal(c, adverb) for c in candidates(form) if not c.guessed and _key(c) == lemma)


def _nominal(candidate: Candidate, adverb: bool) -> bool:
    features = candidate.features
    if "Poss" in features or (not adverb and features.get("Case") != "Nom"):  # only adverbs are made of other cases
        return False
    if "VerbForm" in features:
        return features["VerbForm"] == "Part"
    return candidate.upos in ("ADJ", "DET", "NUM") or features.get("Degree") in ("Cmp", "Sup")


def _cited(candidate: Candidate) -> bool:
    """Tell whether an adjective's form is one that it is cited by."""
    features = candidate.features
    alike = candidate.upos == "ADJ" and "Masc" in features.get("Gender", "")
    return alike and [features.get(name) for name in ("Case", "Number", "Degree")] == ["Nom", "Sing", "Pos"]


def _key(candidate: Candidate) -> str:
    return plain(candidate.lexeme.lemma.partition("#")[0])


def _same_stem(one: str, other: str) -> bool:
    stems = [(_MADE.sub("", a), _BASE.sub("", b), a, b) for a, b in ((one, other), (other, one))]
    return any(made == base != b and made != a and len(made) >= _LEAST_STEM for made, base, a, b in stems)
