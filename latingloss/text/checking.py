"""Checks of what a user gives as text, before any work is done on it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from latingloss.errors import InputTypeError, TextError

MOST_CHARACTERS = 5_000_000  # of one text: about 700,000 words, the whole Vulgate
_LATIN_LETTER = re.compile("[A-Za-z\u00aa\u00ba\u00c0-\u00d6\u00d8-\u00f6\u00f8-\u024f\u1e00-\u1eff\ufb00-\ufb06]")
_SURROGATE = re.compile("[\ud800-\udfff]")


def check(text: object, name: str, *, most_characters: int = MOST_CHARACTERS) -> str:
    """Return a text fit to be read, or raise; `name` says in the message which text it is.

    Raises `InputTypeError` for anything but a `str`, and `TextError` for a text that is empty or white space, has
    no Latin letter or half a character (a lone surrogate), or is longer than `most_characters`.

    >>> check("Lux orta est.", "latin")
    'Lux orta est.'
    """
    if isinstance(text, bytes | bytearray | memoryview):
        raise InputTypeError(f"{name}: got {type(text).__name__}; decode it to str first, as in data.decode('utf-8')")
    if not isinstance(text, str):
        raise InputTypeError(f"{name}: got {type(text).__name__}; a text is one str: join lines with '\\n'")
    if len(text) > most_characters:
        raise TextError(
            f"{name}: {len(text):,} characters, and one text may have {most_characters:,}; "
            "cut it into texts, or use latingloss.corpus, which reads a corpus piece by piece"
        )
    if not text or text.isspace():
        raise TextError(f"{name}: the text is {'only white space' if text else 'empty'}; give at least one word")
    check_whole(text, name)
    if not _LATIN_LETTER.search(text):
        raise TextError(f"{name}: no Latin letter in {text[:40]!r}; give a text in the Latin alphabet")
    return text


def check_whole(text: str, name: str) -> None:
    """Raise `TextError` if a text has half a character (a lone surrogate), which no file or JSON can hold.

    >>> check_whole("Lux", "latin")
    """
    if surrogate := _SURROGATE.search(text):
        raise TextError(
            f"{name}: half a character (U+{ord(surrogate[0]):04X}) at {surrogate.start()}; it was decoded wrongly: "
            "read the file again as UTF-8"
        )


def check_string(value: object, name: str) -> None:
    """Raise `InputTypeError` unless a value is a `str`.

    >>> check_string("lux", "lemma")
    """
    if not isinstance(value, str):
        raise InputTypeError(f"{name} must be str, not {type(value).__name__}")


def check_tokens(tokens: object, name: str) -> None:
    """Raise `InputTypeError` unless a value is a list, tuple or other sequence of `str` tokens.

    >>> check_tokens(["lux", "orta"], "latin_tokens")
    """
    if isinstance(tokens, str | bytes) or not isinstance(tokens, Sequence):
        raise InputTypeError(f"{name} must be a list of tokens, not {type(tokens).__name__}; split a text first")
    for j, token in enumerate(tokens):
        check_string(token, f"{name}[{j}]")
