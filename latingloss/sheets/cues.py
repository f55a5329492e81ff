"""What stands on the screen at one time: at most two lines of Latin and two of English, of 42 characters each.

A longer verse is cut in two, and again, where the sense allows: at a mark, about in the middle, and so that the words
linked to each other stay on one screen. Limits of screen text are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from textwrap import wrap

from latingloss.document import Document, Passage, RenderingToken, Token
from latingloss.pronunciation import syllable_count

LINE_WIDTH = 42
_MOST_LINES = 2
_PAUSES = frozenset("*†")  # in a psalm they end what stands before them
_CROSSING, _NO_MARK = 2.0, 0.3  # how bad, where an uneven cut is 1: parting all linked words, cutting within a phrase


@dataclass(frozen=True)
class Cue:
    """Latin, the English under it, and how many syllables are spoken meanwhile, at least one."""

    latin: str
    under: str
    syllables: int


@dataclass(frozen=True)
class _Span:
    """Tokens of a passage, from `latin[0]` before `latin[1]`, and so in its rendering."""

    latin: tuple[int, int]
    english: tuple[int, int]


def cues(document: Document, passage: Passage, *, rendering: bool) -> Iterator[Cue]:
    """Yield the cues of a passage with its rendering under the Latin, or with the literal glosses.

    >>> from latingloss import annotate
    >>> document = annotate("Vesper venit.", "Evening comes.")
    >>> next(cues(document, document.passages[0], rendering=True))
    Cue(latin='Vesper venit.', under='Evening comes.', syllables=4)
    """
    english = len(passage.rendering) if rendering else 0
    yield from _cut(document, passage, _Span((0, len(passage.tokens)), (0, english)))


def on_screen(text: str) -> list[str]:
    """Break a text into as few lines as the screen's width allows, about equally long.

    >>> on_screen("qui lumen diei noctisque silentium tribuisti")
    ['qui lumen diei noctisque', 'silentium tribuisti']
    """
    fewest = len(_wrapped(text, LINE_WIDTH))
    width = next(width for width in range(1, LINE_WIDTH + 1) if len(_wrapped(text, width)) <= fewest)
    return _wrapped(text, width)


def _wrapped(text: str, width: int) -> list[str]:
    return wrap(text, width, break_long_words=False, break_on_hyphens=False)


def _cut(document: Document, passage: Passage, span: _Span) -> Iterator[Cue]:
    cue = _cue(document, passage, span)
    found = None if _fits(cue) else _best_cut(passage, span)
    if found is None:
        yield cue
        return
    latin, english = found
    yield from _cut(document, passage, _Span((span.latin[0], latin), (span.english[0], english)))
    yield from _cut(document, passage, _Span((latin, span.latin[1]), (english, span.english[1])))


def _fits(cue: Cue) -> bool:
    return all(len(_wrapped(text, LINE_WIDTH)) <= _MOST_LINES for text in (cue.latin, cue.under))


def _cue(document: Document, passage: Passage, span: _Span) -> Cue:
    tokens, english = passage.tokens[slice(*span.latin)], passage.rendering[slice(*span.english)]
    latin = document.source[tokens[0].start : tokens[-1].end]
    if english and document.english is not None:
        under = document.english[english[0].start : english[-1].end]
    else:
        under = passage.model_copy(update={"tokens": tokens}).literal()
    spoken = sum(syllable_count(word.form) for token in tokens for word in token.words)
    numbers = sum(token.kind in ("number", "sign") for token in tokens)
    return Cue(" ".join(latin.split()), " ".join(under.split()), max(1, spoken + numbers))


def _best_cut(passage: Passage, span: _Span) -> tuple[int, int] | None:
    """Return the tokens, of Latin and of English, before which to cut; None if there is no place."""
    latin = _places(passage.tokens, span.latin)
    english = _places(passage.rendering, span.english) if span.english[1] else {0: 0.0}
    linked = [(k.latin, k.english) for k in passage.links if span.latin[0] <= k.latin < span.latin[1]]

    def cost(cut: tuple[int, int]) -> float:
        crossing = sum((left < cut[0]) != (right < cut[1]) for left, right in linked) if span.english[1] else 0
        return latin[cut[0]] + english[cut[1]] + _CROSSING * crossing / max(1, len(linked))

    return min(product(latin, english), key=cost, default=None)


def _places(tokens: tuple[Token, ...] | tuple[RenderingToken, ...], span: tuple[int, int]) -> dict[int, float]:
    """Return the places between words where a text can be cut, and how bad each is: 0 at a mark in the middle."""
    start, end = tokens[span[0]].start, tokens[span[1] - 1].end
    return {
        i: abs(2 * tokens[i].start - start - end) / (end - start)
        + (0 if tokens[i - 1].kind == "punctuation" or tokens[i - 1].text in _PAUSES else _NO_MARK)
        for i in range(span[0] + 1, span[1])
        if tokens[i].start > tokens[i - 1].end and tokens[i].text not in _PAUSES
    }
