"""A booklet as PDF, set by Typst with the fonts that its Python package brings.

The texts reach the template `sheet.typ` as data, never as Typst code, so that nothing in them is executed.
"""

from __future__ import annotations

import json
from dataclasses import asdict
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any

from latingloss.document import Document
from latingloss.errors import MissingExtraError
from latingloss.sheets.booklet import Booklet
from latingloss.sheets.layout import layout
from latingloss.sheets.options import SheetOptions
from latingloss.sheets.passages import LABELS

if TYPE_CHECKING:
    import typst

_DATE = 0  # the same booklet gives the same bytes


def sheet_pdf(given: Booklet | Document, options: SheetOptions | None = None) -> bytes:
    """Return a booklet, or a document as a booklet of one, as a tagged PDF with its fonts in it.

    `options` default to `SheetOptions()`. Raises MissingExtraError (an `ImportError`) without the package `typst`.

    >>> from latingloss import annotate
    >>> sheet_pdf(annotate("Vesper venit.", "Evening comes."))[:5]
    b'%PDF-'
    """
    data = json.dumps(data_of(given, options))
    made = _compiler().compile(_source(), format="pdf", sys_inputs={"sheet": data}, timestamp=_DATE)
    assert isinstance(made, bytes)  # one PDF, not a list of page images
    return made


def data_of(given: Booklet | Document, options: SheetOptions | None = None) -> dict[str, Any]:
    """Return the layout as plain data, as the template takes it.

    >>> from latingloss import annotate
    >>> data_of(annotate("Vesper venit."))["title"]
    'Study sheet'
    """
    page = layout(given, options)
    data = asdict(page) | {"labels": LABELS, "review_guide": page.review_guide}
    for practice, shown in zip(page.practice, data["practice"], strict=True):
        shown["heading"] = practice.heading
    if page.review is not None:
        data["review"] = [{"place": row.place.label, **row.item._asdict()} for row in page.review]
    for group, shown in zip(page.words, data["words"], strict=True):
        for entry, cells in zip(group.entries, shown["entries"], strict=True):
            cells["places"] = [place.label for place in entry.places]
    return data


def _source() -> bytes:
    return (files("latingloss") / "sheets" / "sheet.typ").read_bytes()


@cache
def _compiler() -> typst.Compiler:
    """Return the compiler, made once: it reads the system's fonts, which serve letters that its own lack."""
    try:
        import typst
    except ImportError as error:
        raise MissingExtraError('a PDF needs the package typst: pip install "latingloss[print]"') from error
    return typst.Compiler()
