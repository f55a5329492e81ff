"""Which nominative is the subject of a verb (Bennett 1918, sections 166-168)."""

from __future__ import annotations

from latingloss.context.relations.words import Word


def is_person(word: Word, verb: Word) -> bool:
    """Tell whether a word may be subject of a verb in the first or second person: I, you, who."""
    if word.kind != "pronoun" or word.number != verb.number:
        return False
    constant = word.reading.lexeme.constant
    return constant.get("Person") == verb.features.get("Person") or constant.get("PronType") == "Rel"


def third(verb: Word, free: list[Word], *, copula: bool) -> Word | None:
    """The subject of a verb in the third person among the nominatives without a noun of their own."""
    fitting = [w for w in free if w.number == verb.number and w.reading.lexeme.constant.get("Person") not in ("1", "2")]
    if not fitting and verb.number == "Plur" and len(free) > 1:
        fitting = [w for w in free if w.kind == "noun"][:1]
    if relatives := [w for w in fitting if w.relative]:
        return relatives[0]
    if copula:
        return _spoken_of(fitting)
    ranked = [w for w in fitting if w.kind in ("noun", "pronoun", "determiner")]
    ranked = ranked or [w for w in fitting if w.kind == "adjective"]
    return min(ranked, key=lambda w: (w.place > verb.place, abs(w.place - verb.place)), default=None)


def _spoken_of(fitting: list[Word]) -> Word | None:
    """The subject beside `is`: a pronoun, else a name, else the only noun; of two nouns either may be it."""
    pronouns = [w for w in fitting if w.kind in ("pronoun", "determiner")]
    nouns = [w for w in fitting if w.kind == "noun"]
    names = [w for w in nouns if w.reading.upos == "PROPN"]
    for ranked in (pronouns, names):
        if ranked:
            return ranked[0]
    return nouns[0] if len(nouns) == 1 else None


def clearly_subject(word: Word, other: Word) -> bool:
    """Tell whether of two nominatives beside `is` the first is what is spoken of: a pronoun, a name, no mere noun."""
    return word.lemma != other.lemma and (word.kind in ("pronoun", "determiner") or word.reading.upos == "PROPN")
