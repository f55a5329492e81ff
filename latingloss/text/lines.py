"""Lines: a source text cut into the passages a page sets beside their renderings.

A text in lines is taken line by line, blank lines parting stanzas; a text on one line is prose and is cut into
sentences. Every character that is not white space lies in exactly one line, offsets are those of the source.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from typing import NamedTuple

from latingloss.text.tokens import HYPHENS, INVISIBLE, is_numeral

_PARTING = ("\u2029", "\f")  # paragraph separator and new page part stanzas as a blank line does
_STOP = re.compile(r"(\.\.+|…|[.?!]+)[’”»›\"')\]]*(?=\s+[«“‘\"'(\[]*(\S))")
_CLAUSE = re.compile(r"[:;][’”»›\"')\]]*(?=\s+\S)|(?<=\s)/(?=\s+\S)")
_COMMA = re.compile(r"[,:;][’”»›\"')\]]*(?=\s+\S)|(?<=\s)/(?=\s+\S)")
# abbreviations that seldom end a sentence; single letters and Roman numerals are told by their form
_ABBREVIATIONS = frozenset(
    (
        *("st", "ss", "sct", "scti", "sctae", "vv", "cf", "cap", "lib", "ps", "pss", "ver", "vers"),
        *("cn", "ti", "sp", "sex", "ap", "kal", "mr", "mrs", "dr", "fr", "sr", "rev", "messrs"),
    )
)


class Line(NamedTuple):
    """A passage of a text: where it stands, and in which stanza (from 0)."""

    start: int
    end: int
    stanza: int


def lines(text: str, *, most_words: int = 40) -> list[Line]:
    """Cut a text into passages: its lines, or, if it has only one, its sentences.

    A hyphen at the end of a line joins the next line to it. A sentence of more than `most_words` words is cut at
    colons and semicolons. Empty if the text is white space.

    >>> text = "Lucis creator optime,\\n\\nlucem dierum profer-\\nens"
    >>> [(text[a:b], stanza) for a, b, stanza in lines(text)]
    [('Lucis creator optime,', 0), ('lucem dierum profer-\\nens', 1)]
    >>> text = "Sol occidit. Quis vigilat? S. Martinus vigilat."
    >>> [text[a:b] for a, b, _ in lines(text)]
    ['Sol occidit.', 'Quis vigilat?', 'S. Martinus vigilat.']
    """
    found = _printed_lines(text)
    if len(found) != 1:
        return found
    return [part for sentence in sentences(text, found[0]) for part in _not_too_long(text, sentence, most_words)]


def _printed_lines(text: str) -> list[Line]:
    found: list[Line] = []
    at, stanza, gap, unseen = 0, 0, False, -1
    for printed in text.splitlines(keepends=True):
        body = printed.strip()
        start = at + len(printed) - len(printed.lstrip())
        end = start + len(body)
        at += len(printed)
        if not body.strip(INVISIBLE):  # blank to the eye; what it has goes with a neighbour, so that nothing is lost
            if body and found:
                found[-1] = found[-1]._replace(end=end)
            elif body and unseen < 0:
                unseen = start
            gap = True
        elif found and not gap and _goes_on(text, found[-1].end, body):
            found[-1] = found[-1]._replace(end=end)
        else:
            stanza += gap and bool(found)
            found.append(Line(start if unseen < 0 else unseen, end, stanza))
            gap, unseen = False, -1
        gap = gap or printed.endswith(_PARTING)
    return found


def _goes_on(text: str, end: int, body: str) -> bool:
    """Tell whether a line that ends at `end` breaks off within a word that the next line goes on with."""
    before = text[max(0, end - 2) : end]
    return len(before) == 2 and before[1] in HYPHENS and _spells(before[0]) and body[0].isalpha()


def _spells(character: str) -> bool:
    return character.isalpha() or unicodedata.combining(character) != 0


def sentences(text: str, line: Line) -> list[Line]:
    """Cut a line after each full stop, question or exclamation mark that ends a sentence.

    Initials, Roman numerals, verse numbers and common abbreviations do not end one; nor do `?`, `!` and an
    ellipsis before a small letter.

    >>> text = "Venit M. Tullius. Cur? Nescio."
    >>> [text[a:b] for a, b, _ in sentences(text, Line(0, len(text), 0))]
    ['Venit M. Tullius.', 'Cur?', 'Nescio.']
    """
    return list(_cut(text, line, _sentence_ends(text, line)))


def clauses(text: str, line: Line, *, commas: bool = False) -> list[Line]:
    """Cut a line into sentences, and these at colons, semicolons and slashes; at commas too if asked.

    >>> text = "Sol occidit; luna surgit, stellae lucent."
    >>> [text[a:b] for a, b, _ in clauses(text, Line(0, len(text), 0), commas=True)]
    ['Sol occidit;', 'luna surgit,', 'stellae lucent.']
    """
    pattern = _COMMA if commas else _CLAUSE
    return [
        part
        for sentence in sentences(text, line)
        for part in _cut(text, sentence, (m.end() for m in pattern.finditer(text, sentence.start, sentence.end)))
    ]


def _cut(text: str, line: Line, ends: Iterator[int]) -> Iterator[Line]:
    start = line.start
    for end in ends:
        if start < end < line.end:
            yield Line(start, end, line.stanza)
            start = end
            while text[start].isspace():
                start += 1
    yield Line(start, line.end, line.stanza)


def _sentence_ends(text: str, line: Line) -> Iterator[int]:
    start = line.start
    for match in _STOP.finditer(text, line.start, line.end):
        stop = match[1] == "."
        if not (_abbreviated(text, start, match.start()) if stop else match[2].islower()):
            start = match.end()
            yield start


def _abbreviated(text: str, start: int, stop: int) -> bool:
    """Tell whether the word before the full stop at `stop`, in a sentence from `start`, is an abbreviation."""
    near = text[max(start, stop - 20) : stop].split()
    if not near:
        return True
    word = near[-1].lstrip("([«“‘\"'")
    if word.isdigit():
        return text[start:stop].strip() == word  # a verse number
    letter = word.isalpha() and len(word) == 1
    return letter or word[-1:] in "℣℟/" or word.lower() in _ABBREVIATIONS or (word.isupper() and is_numeral(word))


def _not_too_long(text: str, sentence: Line, most_words: int) -> Iterator[Line]:
    """Yield a sentence whole, or its clauses joined as long as they have at most `most_words` words together."""
    if len(text[sentence.start : sentence.end].split()) <= most_words:
        yield sentence
        return
    held, words = None, 0
    for clause in _cut(text, sentence, (m.end() for m in _CLAUSE.finditer(text, sentence.start, sentence.end))):
        count = len(text[clause.start : clause.end].split())
        if held and words + count <= most_words:
            held, words = held._replace(end=clause.end), words + count
        else:
            if held:
                yield held
            held, words = clause, count
    if held:
        yield held
