"""Nouns, adjectives and what stands for them, put into their case: `of the city`, `O Lord`, `with a sword`.

The ablative is that of Bennett 1918, sections 213-231; places 228-232.
"""

from __future__ import annotations

import re
from functools import lru_cache

from latingloss.alignment.literal.use import Use
from latingloss.english.bases import base, bases
from latingloss.english.grades import comparative, superlative
from latingloss.english.nouns import mass, plural
from latingloss.morphology.lexicon import Lexeme

_TIMES = {"day": "on", "night": "in", "hour": "at", "year": "in", "month": "in", "time": "at", "summer": "in",
          "winter": "in", "morning": "in", "evening": "in", "spring": "in", "autumn": "in", "week": "in"}  # fmt: skip
_PERSONS = frozenset(
    """God Lord god lord woman king queen son friend servant slave priest bishop people prophet angel wife boy girl
    child youth virgin widow host guest prince poet shepherd saint apostle martyr enemy husband judge devil consul
    aedile advocate bishop candidate centurion chief client colleague companion cousin deacon disciple heir herald hero
    king monk nephew nobleman orphan parent patriarch patron pirate pupil relative rival secretary spirit steward thief
    tribune tyrant uncle witness hypocrite citizen person neighbour mother daughter sister
    being baby infant guard exile inhabitant native attendant hostage maid maidservant nurse nun maiden mistress lady
    bride aunt goddess nymph one""".split()
)
# masculine in Latin and ending as names of doers end in English, but none
_NO_PERSONS = frozenset(
    """carnelian cluster corner cucumber dagger finger fist flower hammer laughter number order quarter river shoulder
    terror thunder whisper""".split()
)
_LOCATIVES = {"domus": "at home", "humus": "on the ground", "rūs": "in the country", "mīlitia": "in the field"}
_ABLATIVES = ("by", "with", "from", "in", "on", "at", "than", "for", "through", "of")


def noun(use: Use, sense: str) -> str:
    lemma, case = use.lexeme.lemma.partition("#")[0], use.features.get("Case")
    only_plural = any(table.mark.endswith("pl") for _, table in use.lexeme.stems)
    one_form = (only_plural and sense in use.lexeme.gloss) or use.lexeme.kind == "place"
    text = plural(sense) if use.plural and not one_form else sense
    if case == "Loc" and lemma in _LOCATIVES:
        return _LOCATIVES[lemma]
    if case == "Abl" and lemma in ("domus", "rūs", "humus") and not (use.place.preposition or use.low or use.plural):
        return "from home" if lemma == "domus" else f"from the {sense}"
    return cased(use, text, article=_article(use, text, sense))


def _article(use: Use, text: str, sense: str) -> str:
    if text.split(" ")[0] in ("the", "what", "those", "one", "his", "another"):
        return ""
    if use.upos == "PROPN" and use.lexeme.kind == "person":
        return ""
    if "the" in use.low:
        return "the"
    if not use.plural and ("a" in use.low or "an" in use.low):
        return "an" if text[0] in "aeiou" else "a"
    named = use.upos == "PROPN" and use.lexeme.kind != "people"
    some = use.plural and bool(use.low)
    return (
        "" if named or some or sense == "God" or mass(re.split(" (?:of|for|in) ", sense)[0].split(" ")[-1]) else "the"
    )


def cased(use: Use, text: str, *, article: str = "") -> str:
    """Put a noun, or what stands for one, into its case."""
    case = use.features.get("Case", "")
    framed = f"{article} {text}".strip()
    if use.place.preposition or case in ("Nom", "Acc"):
        return text
    if case == "Voc":
        spoken_to = use.upos in ("NOUN", "PROPN") or use.place.substantive
        return f"O {text}" if spoken_to and not use.place.called else text
    said = next((w for w in use.low if w in ("of", "to", "unto", "for", *_ABLATIVES)), "")
    if not case:
        return f"{said} {framed}".strip()
    if case == "Dat":
        return f"{said if said in ('for', 'unto') else 'to'} {framed}"
    if case == "Abl":
        if use.place.compared:
            return f"than {framed}"
        return f"{said if said in _ABLATIVES else _ablative(use, text)} {framed}"
    return f"{'at' if case == 'Loc' else 'of'} {framed}"


