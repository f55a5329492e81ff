"""The English word a gloss is built on: the author's own, where the rendering has it, else the lexicon's first."""

from __future__ import annotations

from latingloss.alignment.literal.use import FUNCTION, Use
from latingloss.english.bases import base, bases

_PARTICLES = frozenset(("up", "out", "away", "down", "back", "forth", "off", "over", "together", "again"))
_BE = frozenset(("am", "is", "are", "was", "were", "be", "been", "art", "wast"))


def sense_of(use: Use) -> str:
    """The author's word in its base form, the gloss that has it, or the first gloss."""
    glosses = [g for g in f"{use.lexeme.gloss}; {use.lexeme.church}".split("; ") if g]
    first = _first(use, glosses)
    if use.upos == "PROPN":
        if known := next((g for g in glosses if g in use.said), ""):
            return known
        names = [w for w, low in zip(use.said, use.low, strict=True) if w[:1].isupper() and low not in FUNCTION]
        return base(names[-1], "NOUN") if len(names) == 1 and use.lexeme.kind == "people" else " ".join(names) or first
    if use.upos not in ("NOUN", "ADJ", "VERB", "AUX"):
        fitting = [g for g in glosses if set(g.split()) <= set(use.low)]
        return max(fitting, key=len) if fitting else " ".join(use.said) if 0 < len(use.said) < 3 else first
    kind = {"AUX": "VERB"}.get(use.upos, use.upos)
    content = [w for w, low in zip(use.said, use.low, strict=True) if low not in FUNCTION]
    if not content and use.features.get("Degree") in ("Cmp", "Sup"):
        return next((g for g in glosses if not g.startswith("of ")), first)
    if not content:
        helping = {base(w, "VERB") for w in use.low}
        return next((g for g in glosses if kind == "VERB" and g in helping and g != "be"), first)
    forms = {form for w in content for form in (w.lower(), *bases(w.lower(), kind))}
    fitting = [g for g in glosses if (words := set(g.lower().split()) - FUNCTION) and words <= forms]
    if fitting:
        return max(fitting, key=lambda g: (g in content, len(g)))  # Lord, if the rendering has the capital
    return (_given(use, content, kind) if use.upos != "AUX" else "") or first


def _first(use: Use, glosses: list[str]) -> str:
    """The first gloss; a name of God from the church sense, where it is addressed or is the word with a capital."""
    first = glosses[0] if glosses else ""
    church = use.lexeme.church.split("; ")[0]
    addressed = use.features.get("Case") == "Voc" or church.lower() == first
    return church if use.upos == "NOUN" and church[:1].isupper() and addressed and not use.plural else first


def _given(use: Use, content: list[str], kind: str) -> str:
    """The content of a rendering that no gloss has, in its base form; empty if it is another kind of word."""
    if kind == "VERB":
        at = next((i for i, w in enumerate(content) if bases(w.lower(), "VERB")), None)
        if at is None:
            state = _BE & set(use.low) and bases(content[0].lower(), "ADJ")
            return f"be {content[0].lower()}" if state else ""  # is ashamed
        particle = [w for w in content[at + 1 : at + 2] if w in _PARTICLES]
        if any(w not in particle and not w.endswith("ly") for w in (*content[:at], *content[at + 1 :])):
            return ""  # take enjoyment, stand ready: no one verb stands for the Latin
        return " ".join([base(content[at].lower(), kind), *particle])
    last = content[-1].lower()
    fits = bases(last, kind) or (kind == "ADJ" and (use.substantive or bases(last, "VERB")))
    if not fits and any(bases(last, k) for k in ("NOUN", "ADJ", "VERB")):
        return ""
    lemma = base(last, kind)
    before = [w for w in content[-2:-1] if kind == "NOUN" and bases(w.lower(), "ADJ") and w.islower()]  # burnt offering
    return " ".join([*before, lemma.capitalize() if content[-1][:1].isupper() else lemma])
