"""Reads CoNLL-U, ours or any treebank's; `latingloss.formats.conllu` says what MISC may carry."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from latingloss.document import Difficulty, Document, Link, Passage, RenderingToken, Token, Word
from latingloss.errors import FormatError
from latingloss.formats.cells import unescaped
from latingloss.text.tokens import Kind, tokenize_english, word_text

_COLUMNS = ("ID", "FORM", "LEMMA", "UPOS", "XPOS", "FEATS", "HEAD", "DEPREL", "DEPS", "MISC")
_ID = re.compile(r"([1-9][0-9]{0,8})(?:-([1-9][0-9]{0,8}))?|[0-9]+\.[1-9][0-9]*")
_NUMBER = re.compile("[0-9]{1,9}")
_COMMENT = re.compile(r"#\s*([^=]*?)\s*(?:= ?(.*))?")


class _Row(NamedTuple):
    line: int
    first: int
    last: int
    form: str
    lemma: str
    upos: str
    features: dict[str, str]
    misc: dict[str, str]

    def number(self, name: str, value: str) -> float:
        """Return a value of MISC that must be a number in 0..1."""
        try:
            number = float(value)
        except ValueError:
            number = -1.0
        if not 0 <= number <= 1:
            raise FormatError(f"CoNLL-U, line {self.line}, column MISC: {name}={value}; give a number from 0 to 1")
        return number


class _Sentence(NamedTuple):
    comments: dict[str, str]
    rows: list[_Row]


def read(text: str) -> Document:
    """Read a CoNLL-U file as a document, a passage a sentence; parses and empty nodes are left aside.

    The source is made of the forms and the white space that MISC tells. Raises `FormatError` naming line and
    column.

    >>> rows = "1 Ecce ecce INTJ _ _ 0 root _ SpaceAfter=No", "2 ! ! PUNCT _ _ 1 punct _ _"
    >>> document = read("\\n".join(rows).replace(" ", "\\t"))
    >>> [(t.text, t.start, t.end) for t in document.passages[0].tokens]
    [('Ecce', 0, 4), ('!', 4, 5)]
    """
    source, english = "", ""
    passages: list[Passage] = []
    stanza = 0
    for sentence in _sentences(text):
        stanza += "newpar" in sentence.comments and bool(passages)
        tokens: list[Token] = []
        links: list[Link] = []
        rendering = _rendering(sentence, len(english) + bool(english))
        if rendering:
            english += ("\n" if english else "") + sentence.comments["text_en"]
        for words in _grouped(sentence.rows):
            top = words[0]
            source += unescaped(top.misc.get("SpacesBefore", ""))
            token = _token(words, len(source))
            if "tokens_en" in sentence.comments and "Align" in top.misc:
                links += _links(top, len(tokens), len(rendering))
            source += token.text + _gap(top)
            tokens.append(token)
        start, end = tokens[0].start, tokens[-1].end
        passages.append(
            Passage(
                start=start, end=end, stanza=stanza, tokens=tuple(tokens), rendering=rendering, links=tuple(links)
            )
        )  # fmt: skip
    return Document(source=source, english=english or None, engine="CoNLL-U", passages=tuple(passages))


def _sentences(text: str) -> Iterator[_Sentence]:
    comments: dict[str, str] = {}
    rows: list[_Row] = []
    for number, line in enumerate(text.removeprefix("\ufeff").split("\n"), 1):
        line = line.removesuffix("\r")
        if line.startswith("#"):
            if match := _COMMENT.fullmatch(line):
                comments[match[1]] = match[2] or ""
        elif line:
            if row := _row(line, number):
                rows.append(row)
        else:
            if rows:
                yield _Sentence(comments, rows)
            comments, rows = {}, []
    if rows:
        yield _Sentence(comments, rows)


def _row(line: str, number: int) -> _Row | None:
    """Return a line as a row, None for an empty node."""
    cells = line.split("\t")
    if len(cells) != len(_COLUMNS):
        raise FormatError(f"CoNLL-U, line {number}: {len(cells)} columns, parted by tabs; there must be 10")
    match = _ID.fullmatch(cells[0])
    if not match:
        raise FormatError(f"CoNLL-U, line {number}, column ID: {cells[0]!r:.40}; give a number (3) or a range (3-4)")
    if not match[1]:
        return None
    if not cells[1]:
        raise FormatError(f"CoNLL-U, line {number}, column FORM: empty; give the word")
    pairs = [] if cells[5] == "_" else [feature.partition("=") for feature in cells[5].split("|")]
    if not all(name and value for name, _, value in pairs):
        raise FormatError(f"CoNLL-U, line {number}, column FEATS: {cells[5]!r}; give Name=Value, parted by |")
    misc = dict(pair.split("=", 1) for pair in cells[9].split("|") if "=" in pair)
    features = {name: value for name, _, value in pairs}
    return _Row(number, int(match[1]), int(match[2] or match[1]), cells[1], cells[2], cells[3], features, misc)


def _grouped(rows: list[_Row]) -> Iterator[list[_Row]]:
    """Yield for each token its rows: one word, or a range followed by its words."""
    expected, at = 1, 0
    while at < len(rows):
        row = rows[at]
        ranged = row.last > row.first
        size = 1 + row.last - row.first
        words = rows[at + 1 : at + 1 + size] if ranged else [row]
        numbers = [w.first for w in words if w.first == w.last]
        if len(numbers) != size or numbers != list(range(expected, expected + size)):  # a range may claim a billion
            raise FormatError(f"CoNLL-U, line {row.line}, column ID: word {expected} expected; number words from 1")
        yield [row, *words] if ranged else words
        at += len(words) + ranged
        expected = row.last + 1


def _token(rows: list[_Row], start: int) -> Token:
    top = rows[0]
    text = unescaped(top.misc["Source"]) if "Source" in top.misc else top.form
    kind = "word" if len(rows) > 1 else _kind(top)
    bare = top.lemma == top.form and top.features.keys() == {"NumForm"} and "Confidence" not in top.misc
    wordless = kind in ("punctuation", "sign") or (kind == "number" and bare)
    words = () if wordless else tuple(_word(row) for row in rows[len(rows) > 1 :])
    score = top.misc.get("Difficulty")
    difficulty = Difficulty(score=top.number("Difficulty", score), parts=()) if score else None
    return Token(text=text, start=start, end=start + len(text), kind=kind, words=words, difficulty=difficulty)


def _kind(row: _Row) -> Kind:
    if row.upos == "NUM" and (row.features.get("NumForm") in ("Roman", "Digit") or not row.form.isalpha()):
        return "number"
    return "punctuation" if row.upos == "PUNCT" else "sign" if row.upos == "SYM" else "word"


def _word(row: _Row) -> Word:
    form = word_text(unescaped(row.misc["Source"])) if "Source" in row.misc else row.form
    identified = row.misc.get("LId", "")
    return Word(
        form=form,
        marked_form=unescaped(row.misc.get("MarkedForm", form)),
        lemma=identified if identified.partition("#")[0] == row.lemma else row.lemma,
        upos="X" if row.upos == "_" else row.upos,
        features=row.features,
        gloss=unescaped(row.misc.get("Gloss", "")),
        confidence=row.number("Confidence", row.misc.get("Confidence", "1")),
        guessed=row.misc.get("Guessed") == "Yes",
        note=unescaped(row.misc.get("Note", "")),
        corrected=row.misc.get("Corrected") == "Yes",
    )


def _gap(row: _Row) -> str:
    if "SpacesAfter" in row.misc:
        return unescaped(row.misc["SpacesAfter"])
    return "" if row.misc.get("SpaceAfter") == "No" else " "


def _rendering(sentence: _Sentence, offset: int) -> tuple[RenderingToken, ...]:
    text = sentence.comments.get("text_en", "")
    if "tokens_en" not in sentence.comments:
        spans = [(s.start, s.end) for s in tokenize_english(text)]
    else:
        try:
            spans = [(int(a), int(b)) for a, _, b in (s.partition(":") for s in sentence.comments["tokens_en"].split())]
        except ValueError:
            spans = [(-1, -1)]
        if any(not 0 <= a < b <= len(text) or text[a:b].isspace() for a, b in spans):
            raise FormatError(
                f"CoNLL-U, before line {sentence.rows[0].line}: tokens_en does not fit text_en; give start:end"
            )
    return tuple(
        RenderingToken(text=text[a:b], start=a + offset, end=b + offset, kind=tokenize_english(text[a:b])[0].kind)
        for a, b in spans
    )


def _links(row: _Row, latin: int, english: int) -> Iterator[Link]:
    for item in row.misc["Align"].split(","):
        number, _, confidence = item.partition(":")
        if not _NUMBER.fullmatch(number) or not 1 <= int(number) <= english:
            raise FormatError(
                f"CoNLL-U, line {row.line}, column MISC: Align={item}; give numbers of English tokens, 1 to {english}"
            )
        yield Link(latin=latin, english=int(number) - 1, confidence=row.number("Align", confidence or "1"))
