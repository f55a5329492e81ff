"""The printed page: study sheets, and the list of what to look over before printing them."""

from latingloss.sheets.options import SheetOptions
from latingloss.sheets.page import sheet_html
from latingloss.sheets.review import ReviewItem, review

__all__ = ["ReviewItem", "SheetOptions", "review", "sheet_html"]
