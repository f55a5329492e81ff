"""Captions for a recorded reading, as WebVTT (W3C, WebVTT: The Web Video Text Tracks Format).

Every line of Latin is a cue with its English under it, or several if it is long. It begins where the author has
marked it; without marks the length of the recording is shared out by syllables, as a steady voice does it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import accumulate, pairwise
from typing import NamedTuple

from latingloss.document import Document, Passage
from latingloss.errors import FormatError, OptionError
from latingloss.sheets.booklet import Booklet, as_booklet
from latingloss.sheets.cues import Cue, cues, on_screen
from latingloss.sheets.layout import UNPRINTED
from latingloss.sheets.options import SheetOptions
from latingloss.sheets.words import Place

_PACE = 3.0  # syllables a second of a slow reading; common practice, no source
_SHORTEST = 0.01  # seconds: no syllable is shorter, and a cue must not end as it begins
_TIME = re.compile(r"(?:(?:(\d+):)?([0-5]?\d):)?(\d+(?:\.\d+)?)")
_ESCAPES = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;"})  # WebVTT: the cue text spans


def sheet_vtt(given: Booklet | Document, options: SheetOptions | None = None) -> str:
    """Return captions for a reading of a booklet, or of a document, from start to end.

    Under the Latin stands the rendering; if there is none, or the options' columns leave it out, the word-for-word
    line. Times are the options' `marks`, one for each line of Latin, and one more if the last line is to end before
    the recording does; or their `length` shared out by syllables; or three syllables a second. Raises OptionError if
    there are more or fewer marks, they go beyond the length, or a line has no time to be said in.

    >>> from latingloss import annotate
    >>> document = annotate("Vesper venit.", "Evening comes.")
    >>> print(sheet_vtt(document, SheetOptions(length=2.5)))
    WEBVTT
    <BLANKLINE>
    1
    00:00:00.000 --> 00:00:02.500
    <lang la>Vesper venit.</lang>
    Evening comes.
    <BLANKLINE>
    """
    booklet, options = as_booklet(given), options or SheetOptions()
    lines = [
        _Line(Place(number, line, len(booklet.texts) > 1), tuple(_cues(text.document, passage, options)))
        for number, text in enumerate(booklet.texts, 1)
        for line, passage in enumerate(text.document.passages, 1)
    ]
    times = pairwise(_times(lines, options))
    made = (cue for line, (start, end) in zip(lines, times, strict=True) for cue in _set(line, start, end))
    return "\n\n".join(("WEBVTT", *made)) + "\n"


class _Line(NamedTuple):
    """A line of a text with its cues."""

    place: Place
    cues: tuple[Cue, ...]

    @property
    def syllables(self) -> int:
        return sum(cue.syllables for cue in self.cues)


def seconds(text: str) -> float:
    """Return a time as seconds: `1:02:03`, `2:03`, `123` or `2:03.5`.

    Raises FormatError for anything else.

    >>> seconds("1:30"), seconds("4.25")
    (90.0, 4.25)
    """
    if not (found := _TIME.fullmatch(text.strip())) or (found[2] and float(found[3]) >= 60):
        raise FormatError(f"{text!r} is no time: write minutes and seconds, 1:30, or seconds, 90.5")
    return int(found[1] or 0) * 3600 + int(found[2] or 0) * 60 + float(found[3])


def read_marks(content: str, *, name: str) -> tuple[float, ...]:
    """Read an author's marks: a text with a time at the head of each line, then anything, such as the words said.

    Empty lines and those that begin with # are for the author alone. Raises FormatError with the line for one that
    does not begin with a time.

    >>> read_marks("# first take\\n0:02 Vesper venit\\n0:05.5 et stellae\\n", name="marks.txt")
    (2.0, 5.5)
    """
    marks = []
    for number, line in enumerate(content.splitlines(), 1):
        if line.strip() and not line.lstrip().startswith("#"):
            try:
                marks.append(seconds(line.split()[0]))
            except FormatError as error:
                raise FormatError(f"{name}, line {number}: {error}") from None
    return tuple(marks)


def _cues(document: Document, passage: Passage, options: SheetOptions) -> Iterator[Cue]:
    return cues(document, passage, rendering="rendering" in options.columns)


def _times(lines: Sequence[_Line], options: SheetOptions) -> list[float]:
    """Return when each line begins, and when the last one ends."""
    spoken = [line.syllables for line in lines]
    marks, length = options.marks, options.length
    if not marks:
        pace = length / sum(spoken) if length else 1 / _PACE
        return [syllables * pace for syllables in accumulate(spoken, initial=0)]
    if len(marks) not in (len(lines), len(lines) + 1):
        raise OptionError(f"{len(marks)} marks for {len(lines)} lines of Latin: mark the beginning of each")
    if length is not None and marks[-1] >= length:
        raise OptionError(f"the last mark, {marks[-1]} s, is not within the length, {length} s")
    if len(marks) > len(lines):
        return list(marks)
    return [*marks, length if length is not None else marks[-1] + spoken[-1] / _PACE]


def _set(line: _Line, start: float, end: float) -> Iterator[str]:
    """Yield a line's cues as WebVTT; they share its time by their syllables."""
    pace = (end - start) / line.syllables
    if pace < _SHORTEST:
        raise OptionError(
            f"line {line.place.label} has {end - start:.3f} s for {line.syllables} syllables: give its mark, or the "
            "length of the recording, in seconds"
        )
    times = (start + syllables * pace for syllables in accumulate((cue.syllables for cue in line.cues), initial=0))
    for number, (cue, (begins, ends)) in enumerate(zip(line.cues, pairwise(times), strict=True), 1):
        name = f"{line.place.label}.{number}" if len(line.cues) > 1 else line.place.label
        latin, under = "\n".join(_escaped(cue.latin)), "\n".join(_escaped(cue.under))
        yield f"{name}\n{_stamp(begins)} --> {_stamp(ends)}\n<lang la>{latin}</lang>\n{under}".rstrip("\n")


def _escaped(text: str) -> list[str]:
    return [line.translate(_ESCAPES) for line in on_screen(text.translate(UNPRINTED))]


def _stamp(time: float) -> str:
    thousandths = round(time * 1000)
    minutes, rest = divmod(thousandths, 60_000)
    return f"{minutes // 60:02}:{minutes % 60:02}:{rest // 1000:02}.{rest % 1000:03}"
