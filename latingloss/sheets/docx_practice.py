"""The practice pages of a DOCX, set with the styles that the sheet has, and one for the lines to write on."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from latingloss.sheets.layout import Layout
from latingloss.sheets.practice import Exercise, Item, Part

if TYPE_CHECKING:
    from docx.document import Document as DocxDocument
    from docx.text.paragraph import Paragraph

_GAPS = {"word": "_" * 12, "letter": "_" * 4}
_RULED = "Writing Line"


def add_practice(file: DocxDocument, page: Layout) -> None:
    """Add the exercises of a layout and the page with their answers to a file; nothing if there are none.

    >>> import docx
    >>> from latingloss import annotate
    >>> from latingloss.sheets import SheetOptions
    >>> from latingloss.sheets.layout import layout
    >>> file = docx.Document()
    >>> add_practice(file, layout(annotate("Vesper venit."), SheetOptions(exercises=())))
    >>> len(file.paragraphs)
    0
    """
    if not page.practice:
        return
    _add_style(file)
    for practice in page.practice:
        file.add_heading(practice.heading, 1).paragraph_format.page_break_before = True
        for exercise in practice.exercises:
            _exercise(file, exercise)
    file.add_heading("Answers", 1).paragraph_format.page_break_before = True
    file.add_paragraph(page.answers_guide)
    for practice in page.practice:
        if practice.of:
            file.add_heading(practice.of, 2)
        for exercise in practice.answered:
            _answers(file.add_paragraph(style="Note"), exercise)


def _add_style(file: DocxDocument) -> None:
    """Add the style of an empty paragraph with a rule under it."""
    from docx.enum.style import WD_STYLE_TYPE
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn

    style: Any = file.styles.add_style(_RULED, WD_STYLE_TYPE.PARAGRAPH)
    style.base_style = file.styles["Normal"]
    rule, border = OxmlElement("w:bottom"), OxmlElement("w:pBdr")
    for name, value in (("val", "single"), ("sz", "4"), ("space", "1"), ("color", "808080")):
        rule.set(qn(f"w:{name}"), value)
    border.append(rule)
    style.element.get_or_add_pPr().append(border)


def _exercise(file: DocxDocument, exercise: Exercise) -> None:
    file.add_heading(exercise.title, 2)
    file.add_paragraph(style="Gloss").add_run(exercise.task)
    if exercise.beside:
        table = file.add_table(len(exercise.items), 2)
        cells = table._cells  # row.cells anew for every row is quadratic
        for place, (item, entry) in enumerate(zip(exercise.items, exercise.bank, strict=True)):
            _run(cells[2 * place].paragraphs[0], item.parts, number=place + 1)
            cells[2 * place + 1].paragraphs[0].add_run(entry.text)
        return
    if exercise.bank:
        file.add_table(1, 1, "Table Grid").cell(0, 0).paragraphs[0].add_run(
            " \u2003 ".join(part.text.replace(" ", "\u00a0") for part in exercise.bank)
        )
        file.add_paragraph(style="Gloss")
    for number, item in enumerate(exercise.items, 1):
        _item(file, item, number)


def _item(file: DocxDocument, item: Item, number: int) -> None:
    """Set an item; the word processor keeps its line, its English and the line to write on together."""
    paragraph = file.add_paragraph()
    _run(paragraph, item.parts, number=number)
    paragraph.paragraph_format.keep_with_next = item.ruled or bool(item.hint)
    if item.hint:
        file.add_paragraph(item.hint, "Gloss").paragraph_format.keep_with_next = item.ruled
    if item.ruled:
        file.add_paragraph(style=_RULED)


def _run(paragraph: Paragraph, parts: Sequence[Part], *, number: int) -> None:
    paragraph._p.style = "Latin" if any(part.kind in ("latin", "sign") for part in parts) else "Normal"
    paragraph.add_run(f"{number}\u2002")
    for part in parts:
        paragraph.add_run(_GAPS.get(part.kind) or part.text).bold = True if part.kind == "sign" else None


def _answers(paragraph: Paragraph, exercise: Exercise) -> None:
    paragraph.add_run(f"{exercise.title}. ").italic = True
    for number, item in enumerate(exercise.items, 1):
        paragraph.add_run(f"{number}\u00a0").bold = True
        paragraph.add_run(", ".join(part.text for part in item.answers) + " ")
