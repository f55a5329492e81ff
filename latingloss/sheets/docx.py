"""A booklet as DOCX with real styles and tables, so that the author can go on editing it in a word processor."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from io import BytesIO
from typing import TYPE_CHECKING, Any

from latingloss.document import Document
from latingloss.errors import MissingExtraError
from latingloss.sheets.booklet import Booklet
from latingloss.sheets.docx_practice import add_practice
from latingloss.sheets.layout import Layout, Section, layout
from latingloss.sheets.options import SheetOptions
from latingloss.sheets.passages import Block, Column, Piece
from latingloss.sheets.rows import rows_of, width_of

if TYPE_CHECKING:
    from docx.document import Document as DocxDocument
    from docx.table import _Cell
    from docx.text.paragraph import Paragraph

_PAPERS = {"A4": (210, 297), "Letter": (216, 279), "A5": (148, 210)}  # millimetres
_POINTS = {"normal": 11.0, "children": 14.0, "large": 18.0}
_FONT = "Times New Roman"  # on nearly every machine, with macrons and the signs of the IPA
_LETTER = 0.56  # width of a letter, of its height
_LINE_WIDTH = 870  # characters times points that fill a line of A4: for rows of stacked words
_RULE = "_" * 24


def sheet_docx(given: Booklet | Document, options: SheetOptions | None = None) -> bytes:
    """Return a booklet, or a document as a booklet of one, as a DOCX file; `options` default to `SheetOptions()`.

    Titles are headings, so that the word processor's outline works; the looks are in named styles (Latin, Rendering,
    Gloss, Note), to be changed in one place. Raises MissingExtraError (an `ImportError`) without `python-docx`.

    >>> from latingloss import annotate
    >>> sheet_docx(annotate("Vesper venit.", "Evening comes."))[:2]
    b'PK'
    """
    page = layout(given, options)
    return _Setter(page).saved()


class _Setter:
    """Sets one layout in a new file."""

    def __init__(self, page: Layout) -> None:
        try:
            import docx
        except ImportError as error:
            raise MissingExtraError('a DOCX needs the package python-docx: pip install "latingloss[print]"') from error
        self.page = page
        self.file: DocxDocument = docx.Document()
        self.points = _POINTS[page.options.size]
        self.width = int(_LINE_WIDTH / self.points * _PAPERS[page.options.paper][0] / 210)
        self._paper()
        self._styles()

    def _paper(self) -> None:
        from docx.shared import Mm

        section, (width, height) = self.file.sections[0], _PAPERS[self.page.options.paper]
        section.page_width, section.page_height = Mm(width), Mm(height)
        margin = Mm(13 if width < 200 else 19)
        self.text_width = section.page_width - 2 * margin
        section.left_margin = section.right_margin = section.top_margin = section.bottom_margin = margin

    def _styles(self) -> None:
        from docx.enum.style import WD_STYLE_TYPE
        from docx.shared import Pt

        styles: Any = self.file.styles
        styles["Normal"].font.name, styles["Normal"].font.size = _FONT, Pt(self.points)
        styles["Normal"].paragraph_format.space_after = Pt(self.points / 3)
        smaller = self.points if self.page.options.size == "large" else self.points * 0.85
        for name, size, language in (
            ("Latin", self.points * 1.1, "la-VA"), ("Rendering", self.points, ""), ("Gloss", smaller, ""),
            ("Note", smaller, ""), ("Line Number", smaller, ""), ("Row Break", 1, ""),
        ):  # fmt: skip
            style = styles.add_style(name, WD_STYLE_TYPE.PARAGRAPH)
            style.base_style, style.font.size = styles["Normal"], Pt(size)
            style.paragraph_format.space_after = Pt(1 if name in ("Latin", "Gloss", "Row Break") else self.points / 3)
            style.paragraph_format.keep_with_next = name in ("Latin", "Gloss", "Line Number", "Row Break")
            if language:
                _set_language(style.element.get_or_add_rPr(), language)
        styles["Gloss"].font.italic = True

    def saved(self) -> bytes:
        """Set everything and return the file."""
        page, file = self.page, self.file
        file.core_properties.title = page.title
        file.add_heading(page.title, 0)
        for part in page.introduction:
            file.add_paragraph(part)
        for section in page.sections:
            self._section(section)
        self._words()
        self._endings()
        add_practice(file, page)
        file.add_paragraph(page.statement, "Gloss")
        self._review()
        stream = BytesIO()
        file.save(stream)
        return stream.getvalue()

    def _section(self, section: Section) -> None:
        if section.title:
            self.file.add_heading(section.title, 1)
        for part in (*section.introduction, *((self.page.guide,) if section.number == 1 else ())):
            self.file.add_paragraph(part)
        blocks = [block for stanza in section.stanzas for block in stanza]
        if self.page.options.arrangement == "lines":
            self._lines(blocks)
        else:
            for block in blocks:
                self._interlinear(block)
        if section.source:
            self.file.add_paragraph(section.source, "Gloss")

    def _lines(self, blocks: Sequence[Block]) -> None:
        heads = ["", *(column.label for column in blocks[0].across)]
        table = self.file.add_table(1, len(heads), "Table Grid")
        _fill_head(table.rows[0], heads)
        for block in blocks:
            cells = table.add_row().cells
            cells[0].paragraphs[0].text = str(block.number)
            for column, cell in zip(block.across, cells[1:], strict=True):
                _set(cell.paragraphs[0], column)
            if block.notes:
                cells = table.add_row().cells
                self._notes(block, cells[0].merge(cells[-1]))

    def _interlinear(self, block: Block) -> None:
        from docx.shared import Pt

        self.file.add_paragraph(str(block.number), "Line Number")
        for column in block.above:
            _set(self.file.add_paragraph(), column)
        for before, row in enumerate(rows_of(block.stacks, self.width)):
            if before:  # tables that touch become one
                self.file.add_paragraph(style="Row Break")
            table = self.file.add_table(len(row[0].lines), len(row))
            table.autofit = False
            cells = table._cells  # column.cells anew for every column is quadratic
            for place, stack in enumerate(row):
                table.columns[place].width = Pt(width_of(stack) * self.points * _LETTER)
                for cell, column in zip(cells[place :: len(row)], stack.lines, strict=True):
                    cell.width = table.columns[place].width
                    _set(cell.paragraphs[0], column, small=True)
        for column in block.below:
            _set(self.file.add_paragraph(), column)
        self._notes(block, self.file)

    def _notes(self, block: Block, home: DocxDocument | _Cell) -> None:
        for note in block.notes:
            paragraph = home.add_paragraph(style="Note")
            paragraph.add_run(f"{note.number} {note.text}").bold = True
            paragraph.add_run(f" {note.spoken}".rstrip())
            for fact in note.facts:
                paragraph.add_run(f"; {fact.label}: ").italic = True
                paragraph.add_run(fact.text)

    def _words(self) -> None:
        if self.page.words:
            self.file.add_heading("Word list", 1).paragraph_format.page_break_before = True
        for group in self.page.words:
            if group.heading:
                self.file.add_heading(group.heading, 2)
            rows = [
                (
                    e.form,
                    e.kind,
                    e.senses,
                    [Piece(e.places[0].label, (0,)), *(Piece(f", {p.label}") for p in e.places[1:])],
                )
                for e in group.entries
            ]
            self._table(("Word", "Kind", "Meaning", "Line"), rows, (6, 3, 7, 3))

    def _endings(self) -> None:
        if self.page.endings:
            self.file.add_heading("Key to the endings", 1).paragraph_format.page_break_before = True
            self.file.add_paragraph(self.page.endings_guide)
        for group in self.page.endings:
            self.file.add_heading(group.heading, 2)
            rows = []
            for row in group.rows:
                shown = []
                for found in row.endings:
                    shown.append(Piece(f"-{found.ending}", (0,)))
                    for example in found.examples:
                        shown += [Piece(f" {example.stem}"), Piece(example.ending, (0,)), Piece(f" {example.gloss};")]
                    shown.append(Piece(" "))
                rows.append((row.tells, row.name, shown))
            self._table(("It tells", "Called", "Endings"), rows, (4, 3, 9))

    def _review(self) -> None:
        if self.page.review is None:
            return
        self.file.add_heading("Look over before printing", 1).paragraph_format.page_break_before = True
        self.file.add_paragraph(self.page.review_guide)
        items = ((row.place.label, row.item) for row in self.page.review)
        rows = [(place, i.text, f"{i.what}: {i.why}", "; ".join(i.alternatives[:3])) for place, i in items]
        if rows:
            self._table(("Line", "Word", "Look at", "It could also be"), rows, (1, 3, 6, 5))

    def _table(
        self, heads: Sequence[str], rows: Iterable[Sequence[str | Sequence[Piece]]], shares: Sequence[int]
    ) -> None:
        rows = list(rows)
        table = self.file.add_table(1 + len(rows), len(heads), "Table Grid")
        table.autofit = False
        _fill_head(table.rows[0], heads)
        widths = [int(self.text_width * share / sum(shares)) for share in shares]
        for column, width in zip(table.columns, widths, strict=True):
            column.width = width
        cells = table._cells  # row.cells anew for every row is quadratic
        for place, cell in enumerate(cells):
            cell.width = widths[place % len(widths)]
        for cell, text in zip(cells[len(heads) :], (text for row in rows for text in row), strict=True):
            cell.paragraphs[0]._p.style = "Note"
            _run(cell.paragraphs[0], [Piece(text)] if isinstance(text, str) else text, numbered=False)


def _fill_head(row: Any, heads: Sequence[str]) -> None:
    """Write a table's head, and let the word processor repeat it on every page."""
    from docx.oxml import OxmlElement

    row._tr.get_or_add_trPr().append(OxmlElement("w:tblHeader"))
    for cell, head in zip(row.cells, heads, strict=True):
        cell.paragraphs[0].add_run(head).italic = True


def _set(paragraph: Paragraph, column: Column, *, small: bool = False) -> None:
    styles = {"latin": "Latin", "rendering": "Rendering", "literal": "Gloss"}
    paragraph._p.style = styles.get(column.kind, "Note" if small else "Normal")  # by its id: by name is slow
    _run(paragraph, [Piece(_RULE)] if column.kind == "space" else column.pieces)


def _run(paragraph: Paragraph, pieces: Sequence[Piece], *, numbered: bool = True) -> None:
    for piece in pieces:
        paragraph.add_run(piece.text).bold = True if piece.numbers else None
        if piece.numbers and numbered:
            paragraph.add_run(", ".join(map(str, piece.numbers))).font.superscript = True


def _set_language(properties: Any, language: str) -> None:
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn

    element = OxmlElement("w:lang")
    element.set(qn("w:val"), language)
    properties.append(element)
