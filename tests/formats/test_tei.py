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


def _carried(token: Token) -> tuple[object, ...]:
    words = [(_NOT_XML.sub("\ufffd", w.form), w.lemma, w.upos, w.features) for w in token.words]
    return _NOT_XML.sub("\ufffd", token.text), token.start, token.end, token.kind, words


@given(documents())
def test_tokens_offsets_and_analyses_come_back(document: Document) -> None:
    back = tei.read(tei.write(document))
    assert back.source == _NOT_XML.sub("\ufffd", document.source)
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
