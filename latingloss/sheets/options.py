"""The options of a study sheet: what the author may choose, checked when the options are made."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import inf

from latingloss.errors import OptionError
from latingloss.sheets.practice import KINDS

COLUMNS = ("latin", "literal", "grammar", "pronunciation", "rendering", "space")
ARRANGEMENTS = ("interlinear", "lines")
PAPERS = ("A4", "Letter", "A5")
SIZES = ("normal", "children", "large")
TRADITIONS = ("ecclesiastical", "classical")
ORDERS = ("alphabet", "text")
PARTS = ("notes", "words", "endings", "review")
EXERCISES = tuple(KINDS)


@dataclass(frozen=True, kw_only=True)
class SheetOptions:
    """Choose how a study sheet is set and what is on it.

    columns: what is shown of every line, in this order: "latin", "literal" (what each word says in its own place),
    "grammar", "pronunciation", "rendering" and "space" (ruled, for the learner's own notes).
    arrangement: "interlinear", each word with what is said of it under it, or "lines", the columns side by side.
    paper: "A4", "Letter" or "A5", half of A4 for a folded booklet. size: of the print, "normal", "children" (14
    points) or "large" (18 points, for weak eyes).
    tradition: "ecclesiastical" or "classical", of the pronunciation.
    parts: any of "notes" (on the words picked out), "words" (the list of dictionary forms), "endings" (the key to
    the endings that occur) and "review" (what the author should look over before printing).
    word_order: of the word list, "alphabet", or "text" for the order of first appearance.
    exercises: practice pages with answers, any of "match" (words and meanings), "cloze" (gaps at three levels),
    "order" (shuffled lines), "endings" (to be named) and "recitation" (fading round by round), in this order.
    variant: any whole number; another one chooses other words and lines for the exercises.
    length: of a recording, seconds, for captions. marks: the second at which each line of it begins, for captions.

    Raises OptionError for a value outside these.

    >>> SheetOptions(paper="Letter", columns=("latin", "rendering"), arrangement="lines").paper
    'Letter'
    """

    columns: tuple[str, ...] = ("latin", "literal", "rendering")
    arrangement: str = "interlinear"
    paper: str = "A4"
    size: str = "normal"
    tradition: str = "ecclesiastical"
    parts: tuple[str, ...] = PARTS
    word_order: str = "alphabet"
    exercises: tuple[str, ...] = ()
    variant: int = 1
    length: float | None = None
    marks: tuple[float, ...] = ()

    def __post_init__(self) -> None:
        choices = {
            "arrangement": ARRANGEMENTS, "paper": PAPERS, "size": SIZES, "tradition": TRADITIONS, "word_order": ORDERS,
        }  # fmt: skip
        for name, allowed in choices.items():
            if getattr(self, name) not in allowed:
                raise OptionError(f"{name} is {getattr(self, name)!r}: choose {_either(allowed)}")
        for name, allowed in (("columns", COLUMNS), ("parts", PARTS), ("exercises", EXERCISES)):
            given = getattr(self, name)
            if isinstance(given, str) or not set(given) <= set(allowed) or len(set(given)) < len(given):
                raise OptionError(f"{name} is {given!r}: give a tuple of any of {_either(allowed)}, each once")
        if not self.columns:
            raise OptionError(f"columns is empty: name at least one of {_either(COLUMNS)}")
        if isinstance(self.variant, bool) or not isinstance(self.variant, int):
            raise OptionError(f"variant is {self.variant!r}: give a whole number")
        if self.length is not None and not (isinstance(self.length, int | float) and 0 < self.length < inf):
            raise OptionError(f"length is {self.length!r}: give the seconds of the recording, more than 0")
        if any(a >= b for a, b in pairwise((*self.marks, inf))) or min(self.marks, default=0) < 0:
            raise OptionError(f"marks is {self.marks!r}: give seconds from 0 on, each later than the one before")


def _either(allowed: tuple[str, ...]) -> str:
    return ", ".join(map(repr, allowed[:-1])) + f" or {allowed[-1]!r}"
