"""The order of a course: which of several texts is easiest next, and how many new words each brings."""

from __future__ import annotations

from collections.abc import Mapping
from statistics import fmean
from typing import NamedTuple

from latingloss.difficulty.reader import Reader
from latingloss.document import Document
from latingloss.errors import InputTypeError


class Lesson(NamedTuple):
    """One text of a course, as it is for a reader who has learned those before it."""

    name: str
    difficulty: float  # mean score of its running words for the reader at that point, 0 easy .. 1 hard
    words: int  # running words
    new: tuple[str, ...]  # lemmas that the reader meets here first, in the order of the text


def lesson(name: str, document: Document, reader: Reader) -> Lesson:
    """Return what a text is for a reader: its mean difficulty and its new lemmas. A text without words has 0.

    >>> from latingloss import annotate
    >>> lesson("Evening", annotate("Vesper venit, stella lucet."), Reader(["vesper", "stella"])).new
    ('veniō', 'lūceō')
    """
    scores: list[float] = []
    new: dict[str, None] = {}
    for passage in document.passages:
        for token in passage.tokens:
            if token.words and token.difficulty:
                host = token.words[0]
                scores.append(reader.familiar((host.lemma, host.upos), host.form, token.difficulty).score)
            for word in token.words:
                if not reader.has_met((word.lemma, word.upos)):
                    new[word.lemma] = None
    return Lesson(name, fmean(scores) if scores else 0.0, len(scores), tuple(new))


def course(texts: Mapping[str, Document], reader: Reader | None = None) -> tuple[Lesson, ...]:
    """Return texts in the order in which they are easiest to read, each after learning all before it.

    `texts` are annotated documents by name. At each step the text of the lowest mean difficulty comes next; of equals
    the one with fewer new words, then the one given first. Greedy: it does not look further ahead. Raises
    `InputTypeError` if `texts` is no mapping of documents.

    >>> from latingloss import annotate
    >>> hymn, motto = annotate("Stella lucet et luna lucet."), annotate("Tenebris circumfusis obmutescimus.")
    >>> [(text.name, len(text.new)) for text in course({"motto": motto, "hymn": hymn})]
    [('hymn', 4), ('motto', 3)]
    """
    if not isinstance(texts, Mapping):
        raise InputTypeError(f"texts must be a dict of documents by name, not {type(texts).__name__}")
    for name, document in texts.items():
        if not isinstance(document, Document):
            raise InputTypeError(
                f"texts[{name!r}] must be what latingloss.annotate returns, not {type(document).__name__}"
            )
    reader = reader or Reader()
    left, order = dict(texts), []
    while left:
        ranked = [lesson(name, document, reader) for name, document in left.items()]
        best = min(ranked, key=lambda found: (round(found.difficulty, 9), len(found.new)))
        order.append(best)
        reader = reader.learned(left.pop(best.name), name=best.name)
    return tuple(order)
