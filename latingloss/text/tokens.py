"""Tokens: a text cut into words, numbers, punctuation and signs, each knowing where it stands.

Nothing but white space is ever left out, and a token is always the slice of the source at its offsets: what is
odd about the print (combining accents, soft hyphens, a word broken over two lines) stays in the token, and
`word_text` gives the word without it.
"""

from __future__ import annotations

import re
import unicodedata
from bisect import bisect_right
from functools import cached_property, lru_cache
from typing import Literal, NamedTuple

Kind = Literal["word", "number", "punctuation", "sign"]

HYPHENS = "-‐\u00ad"
_WITHIN = "\u00ad\u200c\u200d\u2060\ufeff"  # a word may have: soft hyphen, joiners, byte-order mark
INVISIBLE = f"{_WITHIN}\u200b"  # the zero-width space parts words (Unicode UAX #14, class ZW)
_MARK = "[\u0300-\u036f\u0483-\u0489\u1ab0-\u1aff\u1dc0-\u1dff\u20d0-\u20ff\ufe20-\ufe2f]"  # combining
# superscripts, fractions, one-character Roman and circled numerals, which Python's \w counts as letters
_NUMERAL = (
    "\u00b2\u00b3\u00b9\u00bc-\u00be\u2070-\u2079\u2080-\u2089\u2150-\u218b\u2460-\u249b\u24ea-\u24ff\u2776-\u2793"
)
_LETTER = rf"[^\W\d_{_NUMERAL}]"
_BREAK = rf"[{HYPHENS}][ \t\u00a0]*(?:\r\n|[\n\r\x0b\x85\u2028])[ \t\u00a0]*"  # hyphen at the end of a line
_HALF = rf"{_LETTER}+(?:{_MARK}+{_LETTER}*|[{_WITHIN}'’]+{_LETTER}+)*"
_WORD = rf"{_HALF}(?:{_BREAK}{_HALF})*"
_LATIN = re.compile(
    rf"(?P<sign>[℣℟]|[VR][/\u0337\u0338](?!{_LETTER}))"
    rf"|(?P<roman>[IVXLCDM]+(?!{_LETTER}|{_MARK}|[{_WITHIN}'’]+{_LETTER}|{_BREAK}{_LETTER}))"
    rf"|(?P<word>{_WORD})"
    rf"|(?P<number>[\d{_NUMERAL}]+)"
    rf"|(?P<punctuation>\.\.+|--+)"
    rf"|\S{_MARK}*"
)
_ENGLISH = re.compile(
    rf"(?P<word>[^\W\d_]+(?:{_MARK}+[^\W\d_]*)*(?:['’][^\W\d_]+(?:{_MARK}+[^\W\d_]*)*)?)|(?P<number>\d+)|\S"
)

_NUMERAL_VALUE = re.compile(r"M*(?:CM|CD|D?C{0,3})(?:XC|XL|L?X{0,3})(?:IX|IV|V?I{0,4})")
_ALSO_WORDS = frozenset(("I", "II", "VI", "DI", "DII", "MI", "CI", "LI"))  # what a line in capitals may mean by them
_SMALL_NUMERAL = re.compile(r"[ivxlcdm]+")
_VERSICLE = re.compile(r"(?:^[ \t]*|(?<=[.!?:;,*†] ))([VR])\.(?=[ \t]+\S)", re.MULTILINE)
_VERSICLE_LETTERS = frozenset("VR")
_INITIAL_NEXT = re.compile(r"\.\s*[^\W\d_]")
_ORDINARY_SIGNS = frozenset("*†‡&#@%/\\+")  # punctuation to Unicode, signs to a reader of psalms or of sums
_LETTERS = re.compile(rf"{_LETTER}+")


class Span(NamedTuple):
    """A token: what is printed, and where; `start` and `end` count code points, the end excluded."""

    text: str
    start: int
    end: int
    kind: Kind


def tokenize(text: str, *, offset: int = 0) -> list[Span]:
    """Cut a Latin text into tokens; `offset` is added to every start and end.

    A word keeps its accents, its apostrophes between letters, and a hyphen with line break inside it. Roman
    numerals in capitals are numbers, unless the line is all in capitals and they may be words (VI, DI, MI); a
    lone capital or, at the start of a line, a numeral in small letters is one only before a full stop. V. and R.
    before versicle and response are signs if the text has both; so are * † ‡ of psalm pointing (common practice,
    no source), symbols and control characters. Give the whole text: its lines explain each other.

    >>> [(t.text, t.kind) for t in tokenize("℣ Deus XII, glória*")]
    [('℣', 'sign'), ('Deus', 'word'), ('XII', 'number'), (',', 'punctuation'), ('glória', 'word'), ('*', 'sign')]
    """
    return Cutter(text).tokens(offset=offset)


