"""Cells: text that may hold anything, put on one line and had again."""

from __future__ import annotations

import re
import unicodedata

from latingloss.text.tokens import word_text

_ESCAPE = re.compile(r"\\(?:[spntr\\]|x[0-9a-f]{2}|u(?!d[89a-f])[0-9a-f]{4}|U00(?:0[0-9a-f]|10)[0-9a-f]{4})")
UNPRINTABLE = "\ufffd"
_NAMED = {"\\s": " ", "\\p": "|"}


def one_line(text: str) -> str:
    """Return a token as one line can show it: halves joined, composed, no control characters; never empty.

    >>> one_line("sancti-\\n  ficátur"), one_line("\\x00")
    ('sanctificátur', '�')
    """
    spaced = " ".join(unicodedata.normalize("NFC", word_text(text)).split())
    return "".join(UNPRINTABLE if unicodedata.category(c) in ("Cc", "Cs") else c for c in spaced) or UNPRINTABLE


def escaped(text: str, *, space: bool = False) -> str:
    """Return text for a value of MISC: composed, without line break, tab or `|`; without spaces too if asked.

    >>> escaped(" \\n", space=True), escaped("either|or")
    ('\\\\s\\\\n', 'either\\\\por')
    """
    as_it_is = text.isprintable() and UNPRINTABLE not in text and unicodedata.is_normalized("NFC", "=" + text)
    body = text.replace("\\", "\\\\") if as_it_is else text.encode("unicode_escape").decode("ascii")
    body = body.replace("|", "\\p")
    return body.replace(" ", "\\s") if space else body


def unescaped(value: str) -> str:
    """Return the text of a value that `escaped` made; escapes it does not make stay as they are.

    >>> unescaped(escaped("a|b c\\\\s\\u0304", space=True)) == "a|b c\\\\s\\u0304"
    True
    """
    return _ESCAPE.sub(lambda m: _NAMED.get(m[0]) or m[0].encode("ascii").decode("unicode_escape"), value)
