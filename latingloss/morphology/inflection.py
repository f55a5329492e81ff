"""The whole paradigm of a lemma, compound tenses included."""

from __future__ import annotations

from collections.abc import Iterator

from latingloss.document import Form, Paradigm
from latingloss.errors import UnknownLemmaError
from latingloss.morphology.endings import Features, Table, endings
from latingloss.morphology.lexicon import Lexeme, find
from latingloss.morphology.priors import lexeme_count
from latingloss.text.checking import check_string
from latingloss.text.orthography import printed

_CASES = ("Nom", "Gen", "Dat", "Acc", "Voc", "Abl", "Loc", "")
_ORDER = {
    "Degree": ("Pos", "Cmp", "Sup"),
    "VerbForm": ("Fin", "Inf", "Part", "Ger", "Gdv", "Sup"),
    "Voice": ("Act", "Pass"),
    "Mood": ("Ind", "Sub", "Imp"),
    "Tense": ("Pres", "Past", "Fut", "Pqp"),
    "Aspect": ("Imp", "Perf", "Prosp"),
    "Number": ("Sing", "Plur"),
    "Person": ("1", "2", "3"),
    "Case": _CASES,
}


def _rank(features: Features) -> tuple[int, ...]:
    return tuple(order.index(value) if (value := features.get(name)) in order else -1 for name, order in _ORDER.items())


def forms_of(lexeme: Lexeme) -> Iterator[tuple[str, Features]]:
    """Yield every one-word form of a lexeme with its features, in the order of the tables."""
    for form, features in lexeme.fixed:
        yield form, lexeme.constant | features
    for stem, table in lexeme.stems:
        for text, features, _ in endings(table):
            if (features.get("Case"), features.get("Number")) not in lexeme.dropped:
                yield stem + text, lexeme.constant | features


def _compound_tenses(lexeme: Lexeme) -> Iterator[tuple[str, Features]]:
    """The perfect passive: participle and a form of sum (Bennett 1918, section 94 and on)."""
    stems = [stem for stem, table in lexeme.stems if table.base == "sup" and table.mark != "futp"]
    later = {("Pres", "Ind"): ("Past", "Perf"), ("Past", "Ind"): ("Pqp", "Perf"), ("Fut", "Ind"): ("Fut", "Perf")}
    later |= {("Pres", "Sub"): ("Past", "Perf"), ("Past", "Sub"): ("Pqp", "Perf")}
    for stem in stems:
        for form, features, _ in endings(Table("sum", "VERB")):
            key = (features.get("Tense", ""), features.get("Mood", ""))
            if features["VerbForm"] == "Fin" and key in later and features["Aspect"] == "Imp":
                tense, aspect = later[key]
                participle = stem + ("us" if features["Number"] == "Sing" else "ī")
                yield f"{participle} {form}", features | {"Tense": tense, "Aspect": aspect, "Voice": "Pass"}


def _paradigm(lexeme: Lexeme) -> Paradigm:
    cells = list(forms_of(lexeme))
    if lexeme.upos == "VERB":
        cells += _compound_tenses(lexeme)
    unique = {(form, tuple(sorted(f.items()))): Form(form=printed(form), features=f) for form, f in cells}
    ordered = sorted(unique.values(), key=lambda cell: _rank(cell.features))
    return Paradigm(lemma=printed(lexeme.lemma), upos=lexeme.upos, gloss=lexeme.gloss, forms=tuple(ordered))


def paradigms(lemma: str) -> tuple[Paradigm, ...]:
    """Return the paradigm of every homograph of a lemma, the commonest first.

    The lemma may be written with or without vowel lengths; `#2` picks one homograph. Verbs have their compound
    tenses too (`amātus sum`, masculine). Raises `UnknownLemmaError` (a `LookupError`) if the lexicon has no such
    lemma.

    >>> paradigms("rosa")[0].cells(Case="Gen", Number="Plur")
    ('rosārum', 'rosum')
    """
    check_string(lemma, "lemma")
    found = sorted(find(lemma), key=lambda x: -lexeme_count(x))
    if not found:
        raise UnknownLemmaError(f"{lemma!r} is not a lemma of the lexicon; give the dictionary form (amō, rosa, bonus)")
    return tuple(map(_paradigm, found))


def inflect(lemma: str) -> Paradigm:
    """Return the paradigm of the commonest lexeme that has this lemma.

    Raises `UnknownLemmaError` (a `LookupError`) if the lexicon has no such lemma.

    >>> inflect("cantō").cells(Mood="Imp", Number="Plur", Tense="Pres", Voice="Act")
    ('cantāte',)
    """
    return paradigms(lemma)[0]