def _ablative(use: Use, text: str) -> str:
    """By a person, with a thing, from a town, on a day (Bennett 1918, sections 216-231)."""
    lexeme = use.lexeme
    if use.upos == "PROPN":
        return {"place": "from", "month": "in"}.get(lexeme.kind, "by")
    if (use.place.substantive or use.upos in ("PRON", "DET")) and not use.neuter:
        return "by"
    noun = base(text.split(" of ")[0].split(" ")[-1], "NOUN")
    return _TIMES.get(noun, "by" if noun in _PERSONS or is_person(lexeme) else "with")


@lru_cache(maxsize=10_000)
def _person(lemma: str, parts: str, head: str) -> bool:
    doer = parts.endswith((" m.", " c.")) and head.endswith(("er", "or", "man", "ist", "ian"))
    return lemma.endswith("trīx") or (doer and head not in _NO_PERSONS) or head in _PERSONS


def is_person(lexeme: Lexeme) -> bool:
    """Tell whether a noun means someone who acts, so that its ablative is `by`, its relative `who`."""
    if lexeme.upos == "PROPN":
        return lexeme.kind not in ("place", "month")
    head = lexeme.gloss.split("; ")[0].split(" of ")[0].split(" ")[-1]
    return _person(lexeme.lemma, lexeme.parts, head)


_SEVERAL = ("many", "few", "several", "both", "each", "all")  # nouns of themselves: many are called


def adjective(use: Use, sense: str) -> str:
    if sense == "much" and use.plural:
        sense = "many"
    if not use.place.substantive or use.features.get("Degree") in ("Cmp", "Sup"):
        return ones(use, degree(use, sense)) if use.place.substantive else degree(use, sense)
    if sense in _SEVERAL and use.plural:
        return ones(use, sense) if use.neuter else cased(use, sense)
    named = _as_noun(use, sense)
    if not named:
        return ones(use, sense)
    text = plural(named) if use.plural else named
    return cased(use, text, article=_article(use, text, named))


# endings of peoples' names that are noun as well as adjective: Roman, Amorite, Hebrew, Greek
_ADJECTIVES_ONLY = ("ish", "ese", "ic", "ss")
_PEOPLES = ("an", "ian", "ite", "ew", "ek", "ot", "ene", "ard", "aul")


def _as_noun(use: Use, sense: str) -> str:
    """The English noun for an adjective that stands alone, if there is one: Roman, Jew, wonder."""
    if sense.startswith(_BEFORE) or (use.neuter and sense[:1].isupper()):
        return ""
    for gloss in (sense, *use.lexeme.gloss.split("; ")):
        named = gloss[:1].isupper() and " " not in gloss and not gloss.endswith(_ADJECTIVES_ONLY)
        if named and (gloss.endswith(_PEOPLES) or not bases(gloss, "ADJ")):
            return base(gloss, "NOUN")
    word = sense.split(" ")[-1]
    acted = bases(word, "VERB") and (word not in use.low or word.endswith(("ed", "ing")))
    return sense if bases(word, "NOUN") and not bases(word, "ADJ") and not acted else ""


def degree(use: Use, sense: str) -> str:
    """Grade an adjective or adverb, but not a comparative that has an entry and a gloss of its own."""
    degree = use.features.get("Degree", "")
    own = any(form == use.lexeme.lemma and f.get("Degree") == degree for form, f in use.lexeme.fixed)
    if own or degree not in ("Cmp", "Sup"):
        return sense
    return comparative(sense) if degree == "Cmp" else superlative(sense)


_BEFORE = ("of ", "from ", "in ", "on ", "with ", "without ", "by ", "that ", "which ")  # ones of silver


def ones(use: Use, text: str, *, verbal: bool = False) -> str:
    """An adjective or participle as a noun: `holy ones`, `of the holy`, `good things`, `those loving`."""
    if use.neuter:
        noun = "things" if use.plural else "thing"
        return cased(use, f"{noun} {text}" if verbal else f"{text} {noun}", article="" if use.plural else "the")
    if verbal:
        return cased(use, f"{'those' if use.plural else 'one'} {text}", article="" if use.plural else "the")
    phrase = text.startswith(_BEFORE)
    if use.plural and use.features.get("Case") in ("Gen", "Dat") and not use.place.preposition and not phrase:
        return cased(use, text, article="the")
    if text.startswith("one "):  # one of two
        return cased(use, text)
    one = "ones" if use.plural else "one"
    return cased(use, f"{one} {text}" if phrase else f"{text} {one}", article="the")
