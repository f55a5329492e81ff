"""English relatives: the lexicon's own kin, with the table that the builder found, best first."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from math import exp
from typing import NamedTuple, cast

from latingloss.document import Kinship, Relative
from latingloss.kin.correspondences import english_stems
from latingloss.kin.frequency import english_zipf
from latingloss.kin.letters import weights
from latingloss.kin.looks import lexeme_shapes, likeness
from latingloss.morphology.lexicon import Lexeme, find
from latingloss.tables import built_once, read_table
from latingloss.text.checking import check_string

KNOWN_ZIPF = 2.8  # of a word that every second reader knows
_SLOPE = 2.5  # how fast that grows around it
_COUSIN_PENALTY = 0.25  # a cousin teaches less than a word that comes from the Latin one


class Relation(NamedTuple):
    """An English word and how it is related; cheaper than the model `Relative`."""

    word: str
    kind: Kinship
    chain: str
    alike: float  # likeness to the lemma, from 0; see `looks.likeness`
    distance: float | None = None  # from the lemma, as `cognate_distance` finds it, if the table has it


@built_once
def _built() -> dict[tuple[str, str], list[Relation]]:
    found: dict[tuple[str, str], list[Relation]] = {}
    for lemma, upos, word, kind, chain, alike, distance in read_table("kin/relatives.tsv"):
        far = float(distance) if distance else None
        found.setdefault((lemma, upos), []).append(Relation(word, cast(Kinship, kind), chain, float(alike), far))
    return found


@built_once
def _drifted() -> dict[tuple[str, str], str]:
    return {(lemma, word): warning for lemma, word, warning in read_table("kin/drift.tsv")}


def relations(lexeme: Lexeme) -> tuple[Relation, ...]:
    """Return the relations of one lexeme, each word once: those the lexicon lists, then those of the table.

    What the lexicon lists but the table does not yet describe counts as `family`.

    >>> {"aquarium", "aquatic"} <= {relation.word for relation in relations(find("aqua")[0])}
    True
    """
    found = {relation.word: relation for relation in _built().get((lexeme.lemma, lexeme.upos), ())}
    for word in filter(None, lexeme.kin.split("; ")):
        bare = word.removeprefix("~")
        if bare not in found:
            found[bare] = Relation(bare, "family", "", _alike(lexeme, bare))
        if bare != word:
            found[bare] = found[bare]._replace(kind="shared root", chain="")
    return tuple(found.values())


def _alike(lexeme: Lexeme, word: str) -> float:
    shapes = lexeme_shapes(lexeme, weights(), weights("cousins"))
    return max(0.0, likeness(shapes.borrowed, english_stems(word), weights()))


def relatives(lemma: str, *, upos: str | None = None) -> tuple[Relative, ...]:
    """Return the English relatives of a Latin lemma that help a reader, best first; none if it is unknown.

    `lemma` may be written with or without vowel lengths; without, homographs are taken together unless `upos`
    picks one. Order: how likely a reader knows the word, times how much it looks like the Latin. Raises
    `InputTypeError` for anything but a `str`.

    >>> relatives("lībertās")[0].word, relatives("nox")[0].kind
    ('liberty', 'borrowed')
    """
    check_string(lemma, "lemma")
    return _relatives(lemma, upos)


@lru_cache(maxsize=20_000)
def _relatives(lemma: str, upos: str | None) -> tuple[Relative, ...]:
    found = _ranked(lexeme for lexeme in find(lemma) if upos in (None, lexeme.upos))
    return tuple(described(lexeme, relation) for lexeme, relation in found)


@lru_cache(maxsize=20_000)
def relatives_of(lexeme: Lexeme) -> tuple[Relative, ...]:
    """Return the relatives of one lexeme, best first: those of `līber` free without those of `liber` book.

    >>> "library" in {r.word for r in relatives_of(find("līber")[0])}
    False
    """
    return tuple(described(lexeme, relation) for relation in ranked(lexeme))


def ranked(lexeme: Lexeme) -> list[Relation]:
    """Return the relations of one lexeme, those that help a reader most first."""
    return [relation for _, relation in _ranked((lexeme,))]


def described(lexeme: Lexeme, relation: Relation) -> Relative:
    """Return a relation of a lexeme as the published model."""
    word, kind, chain, *_ = relation
    drift = _drifted().get((lexeme.spelled, word), "")
    return Relative(word=word, kind=kind, chain=chain, zipf=english_zipf(word), drift=drift)


def _ranked(entries: Iterable[Lexeme]) -> list[tuple[Lexeme, Relation]]:
    """Return the relations of some lexemes, each word once, those that help a reader most first."""
    best: dict[str, tuple[float, Lexeme, Relation]] = {}
    for lexeme in entries:
        for relation in relations(lexeme):
            worth = _worth(relation)
            if relation.word not in best or worth > best[relation.word][0]:
                best[relation.word] = (worth, lexeme, relation)
    found = sorted(best.values(), key=lambda row: (-row[0], row[2].word))
    return [(lexeme, relation) for _, lexeme, relation in found]


def _worth(relation: Relation) -> float:
    penalty = _COUSIN_PENALTY if relation.kind == "shared root" else 0.0
    return alike_and_known(relation.alike, english_zipf(relation.word)) - penalty


def alike_and_known(alike: float, zipf: float) -> float:
    """Return the worth of a hook: the chance that a reader knows it, times how much of the Latin it shows.

    >>> alike_and_known(0.6, 4.0) > alike_and_known(0.6, 2.0) > 0
    True
    """
    return (0.3 + alike) / (1.0 + exp(_SLOPE * (KNOWN_ZIPF - zipf)))


@built_once
def roots_of() -> dict[str, frozenset[str]]:
    """Return the Indo-European roots of English words, from the word; words without a shared root are left out.

    >>> bool(roots_of()["feather"] & roots_of()["pen"])
    True
    """
    found: dict[str, set[str]] = {}
    for root, words in read_table("kin/roots.tsv"):
        for word in words.split(" "):
            found.setdefault(word, set()).add(root)
    return {word: frozenset(roots) for word, roots in found.items()}


@built_once
def natives() -> frozenset[str]:
    """Return the native English words: those that are Germanic all the way, as far as is recorded.

    >>> "mother" in natives(), "maternal" in natives(), "wine" in natives()
    (True, False, False)
    """
    return frozenset(word for (word,) in read_table("kin/native.tsv"))


@built_once
def etymons() -> dict[str, tuple[str, ...]]:
    """Return the Latin etymons, folded, of English words that have grown unlike them.

    >>> "ductus" in etymons()["duke"]
    True
    """
    return {word: tuple(latin.split(" ")) for word, latin in read_table("kin/etymons.tsv")}
