"""The options of a study sheet: what the author may choose, checked when the options are made."""

from __future__ import annotations

from dataclasses import dataclass

from latingloss.errors import OptionError

PAPERS = ("A4", "Letter")
SIZES = ("normal", "large")
TRADITIONS = ("ecclesiastical", "classical")
PARTS = ("literal", "notes", "words", "review")


@dataclass(frozen=True, kw_only=True)
class SheetOptions:
    """Choose how a study sheet is set and what is on it.

    title, introduction: the author's own words; blank lines part the introduction's paragraphs.
    paper: "A4" or "Letter". size: "normal", or "large" for children and weak eyes.
    tradition: "ecclesiastical" or "classical", of the pronunciation in the notes.
    parts: any of "literal" (each word's sense under it), "notes" (on the words picked out), "words" (the list of
    dictionary forms) and "review" (what the author should look over). Latin and rendering are always there.

    Raises OptionError for a value outside these.

    >>> SheetOptions(paper="Letter", parts=("literal",)).paper
    'Letter'
    """

    title: str = "Study sheet"
    introduction: str = ""
    paper: str = "A4"
    size: str = "normal"
    tradition: str = "ecclesiastical"
    parts: tuple[str, ...] = PARTS

    def __post_init__(self) -> None:
        for name, allowed in (("paper", PAPERS), ("size", SIZES), ("tradition", TRADITIONS)):
            if getattr(self, name) not in allowed:
                raise OptionError(f"{name} is {getattr(self, name)!r}: choose {_either(allowed)}")
        if isinstance(self.parts, str) or not set(self.parts) <= set(PARTS):
            raise OptionError(f"parts is {self.parts!r}: give a tuple of any of {_either(PARTS)}")
        for name in ("title", "introduction"):
            if not isinstance(getattr(self, name), str):
                raise OptionError(f"{name} is {getattr(self, name)!r}: give a string")
        if not self.title.strip():
            raise OptionError("title is empty: a page needs one; leave the option out for 'Study sheet'")


def _either(allowed: tuple[str, ...]) -> str:
    return ", ".join(map(repr, allowed[:-1])) + f" or {allowed[-1]!r}"
