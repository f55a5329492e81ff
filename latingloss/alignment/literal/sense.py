"""The English word a gloss is built on: the author's own, where the rendering has it, else the lexicon's first."""

from __future__ import annotations

from latingloss.alignment.literal.use import FUNCTION, Use
from latingloss.english.bases import base, bases
from latingloss.text.orthography import printed, without_lengths

_PARTICLES = frozenset(("up", "out", "away", "down", "back", "forth", "off", "over", "together", "again"))
_NO_VERBS = _PARTICLES | {"like", "near", "after", "so", "as"}  # as verbs they are rarer than as what they say here
_BEFORE = frozenset(
    """in on at to from with by for of into unto upon over under through against before behind among between after about
    towards without within above below beside during""".split()
)
_BE = frozenset(("am", "is", "are", "was", "were", "be", "been", "art", "wast"))


def sense_of(use: Use) -> str:
    """The author's word in its base form, the gloss that has it, or the first gloss."""
    glosses = [g for g in f"{use.lexeme.gloss}; {use.lexeme.church}".split("; ") if g]
    first = _first(use, glosses)
    if use.upos == "PROPN":
        return _name(use, glosses) or first or without_lengths(printed(use.lexeme.lemma.partition("#")[0]))
    if use.upos not in ("NOUN", "ADJ", "VERB", "AUX"):
        return _small_word(use, glosses) or first
    if not use.said:
        return first
    kind = {"AUX": "VERB"}.get(use.upos, use.upos)
    content = [w for w, low in zip(use.said, use.low, strict=True) if low not in FUNCTION]
    if not content:
        return _helped(use, glosses, kind) or first
    forms = {form for w in content for form in (w.lower(), *bases(w.lower(), kind))}
    fitting = [g for g in glosses if _fits(g, use, forms)]
    if fitting:  # the exact word, with the capital of Lord; then the longest
        return _capital(use, max(fitting, key=lambda g: (g in content, len(set(g.split()) - FUNCTION))), content)
    return (_given(use, content, kind) if use.upos != "AUX" else "") or first


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
    """The name as the rendering has it."""
    if known := next((g for g in glosses if g in use.said), ""):
        return known
    names = [w for w, low in zip(use.said, use.low, strict=True) if w[:1].isupper() and low not in FUNCTION]
    return base(names[-1], "NOUN") if len(names) == 1 and use.lexeme.kind == "people" else " ".join(names)


def _small_word(use: Use, glosses: list[str]) -> str:
    """An adverb, conjunction or preposition: the longest gloss that the rendering has, or a short rendering itself."""
    fitting = [g for g in glosses if set(g.split()) <= set(use.low)]
    if fitting:
        return max(fitting, key=len)
    if use.upos == "ADP" and len(use.low) > 1:
        return use.low[0] if use.low[0] in _BEFORE else ""  # in .. of; but not sight of
    return " ".join(use.low) if 0 < len(use.low) < 3 else ""


def _helped(use: Use, glosses: list[str], kind: str) -> str:
    """The gloss for a rendering of small words only: `more`, `have`, `can`."""
    if use.features.get("Degree") in ("Cmp", "Sup"):
        return next((g for g in glosses if not g.startswith("of ")), "")
    helping = {base(w, "VERB") for w in use.low} if kind == "VERB" else set()
    return next((g for g in glosses if g in helping and g != "be"), "")


def _first(use: Use, glosses: list[str]) -> str:
    """The first gloss; a name of God from the church sense, where it is addressed or written with a capital."""
    first = glosses[0] if glosses else ""
    if use.upos != "NOUN" or use.plural or not use.lexeme.church:
        return first
    church = use.lexeme.church.split("; ")
    named = next((c for c in church if c[:1].isupper() and c.lower() in glosses), "")
    always = church == [named] and use.features.get("Case") == "Voc"
    return named if named and (use.place.capital or always) else first


def _given(use: Use, content: list[str], kind: str) -> str:
    """The content of a rendering that no gloss has, in its base form; empty if it is another kind of word."""
    if kind == "VERB":
        at = next((i for i, w in enumerate(content) if bases(w.lower(), "VERB") and w not in _NO_VERBS), None)
        if at is None:
            state = _BE & set(use.low) and bases(content[0].lower(), "ADJ")
            return f"be {content[0].lower()}" if state else ""  # is ashamed
        particle = [w for w in content[at + 1 : at + 2] if w in _PARTICLES]
        if any(w not in particle and not w.endswith("ly") for w in (*content[:at], *content[at + 1 :])):
            return ""  # take enjoyment, stand ready: no one verb stands for the Latin
        return " ".join([base(content[at].lower(), kind), *particle])
    last = content[-1].lower()
    fits = bases(last, kind) or (kind == "ADJ" and (use.place.substantive or bases(last, "VERB")))
    if not fits and any(bases(last, k) for k in ("NOUN", "ADJ", "VERB")):
        return ""
    lemma = base(last, kind)
    before = [w for w in content[-2:-1] if kind == "NOUN" and bases(w.lower(), "ADJ") and w.islower()]  # burnt offering
    return " ".join([*before, lemma.capitalize() if content[-1][:1].isupper() else lemma])
