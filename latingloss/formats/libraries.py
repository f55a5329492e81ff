"""Documents of other libraries: texts that Stanza, spaCy or CLTK has cut already become a `Document`.

Their tokens, sentences and offsets are kept, their tags are not: the readings are those of the annotator's engine. No
such library is imported; what is read of its objects is named in each function. `english` is a rendering of the whole
text, as in `latingloss.annotate`; sentences that one of its lines renders become one passage.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby
from typing import Any

from latingloss.document import Document
from latingloss.errors import InputTypeError, TextError
from latingloss.pipeline import Annotator, default_annotator
from latingloss.text.bilingual import BilingualLine, kind_of, of_tokens, with_rendering
from latingloss.text.checking import check_string, check_whole
from latingloss.text.tokens import Span, tokenize

_Span = tuple[int, int]


def from_stanza(document: Any, *, english: str | None = None, annotator: Annotator | None = None) -> Document:
    """Annotate a Stanza document: its tokens (ranges stay whole), a passage a sentence.

    Reads `text`, `sentences`, their `tokens`, and of these `text`, `start_char` and `end_char`. A document without a
    text, such as one read from CoNLL-U, gets the tokens joined by spaces, as in `annotate_tokens`. Raises
    `InputTypeError` for anything else, `TextError` if the offsets do not fit the text.
    """
    _need(document, "stanza.Document", ("text", "sentences"))
    tokens = [list(sentence.tokens) for sentence in document.sentences]
    if document.text is None:
        source, _, lines = of_tokens([[token.text for token in sentence] for sentence in tokens], None)
        return _annotated(source, lines, english, annotator)
    spans = [[(token.start_char, token.end_char) for token in sentence] for sentence in tokens]
    return _annotated(document.text, _laid_out(document.text, spans), english, annotator)


def from_spacy(document: Any, *, english: str | None = None, annotator: Annotator | None = None) -> Document:
    """Annotate a spaCy document: its tokens but for white space, a passage a sentence; one passage if it has none.

    Reads `text`, `has_annotation`, `sents`, and of the tokens `idx` and `is_space`. Raises `InputTypeError` for
    anything else.
    """
    _need(document, "spacy.tokens.Doc", ("text", "has_annotation", "sents"))
    sentences = document.sents if document.has_annotation("SENT_START") else [document]
    spans = [[(token.idx, token.idx + len(token)) for token in one if not token.is_space] for one in sentences]
    return _annotated(document.text, _laid_out(document.text, spans), english, annotator)


def from_cltk(document: Any, *, english: str | None = None, annotator: Annotator | None = None) -> Document:
    """Annotate a CLTK document (`Doc`, 1.x or 2.x): its words, a passage a sentence.

    Reads `raw`, `normalized_text`, `words`, and of these `string` and `index_sentence`. The source is the raw text, or
    the normalised one if the words are spelled as in that. Raises `InputTypeError` for anything else, `TextError`
    if the words stand in neither text.
    """
    _need(document, "cltk Doc", ("raw", "words"))
    sentences = [
        [word.string for word in words] for _, words in groupby(document.words or (), lambda word: word.index_sentence)
    ]
    for source in (document.raw, getattr(document, "normalized_text", None)):
        if isinstance(source, str) and (spans := _found(source, sentences)) is not None:
            return _annotated(source, _laid_out(source, spans), english, annotator)
    raise TextError("the words of the CLTK document stand neither in its raw nor in its normalized_text, in order")


def _need(document: object, name: str, attributes: Sequence[str]) -> None:
    if missing := [attribute for attribute in attributes if not hasattr(document, attribute)]:
        kind = type(document).__name__
        raise InputTypeError(f"document must be a {name}, not {kind}, which has no {', '.join(missing)}")


def _annotated(source: str, lines: list[BilingualLine], english: str | None, annotator: Annotator | None) -> Document:
    if english is not None:
        lines = with_rendering(source, english, lines)
    return (annotator or default_annotator()).annotate_lines(lines, source, english)


def _found(source: str, sentences: Iterable[Sequence[str]]) -> list[list[_Span]] | None:
    """Return where words stand in a text, None if a word is not there or letters would be passed over."""
    spans, at = [], 0
    for sentence in sentences:
        row = []
        for word in sentence:
            start = source.find(word, at)
            if start < 0 or any(map(str.isalpha, source[at:start])):
                return None
            at = start + len(word)
            row.append((start, at))
        spans.append(row)
    return spans


def _laid_out(source: object, sentences: Sequence[Sequence[_Span]]) -> list[BilingualLine]:
    """Lay out the tokens at the given places of a text; what stands between them and is no space is cut too."""
    check_string(source, "text")
    assert isinstance(source, str)
    check_whole(source, "text")
    lines: list[BilingualLine] = []
    stanza, at = 0, 0
    for row in _whole(source, [list(sentence) for sentence in sentences if sentence]):
        stanza += bool(lines) and source.count("\n", at, row[0][0]) > 1
        at = row[-1][1]
        spans = [Span(source[start:end], start, end, kind_of(source[start:end])) for start, end in row]
        lines.append(BilingualLine(row[0][0], at, stanza, spans, []))
    if not lines:
        raise TextError("the document has no tokens; give one with at least one word")
    return lines


def _whole(source: str, rows: list[list[_Span]]) -> list[list[_Span]]:
    """Add what lies between the spans: to the sentence before, at the beginning to the first."""
    out: list[list[_Span]] = []
    at = 0
    for row in rows:
        out.append([])
        for start, end in row:
            if not (isinstance(start, int) and isinstance(end, int) and at <= start < end <= len(source)):
                raise TextError(f"a token from {start} to {end} does not follow one that ends at {at} in the text")
            target = out[-2] if not out[-1] and len(out) > 1 else out[-1]
            target += [(span.start, span.end) for span in tokenize(source[at:start], offset=at)]
            out[-1].append((start, end))
            at = end
    if out:
        out[-1] += [(span.start, span.end) for span in tokenize(source[at:], offset=at)]
    return out
