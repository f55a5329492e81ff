"""How one text is laid out: its passages as columns, word stacks and notes, in the order that the author chose.

Words picked out are numbered through the text; the number ties the Latin word, the English words that render it,
and the note.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from latingloss.document import Document, Passage, Token, Word
from latingloss.sheets.notes import Note, note
from latingloss.sheets.options import SheetOptions
from latingloss.sheets.wording import grammar_of, parts_of, respelling_of

LABELS = {
    "latin": "Latin", "literal": "Word for word", "grammar": "Grammar", "pronunciation": "Said aloud",
    "rendering": "English", "space": "My notes",
}  # fmt: skip
_OF_WORDS = ("latin", "literal", "grammar", "pronunciation")


@dataclass(frozen=True)
class Piece:
    """A run of text; picked out if it has numbers."""

    text: str
    numbers: tuple[int, ...] = ()


@dataclass(frozen=True)
class Column:
    """What one of the author's columns says of a passage, or of a word; the ruled space says nothing."""

    kind: str
    pieces: tuple[Piece, ...]

    @property
    def label(self) -> str:
        """The head of the column."""
        return LABELS[self.kind]


@dataclass(frozen=True)
class Stack:
    """A word, or an enclitic, with what is said of it under it."""

    lines: tuple[Column, ...]
    joined: bool  # to the stack before: an enclitic


@dataclass(frozen=True)
class Block:
    """One passage: side by side `across`, or interlinear as stacks with whole lines above and below."""

    number: int
    across: tuple[Column, ...] = ()
    above: tuple[Column, ...] = ()
    stacks: tuple[Stack, ...] = ()
    below: tuple[Column, ...] = ()
    notes: tuple[Note, ...] = ()


def stanzas(document: Document, options: SheetOptions) -> tuple[tuple[Block, ...], ...]:
    """Lay out every passage, grouped by stanza."""
    groups: dict[int, list[Block]] = defaultdict(list)
    used = 0
    for place, passage in enumerate(document.passages, 1):
        picked = [i for i, token in enumerate(passage.tokens) if token.emphasis and token.words]
        numbers = {token: number for number, token in enumerate(picked, used + 1)}
        used += len(picked)
        groups[passage.stanza].append(_Setting(document, passage, options, numbers).block(place))
    return tuple(map(tuple, groups.values()))


@dataclass(frozen=True)
class _Setting:
    """One passage being set; `numbers` has those of its words that are picked out, by token."""

    document: Document
    passage: Passage
    options: SheetOptions
    numbers: Mapping[int, int]

    def block(self, place: int) -> Block:
        columns = [kind for kind in self.options.columns if kind != "rendering" or self.passage.rendering]
        wanted = self.numbers if "notes" in self.options.parts else {}
        notes = tuple(note(self.passage, i, number=n, tradition=self.options.tradition) for i, n in wanted.items())
        if self.options.arrangement == "lines":  # an empty column keeps its place in the table
            return Block(place, across=self._columns(self.options.columns), notes=notes)
        words = [kind for kind in columns if kind in _OF_WORDS]
        turn = columns.index(words[0]) if words else len(columns)
        return Block(
            place,
            above=self._columns(columns[:turn]),
            stacks=tuple(self._stacks(words)) if words else (),
            below=self._columns([kind for kind in columns[turn:] if kind not in words]),
            notes=notes,
        )

    def _columns(self, kinds: Sequence[str]) -> tuple[Column, ...]:
        made = {
            "latin": self._latin, "literal": self._literal, "grammar": self._grammar,
            "pronunciation": self._pronunciation, "rendering": self._rendering, "space": self._space,
        }  # fmt: skip
        return tuple(Column(kind, tuple(piece for piece in made[kind]() if piece.text)) for kind in kinds)

    def _space(self) -> Iterator[Piece]:
        return iter(())

    def _latin(self) -> Iterator[Piece]:
        at, source = self.passage.start, self.document.source
        for i, number in self.numbers.items():
            token = self.passage.tokens[i]
            yield Piece(source[at : token.start])
            yield Piece(token.text, (number,))
            at = token.end
        yield Piece(source[at : self.passage.end])

    def _literal(self) -> Iterator[Piece]:
        yield Piece(self.passage.literal())

    def _grammar(self) -> Iterator[Piece]:
        said = [f"{w.form}: {grammar_of(w)}" for token in self.passage.tokens for w in token.words]
        yield Piece("; ".join(said))

    def _pronunciation(self) -> Iterator[Piece]:
        words = (respelling_of(token, self.options.tradition) for token in self.passage.tokens if token.words)
        yield Piece(" ".join(filter(None, words)))

    def _rendering(self) -> Iterator[Piece]:
        """Yield the rendering; neighbouring words that render the same picked-out words are one piece."""
        tied: dict[int, set[int]] = defaultdict(set)
        for link in self.passage.links:
            if link.latin in self.numbers:
                tied[link.english].add(self.numbers[link.latin])
        tokens, english = self.passage.rendering, self.document.english or ""
        end = tokens[0].start if tokens else 0
        for numbers, run in groupby(enumerate(tokens), key=lambda pair: tuple(sorted(tied.get(pair[0], ())))):
            found = [token for _, token in run]
            yield Piece(english[end : found[0].start])
            end = found[-1].end
            yield Piece(english[found[0].start : end], numbers)

    def _stacks(self, kinds: Sequence[str]) -> Iterator[Stack]:
        """Yield the words one by one, each with the marks that touch it, so that no character of the line is lost."""
        tokens, source = self.passage.tokens, self.document.source
        words = [i for i, token in enumerate(tokens) if token.words]
        if not words:
            if "latin" in kinds:
                yield Stack((Column("latin", tuple(self._latin())),), joined=False)
            return
        before = source[self.passage.start : tokens[words[0]].start]
        for i, following in zip(words, [*words[1:], None], strict=True):
            end = tokens[following].start if following is not None else self.passage.end
            after, following_marks = _shared(source[tokens[i].end : end], last=following is None)
            yield from self._of_token(i, kinds, (before, after))
            before = following_marks

    def _of_token(self, index: int, kinds: Sequence[str], marks: tuple[str, str]) -> Iterator[Stack]:
        token, last = self.passage.tokens[index], len(self.passage.tokens[index].words) - 1
        for k, (text, word) in enumerate(zip(parts_of(token), token.words, strict=True)):
            number = (self.numbers[index],) if index in self.numbers and not k else ()
            latin = (Piece(marks[0] if not k else ""), Piece(text, number), Piece(marks[1] if k == last else ""))
            lines = (Column(kind, latin if kind == "latin" else (self._said(kind, token, word),)) for kind in kinds)
            yield Stack(
                tuple(Column(line.kind, tuple(piece for piece in line.pieces if piece.text)) for line in lines),
                joined=k > 0,
            )

    def _said(self, kind: str, token: Token, word: Word) -> Piece:
        if kind == "literal":
            return Piece(word.gloss or "?")
        if kind == "grammar":
            return Piece(grammar_of(word))
        return Piece(respelling_of(token, self.options.tradition) if word is token.words[0] else "")


def _shared(between: str, *, last: bool) -> tuple[str, str]:
    """Share what stands between two words: what touches the one before goes with it, the rest with the one after."""
    marks = between.split()
    if last or len(marks) < 2:
        touches = last or not between[-1:] or between[-1:].isspace()
        return (between.rstrip(), "") if touches or not between[:1].isspace() else ("", between.lstrip())
    return between[: between.rindex(marks[-1])].rstrip(), marks[-1]
