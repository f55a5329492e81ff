"""The lexicon: from the rows of the text tables to lexemes that know their stems.

One reader for each table of `data/lexicon`. What differs from the regular pattern stands in the rows, not here.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from typing import NamedTuple

from latingloss.english.adverbs import adverb_gloss
from latingloss.morphology.endings import CASES, GENDERS, NUMBERS, Features, Table
from latingloss.morphology.stems import (
    Stems,
    adjective_stems,
    adverb_form,
    comparative_stems,
    noun_stems,
    superlative_stems,
    verb_stems,
)
from latingloss.tables import built_once, read_table
from latingloss.text.orthography import plain, without_lengths


class Lexeme(NamedTuple):
    """One entry: what it is, what it means, and how it inflects."""

    lemma: str  # with vowel lengths; homographs carry #1, #2
    upos: str
    gloss: str  # English, commonest first, joined by "; "
    stems: Stems = ()
    fixed: tuple[tuple[str, Features], ...] = ()  # forms that stand alone
    dropped: frozenset[tuple[str, str]] = frozenset()  # (case, number) whose regular form is not used
    constant: Features = {}  # noqa: RUF012 - features of every form, such as PronType
    parts: str = ""  # as a dictionary shows it: genitive and gender, principal parts
    governs: str = ""
    church: str = ""
    note: str = ""
    kin: str = ""
    spell: str = ""
    deponent: bool = False
    kind: str = ""  # of a name: person, place, people, god, month

    @property
    def spelled(self) -> str:
        """The lemma without the number that tells homographs apart."""
        return _spelled(self.lemma)

    def __hash__(self) -> int:
        """Hash what names the entry, so that answers can be kept by lexeme; its features are dicts."""
        return hash((self.lemma, self.upos))


_POSSESSIVES = {
    "meus": {"Number[psor]": "Sing", "Person[psor]": "1"},
    "tuus": {"Number[psor]": "Sing", "Person[psor]": "2"},
    "noster": {"Number[psor]": "Plur", "Person[psor]": "1"},
    "vester": {"Number[psor]": "Plur", "Person[psor]": "2"},
    "suus": {"Person[psor]": "3", "Reflex": "Yes"},
}
_QUANTIFIERS = {"omnis": "Tot", "tōtus": "Tot", "nūllus": "Neg", "ūllus": "Ind", "cūnctus": "Tot", "sōlus": "Con"}


_GRADED = ("12", "3", "3c", "indecl")  # classes that may have degrees and an adverb


def _spelled(lemma: str) -> str:
    return lemma.partition("#")[0]


@built_once
def _irregular_cells() -> dict[str, list[tuple[str, str, str, str]]]:
    cells: dict[str, list[tuple[str, str, str, str]]] = defaultdict(list)
    for lemma, mode, number, case, forms in read_table("paradigms/irregular_nouns.tsv"):
        cells[lemma].append((mode, NUMBERS[number], CASES[case], forms))
    return cells


def _nouns(name: str, upos: str) -> Iterator[Lexeme]:
    for lemma, genitive, gender, declension, *rest in read_table(f"lexicon/{name}.tsv"):
        kind, (gloss, church, note, kin, spell) = (rest[0], rest[1:]) if upos == "PROPN" else ("", rest)
        spelled, gendered = _spelled(lemma), {"Gender": GENDERS[gender]}
        irregular = _irregular_cells().get(spelled, [])
        fixed = [(f, {"Case": c, **gendered, "Number": n}) for _, n, c, forms in irregular for f in forms.split("/")]
        if declension.startswith("indecl"):  # `indecl/3`: undeclined, or by the third declension
            fixed = fixed or [(spelled, gendered)]
            declension = declension.removeprefix("indecl").removeprefix("/")
        declined = noun_stems(spelled, genitive=genitive, declension=declension, gender=gender) if declension else ()
        yield Lexeme(
            lemma, upos, gloss, declined, tuple(fixed),
            dropped=frozenset((c, n) for mode, n, c, _ in irregular if mode == "="),
            parts=f"{genitive} {gender}.", church=church, note=note, kin=kin, spell=spell, kind=kind,
        )  # fmt: skip


def _adjectives() -> Iterator[Lexeme]:
    for row in read_table("lexicon/adjectives.tsv"):
        lemma, forms, group, comparative, superlative, adverb, gloss, church, note, kin, spell = row
        spelled = _spelled(lemma)
        constant, upos = {}, "ADJ"
        if spelled in _POSSESSIVES:
            constant, upos = _POSSESSIVES[spelled] | {"Poss": "Yes", "PronType": "Prs"}, "DET"
        elif spelled in _QUANTIFIERS:
            constant, upos = {"PronType": _QUANTIFIERS[spelled]}, "DET"
        undeclined = group == "indecl"
        stems = () if undeclined else adjective_stems(spelled, forms=forms, group=group)
        stem = stems[0][0] if stems else spelled
        graded = group in _GRADED and upos == "ADJ"
        higher = comparative_stems(comparative, stem) if graded else ()
        highest = superlative_stems(superlative, spelled, stem) if graded else ()
        yield Lexeme(
            lemma, upos, gloss, stems + higher + highest, ((spelled, {}),) if undeclined else (), constant=constant,
            parts=forms.replace("; ", ", "), church=church, note=note, kin=kin, spell=spell,
        )  # fmt: skip
        made = adverb_form(adverb, stem, group) if group in _GRADED else None
        if made:
            yield _adverb(made, adverb_gloss(gloss), kin=kin, degrees=(higher, highest))


_NEUTER = {"comparative": "ius", "comparative_or": "us", "plus": "ūs"}


def _adverb(lemma: str, gloss: str, *, kin: str, degrees: tuple[Stems, Stems]) -> Lexeme:
    fixed = [(lemma, {"Degree": "Pos"})]
    fixed += [(stem + _NEUTER[table.base], {"Degree": "Cmp"}) for stem, table in degrees[0]]
    fixed += [(stem + "ē", {"Degree": "Sup"}) for stem, _ in degrees[1]]
    return Lexeme(lemma, "ADV", gloss, fixed=tuple(fixed), kin=kin)


def _verbs() -> Iterator[Lexeme]:
    for row in read_table("lexicon/verbs.tsv"):
        lemma, infinitive, perfect, supine, governs, also, gloss, church, note, kin, spell = row
        spelled = _spelled(lemma)
        stems, deponent = verb_stems(spelled, infinitive=infinitive, perfect=perfect, supine=supine)
        more = dict(pair.split("=") for pair in also.split("; ") if "=" in pair)
        if "futp" in more:
            stems += ((more["futp"].removesuffix("ūrus"), Table("sup", "VERB", "futp")),)
        fixed = [(more["imp"], _IMPERATIVE)] if "imp" in more else []
        if spelled.endswith(("dīcō", "dūcō")) or (spelled.endswith("faciō") and "imp" not in more):
            fixed.append((spelled.removesuffix("ō").removesuffix("i"), _IMPERATIVE))
        parts = ", ".join(p.replace("; ", "/") for p in (infinitive, perfect, supine) if p not in ("", "-"))
        yield Lexeme(
            lemma, "AUX" if spelled == "sum" else "VERB", gloss, stems, tuple(fixed), parts=parts, governs=governs,
            church=church, note=note, kin=kin, spell=spell, deponent=deponent,
        )  # fmt: skip


_IMPERATIVE = {
    "Aspect": "Imp", "Mood": "Imp", "Number": "Sing", "Person": "2", "Tense": "Pres", "VerbForm": "Fin", "Voice": "Act",
}  # fmt: skip


def _indeclinables() -> Iterator[Lexeme]:
    extra = {"ADV": {"Degree": "Pos"}, "NUM": {"NumType": "Card"}}
    for lemma, upos, governs, comparative, superlative, *rest in read_table("lexicon/indeclinables.tsv"):
        gloss, church, note, kin, spell = rest
        forms = [(_spelled(lemma), extra.get(upos, {}))]
        for column, degree in ((comparative, "Cmp"), (superlative, "Sup")):
            forms += [(f, {"Degree": degree}) for f in column.split("; ") if f not in ("", "-")]
        yield Lexeme(
            lemma, upos, gloss, fixed=tuple(forms), governs=governs, church=church, note=note, kin=kin, spell=spell
        )


def _pronouns() -> Iterator[Lexeme]:
    slots = [(number, case) for number in ("Sing", "Plur") for case in ("Nom", "Gen", "Dat", "Acc", "Voc", "Abl")]
    genders: dict[str, dict[tuple[str, str, str], set[str]]] = defaultdict(dict)  # lemma -> form, case, number
    heads: dict[str, list[str]] = {}
    for row in read_table("lexicon/pronouns.tsv"):
        heads[row[0]] = row
        for (number, case), forms in zip(slots, row[8:], strict=True):
            for form in filter(None, forms.split("/")):
                found = genders[row[0]].setdefault((form, case, number), set())
                found.update(GENDERS[row[7]].split(",") if row[7] else ())
    for lemma, (_, upos, constant, gloss, church, note, kin, *_) in heads.items():
        features = dict(pair.split("=") for pair in constant.split("|"))
        fixed = []
        for (form, case, number), shared in genders[lemma].items():
            gender = {"Gender": ",".join(sorted(shared))} if shared else {}
            fixed.append((form, {"Case": case, **gender, "Number": number}))
        yield Lexeme(lemma, upos, gloss, fixed=tuple(fixed), constant=features, church=church, note=note, kin=kin)


@built_once
def lexemes() -> tuple[Lexeme, ...]:
    """Return every lexeme: pronouns, then indeclinables, verbs, nouns, adjectives (with adverbs), names."""
    tables = (_pronouns(), _indeclinables(), _verbs(), _nouns("nouns", "NOUN"), _adjectives(), _nouns("names", "PROPN"))
    seen: set[tuple[str, str]] = set()
    entries = []
    for table in tables:
        for lexeme in table:
            if (lexeme.lemma, lexeme.upos) not in seen:  # an adverb listed on its own wins over a derived one
                seen.add((lexeme.lemma, lexeme.upos))
                entries.append(lexeme)
    return tuple(entries)


@built_once
def _by_lemma() -> dict[str, tuple[Lexeme, ...]]:
    found: dict[str, list[Lexeme]] = defaultdict(list)
    for lexeme in lexemes():
        found[plain(lexeme.spelled)].append(lexeme)
    return {key: tuple(group) for key, group in found.items()}


def find(lemma: str) -> tuple[Lexeme, ...]:
    """Return the lexemes of a lemma, written with or without vowel lengths; those that match them first.

    >>> [lexeme.lemma for lexeme in find("aqua")]
    ['aqua']
    """
    found = _by_lemma().get(plain(_spelled(lemma)), ())
    if without_lengths(lemma) != lemma or "#" in lemma:
        exact = tuple(x for x in found if lemma in (x.lemma, x.spelled))
        return exact or found
    return found
