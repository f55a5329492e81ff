"""TEI P5: valid by its schema, safe to read, and nothing lost on the way and back."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from documents import documents, linked_documents
from hypothesis import given

from latingloss import annotate
from latingloss.document import Document, Token
from latingloss.errors import FormatError
from latingloss.formats import tei

_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")  # XML 1.0, production 2


def _fit(text: str) -> str:
    return _NOT_XML.sub(lambda match: "\n" if match[0].isspace() else "\ufffd", text)


def _carried(token: Token) -> tuple[object, ...]:
    words = [(_fit(w.form), w.lemma, w.upos, w.features) for w in token.words]
    return _fit(token.text), token.start, token.end, token.kind, words


@given(documents())
def test_tokens_offsets_and_analyses_come_back(document: Document) -> None:
    back = tei.read(tei.write(document))
    assert back.source == _fit(document.source)
    kept = [passage for passage in document.passages if passage.tokens]
    for one, other in zip(kept, back.passages, strict=True):
        assert [_carried(t) for t in one.tokens] == [_carried(t) for t in other.tokens]
    assert [p.stanza for p in back.passages] == [p.stanza for p in kept]


@given(linked_documents())
def test_renderings_and_links_come_back(document: Document) -> None:
    back = tei.read(tei.write(document))
    assert [p.links for p in back.passages] == [p.links for p in document.passages]
    for one, other in zip(document.passages, back.passages, strict=True):
        assert [t.text for t in one.rendering] == [t.text for t in other.rendering]
        assert all(back.english and back.english[t.start : t.end] == t.text for t in other.rendering)


@cache
def _schema(path: Path) -> Any:
    etree = pytest.importorskip("lxml.etree", reason="needs lxml to validate")
    return etree.RelaxNG(etree.parse(path))


@pytest.mark.parametrize(
    ("latin", "english"),
    [
        ("℣ Lux in ténebris lucet,\npopulúsque tuus vigilat XII.\n\nViden stellas? Mecum cantate.", None),
        ("Stellae lucent;\n\nnox venit.", "The stars shine;\nnight comes."),
        ('Lux <&> \x00 "lucet"', "Light & <b>"),
    ],
)
def test_the_schema_of_tei_accepts_it(shared: Path, latin: str, english: str | None) -> None:
    schema = _schema(shared / "checks" / "tei_all-4.11.0.rng")  # TEI P5 4.11.0
    from lxml import etree

    assert schema.validate(etree.fromstring(tei.write(annotate(latin, english)).encode())), schema.error_log


def test_lines_and_words_of_others_are_read() -> None:
    text = (
        '<TEI xmlns="http://www.tei-c.org/ns/1.0"><teiHeader/><text><body><lg><l n="1"><w lemma="lux" pos="NOUN"'
        ' msd="Case=Nom|Number=Sing">Lux</w> <hi><w>lucet</w></hi> semper<pc>.</pc></l></lg></body></text></TEI>'
    )
    (passage,) = tei.read(text).passages
    assert [(t.text, t.start, t.kind) for t in passage.tokens] == [
        ("Lux", 0, "word"), ("lucet", 4, "word"), ("semper", 10, "word"), (".", 16, "punctuation"),
    ]  # fmt: skip
    assert passage.tokens[0].words[0].features == {"Case": "Nom", "Number": "Sing"}


def test_a_declared_type_is_refused() -> None:
    bomb = '<!DOCTYPE TEI [<!ENTITY a "lux"><!ENTITY b "&a;&a;">]><TEI>&b;</TEI>'
    with pytest.raises(FormatError, match="take it out"):
        tei.read(bomb)


def test_a_control_character_between_words_makes_no_token() -> None:
    back = tei.read(tei.write(annotate("lux\x1flucet nox\x0bvenit")))
    assert [t.text for p in back.passages for t in p.tokens] == ["lux", "lucet", "nox", "venit"]


def test_a_certainty_in_words_or_out_of_range_is_read_as_one_between() -> None:
    """TEI P5, att.global.responsibility: @cert is a probability, or high, medium, low, unknown."""
    text = tei.write(annotate("Lux.", "Light."))
    for cert, read in (("high", 0.5), ("7", 1.0), ("-1", 0.0), ("nan", 0.0)):
        (passage,) = tei.read(re.sub(r'cert="[^"]*"', f'cert="{cert}"', text)).passages
        assert passage.links[0].confidence == passage.tokens[0].words[0].confidence == read


_OWN = '<TEI xmlns="http://www.tei-c.org/ns/1.0"><text><body><div type="source"><l xml:id="l0"><w xml:id="a">lux</w>'
_RENDERED = (
    '</l><l xml:id="l1"><w xml:id="c">nox</w></l></div><div type="rendering"><l corresp="#l0"><w xml:id="b">light</w>'
    '</l><l corresp="#l1"><hi/><w xml:id="d">night</w></l><l corresp="#l0"><w xml:id="e">shines</w></l>{}</div>'
    "</body></text></TEI>"
)


def test_two_lines_may_render_one_and_an_element_may_be_empty() -> None:
    links = '<link target="#a #b"/><link target="#a #e"/><link target="#c #d"/>'
    document = tei.read(_OWN + _RENDERED.format(links))
    assert [[(k.latin, k.english) for k in p.links] for p in document.passages] == [[(0, 0), (0, 1)], [(0, 1)]]
    assert [[t.text for t in p.rendering] for p in document.passages] == [["light", "shines"], ["", "night"]]


def test_a_link_from_line_to_line_is_refused() -> None:
    with pytest.raises(FormatError, match="of one line"):
        tei.read(_OWN + _RENDERED.format('<link target="#a #d"/>'))


@pytest.mark.parametrize(("depth", "read"), [(90, True), (101, False), (100_000, False)])
def test_elements_may_be_nested_but_not_without_end(depth: int, read: bool) -> None:
    body = "<div>" * depth + "<l><w>lux</w></l>" + "</div>" * depth
    text = f'<TEI xmlns="http://www.tei-c.org/ns/1.0"><text><body>{body}</body></text></TEI>'
    if read:
        assert tei.read(text).source == "lux"
    else:
        with pytest.raises(FormatError, match="more than 100 elements"):
            tei.read(text)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("<TEI", "line 1, column"),
        ("<TEI/>", "namespace"),
        ("<html/>", "html, not TEI"),
        ('<TEI xmlns="http://www.tei-c.org/ns/1.0"/>', "no text/body"),
        ("", "line 1, column"),
    ],
)
def test_what_is_wrong_is_said(text: str, said: str) -> None:
    with pytest.raises(FormatError, match=said):
        tei.read(text)


def test_it_is_well_formed_whatever_the_title() -> None:
    ElementTree.fromstring(tei.write(annotate("Lux lucet."), title="<script>&\x00").encode())
