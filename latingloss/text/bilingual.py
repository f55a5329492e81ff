"""A text and its rendering, laid out line by line as tokens, before anything is known of their words."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from latingloss.errors import InputTypeError, TextError
from latingloss.text.checking import MOST_CHARACTERS, check, check_tokens, check_whole
from latingloss.text.lines import Line, lines
from latingloss.text.pairing import pair_texts
from latingloss.text.tokens import Kind, Span, tokenize, tokenize_english


class BilingualLine(NamedTuple):
    """A passage before it is annotated."""

    start: int
    end: int
    stanza: int
    tokens: list[Span]
    rendering: list[Span]


def of_texts(latin: str, english: str | None) -> list[BilingualLine]:
    """Lay two texts out; raise `TextError` or `InputTypeError` for what cannot be read."""
    check(latin, "latin")
    if english is not None:
        return _paired_lines(latin, check(english, "english"), tokenize(latin))
    found = lines(latin)
    tokens = _spans_within(found, tokenize(latin))
    return [BilingualLine(*line, spans, []) for line, spans in zip(found, tokens, strict=True)]


def with_rendering(latin: str, english: str, given: list[BilingualLine]) -> list[BilingualLine]:
    """Return lines of a text with the rendering set beside them; those that one of its lines renders are made one.

    Raises `TextError` or `InputTypeError` for an English text that cannot be read.
    """
    rows = [Line(line.start, line.end, line.stanza) for line in given]
    spans = [span for line in given for span in line.tokens]
    return _paired_lines(latin, check(english, "english"), spans, rows=rows)


def of_tokens(
    latin: Sequence[Sequence[str]], english: Sequence[Sequence[str]] | None
) -> tuple[str, str | None, list[BilingualLine]]:
    """Lay sentences of given tokens out; return their texts, joined by spaces and line ends, and the lines."""
    _check_token_lists(latin, english)
    source, latin_spans = _joined(latin, tokenize)
    rendering, english_spans = _joined(english or [], tokenize_english)
    english_spans += [[] for _ in range(len(latin_spans) - len(english_spans))]
    found, at = [], 0
    for spans, others, sentence in zip(latin_spans, english_spans, latin, strict=True):
        end = at + len(" ".join(sentence))
        found.append(BilingualLine(at, end, 0, spans, others))
        at = end + 1
    return source, rendering if english is not None else None, found


def _paired_lines(
    latin: str, english: str, spans: Sequence[Span], *, rows: list[Line] | None = None
) -> list[BilingualLine]:
    """Passages with their renderings; a rendering line without Latin goes with the passage before it."""
    pairs = pair_texts(latin, english, rows=rows)
    latin_spans = iter(_spans_within([row for row, _ in pairs if row], spans))
    english_spans = iter(_spans_within([column for _, column in pairs if column], tokenize_english(english)))
    found: list[BilingualLine] = []
    leading: list[Span] = []
    for row, column in pairs:
        rendering = next(english_spans) if column else []
        if row:
            found.append(BilingualLine(*row, next(latin_spans), leading + rendering))
            leading = []
        else:
            (found[-1].rendering if found else leading).extend(rendering)
    return found


def _spans_within(lines: Sequence[Line], spans: Sequence[Span]) -> list[list[Span]]:
    """Share tokens out over the lines they stand in; every token goes to exactly one."""
    out: list[list[Span]] = [[] for _ in lines]
    k = 0
    for span in spans:
        while k + 1 < len(lines) and span.start >= lines[k + 1].start:
            k += 1
        out[k].append(span)
    return out


def kind_of(token: str, cut: Callable[[str], list[Span]] = tokenize) -> Kind:
    """Return the kind of a given token: that of its first part when cut.

    >>> kind_of("lux"), kind_of("?!")
    ('word', 'punctuation')
    """
    pieces = cut(token)
    return pieces[0].kind if pieces else "sign"


def _joined(sentences: Sequence[Sequence[str]], cut: Callable[[str], list[Span]]) -> tuple[str, list[list[Span]]]:
    """Lay given tokens out as a text."""
    spans: list[list[Span]] = []
    kinds: dict[str, Kind] = {}
    at = 0
    for sentence in sentences:
        row = []
        for token in sentence:
            if token not in kinds:
                kinds[token] = kind_of(token, cut)
            row.append(Span(token, at, at + len(token), kinds[token]))
            at += len(token) + 1
        if not sentence:
            at += 1
        spans.append(row)
    return "\n".join(" ".join(sentence) for sentence in sentences), spans


def _check_token_lists(latin: Sequence[Sequence[str]], english: Sequence[Sequence[str]] | None) -> None:
    for name, sentences in (("latin_sentences", latin), ("english", english)):
        if sentences is None and name == "english":
            continue
        if isinstance(sentences, str | bytes) or not isinstance(sentences, Sequence):
            raise InputTypeError(f"{name} must be a list of lists of tokens, not {type(sentences).__name__}")
        for i, sentence in enumerate(sentences):
            check_tokens(sentence, f"{name}[{i}]")
            for j, token in enumerate(sentence):
                check_whole(token, f"{name}[{i}][{j}]")
                if not token or token.isspace():
                    raise TextError(f"{name}[{i}][{j}] is empty; leave empty tokens out")
        if (letters := sum(len(token) for sentence in sentences for token in sentence)) > MOST_CHARACTERS:
            raise TextError(
                f"{name}: {letters:,} characters, and one text may have {MOST_CHARACTERS:,}; cut it into texts, or use "
                "latingloss.corpus"
            )
    if english is not None and len(english) != len(latin):
        raise TextError(
            f"{len(latin)} Latin sentences but {len(english)} English ones; give one list of English tokens for each"
        )
