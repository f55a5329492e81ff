"""English relatives: the lexicon's own kin, with the table that the builder found, best first."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
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

_KNOWN, _SLOPE = 2.8, 2.5  # Zipf value of a word that every second reader knows; steepness around it
_COUSIN_PENALTY = 0.25  # a cousin teaches less than a word that comes from the Latin one


class Relation(NamedTuple):
    """An English word and how it is related; cheaper than the model `Relative`."""

    word: str
    kind: Kinship
    chain: str
    alike: float  # likeness to the lemma, from 0; see `looks.likeness`


@built_once
def _built() -> dict[tuple[str, str], list[Relation]]:
    found: dict[tuple[str, str], list[Relation]] = {}
    for lemma, upos, word, kind, chain, alike in read_table("kin/relatives.tsv"):
        found.setdefault((lemma, upos), []).append(Relation(word, cast(Kinship, kind), chain, float(alike)))
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
        if bare not in found or bare != word:
            found[bare] = Relation(bare, "family" if bare == word else "shared root", "", _alike(lexeme, bare))
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
    return _best(lexeme for lexeme in find(lemma) if upos in (None, lexeme.upos))


@lru_cache(maxsize=20_000)
def relatives_of(lexeme: Lexeme) -> tuple[Relative, ...]:
    """Return the relatives of one lexeme, best first: those of `līber` free without those of `liber` book.

    >>> "library" in {r.word for r in relatives_of(find("līber")[0])}
    False
    """
    return _best((lexeme,))


def _best(entries: Iterable[Lexeme]) -> tuple[Relative, ...]:
    best: dict[str, tuple[float, Relative]] = {}
    for lexeme in entries:
        for relative, value in _valued(lexeme):
            if relative.word not in best or value > best[relative.word][0]:
                best[relative.word] = (value, relative)
    return tuple(relative for _, relative in sorted(best.values(), key=lambda pair: (-pair[0], pair[1].word)))


def _valued(lexeme: Lexeme) -> Iterator[tuple[Relative, float]]:
    for word, kind, chain, alike in relations(lexeme):
        zipf = english_zipf(word)
        value = alike_and_known(alike, zipf) - (_COUSIN_PENALTY if kind == "shared root" else 0.0)
        drift = _drifted().get((lexeme.spelled, word), "")
        yield Relative(word=word, kind=kind, chain=chain, zipf=zipf, drift=drift), value


def alike_and_known(alike: float, zipf: float) -> float:
    """Return the worth of a hook: the chance that a reader knows it, times how much of the Latin it shows.

    >>> alike_and_known(0.6, 4.0) > alike_and_known(0.6, 2.0) > 0
    True
    """
    return (0.3 + alike) / (1.0 + exp(_SLOPE * (_KNOWN - zipf)))


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
