"""The page: well-formed, complete, escaped, tied by numbers, readable.

HTML as in the WHATWG HTML Living Standard, section 13.
"""

import re
from html.parser import HTMLParser
from importlib.resources import files
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from latingloss.document import (
    Difficulty,
    DifficultyPart,
    Document,
    Link,
    Passage,
    Relative,
    RenderingToken,
    Token,
    Word,
)
from latingloss.sheets import Booklet, SheetOptions, Text, sheet_html
from latingloss.text.tokens import tokenize, tokenize_english

VOID = {"meta", "br"}  # the void elements the page uses: section 13.1.2


class Tree(HTMLParser):
    """Collects text by the elements around it, and fails on an end tag that closes nothing or the wrong element."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[tuple[str, dict[str, str | None]]] = []
        self.found: list[tuple[tuple[tuple[str, dict[str, str | None]], ...], str]] = []
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.feed(page)
        self.close()
        assert not self.open

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open and self.open.pop()[0] == tag

    def handle_data(self, data: str) -> None:
        self.found.append((tuple(self.open), data))

    def text(self, *, within: str, without: str = "") -> str:
        """Return the text inside elements of a class, but not inside those of another."""
        return "".join(data for path, data in self.found if _has(path, within) and not _has(path, without))


def _has(path: tuple[tuple[str, dict[str, str | None]], ...], name: str) -> bool:
    return any(name in (attributes.get("class") or "").split() for _, attributes in path)


def _word(form: str, gloss: str) -> Word:
    return Word(form=form, marked_form=form, lemma=form, upos="NOUN", gloss=gloss, confidence=1.0)


def _document(
    source: str, english: str | None = None, *, picked: tuple[int, ...] = (), links: tuple[Link, ...] = ()
) -> Document:
    hardness = Difficulty(score=0.5, parts=(DifficultyPart(name="length", value=8, effect=0.3, reason="8 letters"),))
    kin = (Relative(word="silence", kind="borrowed", zipf=4.4), Relative(word="silent", kind="family", zipf=4.4))
    tokens = tuple(
        Token(
            text=s.text, start=s.start, end=s.end, kind=s.kind, emphasis=i in picked,
            words=(_word(s.text, f"sense {i}"),) if s.kind == "word" else (), difficulty=hardness, relatives=kin,
        )
        for i, s in enumerate(tokenize(source))
    )  # fmt: skip
    rendering = tuple(RenderingToken(**s._asdict()) for s in tokenize_english(english or ""))
    passage = Passage(start=0, end=len(source), tokens=tokens, rendering=rendering, links=links)
    return Document(source=source, english=english, passages=(passage,))


SILENCE = _document(
    "Noctis siléntium venit.", "There comes the silence of night.", picked=(1,),
    links=(Link(latin=0, english=4), Link(latin=0, english=5), Link(latin=1, english=2), Link(latin=1, english=3)),
)  # fmt: skip


def _squeezed(text: str) -> str:
    return "".join(text.split())


@given(st.text(alphabet="abæéū<>&\"'{}% \n,.℣", min_size=1).filter(lambda t: any(c.isalpha() for c in t)), st.data())
@settings(max_examples=60, deadline=None)
def test_every_character_of_the_source_stands_on_the_page_in_order(source: str, data: st.DataObject) -> None:
    picked = data.draw(st.sets(st.integers(0, 10)))
    document = _document(source, picked=tuple(picked))
    arrangement = data.draw(st.sampled_from(("interlinear", "lines")))
    tree = Tree(sheet_html(document, SheetOptions(arrangement=arrangement)))
    assert _squeezed(tree.text(within="latin", without="tie")) == _squeezed(source)


@given(st.text(alphabet="ab<>&\"' ,.", min_size=1), st.data())
@settings(max_examples=60, deadline=None)
def test_every_character_of_the_rendering_too(english: str, data: st.DataObject) -> None:
    count = len(tokenize_english(english))
    ends = data.draw(st.sets(st.integers(0, count - 1))) if count else set()
    document = _document("lux", english, picked=(0,), links=tuple(Link(latin=0, english=i) for i in sorted(ends)))
    tree = Tree(sheet_html(document))
    assert _squeezed(tree.text(within="rendering", without="tie")) == _squeezed(english)


def test_a_line_without_words_is_printed_as_it_is() -> None:
    latin = re.findall('<span class="latin".*?>(.*?)</span>', sheet_html(_document("* & †")))
    assert latin == ["* &amp; †"]


def test_author_s_words_are_escaped() -> None:
    evil = "<script>alert('x')</script> & \"y\""
    text = Text(_document("lux"), title=evil, introduction=evil, source=evil)
    page = sheet_html(Booklet([text, text], title=evil, introduction=evil))
    assert "<script" not in page
    assert page.count("&lt;script&gt;") == 9  # title, heading, introduction; thrice in each text


def test_the_page_needs_nothing_from_outside() -> None:
    page = sheet_html(SILENCE)
    assert not re.search(r"<(?:script|link|img|iframe)|https?:|url\(|@import", page)


@pytest.mark.parametrize("arrangement", ["interlinear", "lines"])
def test_both_languages_are_named(arrangement: str) -> None:
    """WCAG 2.2, success criteria 3.1.1 and 3.1.2: the page is English, Latin says that it is not."""
    elements = Tree(sheet_html(SILENCE, SheetOptions(arrangement=arrangement))).elements
    assert ("html", "en") in [(tag, a.get("lang")) for tag, a in elements]
    by_class = {a["class"]: a.get("lang") for _, a in elements if "class" in a}
    assert by_class["latin"] == "la"
    assert by_class["rendering"] is None


def test_a_number_ties_latin_english_and_note() -> None:
    page = sheet_html(SILENCE)
    latin = re.findall('<span class="latin".*?</span>', page)
    english = re.findall('<p class="rendering".*?</p>', page)
    tie = '<sup class="tie"><a href="#note-1-1">1</a></sup>'
    assert any(f"<b>siléntium</b>{tie}" in word for word in latin)
    assert f"<b>the silence</b>{tie}" in english[0]
    assert page.count('id="note-1-1"') == 1
    assert Tree(page).text(within="number") == "1"


def test_one_english_word_may_carry_two_numbers() -> None:
    links = (Link(latin=0, english=1), Link(latin=1, english=1))
    page = sheet_html(_document("Grátias ágimus", "We thank", picked=(0, 1), links=links))
    assert Tree(page).text(within="rendering") == "We thank1, 2"


def test_ids_are_unique_and_links_lead_somewhere() -> None:
    elements = Tree(sheet_html(SILENCE)).elements
    ids = [a["id"] for _, a in elements if "id" in a]
    assert len(ids) == len(set(ids))
    targets = [a["href"] for tag, a in elements if tag == "a"]
    targets += [f"#{a['aria-labelledby']}" for _, a in elements if "aria-labelledby" in a]
    assert targets and {str(t) for t in targets} <= {f"#{i}" for i in ids}


@pytest.mark.parametrize("arrangement", ["interlinear", "lines"])
def test_tables_have_captions_and_scopes(arrangement: str) -> None:
    """WCAG 2.2, technique H63 (scope) and H39 (caption)."""
    elements = Tree(sheet_html(SILENCE, SheetOptions(arrangement=arrangement))).elements
    tags = [tag for tag, _ in elements]
    assert tags.count("table") == tags.count("caption") > 0
    assert all(a.get("scope") in ("row", "col") for tag, a in elements if tag == "th")


def test_an_enclitic_has_a_place_of_its_own() -> None:
    host, tail = _word("Noctís", "of the night"), _word("que", "and")
    token = Token(text="Noctísque", start=0, end=9, kind="word", words=(host, tail))
    document = Document(source="Noctísque", passages=(Passage(start=0, end=9, tokens=(token,)),))
    page = sheet_html(document)
    assert Tree(page).text(within="stacks", without="unseen").split("\n")[1:3] == ["Noctísof the night", "-queand"]


def test_reasons_are_set_as_a_printer_would() -> None:
    word = _word("Noctis", "of the night").model_copy(update={"reason": 'genitive: belongs to "lux", from -is'})
    token = Token(text="Noctis", start=0, end=6, kind="word", words=(word,), emphasis=True)
    document = Document(source="Noctis", passages=(Passage(start=0, end=6, tokens=(token,)),))
    assert "genitive: belongs to “lux”, from -\u2060is" in sheet_html(document)


def test_parts_left_out_are_not_there() -> None:
    page = sheet_html(SILENCE, SheetOptions(parts=()))
    assert not re.search(r'class="(?:notes|words list|endings list|review list)"|href="#note', page)
    assert "<b>siléntium</b>" in page


@pytest.mark.parametrize("paper", ["A4", "Letter", "A5"])
def test_paper_is_set(paper: str) -> None:
    assert f"@page {{ size: {paper}; }}" in sheet_html(SILENCE, SheetOptions(paper=paper))


def test_headings_do_not_skip_a_level() -> None:
    """WCAG 2.2, technique G141."""
    booklet = Booklet([Text(SILENCE, title="One"), Text(SILENCE, title="Two")], title="Both")
    levels = [int(tag[1]) for tag, _ in Tree(sheet_html(booklet)).elements if re.fullmatch("h[1-6]", tag)]
    assert levels[0] == 1 and levels.count(1) == 1 and levels.count(2) >= 4
    assert all(after - before <= 1 for before, after in pairwise(levels))


def _luminance(colour: str) -> float:
    """Relative luminance: WCAG 2.2, definitions."""
    digits = colour if len(colour) == 6 else "".join(c * 2 for c in colour)
    parts = [int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def test_contrast_is_enough_in_every_scheme() -> None:
    """WCAG 2.2, success criterion 1.4.3: at least 4.5 to 1."""
    css = (files("latingloss") / "sheets" / "sheet.css").read_text(encoding="utf-8")
    schemes = [
        dict(re.findall(r"--(\w+): #([0-9a-f]+);", block)) for block in re.findall(r":root \{(.*?)\}", css, re.S)
    ]
    assert len(schemes) == 3  # light, dark, print
    for scheme in schemes:
        for name in ("ink", "soft", "rubric"):
            high, low = sorted((_luminance(scheme[name]), _luminance(scheme["ground"])), reverse=True)
            assert (high + 0.05) / (low + 0.05) >= 4.5, name