class Cutter:
    """Cuts a text into tokens, or a part of it with regard to the whole."""

    def __init__(self, text: str) -> None:
        self._text = text

    def tokens(self, start: int = 0, end: int | None = None, *, offset: int = 0) -> list[Span]:
        """Return the tokens of the text from `start` to `end`, which must not part a token."""
        text, spans = self._text, []
        for match in _LATIN.finditer(text, start, len(text) if end is None else end):
            token, here, behind = match[0], match.start(), match.end()
            kind: str | None = match.lastgroup
            if kind == "roman":
                numeral = _is_numeral(text, token, here, capitals=self._in_capitals(here))
                kind = "number" if numeral else "word"
            elif kind is None:
                kind = _mark_kind(token[0])
            elif kind == "word" and text[behind : behind + 1] == "." and _SMALL_NUMERAL.fullmatch(token):
                kind = "number" if _is_numeral(text, token.upper(), here) and _opens_line(text, here) else "word"
            if token in _VERSICLE_LETTERS and here in self._versicles:
                kind = "sign"
            spans.append(Span(token, here + offset, behind + offset, kind))  # type: ignore[arg-type]
        return spans

    @cached_property
    def _versicles(self) -> frozenset[int]:
        return _versicles(self._text)

    @cached_property
    def _lines_in_capitals(self) -> list[range]:
        return _lines_in_capitals(self._text)

    def _in_capitals(self, place: int) -> bool:
        at = bisect_right(self._lines_in_capitals, place, key=lambda line: line.start)
        return at > 0 and place in self._lines_in_capitals[at - 1]


def stands_alone(chunk: str) -> bool:
    """Tell whether what stands between white space is cut into the same tokens whatever stands around it.

    >>> stands_alone("laudate,"), stands_alone("XII"), stands_alone("glo-")
    (True, False, False)
    """
    if chunk[-1] in HYPHENS:
        return False
    for match in _LATIN.finditer(chunk):
        stop = chunk[match.end() : match.end() + 1] == "."
        if match.lastgroup == "roman" or (
            stop and (match[0] in _VERSICLE_LETTERS or _SMALL_NUMERAL.fullmatch(match[0]))
        ):
            return False
    return True


def tokenize_english(text: str, *, offset: int = 0) -> list[Span]:
    """Cut an English text into tokens: words with one apostrophe (`o'er`, `God’s`), digits, single marks.

    >>> [t.text for t in tokenize_english("O'er God’s 3 hills.")]
    ["O'er", 'God’s', '3', 'hills', '.']
    """
    return [
        Span(m[0], m.start() + offset, m.end() + offset, m.lastgroup or _mark_kind(m[0]))  # type: ignore[arg-type]
        for m in _ENGLISH.finditer(text)
    ]


def word_text(text: str) -> str:
    """Return a word token as one reads it: halves joined, soft hyphens and zero-width characters gone.

    >>> word_text("sancti-\\n  ficátur"), word_text("glo\\u00adria")
    ('sanctificátur', 'gloria')
    """
    return text if text.isalpha() else _UNREAD.sub("", text)


_UNREAD = re.compile(rf"{_BREAK}|[{INVISIBLE}]")


def is_numeral(letters: str) -> bool:
    """Tell whether capitals are a well-formed Roman numeral (IIII for IV allowed).

    >>> is_numeral("MCMXIV"), is_numeral("DIC")
    (True, False)
    """
    return bool(letters) and _NUMERAL_VALUE.fullmatch(letters) is not None


def _is_numeral(text: str, letters: str, start: int, *, capitals: bool = False) -> bool:
    """Tell whether letters at `start` are meant as a numeral; `capitals`: the line is words in capitals."""
    if not is_numeral(letters):
        return False
    if len(letters) > 1:
        return not capitals or letters not in _ALSO_WORDS
    end = start + 1
    if capitals or text[end : end + 1] != ".":
        return False
    if letters in "IVX":
        return True
    after = _INITIAL_NEXT.match(text, end)  # M. Tullius, D. Brutus, L. are names, not 1,000, 500, 50
    return after is None or not after[0][-1].isupper()


def _lines_in_capitals(text: str) -> list[range]:
    """Return where lines are that have words, numerals aside, and these all in capitals."""
    found, at = [], 0
    for line in text.splitlines(keepends=True):
        if line.isupper() and any(len(w) > 1 and not is_numeral(w) for w in _LETTERS.findall(line)):
            found.append(range(at, at + len(line)))
        at += len(line)
    return found


def _opens_line(text: str, start: int) -> bool:
    while start and text[start - 1] in " \t\u00a0":
        start -= 1
    return start == 0 or text[start - 1] in "\n\r\u2028"


def _versicles(text: str) -> frozenset[int]:
    """Return where V. and R. stand for versicle and response: nowhere unless the text has both."""
    found = {match.start(1): match[1] for match in _VERSICLE.finditer(text)}
    letters = set(found.values())
    if len(letters) == 2 or ("V" in letters and "℟" in text) or ("R" in letters and "℣" in text):
        return frozenset(found)
    return frozenset()


@lru_cache(maxsize=4096)
def _mark_kind(character: str) -> Kind:
    if character in _ORDINARY_SIGNS or not unicodedata.category(character).startswith("P"):
        return "sign"
    return "punctuation"
