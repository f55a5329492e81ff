"""A booklet as one self-contained HTML file, without script, for screen and paper."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

from jinja2 import Environment, FunctionLoader, StrictUndefined, Template

from latingloss.document import Document
from latingloss.sheets.booklet import Booklet
from latingloss.sheets.layout import layout
from latingloss.sheets.options import SheetOptions


def sheet_html(given: Booklet | Document, options: SheetOptions | None = None) -> str:
    """Return a booklet, or a document as a booklet of one, as HTML with its style in it.

    It needs nothing from outside and no script; it has colours for light and dark screens and a style for paper.
    `options` default to `SheetOptions()`.

    >>> from latingloss import annotate
    >>> from latingloss.sheets import Booklet, Text
    >>> page = sheet_html(Booklet([Text(annotate("Vesper venit.", "Evening comes."), title="Evening")]))
    >>> "<title>Evening</title>" in page
    True
    """
    return template("sheet.html.jinja").render(page=layout(given, options))


@cache
def template(name: str) -> Template:
    """Return a template of this room; what it is given is escaped.

    >>> template("sheet.html.jinja").name
    'sheet.html.jinja'
    """
    room = files("latingloss") / "sheets"
    environment = Environment(
        loader=FunctionLoader(lambda part: (room / part).read_text(encoding="utf-8")),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=StrictUndefined,
    )
    return environment.get_template(name)
