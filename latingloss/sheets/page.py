"""The printed page: a document set as one self-contained HTML file, without script."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

from jinja2 import Environment, FunctionLoader, StrictUndefined, Template

from latingloss.document import Document
from latingloss.sheets.layout import stanzas, word_list
from latingloss.sheets.options import SheetOptions
from latingloss.sheets.review import review


def sheet_html(document: Document, options: SheetOptions | None = None) -> str:
    """Return a document as a study sheet: one HTML file with its style in it, for screen and paper.

    Latin beside its rendering, the picked-out words bold and tied by numbers; under it each word over its literal
    sense, then the notes; at the end the word list and, on a page of its own, what the author should look over.
    `options` default to `SheetOptions()`.

    >>> from latingloss import annotate
    >>> page = sheet_html(annotate("Vesper venit.", "Evening comes."), SheetOptions(title="Evening"))
    >>> "<title>Evening</title>" in page
    True
    """
    options = options or SheetOptions()
    return _template().render(
        options=options,
        introduction=[part for part in options.introduction.split("\n\n") if part.strip()],
        stanzas=stanzas(document, options),
        rendered=document.english is not None,
        words=word_list(document) if "words" in options.parts else [],
        items=review(document) if "review" in options.parts else (),
    )


@cache
def _template() -> Template:
    room = files("latingloss") / "sheets"
    environment = Environment(
        loader=FunctionLoader(lambda name: (room / name).read_text(encoding="utf-8")),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=StrictUndefined,
    )
    return environment.get_template("sheet.html.jinja")
