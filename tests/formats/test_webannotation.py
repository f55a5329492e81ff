"""Web Annotations: the rules of the W3C's data model (2017), and words found again in a text that has changed."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest
from documents import documents, linked_documents
from hypothesis import given
from hypothesis import strategies as st

from latingloss import annotate
from latingloss.document import Document, Token
from latingloss.errors import FormatError, InputTypeError
from latingloss.formats import webannotation

_IRI = re.compile(r"(?:https?|urn|ni):\S+")


def _with_words(document: Document) -> list[Token]:
    return [token for passage in document.passages for token in passage.tokens if token.words]


@given(st.one_of(documents(), linked_documents()))
def test_words_come_back_whole(document: Document) -> None:
    assert webannotation.read(webannotation.write(document), document.source) == _with_words(document)


@given(st.one_of(documents(), linked_documents()))
def test_the_data_model_is_kept(document: Document) -> None:
    """Sections 3.1 (annotations), 3.2.4 (text bodies), 4 with 4.2.4 and 4.2.5 (selectors), 5 (collections)."""
    whole = json.loads(webannotation.write(document))
    assert whole["@context"] == "http://www.w3.org/ns/anno.jsonld" and whole["type"] == "AnnotationCollection"
    page = whole["first"]
    assert page["type"] == "AnnotationPage" and page["partOf"] == whole["id"] and page["startIndex"] == 0
    assert whole["total"] == len(page["items"])
    identities = [whole["id"], page["id"], *(item["id"] for item in page["items"])]
    assert len({*identities}) == len(identities) and all(map(_IRI.fullmatch, identities))
    for item in page["items"]:
        assert item["type"] == "Annotation" and item["motivation"] in ("describing", "linking")
        _check_place(item["target"], document.source)
        if item["motivation"] == "linking":
            _check_place(item["body"], document.english or "")
        else:
            assert all(body["type"] == "TextualBody" and isinstance(body["value"], str) for body in item["body"])


def _check_place(place: dict[str, Any], text: str) -> None:
    assert place["type"] == "SpecificResource" and _IRI.fullmatch(place["source"])
    position, quote = place["selector"]
    assert (position["type"], quote["type"]) == ("TextPositionSelector", "TextQuoteSelector")
    start, end = position["start"], position["end"]
    assert text[start:end] == quote["exact"] != ""
    assert text[:start].endswith(quote["prefix"]) and text[end:].startswith(quote["suffix"])


def test_words_are_found_again_in_a_changed_text() -> None:
    document = annotate("Nox venit et nox abit.")
    changed = "Vigilate: nox venit, et nox abit. Nox longa est."
    found = webannotation.read(webannotation.write(document), changed)
    assert [(t.text, t.start) for t in found] == [("venit", 14), ("et", 21), ("nox", 24), ("abit", 28), ("Nox", 34)]


def test_positions_count_code_points() -> None:
    """Section 4.2.5: `in terms of unicode code points`, also beyond the first 65,536."""
    item = json.loads(webannotation.write(annotate("🙂 lux")))["first"]["items"][0]
    assert item["target"]["selector"][0] == {"type": "TextPositionSelector", "start": 2, "end": 5}


def test_where_the_texts_are_can_be_said() -> None:
    text = webannotation.write(annotate("Lux lucet.", "Light shines."), source="https://a.test/l", english="urn:e")
    items = json.loads(text)["first"]["items"]
    assert {item["target"]["source"] for item in items} == {"https://a.test/l"}
    assert {item["body"]["source"] for item in items if item["motivation"] == "linking"} == {"urn:e"}


_SELECTORS = [
    {"type": "TextPositionSelector", "start": 0, "end": 3},
    {"type": "TextQuoteSelector", "exact": "Lux", "prefix": "", "suffix": ""},
]


def _of(value: object, selectors: object = _SELECTORS) -> str:
    body = {"type": "TextualBody", "format": "application/json", "value": value}
    return json.dumps({"first": {"items": [{"body": [body], "target": {"selector": selectors}}]}})


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{", "not JSON"),
        ("[" * 100_000, "not JSON"),
        ("[]", "no first.items"),
        ('{"first": {"items": 3}}', "no first.items"),
        ('{"first": {"items": [3]}}', "items[0]"),
        (_of("{}"), "items[0]: kind"),
        (_of("[]"), "items[0]"),
        (_of(3), "items[0]"),
        (_of("{}", []), "items[0]: KeyError"),
        (_of("{}", [_SELECTORS[0], _SELECTORS[1] | {"exact": ""}]), "an empty quotation"),
        (_of('{"kind": "word", "lies": 1}'), "items[0]: lies"),
    ],
)
def test_what_is_wrong_is_said_with_its_place(text: str, said: str) -> None:
    with pytest.raises(FormatError, match=re.escape(said)):
        webannotation.read(text, "Lux")


def test_annotations_of_others_are_passed_over() -> None:
    other = '{"first": {"items": [{"id": "urn:x", "body": "https://a.test", "target": "https://b.test"}]}}'
    assert webannotation.read(other, "Lux") == []


def test_the_text_must_be_given() -> None:
    with pytest.raises(InputTypeError, match="source must be str"):
        webannotation.read("{}", None)  # type: ignore[arg-type]
