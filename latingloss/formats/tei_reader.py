"""Reads TEI P5, ours or others': lines or paragraphs whose words are in `w`.

A file with a document type declaration is refused: entities could then be expanded without end, or fetched.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from latingloss.document import Document, Link, Passage, RenderingToken, Token, Word
from latingloss.errors import FormatError
from latingloss.text.tokens import Kind, tokenize, tokenize_english, word_text

_TEI = "{http://www.tei-c.org/ns/1.0}"
_XML = "{http://www.w3.org/XML/1998/namespace}"
_LINES = ("l", "p", "ab")
_DEEPEST = 100  # elements in each other
_KINDS: dict[str, Kind] = {"w": "word", "num": "number", "pc": "punctuation"}


class _Place(NamedTuple):
    passage: int
    token: int


class _Reading:
    """A walk through the text in reading order that keeps the source as it goes."""

    def __init__(self) -> None:
        self.source: list[str] = []
        self.at = 0
        self.places: dict[str, _Place] = {}
        self.passages: list[tuple[str, int, list[Token]]] = []  # xml:id, stanza, tokens

    def add(self, text: str | None) -> None:
        """Take over text that stands between tokens."""
        if text:
            self.source.append(text)
            self.at += len(text)

    def walk(self, element: Element, stanza: int) -> None:
        """Read what is in an element that may hold lines."""
        self.add(element.text)
        for child in element:
            name = _name(child)
            if name == "lg" and len(self.passages) and self.passages[-1][2]:
                stanza = self.passages[-1][1] + 1
            if name in _LINES:
                self.passages.append((child.get(f"{_XML}id", ""), stanza, []))
                self.line(child)
            else:
                self.walk(child, stanza)
            self.add(child.tail)

    def line(self, element: Element) -> None:
        """Read what is in a line: tokens, and text in no token, which is cut but has no words."""
        tokens = self.passages[-1][2]
        self.loose(element.text)
        for child in element:
            name = _name(child)
            if name in _KINDS:
                if identity := child.get(f"{_XML}id"):
                    self.places[identity] = _Place(len(self.passages) - 1, len(tokens))
                tokens.append(_token(child, self.at))
                self.add(tokens[-1].text)
            else:
                self.line(child)
            self.loose(child.tail)

    def loose(self, text: str | None) -> None:
        """Take over text of a line that no element marks as a token."""
        for span in tokenize(text or "", offset=self.at):
            self.passages[-1][2].append(Token(text=span.text, start=span.start, end=span.end, kind=span.kind))
        self.add(text)


def read(text: str) -> Document:
    """Read a TEI file as a document; each `l`, `p` or `ab` is a passage, each `lg` a stanza.

    Raises `FormatError`, with line and column where there are any, if the text is not well-formed XML, not TEI, or
    has a document type declaration.

    >>> read("<TEI><text/></TEI>")
    Traceback (most recent call last):
    latingloss.errors.FormatError: TEI: the root is TEI without the namespace http://www.tei-c.org/ns/1.0
    """
    body = _body(text)
    divisions = {child.get("type"): child for child in body if _name(child) == "div"}
    own = "source" in divisions
    reading = _Reading()
    reading.walk(divisions["source"] if own else body, 0)
    english = divisions.get("rendering") if own else None
    lines, rendering, links = _rendering(reading, english) if english is not None else ([], {}, {})
    passages = [
        Passage(
            start=tokens[0].start, end=tokens[-1].end, stanza=stanza, tokens=tuple(tokens),
            rendering=rendering.get(i, ()), links=tuple(links.get(i, ())),
        )
        for i, (_, stanza, tokens) in enumerate(reading.passages)
        if tokens
    ]  # fmt: skip
    return Document(
        source="".join(reading.source), english="\n".join(lines) or None, engine="TEI", passages=tuple(passages)
    )


def _body(text: str) -> Element:
    if "<!DOCTYPE" in text:
        raise FormatError("TEI: it has a document type declaration (<!DOCTYPE ...>); take it out")
    try:
        root = ElementTree.fromstring(text.removeprefix("\ufeff"))
    except ElementTree.ParseError as error:
        line, column = error.position
        raise FormatError(f"TEI, line {line}, column {column + 1}: {error}") from error
    except (ValueError, UnicodeEncodeError) as error:
        raise FormatError(f"TEI: {error}") from error
    _check_depth(root)
    if root.tag != f"{_TEI}TEI":
        kind = f"without the namespace {_TEI[1:-1]}" if root.tag == "TEI" else f"{root.tag}, not TEI"
        raise FormatError(
            f"TEI: the root is {root.tag.rpartition('}')[2]} {kind}" if root.tag == "TEI" else f"TEI: {kind}"
        )
    body = root.find(f"{_TEI}text/{_TEI}body")
    if body is None:
        raise FormatError("TEI: no text/body; give a file with one text")
    return body


def _check_depth(root: Element) -> None:
    level = [root]
    for _ in range(_DEEPEST):
        level = [child for element in level for child in element]
    if level:
        raise FormatError(f"TEI: more than {_DEEPEST} elements in each other; take some out")


def _name(element: Element) -> str:
    return element.tag.removeprefix(_TEI) if isinstance(element.tag, str) else ""


def _token(element: Element, start: int) -> Token:
    text = "".join(element.itertext())
    kind: Kind = "sign" if element.get("type") == "sign" else _KINDS[_name(element)]
    inner = [child for child in element if _name(child) == "w"]
    analysed = inner or ([element] if element.get("pos") else [])
    words = tuple(_word(one) for one in analysed) if kind in ("word", "number") else ()
    return Token(text=text, start=start, end=start + len(text), kind=kind, words=words)


def _word(element: Element) -> Word:
    form = element.get("norm") or word_text("".join(element.itertext()))
    pairs = (feature.partition("=") for feature in element.get("msd", "").split("|"))
    return Word(
        form=form, marked_form=form, lemma=element.get("lemma", form), upos=element.get("pos", "X"),
        features={name: value for name, equals, value in pairs if equals}, gloss="", confidence=_certainty(element),
    )  # fmt: skip


def _certainty(element: Element) -> float:
    try:
        return min(1.0, max(0.0, float(element.get("cert", "1"))))
    except ValueError:  # TEI also allows high, medium, low, unknown
        return 0.5


def _rendering(
    reading: _Reading, division: Element
) -> tuple[list[str], dict[int, tuple[RenderingToken, ...]], dict[int, list[Link]]]:
    """Return the English lines, and tokens and links by the number of the passage that they render."""
    numbers = {f"#{identity}": i for i, (identity, _, _) in enumerate(reading.passages) if identity}
    lines: list[str] = []
    tokens: dict[int, tuple[RenderingToken, ...]] = {}
    places: dict[str, _Place] = {}
    at = 0
    for line in division.iter(f"{_TEI}l"):
        passage = numbers.get(line.get("corresp", ""))
        if passage is None:
            continue
        for token, identity in _english_tokens(line, at):
            before = tokens.get(passage, ())
            places[identity] = _Place(passage, len(before))
            tokens[passage] = (*before, token)
        lines.append("".join(line.itertext()))
        at += len(lines[-1]) + 1
    links: dict[int, list[Link]] = {}
    for link in division.iter(f"{_TEI}link"):
        latin, _, english = (part.removeprefix("#") for part in link.get("target", "").partition(" "))
        place, other = reading.places.get(latin), places.get(english.removeprefix("#"))
        if place is None or other is None or place.passage != other.passage:
            raise FormatError(
                f"TEI: link to {link.get('target')!r}; give the xml:id of a Latin and an English word of one line"
            )
        links.setdefault(place.passage, []).append(
            Link(latin=place.token, english=other.token, confidence=_certainty(link))
        )
    return lines, tokens, links


def _english_tokens(line: Element, at: int) -> Iterator[tuple[RenderingToken, str]]:
    at += len(line.text or "")
    for child in line:
        text = "".join(child.itertext())
        own: Kind | None = "sign" if child.get("type") == "sign" else _KINDS.get(_name(child))
        spans = tokenize_english(text)
        kind = own or (spans[0].kind if spans else "sign")
        yield RenderingToken(text=text, start=at, end=at + len(text), kind=kind), child.get(f"{_XML}id", "")
        at += len(text) + len(child.tail or "")
