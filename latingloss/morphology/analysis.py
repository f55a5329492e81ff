"""Every reading of a form: all ways to cut it into a known stem and an ending that this stem takes.

The index maps plain stems to lexemes and plain endings to cells; nothing is stored per form, so the whole
lexicon costs about 100,000 dictionary entries and any inflected form is found.
"""

from __future__ import annotations

from collections import defaultdict
from functools import lru_cache
from typing import NamedTuple

from latingloss.morphology.endings import Ending, Features, Table, endings
from latingloss.morphology.lexicon import Lexeme, lexemes
from latingloss.tables import built_once
from latingloss.text.orthography import plain, spellings


class Analysis(NamedTuple):
    """One reading out of context."""

    lexeme: int  # index in lexemes()
    form: str  # with vowel lengths, j for consonantal i
    features: Features
    share: float = 1.0  # how usual its ending is beside its alternatives


_ByStem = dict[str, list[tuple[int, int, str]]]  # plain stem -> (lexeme, table, marked stem)
_ByForm = dict[str, list[tuple[int, str, Features]]]  # plain form -> (lexeme, marked form, features)


class _Index(NamedTuple):
    stems: _ByStem
    endings: dict[str, dict[int, list[Ending]]]  # plain ending -> table -> cells
    fixed: _ByForm
    longest: int  # letters of the longest ending


@built_once
def _index() -> _Index:
    stems: _ByStem = defaultdict(list)
    fixed: _ByForm = defaultdict(list)
    numbers: dict[Table, int] = {}
    for i, lexeme in enumerate(lexemes()):
        for stem, table in lexeme.stems:
            t = numbers.setdefault(table, len(numbers))
            stems[plain(stem)].append((i, t, stem))
        for form, features in lexeme.fixed:
            fixed[plain(form)].append((i, form, features))
        if lexeme.spell:
            _index_spellings(lexeme, i, numbers, index=(stems, fixed))
    by_ending: dict[str, dict[int, list[Ending]]] = defaultdict(dict)
    for table, t in numbers.items():
        for ending in endings(table):
            by_ending[plain(ending.text)].setdefault(t, []).append(ending)
    return _Index(dict(stems), dict(by_ending), dict(fixed), max(map(len, by_ending)))


def _index_spellings(lexeme: Lexeme, i: int, numbers: dict[Table, int], *, index: tuple[_ByStem, _ByForm]) -> None:
    """Add stems and forms as another spelling of the lemma has them: `charitas` gives `charitat-`."""
    stems, fixed = index
    lemma = plain(lexeme.spelled)
    for other in lexeme.spell.split("; "):
        new = plain(other)
        tail = 0
        while tail < min(len(lemma), len(new)) and lemma[-tail - 1] == new[-tail - 1]:
            tail += 1
        old_head, new_head = lemma[: len(lemma) - tail], new[: len(new) - tail]
        for stem, table in lexeme.stems:
            if (key := plain(stem)).startswith(old_head) and key:
                marked = new_head + stem[len(old_head) :]
                stems[new_head + key[len(old_head) :]].append((i, numbers[table], marked))
        for form, features in lexeme.fixed:
            if (key := plain(form)).startswith(old_head):
                fixed[new_head + key[len(old_head) :]].append((i, new_head + form[len(old_head) :], features))


def exact(key: str) -> list[Analysis]:
    """Return the readings of a plain key exactly as it is spelled."""
    index = _index()
    found: dict[tuple[int, int], Analysis] = {}
    entries = lexemes()
    for i, form, features in index.fixed.get(key, ()):
        if constant := entries[i].constant:
            features = constant | features
        found[i, id(features)] = Analysis(i, form, features)
    stems, by_ending = index.stems, index.endings
    for cut in range(len(key), max(0, len(key) - index.longest) - 1, -1):
        tables = by_ending.get(key[cut:])
        if not tables:
            continue
        for i, t, stem in stems.get(key[:cut], ()):
            for text, features, share in tables.get(t, ()):
                lexeme = entries[i]
                if lexeme.dropped and (features.get("Case"), features.get("Number")) in lexeme.dropped:
                    continue
                if (i, id(features)) not in found:
                    shown = lexeme.constant | features if lexeme.constant else features
                    found[i, id(features)] = Analysis(i, stem + text, shown, share)
    return list(found.values())


@lru_cache(maxsize=1 << 16)
def analyses(key: str) -> tuple[Analysis, ...]:
    """Return every reading of a plain key that the lexicon gives, through another spelling if need be.

    Order is the lexicon's; `latingloss.analyze` ranks them. Empty if the form is unknown.

    >>> sorted({lexemes()[a.lexeme].lemma for a in analyses("rosarum")})
    ['Rosa', 'rosa', 'rōdō']
    """
    found = exact(key)
    if not found:
        for other in spellings(key):
            found = exact(other)
            if found:
                break
    return tuple(found)
