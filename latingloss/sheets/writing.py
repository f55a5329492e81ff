"""A booklet written to a file, in the format that the file's name says."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from latingloss.document import Document
from latingloss.errors import FormatError
from latingloss.sheets.booklet import Booklet
from latingloss.sheets.captions import sheet_vtt
from latingloss.sheets.docx import sheet_docx
from latingloss.sheets.html import sheet_html
from latingloss.sheets.markdown import sheet_markdown
from latingloss.sheets.options import SheetOptions
from latingloss.sheets.pdf import sheet_pdf

FORMATS: dict[str, Callable[[Booklet | Document, SheetOptions | None], str | bytes]] = {
    ".html": sheet_html,
    ".pdf": sheet_pdf,
    ".docx": sheet_docx,
    ".md": sheet_markdown,
    ".vtt": sheet_vtt,
}


def write_sheet(given: Booklet | Document, path: str | Path, options: SheetOptions | None = None) -> Path:
    """Write a booklet, or a document as a booklet of one, as .html, .pdf, .docx, .md or, as captions, .vtt.

    Returns the path. Raises FormatError for another ending or a path that cannot be written, MissingExtraError (an
    `ImportError`) if the packages for PDF or DOCX are not installed.

    >>> from latingloss import annotate
    >>> write_sheet(annotate("Vesper venit."), "evening.txt")
    Traceback (most recent call last):
    latingloss.errors.FormatError: evening.txt: give a name that ends in .html, .pdf, .docx, .md or .vtt
    """
    path = Path(path)
    if path.suffix.lower() not in FORMATS:
        *most, last = FORMATS
        raise FormatError(f"{path}: give a name that ends in {', '.join(most)} or {last}")
    made = FORMATS[path.suffix.lower()](given, options)
    try:
        path.write_bytes(made if isinstance(made, bytes) else made.encode("utf-8"))
    except OSError as error:
        raise FormatError(
            f"{path}: {(error.strerror or str(error)).lower()}; give a path that can be written"
        ) from None
    return path
