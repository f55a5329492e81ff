"""Which words of a text the corrections mean, and which they mean but do not find."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import partial
from typing import NamedTuple

from latingloss.corrections.models import Corrections, LineCorrections, WordCorrection, line_key, named
from latingloss.corrections.narrowing import impossible, narrowed, narrows
from latingloss.engines import Narrowing
from latingloss.engines.builtin import word_parts
from latingloss.text.orthography import plain
from latingloss.text.tokens import word_text


class Line(NamedTuple):
    """A line as printed; its tokens, and which of them are words."""

    tokens: Sequence[str]
    words: Sequence[bool]
    rendering: Sequence[str]


class Placed(NamedTuple):
    """A correction and the word it is about."""

    word: int  # 0 host, 1 enclitic
    correction: WordCorrection
    english: tuple[int, ...] | None  # indices in the rendering; None if not said or not found


OfLine = dict[int, list[Placed]]  # by index of the token


class Matched(NamedTuple):
    """Corrections brought to a text."""

    lines: list[OfLine]
    narrow: Narrowing  # tokens numbered among the words of the line, as engines get them
    unmatched: tuple[str, ...]


class _Spot(NamedTuple):
    token: int
    word: int
    keys: frozenset[str]


_Said = dict[_Spot, WordCorrection]
NOTHING: OfLine = {}


def match(corrections: Corrections, lines: Sequence[Line]) -> Matched:
    """Find the words that corrections are about; what does not match, or cannot be so read, is named."""
    found: list[_Said] = [{} for _ in lines]
    spots = [_spots(line.tokens, line.words) for line in lines]
    lost: list[str] = []
    for correction in corrections.everywhere:
        places = [(i, spot) for i, here in enumerate(spots) for spot in _meant(correction.word, here)]
        if not places:
            lost.append(f"everywhere, word {correction.word!r}: not in the text")
        for i, spot in places:
            found[i][spot] = correction
    keys = [line_key(" ".join(line.tokens)) for line in lines] if corrections.passages else []
    own: list[_Said] = [{} for _ in lines]
    for passage in corrections.passages:
        numbers, problem = _lines_of(passage, keys)
        lost += problem
        for i in numbers:
            lost += _add(passage, own[i], spots[i])
    for general, particular in zip(found, own, strict=True):
        for spot, correction in particular.items():
            general[spot] = _over(correction, general.get(spot))
    placed = [_placed(said, line, lost) for said, line in zip(found, lines, strict=True)]
    return Matched(placed, _narrowing(placed, lines), tuple(dict.fromkeys(lost)))


def _add(passage: LineCorrections, said: _Said, spots: Sequence[_Spot]) -> Iterator[str]:
    """Add what is said of a line's words; yield what cannot be."""
    for correction in passage.words:
        where = f"passage {passage.latin!r}, word {correction.word!r}"
        meant = _meant(correction.word, spots)
        if not meant:
            yield f"{where}: {_missing(correction.word, spots)}"
        elif meant[0] in said:
            yield f"{where}: corrected twice; the first holds"
        else:
            said[meant[0]] = correction


def name_of(tokens: Sequence[str], words: Sequence[bool], place: tuple[int, int]) -> str:
    """Return how a correction names the word at (token, word) of a line: `et 2`, if it is the second.

    >>> name_of(["et", "pax", "et", "lux"], [True] * 4, (2, 0))
    'et 2'
    """
    printed = tokens[place[0]]
    text = word_parts(printed)[place[1]] if place[1] else word_text(printed)
    meant = [(s.token, s.word) for s in _meant(text, _spots(tokens, words))]
    number = meant.index(place) + 1
    return f"{text} {number}" if number > 1 else text


def _spots(tokens: Sequence[str], words: Sequence[bool]) -> list[_Spot]:
    found = []
    for t, (text, is_word) in enumerate(zip(tokens, words, strict=True)):
        parts = word_parts(text) if is_word else ()
        for w, part in enumerate(parts):
            whole = {plain(word_text(text))} if w == 0 else set()
            found.append(_Spot(t, w, frozenset((plain(part), *whole))))
    return found


