"""Paradigm tables: which endings a stem of each kind takes, and what each ending says.

The tables are data (`data/paradigms`); this module reads them and names every cell in Universal Dependencies
features. A table is called by base, part of speech and what the lexicon adds (a gender, a degree, a filter):
`Table("1", "NOUN", "Fem")`.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from functools import cache
from typing import NamedTuple

from latingloss.tables import built_once, read_table

Features = dict[str, str]
ALTERNATIVE = 0.2  # how usual an ending is that is listed behind another (-īs beside -ēs); a judgement

GENDERS = {"m": "Masc", "f": "Fem", "n": "Neut", "c": "Fem,Masc", "mf": "Fem,Masc", "": "Fem,Masc,Neut"}
CASES = {"nom": "Nom", "gen": "Gen", "dat": "Dat", "acc": "Acc", "voc": "Voc", "abl": "Abl", "loc": "Loc"}
NUMBERS = {"sg": "Sing", "pl": "Plur"}
TENSES = {
    "Pres": ("Pres", "Imp"),
    "Impf": ("Past", "Imp"),
    "Fut": ("Fut", "Imp"),
    "Perf": ("Past", "Perf"),
    "Plup": ("Pqp", "Perf"),
    "FutPerf": ("Fut", "Perf"),
}
NONFINITE: dict[str, Features] = {
    "InfPresAct": {"Aspect": "Imp", "Tense": "Pres", "VerbForm": "Inf", "Voice": "Act"},
    "InfPresPass": {"Aspect": "Imp", "Tense": "Pres", "VerbForm": "Inf", "Voice": "Pass"},
    "InfPerfAct": {"Aspect": "Perf", "Tense": "Past", "VerbForm": "Inf", "Voice": "Act"},
    "InfFutAct": {"Aspect": "Prosp", "Tense": "Fut", "VerbForm": "Inf", "Voice": "Act"},
    "PartPres": {"Aspect": "Imp", "Tense": "Pres", "VerbForm": "Part", "Voice": "Act"},
    "PartPerf": {"Aspect": "Perf", "Tense": "Past", "VerbForm": "Part", "Voice": "Pass"},
    "PartFut": {"Aspect": "Prosp", "Tense": "Fut", "VerbForm": "Part", "Voice": "Act"},
    "Gerundive": {"Aspect": "Prosp", "VerbForm": "Gdv", "Voice": "Pass"},
    "Gerund": {"VerbForm": "Ger"},
    "Supine": {"VerbForm": "Sup"},
}


class Table(NamedTuple):
    """Names one set of endings: base table, part of speech, and what narrows or marks it."""

    base: str
    upos: str
    mark: str = ""
    whole: bool = False  # the cells that are the lemma itself, not stem and ending


class Ending(NamedTuple):
    """One cell: the ending with vowel lengths, the features it gives, and how usual it is beside its alternatives."""

    text: str
    features: Features
    share: float = 1.0


class _Nominal(NamedTuple):
    gender: str
    number: str
    case: str
    endings: tuple[str, ...]


@built_once
def _nominals() -> dict[str, list[_Nominal]]:
    tables: dict[str, list[_Nominal]] = defaultdict(list)
    slots = [(n, c) for n in ("sg", "pl") for c in ("nom", "gen", "dat", "acc", "voc", "abl")] + [("sg", "loc")]
    for base, gender, *cells in read_table("paradigms/nominals.tsv"):
        for (number, case), cell in zip(slots, cells, strict=True):
            if cell:
                tables[base].append(_Nominal(gender, number, case, tuple(cell.split("/"))))
    return tables


@built_once
def _finite() -> dict[str, list[Ending]]:
    tables: dict[str, list[Ending]] = defaultdict(list)
    persons = [(p, n) for n in ("Sing", "Plur") for p in "123"]
    for base, mood, name, voice, *cells in read_table("paradigms/verbs.tsv"):
        tense, aspect = TENSES[name]
        for (person, number), cell in zip(persons, cells, strict=True):
            features = {"Aspect": aspect, "Mood": mood, "Number": number, "Person": person, "Tense": tense}
            features |= {"VerbForm": "Fin", "Voice": voice}
            tables[base] += [Ending(e, features, _share(n)) for n, e in enumerate(cell.split("/")) if e]
    return tables


def _share(place: int) -> float:
    """How usual the ending at a place in its list is."""
    return ALTERNATIVE if place else 1.0


@built_once
def _nonfinite() -> dict[str, list[tuple[str, str, str]]]:
    tables: dict[str, list[tuple[str, str, str]]] = defaultdict(list)
    for base, kind, ending, nominal in read_table("paradigms/nonfinite.tsv"):
        tables[base].append((kind, ending, nominal))
    return tables


def _cells_of(row: _Nominal, features: Features, *, whole: bool) -> Iterator[Ending]:
    for place, ending in enumerate(row.endings):
        if (ending == "*") == whole:
            yield Ending("" if whole else ending, features, _share(place))


def _declined(base: str, *, whole: bool, number: str = "") -> Iterator[Ending]:
    """Cells of a nominal table; those that are the lemma itself when `whole`, else the others."""
    for row in _nominals()[base]:
        if number and row.number != number:
            continue
        features = {"Case": CASES[row.case], "Gender": GENDERS[row.gender], "Number": NUMBERS[row.number]}
        yield from _cells_of(row, features, whole=whole)


def _noun(table: Table) -> Iterator[Ending]:
    gender, _, number = table.mark.partition("+")
    wanted = {"Neut": "n"}.get(gender, "mf")
    for row in _nominals()[table.base]:
        if row.gender in ("", wanted) and number in ("", row.number):
            features = {"Case": CASES[row.case], "Gender": gender, "Number": NUMBERS[row.number]}
            yield from _cells_of(row, features, whole=table.whole)


def _adjective(table: Table) -> Iterator[Ending]:
    degree, _, number = table.mark.partition("+")
    extra = {"Degree": degree} if degree in ("Pos", "Cmp", "Sup") else {}
    for ending in _declined(table.base, whole=table.whole, number=number):
        yield ending._replace(features=ending.features | extra)


def _verb(table: Table) -> Iterator[Ending]:
    """Finite and other cells; the mark narrows: `dep` passive forms only, `3sg` impersonal."""
    marks = table.mark.split("+")
    for ending in _finite()[table.base]:
        f = ending.features
        if ("dep" in marks and f["Voice"] == "Act") or ("3sg" in marks and f["Person"] + f["Number"] != "3Sing"):
            continue
        yield ending
    for kind, stems, nominal in _nonfinite()[table.base]:
        if "dep" in marks and kind in ("InfPresAct", "InfPerfAct"):
            continue
        yield from _nonfinite_cells(kind, stems, nominal)


def _nonfinite_cells(kind: str, stems: str, nominal: str) -> Iterator[Ending]:
    features = NONFINITE[kind]
    for stem in stems.split("/"):
        if not nominal:
            yield Ending(stem, features)
        elif nominal == "participle":
            lemma, oblique = stem.split("|")
            for cell in _declined(nominal, whole=True):
                yield Ending(lemma, features | cell.features)
            for cell in _declined(nominal, whole=False):
                yield Ending(oblique + cell.text, features | cell.features, cell.share)
        else:
            for cell in _declined(nominal, whole=False):
                yield Ending(stem + cell.text, features | cell.features, cell.share)


def _merge_genders(endings: Iterator[Ending]) -> tuple[Ending, ...]:
    """Join cells that differ only in gender: `bonīs` is one dative plural of all three."""
    merged: dict[tuple[str, tuple[tuple[str, str], ...]], set[str]] = {}
    shares: dict[tuple[str, tuple[tuple[str, str], ...]], float] = {}
    for text, features, share in endings:
        key = text, tuple((k, v) for k, v in features.items() if k != "Gender")
        merged.setdefault(key, set()).update(features.get("Gender", "").split(","))
        shares[key] = max(share, shares.get(key, 0.0))
    out = []
    for (text, rest), genders in merged.items():
        joined = ",".join(sorted(genders - {""}))
        features = dict(rest) | ({"Gender": joined} if joined else {})
        out.append(Ending(text, dict(sorted(features.items())), shares[text, rest]))
    return tuple(out)


@cache
def endings(table: Table) -> tuple[Ending, ...]:
    """Return the cells of a table, each with its ending and its features.

    >>> [e.text for e in endings(Table("1", "NOUN", "Fem")) if e.features == {"Case": "Gen", "Gender": "Fem",
    ...                                                                       "Number": "Plur"}]
    ['ārum', 'um']
    """
    if table.upos in ("NOUN", "PROPN"):
        return _merge_genders(_noun(table))
    if table.upos == "VERB":
        return _merge_genders(_verb(table))
    return _merge_genders(_adjective(table))
