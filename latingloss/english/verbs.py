"""English verbs in the forms that glosses want: modern and archaic, words and phrases.

What stands here is what the table of forms leaves open (it has `lied` beside `lay`), the forms of thou, and
phrases, where one word takes the ending: `sent away`, `is able`.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache

from latingloss.english.vocabulary import forms, regular

# past, past participle and -ing form, where the first in the table is not the usual one
_VERBS = {
    "be": "was been being", "bear": "bore borne bearing", "beware": "bewared bewared bewaring",
    "bid": "bade bidden bidding", "cleave": "cleaved cloven cleaving", "fit": "fitted fitted fitting",
    "get": "got got getting", "gird": "girded girded girding", "heave": "heaved heaved heaving",
    "lean": "leaned leaned leaning", "level": "levelled levelled levelling", "lie": "lay lain lying",
    "light": "lit lit lighting", "mow": "mowed mown mowing", "rival": "rivalled rivalled rivalling",
    "shoe": "shod shod shoeing", "signal": "signalled signalled signalling", "smell": "smelled smelled smelling",
    "spit": "spat spat spitting", "spoil": "spoiled spoiled spoiling", "swell": "swelled swollen swelling",
    "travel": "travelled travelled travelling", "unravel": "unravelled unravelled unravelling",
    "wake": "woke woken waking", "weave": "wove woven weaving", "wet": "wetted wetted wetting",
    "ungird": "ungirded ungirded ungirding", "disprove": "disproved disproved disproving",
}  # fmt: skip
_THIRD = {"be": "is", "have": "has", "fulfil": "fulfils", "re-echo": "re-echoes", "can": "can", "must": "must"}
_MODALS = ("can", "must", "ought", "may", "shall", "will", "would", "should", "might", "could")
_PAST_MODALS = {"can": "could", "may": "might", "shall": "should", "will": "would", "must": "must", "ought": "ought"}
_ARCHAIC_SECOND = {
    "am": "art", "are": "art", "was": "wast", "were": "wast", "have": "hast", "had": "hadst", "do": "dost",
    "did": "didst", "will": "wilt", "shall": "shalt", "can": "canst", "may": "mayest", "might": "mightest",
    "would": "wouldst", "should": "shouldst", "could": "couldst", "must": "must", "let": "let",
}  # fmt: skip
_ARCHAIC_THIRD = {"is": "is", "has": "hath", "does": "doth", "says": "saith"}
_BEFORE_VERB = frozenset(("not", "usually", "never", "always"))


def _on_verb(phrase: str, form: Callable[[str], str]) -> str:
    """Inflect the verb of a phrase: its first word, adverbs before it left alone."""
    words = phrase.split(" ")
    at = next((i for i, w in enumerate(words) if not (w in _BEFORE_VERB or (w.endswith("ly") and words[i + 1 :]))), 0)
    return " ".join([*words[:at], form(words[at]), *words[at + 1 :]])


def _verb_form(verb: str, column: int) -> str:
    if verb in _VERBS:
        return (*_VERBS[verb].split(), regular(verb, "VERB")[3])[column]
    if verb in _PAST_MODALS and column < 2:
        return _PAST_MODALS[verb]
    return (forms(verb, "VERB") or regular(verb, "VERB"))[column]


@lru_cache(maxsize=10_000)
def past(verb: str) -> str:
    """Return the past tense of a verb or verb phrase, third person singular.

    >>> past("lie"), past("send away"), past("be able")
    ('lay', 'sent away', 'was able')
    """
    return _on_verb(verb, lambda v: _verb_form(v, 0))


@lru_cache(maxsize=10_000)
def past_participle(verb: str) -> str:
    """Return the past participle of a verb or verb phrase.

    >>> past_participle("bear"), past_participle("cut off")
    ('borne', 'cut off')
    """
    return _on_verb(verb, lambda v: _verb_form(v, 1))


@lru_cache(maxsize=10_000)
def present_participle(verb: str) -> str:
    """Return the -ing form of a verb or verb phrase.

    >>> present_participle("be able"), present_participle("lie down")
    ('being able', 'lying down')
    """
    return _on_verb(verb, lambda v: _verb_form(v, 2))


def _third(verb: str) -> str:
    return _THIRD.get(verb) or _verb_form(verb, 3)


def _finite(verb: str, *, person: str, singular: bool, before: bool) -> str:
    if verb == "be":
        if before:
            return "was" if singular and person != "2" else "were"
        return {"1": "am", "3": "is"}.get(person, "are") if singular else "are"
    if before:
        return _verb_form(verb, 0)
    return _third(verb) if singular and person == "3" and verb not in _MODALS else verb


def _archaic(modern: str, *, person: str, before: bool, verb: str) -> str:
    """The forms of thou and he: cryest is spelled criest, sittest doubles as sitting does."""
    if person == "2":
        if modern in _ARCHAIC_SECOND:
            return _ARCHAIC_SECOND[modern]
        if before:
            return modern + ("st" if modern.endswith(("ed", "e")) else "est")
        return _archaic_stem(verb, "st")
    if before or modern in _MODALS:
        return modern
    return _ARCHAIC_THIRD.get(modern) or _archaic_stem(verb, "th")


def _archaic_stem(verb: str, ending: str) -> str:
    if verb.endswith("e"):
        return verb + ending
    stem = _verb_form(verb, 2).removesuffix("ing")
    if re.search("[^aeiou]y$", stem):
        stem = stem[:-1] + "i"
    return stem + "e" + ending


def agree(verb: str, *, person: str, number: str, before: bool = False, archaic: bool = False) -> str:
    """Return the one-word present (or, if `before`, past) of a verb or phrase as its subject wants it.

    `person` is 1, 2 or 3 and `number` Sing or Plur, as in Universal Dependencies; `archaic` gives the forms of
    thou and the third person in -eth.

    >>> agree("be able", person="1", number="Sing"), agree("cry out", person="3", number="Sing")
    ('am able', 'cries out')
    >>> agree("cry", person="2", number="Sing", archaic=True), agree("sit", person="3", number="Sing", archaic=True)
    ('criest', 'sitteth')
    """
    singular = number == "Sing"

    def form(v: str) -> str:
        modern = _finite(v, person=person, singular=singular, before=before)
        old = archaic and singular and person in ("2", "3")
        return _archaic(modern, person=person, before=before, verb=v) if old else modern

    return _on_verb(verb, form)
