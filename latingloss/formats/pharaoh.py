"""Pharaoh links: `0-0 1-2`, Latin-English, a line a passage, numbers from 0, as word aligners read and write them.

Koehn, Pharaoh: a beam search decoder (AMTA 2004) and Moses made the format common; there is no written standard.
Confidences are not in it.
"""

from __future__ import annotations

import re

from latingloss.document import Document, Link
from latingloss.errors import FormatError
from latingloss.text.checking import check_string

_PAIR = re.compile(r"([0-9]{1,9})-([0-9]{1,9})")


def write(document: Document) -> str:
    """Write the links of a document, a line a passage, empty for one without links.

    >>> from latingloss import annotate
    >>> write(annotate("Stellae lucent.", "The stars shine."))
    '0-0 0-1 1-2\\n'
    """
    lines = (" ".join(f"{a}-{b}" for a, b in sorted((k.latin, k.english) for k in p.links)) for p in document.passages)
    return "".join(f"{line}\n" for line in lines)


def read(text: str) -> list[tuple[Link, ...]]:
    """Read the links of each line; a pair given twice is read once.

    Raises `FormatError` naming the line for anything but pairs of numbers, `InputTypeError` unless given a `str`.

    >>> read("0-1 1-0\\n\\n")
    [(Link(latin=0, english=1, confidence=1.0), Link(latin=1, english=0, confidence=1.0)), ()]
    """
    check_string(text, "text")
    lines = text.removeprefix("\ufeff").split("\n")
    return [_links(line, number) for number, line in enumerate(lines[:-1] if lines[-1] == "" else lines, 1)]


def _links(line: str, number: int) -> tuple[Link, ...]:
    pairs = []
    for piece in line.split():
        match = _PAIR.fullmatch(piece)
        if match is None:
            raise FormatError(f"Pharaoh links, line {number}: {piece!r}; give pairs of numbers, as in 0-1 1-0")
        pairs.append((int(match[1]), int(match[2])))
    return tuple(Link(latin=latin, english=english) for latin, english in dict.fromkeys(pairs))
