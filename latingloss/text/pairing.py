"""Pairing: Latin lines set beside the English lines that render them, when their counts differ.

Length-based dynamic programming after Gale and Church (1993), "A Program for Aligning Sentences in Bilingual
Corpora", Computational Linguistics 19(1), 75-102: long lines are rendered by long lines. Where the caller knows
words, `lexical` adds what they say.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache, lru_cache
from itertools import groupby
from math import ceil, erfc, inf, log, sqrt

from latingloss.text.lines import Line, clauses, lines, sentences

Bead = tuple[range, range]
Lexical = Callable[[int, int], float]

_ENGLISH_PER_LATIN = 1.226  # characters, over all of vulgate-cpdv
_RATIO_WEIGHT = 1000  # characters of evidence that figure is worth against the two texts' own ratio
_VARIANCE = 4.0  # of length difference, a character; 2.0 in vulgate-cpdv, which is literal; Gale and Church have 6.8
_PRIORS = {(1, 1): 0.89, (1, 0): 0.005, (0, 1): 0.005, (1, 2): 0.0445, (2, 1): 0.0445, (2, 2): 0.011}  # theirs
_LONG_PRIOR = 0.005  # of one line against three or more, only where one text has far more lines than the other
_ALONE = 4.0  # cost of lengths of a line without counterpart: its length says nothing; best of 3 to 12 in vulgate-cpdv
_BAND = 60  # lines off the diagonal that a path may stray, beyond the difference in count
_PLAUSIBLE = 3.0  # mean squared deviation of line lengths up to which equal counts are taken as line for line


def pair(
    latin: Sequence[str],
    english: Sequence[str],
    *,
    lexical: Lexical | None = None,
    stanzas: tuple[Sequence[int], Sequence[int]] | None = None,
) -> list[Bead]:
    """Pair Latin lines with English lines, in order: 1-1, 1-2, 2-1, 2-2, or one left alone.

    `lexical(i, j)` is the log-odds that Latin line i and English line j translate each other. `stanzas` gives the
    stanza of each line on either side; if both have as many, lines pair within them. Equal counts with plausible
    lengths pair line for line; where one side has more than twice the lines, one line may take several.
    Returns ranges of Latin and English indices that together cover both sides; one of the two may be empty.

    >>> pair(["Lucis creator optime", "lucem dierum proferens"], ["Good maker of light, bringing the light of days"])
    [(range(0, 2), range(0, 1))]
    """
    groups = [_stanza_ranges(s) for s in stanzas] if stanzas else []
    if not groups or len(groups[0]) != len(groups[1]):
        groups = [[range(len(latin))], [range(len(english))]]
    ratio = _ratio(sum(map(len, latin)), sum(map(len, english)))
    beads = []
    for rows, columns in zip(*groups, strict=True):
        lengths = [len(latin[i]) * ratio for i in rows], [float(len(english[j])) for j in columns]
        for a, b in _pair_stanza(*lengths, _shifted(lexical, rows.start, columns.start)):
            beads.append((_moved(a, rows.start), _moved(b, columns.start)))
    return beads


def pair_texts(
    latin: str,
    english: str,
    *,
    rows: list[Line] | None = None,
    lexical: Callable[[str, str], float] | None = None,
) -> list[tuple[Line | None, Line | None]]:
    """Cut a Latin text and its English rendering into lines and pair them.

    The English is cut finer, at sentences, clauses or commas, where that brings the counts nearer; so is the
    Latin if the English has twice its lines. Each pair gives where the Latin and the English stand in their texts;
    None stands for a line without counterpart. `rows` gives the Latin lines, which are then cut no finer. `lexical`
    takes a Latin and an English line.

    >>> pairs = pair_texts("Sol occidit,\\nluna surgit.", "The sun sets, the moon rises.")
    >>> [english for _, english in pairs]
    [Line(start=0, end=13, stanza=0), Line(start=14, end=29, stanza=0)]
    """
    columns = lines(english)
    if rows is None:
        rows = lines(latin)
        if len(columns) >= 2 * len(rows):
            rows = _finer(latin, rows, len(columns))
    if len(columns) < len(rows):
        columns = _finer(english, columns, len(rows))
    texts = [latin[a:b] for a, b, _ in rows], [english[a:b] for a, b, _ in columns]
    beads = pair(
        *texts,
        lexical=(lambda i, j: lexical(texts[0][i], texts[1][j])) if lexical else None,
        stanzas=([x.stanza for x in rows], [x.stanza for x in columns]),
    )
    return [(_joined(rows, a), _joined(columns, b)) for a, b in beads]


def _finer(text: str, found: list[Line], wanted: int) -> list[Line]:
    """Return the lines as they are or cut finer, whichever comes nearest the count wanted."""
    cuts = (
        found,
        [part for line in found for part in sentences(text, line)],
        [part for line in found for part in clauses(text, line)],
        [part for line in found for part in clauses(text, line, commas=True)],
    )
    return min(cuts, key=lambda cut: abs(len(cut) - wanted))


def _joined(found: list[Line], part: range) -> Line | None:
    return Line(found[part[0]].start, found[part[-1]].end, found[part[0]].stanza) if part else None


def _stanza_ranges(stanzas: Sequence[int]) -> list[range]:
    ranges, at = [], 0
    for _, group in groupby(stanzas):
        count = len(list(group))
        ranges.append(range(at, at + count))
        at += count
    return ranges


def _shifted(lexical: Lexical | None, row: int, column: int) -> Lexical | None:
    return cache(lambda i, j: lexical(i + row, j + column)) if lexical else None


def _moved(part: range, by: int) -> range:
    return range(part.start + by, part.stop + by)


def _ratio(latin: int, english: int) -> float:
    return (english + _RATIO_WEIGHT * _ENGLISH_PER_LATIN) / (latin + _RATIO_WEIGHT)


def _deviation(a: float, b: float) -> float:
    """Return how many standard deviations two lengths, in English characters, lie apart."""
    return abs(a - b) / sqrt(_VARIANCE * max(1.0, (a + b) / 2))


@lru_cache(maxsize=65536)
def _length_cost(deviation: float) -> float:
    return min(60.0, -log(max(1e-300, erfc(deviation / sqrt(2)))))


def _pair_stanza(latin: list[float], english: list[float], lexical: Lexical | None) -> list[Bead]:
    n, m = len(latin), len(english)
    if n == m and sum(_deviation(a, b) ** 2 for a, b in zip(latin, english, strict=True)) <= _PLAUSIBLE * n:
        return [(range(i, i + 1), range(i, i + 1)) for i in range(n)]
    if n and m and 1 in (n, m):
        return [(range(n), range(m))]
    return _best_path(latin, english, lexical)


def _best_path(latin: list[float], english: list[float], lexical: Lexical | None) -> list[Bead]:
    """Find the cheapest way through both sides by dynamic programming."""
    n, m = len(latin), len(english)
    shapes = [(rows, columns, -log(prior)) for (rows, columns), prior in _shapes(n, m).items()]
    best: list[dict[int, tuple[float, int, int]]] = [{} for _ in range(n + 1)]  # row -> column -> cost, last bead
    best[0][0] = (0.0, 0, 0)
    margin = _BAND + abs(n - m)
    for i in range(n + 1):
        middle = i * m // n if n else 0
        for j in range(0 if n == 0 else max(0, middle - margin), min(m, middle + margin) + 1):
            cheapest = best[i].get(j, (inf, 0, 0))
            for rows, columns, cost in shapes:
                if i < rows or j < columns or (before := best[i - rows].get(j - columns)) is None:
                    continue
                total = before[0] + cost + _bead_cost(latin[i - rows : i], english[j - columns : j])
                if lexical and rows and columns:
                    total -= _bead_odds(lexical, range(i - rows, i), range(j - columns, j))
                if total < cheapest[0]:
                    cheapest = (total, rows, columns)
            if cheapest[0] < inf:
                best[i][j] = cheapest
    return _walk_back(best, n, m)


def _shapes(n: int, m: int) -> dict[tuple[int, int], float]:
    shapes = dict(_PRIORS)
    if min(n, m) and max(n, m) > 2 * min(n, m):
        most = min(8, ceil(max(n, m) / min(n, m)) + 1)
        shapes |= {(k, 1) if n > m else (1, k): _LONG_PRIOR for k in range(3, most + 1)}
    return shapes


def _bead_cost(latin: list[float], english: list[float]) -> float:
    if not (latin and english):
        return _ALONE
    return _length_cost(round(_deviation(sum(latin), sum(english)), 3))


def _bead_odds(lexical: Lexical, rows: range, columns: range) -> float:
    if len(rows) == len(columns) == 2:
        (a, b), (c, d) = rows, columns
        return max(lexical(a, c) + lexical(b, d), lexical(a, d) + lexical(b, c))
    return sum(lexical(i, j) for i in rows for j in columns)


def _walk_back(best: list[dict[int, tuple[float, int, int]]], n: int, m: int) -> list[Bead]:
    beads, i, j = [], n, m
    while i or j:
        _, rows, columns = best[i][j]
        beads.append((range(i - rows, i), range(j - columns, j)))
        i, j = i - rows, j - columns
    return beads[::-1]
