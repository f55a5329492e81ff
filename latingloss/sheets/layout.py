"""The neutral layout: everything that stands on the pages and in what order, before any format sets it.

`layout` makes it; HTML, PDF, DOCX and Markdown only set it. Text here is plain, without markup; each format escapes.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any

from latingloss.document import Document
from latingloss.sheets.booklet import Booklet, as_booklet
from latingloss.sheets.endings import EndingGroup, endings_key
from latingloss.sheets.options import SheetOptions
from latingloss.sheets.passages import Block, stanzas
from latingloss.sheets.practice import Exercise, exercises
from latingloss.sheets.review import ReviewItem, review
from latingloss.sheets.words import Place, WordGroup, word_list

STATEMENT = "The glosses are an aid to study, not an approved translation."
ENDINGS_GUIDE = (
    "English tells who does what by the order of words and by small words such as of, to and they. Latin tells it by "
    "the end of the word. These are the endings in these pages; a line over a vowel means that it is long."
)
ANSWERS_GUIDE = "For the teacher; leave this page out of the copies if the answers are not to be seen."
UNPRINTED = dict.fromkeys((*range(9), *range(11, 32), *range(127, 160), 0xFFFE, 0xFFFF))  # no format can hold them


@dataclass(frozen=True)
class Section:
    """One text; an empty title is not printed, because the whole page has it."""

    number: int
    title: str
    introduction: tuple[str, ...]
    source: str
    stanzas: tuple[tuple[Block, ...], ...]


@dataclass(frozen=True)
class Practice:
    """The exercises on one text; `of` names it in a booklet of several."""

    of: str
    exercises: tuple[Exercise, ...]

    @property
    def heading(self) -> str:
        """The heading of its pages."""
        return f"Practice: {self.of}" if self.of else "Practice"

    @property
    def answered(self) -> tuple[Exercise, ...]:
        """Those whose answers are printed."""
        return tuple(exercise for exercise in self.exercises if exercise.items and exercise.keyed)


@dataclass(frozen=True)
class ReviewRow:
    """One thing that the author should look over, and where."""

    place: Place
    item: ReviewItem


@dataclass(frozen=True)
class Layout:
    """Everything on the pages of one booklet."""

    title: str
    introduction: tuple[str, ...]
    guide: str  # how to read the page
    sections: tuple[Section, ...]
    words: tuple[WordGroup, ...]
    endings: tuple[EndingGroup, ...]
    practice: tuple[Practice, ...]
    review: tuple[ReviewRow, ...] | None  # None: not wanted
    options: SheetOptions
    statement: str = STATEMENT
    endings_guide: str = ENDINGS_GUIDE
    answers_guide: str = ANSWERS_GUIDE

    @property
    def review_guide(self) -> str:
        """What the page for the author is for."""
        said = "What is likeliest to be wrong comes first." if self.review else "Nothing stood out; read it through."
        return f"For whoever made this booklet; leave this page out of the copies. {said}"


def layout(given: Booklet | Document, options: SheetOptions | None = None) -> Layout:
    """Lay out a booklet, or a document as a booklet of one; `options` default to `SheetOptions()`.

    >>> from latingloss import annotate
    >>> page = layout(annotate("Vesper venit."))
    >>> [line.pieces[0].text for line in page.sections[0].stanzas[0][0].stacks[0].lines]
    ['Vesper', 'evening']
    """
    booklet, options = as_booklet(given), options or SheetOptions()
    documents = [text.document for text in booklet.texts]
    page = Layout(
        title=booklet.heading,
        introduction=_paragraphs(booklet.introduction),
        guide=_guide(documents, options),
        sections=tuple(_section(booklet, number, options) for number in range(1, len(documents) + 1)),
        words=word_list(booklet, options.word_order) if "words" in options.parts else (),
        endings=endings_key(documents) if "endings" in options.parts else (),
        practice=tuple(_practice(booklet, number, options) for number in range(1, len(documents) + 1))
        if options.exercises
        else (),
        review=_review(documents) if "review" in options.parts else None,
        options=options,
    )
    return _printable(page)  # type: ignore[no-any-return]


def _printable(value: Any) -> Any:
    """Return a piece of the layout without control characters, which XML and fonts refuse."""
    if isinstance(value, str):
        return value.translate(UNPRINTED)
    if isinstance(value, tuple):
        parts = [_printable(part) for part in value]
        return type(value)(*parts) if hasattr(value, "_fields") else tuple(parts)
    if is_dataclass(value) and not isinstance(value, SheetOptions | type):
        return replace(value, **{field.name: _printable(getattr(value, field.name)) for field in fields(value)})
    return value


def _paragraphs(text: str) -> tuple[str, ...]:
    return tuple(" ".join(part.split()) for part in text.split("\n\n") if part.strip())


def _practice(booklet: Booklet, number: int, options: SheetOptions) -> Practice:
    text = booklet.texts[number - 1]
    of = text.title.strip() or f"Text {number}"
    return Practice(
        of if len(booklet.texts) > 1 else "", exercises(text.document, options.exercises, variant=options.variant)
    )


def _section(booklet: Booklet, number: int, options: SheetOptions) -> Section:
    text = booklet.texts[number - 1]
    title = text.title.strip()
    return Section(
        number,
        title="" if len(booklet.texts) == 1 and title in ("", booklet.heading) else title or f"Text {number}",
        introduction=_paragraphs(text.introduction),
        source=text.source.strip(),
        stanzas=stanzas(text.document, options),
    )


def _guide(documents: Sequence[Document], options: SheetOptions) -> str:
    ties = []
    if "rendering" in options.columns and any(document.english is not None for document in documents):
        ties.append("at the English that renders it")
    if "notes" in options.parts:
        ties.append("at the note below")
    return f"A word in bold has a number. The same number stands {' and '.join(ties)}." if ties else ""


def _review(documents: Sequence[Document]) -> tuple[ReviewRow, ...]:
    """List the doubts about every text, each text's riskiest first."""
    several = len(documents) > 1
    return tuple(
        ReviewRow(Place(number, item.passage, several), item)
        for number, document in enumerate(documents, 1)
        for item in review(document)
    )
