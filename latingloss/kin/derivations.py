"""Latin word families: which word of the lexicon is made from which, and so which share a root.

The table is built by `building.kin_derivations` from the Latin derivations of UniMorph.
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from latingloss.tables import built_once, read_table

_LONGEST_CHAIN = 6

Entry = tuple[str, str]  # lemma as printed, with vowel lengths, and part of speech


class Step(NamedTuple):
    """One step of derivation: the word it leads back to, and the prefix or suffix that made the other."""

    base: Entry
    affix: str  # `re-`, `-tor`; without vowel lengths


@built_once
def _steps() -> dict[Entry, Step]:
    return {
        (lemma, upos): Step((base, base_upos), affix)
        for lemma, upos, base, base_upos, affix in read_table("kin/derivations.tsv")
    }


def derivation(entry: Entry) -> tuple[Step, ...]:
    """Return the steps from a word back to its root; none for a root or a word that is not in the table.

    >>> [(step.base[0], step.affix) for step in derivation(("fidēlitās", "NOUN"))]
    [('fidēlis', '-tas'), ('fidēs', '-ilis')]
    """
    found: list[Step] = []
    while len(found) < _LONGEST_CHAIN and (step := _steps().get(found[-1].base if found else entry)):
        found.append(step)
    return tuple(found)


@cache
def root(entry: Entry) -> Entry:
    """Return the word from which all of a family are made, the word itself if it is made from none.

    >>> root(("efficiō", "VERB"))
    ('faciō', 'VERB')
    """
    steps = derivation(entry)
    return steps[-1].base if steps else entry


@built_once
def _made_from() -> dict[Entry, list[Entry]]:
    """Return every word of each family that has more than one, by the root."""
    found: dict[Entry, list[Entry]] = {}
    for entry in _steps():
        found.setdefault(root(entry), [root(entry)]).append(entry)
    return found


def family(entry: Entry) -> list[Entry]:
    """Return all words of the family of a word, the root first; the word alone if it has none.

    >>> family(("fidēlitās", "NOUN"))[0], ("cōnfīdō", "VERB") in family(("fidēlitās", "NOUN"))
    (('fidēs', 'NOUN'), False)
    """
    return _made_from().get(root(entry), [entry])
