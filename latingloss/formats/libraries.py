"""Documents of other libraries: texts that Stanza, spaCy or CLTK has cut already become a `Document`.

Their tokens, sentences and offsets are kept, their tags are not: the readings are those of latingloss. No such
library is imported; what is read of its objects is named in each function.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from typing import Any

from latingloss.document import Document, Passage, Token
from latingloss.errors import InputTypeError, TextError
from latingloss.pipeline import Annotator, annotate_tokens
from latingloss.text.checking import check_string, check_whole
from latingloss.text.tokens import tokenize

_Span = tuple[int, int]


def from_stanza(document: Any, *, annotator: Annotator | None = None) -> Document:
    """Annotate a Stanza document: its tokens (ranges stay whole), a passage a sentence.

    Reads `text`, `sentences`, their `tokens`, and of these `text`, `start_char` and `end_char`. A document without a
    text, such as one read from CoNLL-U, gets the tokens joined by spaces, as in `annotate_tokens`. Raises
    `InputTypeError` for anything else, `TextError` if the offsets do not fit the text.
    """
    _need(document, "stanza.Document", ("text", "sentences"))
    tokens = [list(sentence.tokens) for sentence in document.sentences]
    if document.text is None:
        return _annotate([[token.text for token in sentence] for sentence in tokens], annotator)
    spans = [[(token.start_char, token.end_char) for token in sentence] for sentence in tokens]
    return _placed(document.text, spans, annotator)


def from_spacy(document: Any, *, annotator: Annotator | None = None) -> Document:
    """Annotate a spaCy document: its tokens but for white space, a passage a sentence; one passage if it has none.

    Reads `text`, `has_annotation`, `sents`, and of the tokens `idx` and `is_space`. Raises `InputTypeError` for
    anything else.
    """
    _need(document, "spacy.tokens.Doc", ("text", "has_annotation", "sents"))
    sentences = document.sents if document.has_annotation("SENT_START") else [document]
    spans = [[(token.idx, token.idx + len(token)) for token in one if not token.is_space] for one in sentences]
    return _placed(document.text, spans, annotator)


def from_cltk(document: Any, *, annotator: Annotator | None = None) -> Document:
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
            return _placed(source, spans, annotator)
    raise TextError("the words of the CLTK document stand neither in its raw nor in its normalized_text, in order")


def _need(document: object, name: str, attributes: Sequence[str]) -> None:
    if missing := [attribute for attribute in attributes if not hasattr(document, attribute)]:
        kind = type(document).__name__
        raise InputTypeError(f"document must be a {name}, not {kind}, which has no {', '.join(missing)}")


def _annotate(sentences: Sequence[Sequence[str]], annotator: Annotator | None) -> Document:
    return annotator.annotate_tokens(sentences) if annotator else annotate_tokens(sentences)


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


def _placed(source: object, sentences: Sequence[Sequence[_Span]], annotator: Annotator | None) -> Document:
    """Annotate the tokens at the given places of a text; what stands between them and is no space is cut too."""
    check_string(source, "text")
    assert isinstance(source, str)
    check_whole(source, "text")
    rows = _whole(source, [list(sentence) for sentence in sentences if sentence])
    if not rows:
        raise TextError("the document has no tokens; give one with at least one word")
    found = _annotate([[source[start:end] for start, end in row] for row in rows], annotator)
    passages: list[Passage] = []
    stanza, at = 0, 0
    for passage, row in zip(found.passages, rows, strict=True):
        stanza += bool(passages) and source.count("\n", at, row[0][0]) > 1
        at = row[-1][1]
        tokens = tuple(_moved(passage.tokens, row))
        place = {"start": row[0][0], "end": at, "stanza": stanza}
        passages.append(passage.model_copy(update=place | {"tokens": tokens}))
    return found.model_copy(update={"source": source, "passages": tuple(passages)})


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


def _moved(tokens: Iterable[Token], row: Iterable[_Span]) -> Iterator[Token]:
    for token, (start, end) in zip(tokens, row, strict=True):
        yield token.model_copy(update={"start": start, "end": end})