def _meant(word: str, spots: Iterable[_Spot]) -> list[_Spot]:
    key, number = named(word)
    meant = [spot for spot in spots if key in spot.keys]
    return meant if number is None else meant[number - 1 : number]


def _missing(word: str, spots: Iterable[_Spot]) -> str:
    key, number = named(word)
    count = len(_meant(key, spots))
    return f"it is in the line only {count} times" if number and count else "not in the line"


def _lines_of(passage: LineCorrections, keys: Sequence[tuple[str, ...]]) -> tuple[list[int], list[str]]:
    """Return the lines that are or begin as said; those that differ among themselves are not chosen from."""
    key = line_key(passage.latin)
    numbers = [i for i, k in enumerate(keys) if k == key] or [i for i, k in enumerate(keys) if k[: len(key)] == key]
    if len({keys[i] for i in numbers}) == 1:
        return numbers, []
    listed = ", ".join(str(i + 1) for i in numbers[:5]) + (" and more" if len(numbers) > 5 else "")
    said = f"lines {listed} begin so; give more of its words" if numbers else "no line begins so"
    return [], [f"passage {passage.latin!r}: {said}"]


def _over(correction: WordCorrection, general: WordCorrection | None) -> WordCorrection:
    """Return what is said of a word in its line, and for the rest what is said of it everywhere."""
    return general.model_copy(update=_said(correction)) if general else correction


def _said(correction: WordCorrection) -> dict[str, object]:
    return {name: value for name, value in correction if value is not None}


def _placed(found: _Said, line: Line, lost: list[str]) -> OfLine:
    if not found:
        return NOTHING
    placed: OfLine = {}
    printed = " ".join(line.tokens)
    for spot, correction in sorted(found.items(), key=lambda item: item[0][:2]):
        where = f"line {printed!r}, word {correction.word!r}"
        form = word_parts(line.tokens[spot.token])[spot.word]
        if narrows(correction) and (problem := impossible(correction, form)):
            lost.append(f"{where}: {problem}, as far as latingloss knows; it is read as you say")
        english = None if correction.english is None else find_english(correction.english, line.rendering)
        if english is None and correction.english is not None:
            words = " ".join(correction.english)
            lost.append(f"{where}: {words!r} is not in the rendering")
        placed.setdefault(spot.token, []).append(Placed(spot.word, correction, english))
    return placed


def find_english(words: Sequence[str], rendering: Sequence[str]) -> tuple[int, ...] | None:
    """Return where words stand in a rendering, as near together as can be; None if one is not there.

    >>> find_english(["the", "night"], "the star of the night".split())
    (3, 4)
    """
    if not words:
        return ()
    places = [_english_places(word, rendering) for word in words]
    choices = filter(None, (_nearest(first, places[1:]) for first in places[0]))
    return min(choices, key=lambda chosen: chosen[-1] - chosen[0], default=None)


def _nearest(first: int, places: Sequence[Sequence[int]]) -> tuple[int, ...]:
    """Return one place of each word, each as near as can be to that of the word before; empty if one has none left."""
    chosen = [first]
    for others in places:
        free = [j for j in others if j not in chosen]
        if not free:
            return ()
        chosen.append(min(free, key=lambda j: (abs(j - chosen[-1]), -j)))
    return tuple(sorted(chosen))


def _english_places(word: str, rendering: Sequence[str]) -> list[int]:
    key, number = named(word)
    places = [j for j, text in enumerate(rendering) if named(text).key == key]
    return places if number is None else places[number - 1 : number]


def _narrowing(placed: Sequence[OfLine], lines: Sequence[Line]) -> Narrowing:
    found = {}
    for s, here in enumerate(placed):
        for token, corrections in here.items():
            number = sum(lines[s].words[:token])
            for one in corrections:
                if narrows(one.correction):
                    found[s, number, one.word] = partial(narrowed, one.correction)
    return found
