"""The printed page: study sheets, booklets, practice pages, captions, and what to look over before printing."""

from latingloss.sheets.booklet import Booklet, Text
from latingloss.sheets.captions import sheet_vtt
from latingloss.sheets.docx import sheet_docx
from latingloss.sheets.html import sheet_html
from latingloss.sheets.markdown import sheet_markdown
from latingloss.sheets.options import SheetOptions
from latingloss.sheets.pdf import sheet_pdf
from latingloss.sheets.practice import exercises
from latingloss.sheets.review import ReviewItem, review
from latingloss.sheets.words import word_list
from latingloss.sheets.writing import write_sheet

__all__ = [
    "Booklet",
    "ReviewItem",
    "SheetOptions",
    "Text",
    "exercises",
    "review",
    "sheet_docx",
    "sheet_html",
    "sheet_markdown",
    "sheet_pdf",
    "sheet_vtt",
    "word_list",
    "write_sheet",
]
