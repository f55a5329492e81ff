"""The English word a gloss is built on: the author's own, where the rendering has it, else the lexicon's first."""

from __future__ import annotations

import re

from latingloss.alignment.literal.kinds import fits, is_common, is_known, is_participle
from latingloss.alignment.literal.use import FUNCTION, Use
from latingloss.english.bases import base, bases
from latingloss.text.orthography import printed, without_lengths

_PARTICLES = frozenset(("up", "out", "away", "down", "back", "forth", "off", "over", "together", "again"))
_NO_VERBS = _PARTICLES | {
    "like",
    "near",
    "after",
    "so",
    "as",
    "cannot",
}  # no verbs, or more seldom than what they say here
_BEFORE = frozenset(
    """in on at to from with by for of into unto upon over under through against before behind among between after about
    towards without within above below beside during""".split()
)
_NO_CONTENT = _PARTICLES | _BEFORE | frozenset(("and", "or", "but", "nor", "so", "as", "if", "when", "then", "than"))
_BE = frozenset(("am", "is", "are", "was", "were", "be", "been", "art", "wast"))


def sense_of(use: Use) -> str:
    """The author's word in its base form, the gloss that has it, or the first gloss."""
    glosses = [g for g in f"{use.lexeme.gloss}; {use.lexeme.church}".split("; ") if g]
    first = _first(use, glosses)
    if use.upos == "PROPN":
        return _name(use, glosses) or first or without_lengths(printed(use.lexeme.lemma.partition("#")[0]))
    if use.upos not in ("NOUN", "ADJ", "VERB", "AUX"):
        return _small_word(use, glosses) or use.place.means or first
    usual = use.place.means or first
    if not use.said:
        return usual
    kind = {"AUX": "VERB"}.get(use.upos, use.upos)
    content = [w for w, low in zip(use.said, use.low, strict=True) if low not in FUNCTION]
    if not content:
        return _helped(use, glosses, kind) or usual
    forms = {form for w in content for form in (w.lower(), *bases(w.lower(), kind))}
    fitting = [g for g in glosses if _fits(g, use, forms)]
    if fitting:  # the exact word, with the capital of Lord; then the longest
        return _capital(use, max(fitting, key=lambda g: (g in content, len(set(g.split()) - FUNCTION))), content)
    return (_given(use, content, glosses) if use.upos != "AUX" else "") or usual


def _fits(gloss: str, use: Use, forms: set[str]) -> bool:
    """Tell whether the rendering has the words of a gloss, and its capitals."""
    words = set(gloss.lower().split()) - FUNCTION
    capitals = [w for w in gloss.split() if w[:1].isupper()]
    return bool(words) and words <= forms and (use.upos != "NOUN" or set(capitals) <= set(use.said))


def _capital(use: Use, gloss: str, content: list[str]) -> str:
    """A noun with the capital that the rendering gives it, if not because it opens the sentence: O King."""
    held = use.upos == "NOUN" and gloss.capitalize() in content and gloss.islower()
    inside = use.features.get("Case") == "Voc" or gloss.capitalize() in use.said[1:]
    return gloss.capitalize() if held and inside else gloss


def _name(use: Use, glosses: list[str]) -> str:
    """The name as the rendering has it; not the Ten of the Ten Cities for Decapolis."""
    if known := next((g for g in glosses if g in use.said), ""):
        return known
    names = [w for w, low in zip(use.said, use.low, strict=True) if w[:1].isupper() and low not in FUNCTION]
    if glosses:
        names = [w for w in names if {base(w, "NOUN"), w.lower()} & set(glosses) or not is_common(w.lower())]
    return base(names[-1], "NOUN") if len(names) == 1 and use.lexeme.kind == "people" else " ".join(names)


def _small_word(use: Use, glosses: list[str]) -> str:
    """An adverb, conjunction, preposition or numeral: the longest gloss that the rendering has whole.

    What no gloss tells is taken from a short rendering.
    """
    fitting = [g for g in glosses if set(g.lower().split()) <= set(use.low)]
    if fitting:
        return max(fitting, key=len)
    if use.lexeme.lemma in ("nē", "ne") and not use.place.means:
        return _not(use)
    return " ".join(use.low) if not glosses and len(use.low) < 3 else ""


def _not(use: Use) -> str:
    """Nē in a rendering without its glosses: `not`, or the `that` of fear, which denies nothing."""
    if "not" in use.low:
        return "do not" if "do" in use.low else "not"
    return "lest" if {"that", "lest"} & set(use.low) else ""


def _helped(use: Use, glosses: list[str], kind: str) -> str:
    """The gloss for a rendering of small words only: `more`, `have`, `can`."""
    if use.features.get("Degree") in ("Cmp", "Sup"):
        return next((g for g in glosses if not g.startswith("of ")), "")
    helping = {base(w, "VERB") for w in use.low} if kind == "VERB" else set()
    return next((g for g in glosses if g in helping and g != "be"), "")


def _first(use: Use, glosses: list[str]) -> str:
    """The first gloss; a name of God from the church sense, where it is addressed or written with a capital.

    Several are thanks, not graces (Bennett 1918, section 61), where a gloss is a word that has only a plural.
    """
    first = glosses[0] if glosses else ""
    if use.upos == "NOUN" and use.plural:
        return next(
            (g for g in glosses if re.search("[^asu]s$", g) and fits(g, "NOUN") and not bases(g, "NOUN")), first
        )
    if use.upos != "NOUN" or not use.lexeme.church:
        return first
    church = use.lexeme.church.split("; ")
    named = next((c for c in church if c[:1].isupper() and c.lower() in glosses), "")
    always = church == [named] and use.features.get("Case") == "Voc"
    return named if named and (use.place.capital or always) else first


def _given(use: Use, content: list[str], glosses: list[str]) -> str:
    """The one word of content in a rendering that no gloss has, in its base form; empty if it is another kind."""
    words, kind = [w for w in content if w.lower() not in _NO_CONTENT], use.upos
    if not words or (len(words) > 1 and (glosses or kind == "VERB")):
        return ""  # take enjoyment, stand ready: no one word stands for the Latin
    said, word = words[-1], words[-1].lower()
    if kind == "VERB":
        return _given_verb(use, said, glosses)
    named = said[:1].isupper() and not is_common(word)
    told = not glosses or named or fits(word, kind) or not is_known(word)
    if kind == "ADJ" and not told:
        graded = use.features.get("Degree") in ("Cmp", "Sup")  # no `more elders`
        told = is_participle(word) or bool(use.place.substantive and not graded and fits(word, "NOUN"))
    lemma = base(word, kind)
    return "" if not told else lemma.capitalize() if said[:1].isupper() else lemma


def _given_verb(use: Use, said: str, glosses: list[str]) -> str:
    """A verb with the particle behind it: cast away; or a state: is ashamed."""
    word = said.lower()
    if "not" in use.low and any(g.startswith("not ") for g in glosses):
        return ""  # not willing for nōlō, whose sense has the `not` in it
    if word not in _NO_VERBS and fits(word, "VERB"):
        at = use.said.index(said)
        return " ".join([base(word, "VERB"), *(w for w in use.low[at + 1 : at + 2] if w in _PARTICLES)])
    state = _BE & set(use.low) or any(g.startswith("be ") for g in glosses)
    return f"be {word}" if state and bases(word, "ADJ") else ""
