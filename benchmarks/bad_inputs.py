"""Bad inputs: what no reader of Latin would give on purpose, each with what must become of it.

A text that has any Latin letter is annotated and nothing of it is lost; anything else is refused by an error of
latingloss that says why.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, NamedTuple

import latingloss
from latingloss import corrections
from latingloss.document import Document
from latingloss.errors import InputTypeError, LatinglossError, OptionError, TextError, UnknownLemmaError
from latingloss.formats import conllu, schema, tei
from latingloss.sheets import Booklet, Text, sheet_html

_SCRIPT = "<script>alert(1)</script><img src=x onerror=alert(1)>"


class BadInput(NamedTuple):
    """One row: `act` (given an empty folder) says what happens, or raises `error`."""

    name: str
    given: str
    act: Callable[[Path], str]
    error: type[LatinglossError] | None = None


def kept(document: Document) -> str:
    """Say how much a document has; raise `AssertionError` if any of its text, or a link, has gone astray."""
    source, at = document.source, 0
    for passage in document.passages:
        for token in passage.tokens:
            _must(source[token.start : token.end] == token.text, f"{token.text!r} is not at its offsets")
            _must(not source[at : token.start].strip(), f"lost: {source[at : token.start]!r}")
            at = token.end
        for link in passage.links:
            _must(link.latin < len(passage.tokens) and link.english < len(passage.rendering), "a link to nothing")
    _must(not source[at:].strip(), f"lost: {source[at:]!r}")
    _must(schema.read(schema.write(document)) == document, "JSON does not come back")
    _must(conllu.read(conllu.write(document)).source == source, "CoNLL-U does not come back")
    tokens = [t.start for p in tei.read(tei.write(document)).passages for t in p.tokens]
    _must(tokens == [t.start for p in document.passages for t in p.tokens], "TEI does not come back")
    return f"annotated: {len(tokens):,} tokens in {len(document.passages):,} passages, nothing lost"


def _must(true: bool, otherwise: str) -> None:
    if not true:
        raise AssertionError(otherwise)


TEXTS = {
    "nul": ("NUL between letters", "lux\x00lucet \x00 nox"),
    "controls": ("every control character", "lux " + "".join(map(chr, [*range(32), *range(127, 160)])) + " nox"),
    "bom": ("a byte-order mark, first and in the middle", "\ufefflux \ufeff lu\ufeffcet"),
    "crlf": ("lines ended by CR LF, CR and LF", "lux\r\nlucet\rnox\n\r\nvenit"),
    "odd-line-ends": ("NEL, LS, PS, VT, FF", "lux\x85lucet\u2028nox\u2029venit\x0babit\x0credit"),
    "bidi": ("overrides and isolates of direction", "\u202elux\u202c \u2067lucet\u2069 \u200fnox\u200e"),
    "zero-width": (
        "zero-width space, joiners, soft hyphens",
        "l\u200bu\u200cx l\u200du\u2060c\u00adet \u00ad \u200b nox",
    ),
    "combining": ("a thousand marks on one letter", "lu" + "\u0301" * 1000 + "x"),
    "combining-first": ("a mark with no letter before it", "\u0304 \u0301lux\n\u0308nox"),
    "decomposed": ("decomposed accents", "glo\u0301ria ca\u0306e\u0304lum æ\u0301terna"),
    "emoji": ("emoji of several code points", "lux 👩‍👩‍👧‍👦 🇻🇦 👍🏽 ❤️ lucet"),
    "astral": ("mathematical and Gothic letters", "lux 𝐋𝐮𝐱 𝔩𝔲𝔵 𐌰𐌱 lucet"),
    "fullwidth": ("full-width letters and signs", "ｌｕｘ lucet！ ＸＩＩ"),
    "homoglyphs": ("Cyrillic and Greek letters among Latin ones", "luх lucеt νox gloria"),
    "scripts": ("Greek, Hebrew, Arabic, Chinese, Devanagari beside Latin", "lux λόγος אור نور 光 ज्योति lucet"),
    "private": ("private use, unassigned and non-characters", "lux \ue000 \U000f0000 \u0378 \uffff \U0010ffff nox"),
    "replacement": ("U+FFFD of a file decoded wrongly", "l\ufffdx lucet \ufffd"),
    "mojibake": ("UTF-8 read as Latin-1", "glÃ³ria Ã¦terna Â«luxÂ»"),
    "variation": ("variation selectors and tags", "lux\ufe0f lu\ufe0ecet \U000e0061\U000e007f nox"),
    "ligatures": ("ligatures, long s, sharp s, abbreviations with strokes", "ﬂoſ ﬁlius Œdipus ęternus ꝓ ꝑ ꝗ eſt ß"),
    "spaces": ("all kinds of spaces", "lux\u00a0lucet\u2003nox\u3000venit\tabit\u202fredit\u1680lux"),
    "hyphen-break": ("words broken over lines", "sancti-\n  ficatur glori\u00ad\r\nosus in-\n"),
    "apostrophes": ("apostrophes everywhere", "'lux' l'ux 'tis’ ’lucet’’ ''"),
    "marks": ("a run of 5,000 marks", "lux " + "?!…—«»" * 830),
    "underscores": ("underscores, backslashes, bars", r"lux_lucet __ \lux\n |nox| a\sb ~ ` ^"),
    "long-word": ("a word of 100,000 letters", "lux " + "a" * 100_000),
    "long-numeral": ("a numeral of 10,000 letters", "lux " + "M" * 10_000 + " XIIIIII"),
    "long-line": ("2,000 words on a line", "lux lucet " * 1_000),
    "many-lines": ("1,000 lines of a letter", "a\n" * 1_000),
    "blank-lines": ("a word after 100,000 blank lines", "\n" * 100_000 + "lux"),
    "digits": ("digits of many scripts", "lux 123 ٣٤ ४५ ² ½ ⅷ ① 一"),
    "capitals": ("all in capitals, with numerals", "LVX IN TENEBRIS LVCET\nVI ET XII DIC MI"),
    "script-tag": ("HTML and JavaScript", f"lux {_SCRIPT} &amp; &#60; javascript:alert(1)"),
    "templates": ("format and template placeholders", "lux %s %(x)d {0} {x!r} {{ 7*7 }} {% raw %} ${x}"),
    "markup": ("TeX, Markdown, Typst, SQL", r"lux \input{x} # * _nox_ `x` #eval('1') '; DROP TABLE lux;--"),
    "xml": ("XML with an entity declared", '<!DOCTYPE x [<!ENTITY a "lux">]><x>&a;</x> ]]> <![CDATA[ lux'),
    "formula": ("formulas for spreadsheets", '=cmd|"/c calc"!A1 +lux -nox @lux \t=1+1'),
    "comment-lines": ("lines like CoNLL-U's own", "# text = lux\n1\tlux\tlux\tNOUN\t_\t_\t0\troot\t_\t_\n\n# newpar"),
    "modifiers": ("modifier letters and iteration marks alone", "lux ʰ ˈ 々 ʼ nox"),
    "hangul": ("letters of other scripts alone but for one", "한국어 a 日本語"),
}


def _annotated(text: str) -> Callable[[Path], str]:
    return lambda _: kept(latingloss.annotate(text))


def _texts() -> Iterator[BadInput]:
    for name, (given, text) in TEXTS.items():
        yield BadInput(f"text-{name}", f"annotate: {given}", _annotated(text))
    refused: dict[str, tuple[str, Any, type[LatinglossError]]] = {
        "empty": ("nothing", "", TextError),
        "white": ("white space alone", " \t\r\n\u3000\x0b", TextError),
        "no-letter": ("marks and digits alone", "123 — … !", TextError),
        "greek": ("no Latin letter", "λόγος אור", TextError),
        "surrogate": ("half a character", "lux \ud800 lucet", TextError),
        "too-long": ("5,000,001 characters", "a" * 5_000_001, TextError),
        "bytes": ("bytes", b"lux", InputTypeError),
        "none": ("None", None, InputTypeError),
        "number": ("a number", 12, InputTypeError),
        "list": ("a list of lines", ["lux", "nox"], InputTypeError),
    }
    for name, (given, value, error) in refused.items():
        yield BadInput(f"text-{name}", f"annotate: {given}", _annotated(value), error)


def _renderings() -> Iterator[BadInput]:
    def row(name: str, given: str, english: Any, error: type[LatinglossError] | None = None) -> BadInput:
        latin = "Lux lucet.\n\nNox venit."
        return BadInput(
            f"rendering-{name}", f"rendering: {given}", lambda _: kept(latingloss.annotate(latin, english)), error
        )

    yield row("longer", "40 lines for two", "Light shines.\n" * 40)
    yield row("one-word", "one word for two lines", "Light")
    yield row("script", "HTML and JavaScript", f"Light {_SCRIPT}\nNight")
    yield row("odd", "emoji, marks, other scripts", "Light 🙂 光 e\u0301 \u202e\n\x00 night \u0301")
    yield row("marks", "lines of marks before the words", "***\n---\n\nLight shines.\n...\nNight.")
    yield row("empty", "nothing", "", TextError)
    yield row("bytes", "bytes", b"Light", InputTypeError)
    yield row("surrogate", "half a character", "Light \udfff", TextError)


def _tokens() -> Iterator[BadInput]:
    def row(
        name: str, given: str, tokens: Any, error: type[LatinglossError] | None = None, *, english: Any = None
    ) -> BadInput:
        return BadInput(
            f"tokens-{name}", f"tokens: {given}", lambda _: kept(latingloss.annotate_tokens(tokens, english)), error
        )

    yield row("spaced", "tokens with spaces and line ends in them", [["lux et", "no\nx", " lucet "]])
    yield row("odd", "tokens of marks, joiners and controls", [["\u200b", "\x00", "\u0301", "🙂"], ["."]])
    yield row("none-in-sentence", "sentences without tokens", [[], ["lux"], []])
    yield row("string", "a text for a list", "lux lucet", InputTypeError)
    yield row("strings", "texts for lists", ["lux lucet"], InputTypeError)
    yield row("number", "a number for a token", [["lux", 3]], InputTypeError)
    yield row("empty", "an empty token", [["lux", ""]], TextError)
    yield row("white", "a token of white space", [["lux", " \t"]], TextError)
    yield row("surrogate", "half a character", [["l\ud800x"]], TextError)
    yield row("unequal", "more Latin sentences than English", [["lux"], ["nox"]], TextError, english=[["light"]])


def _words() -> Iterator[BadInput]:
    def row(name: str, given: str, act: Callable[[], object], error: type[LatinglossError] | None = None) -> BadInput:
        def told(_: Path) -> str:
            found = act()
            return f"{len(found):,} results" if isinstance(found, tuple | list) else f"{found!s:.40}"

        return BadInput(f"word-{name}", given, told, error)

    annotator = latingloss.Annotator
    yield row("unknown", "analyze: a word of no language", lambda: latingloss.analyze("xyzzyqq"))
    yield row("huge", "analyze: 100,000 letters", lambda: latingloss.analyze("x" * 100_000))
    yield row("empty", "analyze: nothing", lambda: latingloss.analyze(""), TextError)
    yield row("none", "analyze: None", lambda: latingloss.analyze(None), InputTypeError)  # type: ignore[arg-type]
    yield row("no-lemma", "inflect: a word that is no lemma", lambda: latingloss.inflect("xyzzyqq"), UnknownLemmaError)
    yield row("no-relative", "relatives: a word that is no lemma", lambda: latingloss.relatives("xyzzyqq"))
    yield row("silent", "pronounce: marks alone", lambda: latingloss.pronounce("?!"), TextError)
    nan, some = float("nan"), "some"
    yield row("share-nan", "Annotator: a share that is no number", lambda: annotator(emphasis_share=nan), OptionError)
    yield row("share-text", "Annotator: a share in words", lambda: annotator(emphasis_share=some), InputTypeError)  # type: ignore[arg-type]


def _pages() -> Iterator[BadInput]:
    def html(given: Document | Booklet) -> str:
        page = sheet_html(given)
        _must(not re.search(r"<script>alert|<img src=x|onerror=alert\(1\)>", page), "a script came through")
        _must("alert" in page, "what was given is not on the page")
        return "on the page as text, escaped"

    text = f"Lux {_SCRIPT} lucet."
    noted = corrections.read(f"everywhere: [{{word: Lux, gloss: '{_SCRIPT}', note: '{_SCRIPT}'}}]")
    said = latingloss.annotate("Lux lucet.", "Light shines.")
    yield BadInput("page-text", "page: a script in the Latin", lambda _: html(latingloss.annotate(text)))
    yield BadInput(
        "page-rendering", "page: a script in the rendering", lambda _: html(latingloss.annotate("Lux.", text))
    )
    yield BadInput(
        "page-corrections", "page: a script in gloss and note",
        lambda _: html(latingloss.annotate("Lux lucet.", corrections=noted)),
    )  # fmt: skip
    yield BadInput(
        "page-introduction", "page: a script in title, introduction and source",
        lambda _: html(Booklet([Text(said, title=_SCRIPT, introduction=_SCRIPT, source=_SCRIPT)], title=_SCRIPT)),
    )  # fmt: skip


def rows() -> Iterator[BadInput]:
    """Yield the rows of texts, tokens and words, and of pages made of them."""
    for family in (_texts, _renderings, _tokens, _words, _pages):
        yield from family()
