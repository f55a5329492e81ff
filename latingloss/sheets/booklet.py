"""What the author puts together: annotated texts with title, introduction and source, bound as a booklet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from latingloss.document import Document
from latingloss.errors import InputTypeError, OptionError

UNTITLED = "Study sheet"


@dataclass(frozen=True)
class Text:
    """One text of a booklet.

    document: the annotated text. title, introduction: the author's own words; blank lines part the introduction's
    paragraphs. source: one line, where the text is from and under which licence it may be copied.

    Raises InputTypeError for anything else.

    >>> from latingloss import annotate
    >>> Text(annotate("Vesper venit."), title="Evening", source="Invented; CC BY-SA 4.0").title
    'Evening'
    """

    document: Document
    title: str = ""
    introduction: str = ""
    source: str = ""

    def __post_init__(self) -> None:
        if not isinstance(self.document, Document):
            raise InputTypeError(f"document is a {type(self.document).__name__}: give what latingloss.annotate returns")
        _check_strings(self, ("title", "introduction", "source"))


@dataclass(frozen=True)
class Booklet:
    """Several texts under one title, learnt one after the other; a single sheet is a booklet of one.

    texts: in the order in which they are learnt. title, introduction: of the whole; without a title of its own a
    booklet has that of its first text.

    Raises OptionError for a booklet without texts, InputTypeError for texts that are none.

    >>> from latingloss import annotate
    >>> Booklet([Text(annotate("Vesper venit."), title="Evening")]).heading
    'Evening'
    """

    texts: Sequence[Text]
    title: str = ""
    introduction: str = ""

    def __post_init__(self) -> None:
        if not isinstance(self.texts, Sequence) or not all(isinstance(text, Text) for text in self.texts):
            raise InputTypeError("texts must be a list of latingloss.sheets.Text")
        if not self.texts:
            raise OptionError("texts is empty: a booklet has at least one")
        _check_strings(self, ("title", "introduction"))

    @property
    def heading(self) -> str:
        """The title of the whole."""
        return self.title.strip() or self.texts[0].title.strip() or UNTITLED


def as_booklet(given: Booklet | Document) -> Booklet:
    """Return a booklet as it is, and a document as a booklet of one without a title.

    >>> from latingloss import annotate
    >>> as_booklet(annotate("Vesper venit.")).heading
    'Study sheet'
    """
    return given if isinstance(given, Booklet) else Booklet([Text(given)])


def _check_strings(record: object, names: tuple[str, ...]) -> None:
    for name in names:
        if not isinstance(value := getattr(record, name), str):
            raise InputTypeError(f"{name} is {value!r}: give a string")
