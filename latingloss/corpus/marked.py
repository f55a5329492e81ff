"""CoNLL-U and TEI P5: texts whose passages and tokens are marked, and kept as they are.

Both are read by `latingloss.formats`; what the files say of lemmas and features is left aside.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from latingloss.corpus import pieces
from latingloss.corpus.files import TextFile
from latingloss.corpus.pieces import Piece, given_piece
from latingloss.errors import FormatError
from latingloss.formats import conllu_reader, tei_reader
from latingloss.tables import collector_paused
from latingloss.text.checking import MOST_CHARACTERS

_LINE = re.compile(r"line (\d+)")


def read_conllu(file: TextFile, work: str) -> Iterator[Piece]:
    """Yield the pieces of a CoNLL-U file, each some sentences; offsets are in the text that its forms make."""
    before = 0
    for text, line in _sentences(file):
        try:
            with collector_paused():
                document = conllu_reader.read(text)
        except FormatError as error:
            raise FormatError(f"{file.path}: {_moved(str(error), line)}") from error
        if document.passages:
            yield given_piece(work, document.source, document.passages, before=before)
            before += len(document.source)


def _moved(message: str, lines: int) -> str:
    """Return a message about a part of a file with its line counted from the file's head."""
    return _LINE.sub(lambda match: f"line {int(match[1]) + lines}", message, count=1)


def _sentences(file: TextFile) -> Iterator[tuple[str, int]]:
    """Yield whole sentences as text, some at a time, with the number of lines before them."""
    held: list[str] = []
    length = before = 0
    for line in file:
        held.append(line)
        length += len(line)
        if length >= pieces.PIECE_CHARACTERS and line.isspace():
            yield "".join(held), before
            held, length, before = [], 0, file.line
    if held:
        yield "".join(held), before


def read_tei(file: TextFile, work: str) -> Iterator[Piece]:
    """Yield the pieces of a TEI file, each some of its lines or paragraphs.

    The whole file is held in memory; one of more than `MOST_CHARACTERS` is refused.
    """
    held: list[str] = []
    length = 0
    for line in file:
        held.append(line)
        length += len(line)
        if length > MOST_CHARACTERS:
            raise file.error(f"more than {MOST_CHARACTERS:,} characters of TEI; cut it into files")
    try:
        with collector_paused():
            document = tei_reader.read("".join(held))
    except FormatError as error:
        raise FormatError(f"{file.path}: {error}") from error
    first, passages = 0, document.passages
    for last, passage in enumerate(passages, 1):
        if last == len(passages) or passage.end - passages[first].start >= pieces.PIECE_CHARACTERS:
            yield given_piece(work, document.source, passages[first:last])
            first = last
