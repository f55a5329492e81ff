"""Tables of words: CSV (RFC 4180) and TSV, one row a word, for spreadsheets and data frames.

A token without words (a mark, a number) has one row with its word cells empty.
"""

from __future__ import annotations

import csv
from io import StringIO
from typing import NamedTuple

from latingloss.document import Difficulty, Document, Token, Word
from latingloss.errors import FormatError, OptionError

_LINE_ENDS = {",": "\r\n", "\t": "\n"}


class Row(NamedTuple):
    """The columns, as text; features as in CoNLL-U, `Case=Gen|Number=Sing`; english is the linked words."""

    passage: str
    token: str
    word: str
    text: str
    start: str
    end: str
    kind: str
    form: str
    marked_form: str
    lemma: str
    upos: str
    features: str
    gloss: str
    confidence: str
    guessed: str
    difficulty: str
    emphasis: str
    english: str


def write(document: Document, *, separator: str = ",") -> str:
    """Write a document as a table with a header; `separator` is a comma (CSV) or a tab (TSV).

    Numbers count from 1, offsets from 0. Raises `OptionError` for another separator.

    >>> from latingloss import annotate
    >>> write(annotate("Stellae lucent."), separator="\\t").splitlines()[1].split("\\t")[:6]
    ['1', '1', '1', 'Stellae', '0', '7']
    """
    out = StringIO(newline="")
    writer = csv.writer(out, delimiter=_checked(separator), lineterminator=_LINE_ENDS[separator])
    writer.writerow(Row._fields)
    for p, passage in enumerate(document.passages, 1):
        for t, token in enumerate(passage.tokens, 1):
            english = " ".join(passage.rendering[k].text for k in passage.english_of(t - 1))
            for w, word in enumerate(token.words, 1):
                writer.writerow(_row((p, t, w), token, word, english=english))
            if not token.words:
                writer.writerow(_row((p, t, ""), token, None, english=english))
    return out.getvalue()


def read(text: str, *, separator: str = ",") -> list[list[Token]]:
    """Read a table that `write` wrote: the tokens of each passage that has any.

    Alternatives and the parts of difficulty are not in a table. Raises `FormatError` naming the line.

    >>> from latingloss import annotate
    >>> [[t.text for t in passage] for passage in read(write(annotate("Stellae lucent.")))]
    [['Stellae', 'lucent', '.']]
    """
    reader = csv.reader(StringIO(text.removeprefix("\ufeff"), newline=""), delimiter=_checked(separator), strict=True)
    passages: dict[str, dict[str, list[Row]]] = {}
    lines: dict[tuple[str, str], int] = {}
    try:
        for cells in reader:
            if reader.line_num == 1 or not cells:
                continue
            if len(cells) != len(Row._fields):
                raise FormatError(
                    f"table, line {reader.line_num}: {len(cells)} cells; there must be {len(Row._fields)}"
                )
            row = Row(*cells)
            passages.setdefault(row.passage, {}).setdefault(row.token, []).append(row)
            lines.setdefault((row.passage, row.token), reader.line_num)
    except csv.Error as error:
        raise FormatError(f"table, line {reader.line_num}: {error}") from error
    return [[_token(rows, lines[p, t]) for t, rows in tokens.items()] for p, tokens in passages.items()]


def _checked(separator: str) -> str:
    if separator not in _LINE_ENDS:
        raise OptionError(f"separator is {separator!r}; give ',' for CSV or '\\t' for TSV")
    return separator


def _row(numbers: tuple[int, int, int | str], token: Token, word: Word | None, *, english: str) -> tuple[str, ...]:
    own = (*map(str, numbers), token.text, str(token.start), str(token.end), token.kind)
    analysis = ("",) * 8
    if word:
        said = (word.form, word.marked_form, word.lemma, word.upos, _features(word), word.gloss)
        analysis = (*said, f"{word.confidence:.6g}", _yes(word.guessed))
    score = f"{token.difficulty.score:.6g}" if token.difficulty else ""
    return (*own, *analysis, score, _yes(token.emphasis), english)


def _features(word: Word) -> str:
    ordered = sorted(word.features.items(), key=lambda pair: pair[0].lower())
    return "|".join(f"{name}={value}" for name, value in ordered)


def _yes(value: bool) -> str:
    return "yes" if value else ""


def _token(rows: list[Row], line: int) -> Token:
    top = rows[0]
    try:
        return Token.model_validate(
            {
                "text": top.text,
                "start": int(top.start),
                "end": int(top.end),
                "kind": top.kind,
                "words": tuple(_word(row) for row in rows if row.word),
                "difficulty": Difficulty(score=float(top.difficulty), parts=()) if top.difficulty else None,
                "emphasis": top.emphasis == "yes",
            }
        )
    except ValueError as error:
        raise FormatError(f"table, line {line}: {error}") from error


def _word(row: Row) -> Word:
    features = dict(pair.split("=", 1) for pair in row.features.split("|")) if row.features else {}
    return Word(
        form=row.form, marked_form=row.marked_form, lemma=row.lemma, upos=row.upos, features=features,
        gloss=row.gloss, confidence=float(row.confidence), guessed=row.guessed == "yes",
    )  # fmt: skip
