"""What goes where on the sheet: a document's passages as pieces of text, cells and notes, ready to be set.

Words picked out are numbered through the whole sheet; the number ties the Latin word, the English words that
render it, and the note.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from itertools import groupby
from typing import NamedTuple

from latingloss.document import Document, Passage, Token
from latingloss.sheets.options import SheetOptions
from latingloss.sheets.wording import dictionary_form, kind_of, parts_of, respelling_of
from latingloss.text.orthography import plain

_QUOTED = re.compile(r'"([^"]*)"')
_ENDING = re.compile(r"(?<![^\s“(])-(?=\w)")
_MOST_RELATIVES = 3  # of each label
_KIN = {
    "gave English": ("borrowed", "through French"),
    "same family": ("family",),
    "shares a root with": ("shared root",),
}


class Piece(NamedTuple):
    """A run of text; picked out if it has numbers."""

    text: str
    numbers: tuple[int, ...] = ()


class Cell(NamedTuple):
    """A word, or an enclitic, over its literal sense."""

    text: str
    gloss: str
    number: int | None
    joined: bool  # to the cell before: an enclitic


class Note(NamedTuple):
    """What is said of a word picked out; an empty string is not printed."""

    number: int
    text: str
    spoken: str
    literal: str
    endings: tuple[str, ...]
    hard: str
    kin: tuple[tuple[str, str], ...]  # label, English words
    dictionary: str
    unrendered: bool


class Block(NamedTuple):
    """One passage as the page shows it."""

    number: int
    latin: tuple[Piece, ...]
    english: tuple[Piece, ...]
    cells: tuple[Cell, ...]
    notes: tuple[Note, ...]


class Entry(NamedTuple):
    """A line of the word list."""

    form: str
    kind: str
    senses: str
    places: tuple[int, ...]


def stanzas(document: Document, options: SheetOptions) -> list[list[Block]]:
    """Lay out every passage, grouped by stanza."""
    groups: dict[int, list[Block]] = defaultdict(list)
    used = 0
    for place, passage in enumerate(document.passages, 1):
        picked = [i for i, token in enumerate(passage.tokens) if token.emphasis and token.words]
        numbers = {token: number for number, token in enumerate(picked, used + 1)}
        used += len(picked)
        block = Block(
            place,
            latin=tuple(_latin(document.source, passage, numbers)),
            english=tuple(_english(document.english or "", passage, numbers)),
            cells=tuple(_cells(passage, numbers)),
            notes=tuple(_note(passage, i, number=n, tradition=options.tradition) for i, n in numbers.items()),
        )
        groups[passage.stanza].append(block)
    return list(groups.values())


def _latin(source: str, passage: Passage, numbers: Mapping[int, int]) -> Iterator[Piece]:
    at = passage.start
    for i, token in enumerate(passage.tokens):
        if i in numbers:
            yield Piece(source[at : token.start])
            yield Piece(token.text, (numbers[i],))
            at = token.end
    yield Piece(source[at : passage.end])


def _english(english: str, passage: Passage, numbers: Mapping[int, int]) -> Iterator[Piece]:
    """Yield the rendering; neighbouring words that render the same picked-out words are one piece."""
    tied: dict[int, set[int]] = defaultdict(set)
    for link in passage.links:
        if link.latin in numbers:
            tied[link.english].add(numbers[link.latin])
    end = passage.rendering[0].start if passage.rendering else 0
    for number_set, run in groupby(enumerate(passage.rendering), key=lambda pair: tuple(sorted(tied.get(pair[0], ())))):
        tokens = [token for _, token in run]
        if gap := english[end : tokens[0].start]:
            yield Piece(gap)
        end = tokens[-1].end
        yield Piece(english[tokens[0].start : end], number_set)


def _cells(passage: Passage, numbers: Mapping[int, int]) -> Iterator[Cell]:
    for i, token in enumerate(passage.tokens):
        if token.words:
            for k, (text, word) in enumerate(zip(parts_of(token), token.words, strict=True)):
                yield Cell(text, word.gloss, None if k else numbers.get(i), joined=k > 0)


def _note(passage: Passage, index: int, *, number: int, tradition: str) -> Note:
    token = passage.tokens[index]
    parts = token.difficulty.parts if token.difficulty else ()
    harder = sorted((p for p in parts if p.effect > 0 and p.reason), key=lambda p: -p.effect)
    return Note(
        number,
        token.text,
        spoken=respelling_of(token, tradition),
        literal=" ".join(filter(None, (word.gloss for word in reversed(token.words)))),
        endings=tuple(_typeset(word.reason) for word in token.words if word.reason),
        hard="; ".join(part.reason for part in harder),
        kin=tuple(_kin(token)),
        dictionary=dictionary_form(token.words[0].lemma, token.words[0].upos),
        unrendered=bool(passage.rendering) and not passage.english_of(index),
    )


def _typeset(text: str) -> str:
    """Curl the quotes, and keep an ending with its hyphen: `-mus` does not break over two lines."""
    return _ENDING.sub("-\u2060", _QUOTED.sub(r"“\1”", text))


def _kin(token: Token) -> Iterator[tuple[str, str]]:
    """Yield the English relatives under their label; a word that has drifted in meaning says so."""
    for label, kinds in _KIN.items():
        found = [r for r in token.relatives if r.kind in kinds][:_MOST_RELATIVES]
        if found:
            yield label, ", ".join(f"{r.word} ({r.drift})" if r.drift else r.word for r in found)


def word_list(document: Document) -> list[Entry]:
    """Return every word of the text once, by its dictionary form, in the order of the alphabet."""
    places: dict[tuple[str, str], list[int]] = defaultdict(list)
    senses: dict[tuple[str, str], str] = {}
    for number, passage in enumerate(document.passages, 1):
        for word in (word for token in passage.tokens for word in token.words):
            key = (word.lemma, word.upos)
            places[key].append(number)
            senses.setdefault(key, word.senses or word.gloss)
    return [
        Entry(dictionary_form(*key), kind_of(key[1]), senses[key], tuple(dict.fromkeys(places[key])))
        for key in sorted(places, key=lambda key: (plain(key[0]), key))
    ]
