"""W3C Web Annotation Data Model (2017), as JSON-LD: https://www.w3.org/TR/annotation-model/

An `AnnotationCollection` with one page. Each word of the text is a target with two selectors, by position (code
points) and by quotation, so that it is found again in a text that has since changed. Its bodies are the gloss, to be
shown, and the whole analysis as JSON, to be read back. A link to the rendering is an annotation of its own, whose
body is the English word. Tokens without words, passages and the confidence of links are not in it.
"""

from __future__ import annotations

import json
from base64 import urlsafe_b64encode
from collections.abc import Iterator
from hashlib import sha256
from typing import Any
from uuid import NAMESPACE_URL, uuid5

from latingloss.document import Document, RenderingToken, Token
from latingloss.formats.webannotation_reader import read

__all__ = ["read", "write"]

_AROUND = 32  # characters quoted before and after
_OWN = {"text", "start", "end"}  # what the selectors tell

_Json = dict[str, Any]


def write(document: Document, *, source: str = "", english: str = "", indent: int | None = None) -> str:
    """Write a document as JSON-LD; `source` and `english` are the IRIs where the two texts can be had.

    Without an IRI a text is named by its hash, as RFC 6920 says. `indent` is the spaces a level, None for one line.

    >>> from latingloss import annotate
    >>> page = json.loads(write(annotate("Stellae lucent."), source="https://example.org/hymn.txt"))["first"]
    >>> page["items"][0]["target"]["selector"][0]
    {'type': 'TextPositionSelector', 'start': 0, 'end': 7}
    """
    latin = source or _named(document.source)
    rendering = english or _named(document.english or "")
    items = list(_annotations(document, latin, rendering))
    collection = _identity(latin, "collection")
    page = {"id": _identity(latin, "page"), "type": "AnnotationPage", "partOf": collection, "startIndex": 0}
    whole = {
        "@context": "http://www.w3.org/ns/anno.jsonld",
        "id": collection,
        "type": "AnnotationCollection",
        "label": "Latin text annotated with latingloss",
        "total": len(items),
        "first": page | {"items": items},
    }
    return json.dumps(whole, ensure_ascii=False, indent=indent) + "\n"


def _named(text: str) -> str:
    digest = urlsafe_b64encode(sha256(text.encode()).digest()).decode().rstrip("=")
    return f"ni:///sha-256;{digest}"


def _identity(iri: str, what: str) -> str:
    return uuid5(NAMESPACE_URL, f"{iri}#{what}").urn


def _annotations(document: Document, latin: str, rendering: str) -> Iterator[_Json]:
    for p, passage in enumerate(document.passages):
        for i, token in enumerate(passage.tokens):
            if token.words:
                yield {
                    "id": _identity(latin, f"{p}.{i}"),
                    "type": "Annotation",
                    "motivation": "describing",
                    "body": list(_bodies(token)),
                    "target": _place(latin, document.source, token),
                }
        for link in passage.links:
            yield {
                "id": _identity(latin, f"{p}.{link.latin}-{link.english}"),
                "type": "Annotation",
                "motivation": "linking",
                "body": _place(rendering, document.english or "", passage.rendering[link.english]),
                "target": _place(latin, document.source, passage.tokens[link.latin]),
            }


def _bodies(token: Token) -> Iterator[_Json]:
    gloss = " ".join(word.gloss for word in reversed(token.words) if word.gloss)
    if gloss:
        yield {"type": "TextualBody", "value": gloss, "format": "text/plain", "language": "en"}
    yield {"type": "TextualBody", "value": token.model_dump_json(exclude=_OWN), "format": "application/json"}


def _place(iri: str, text: str, token: Token | RenderingToken) -> _Json:
    quote = {
        "type": "TextQuoteSelector",
        "exact": text[token.start : token.end],
        "prefix": text[max(0, token.start - _AROUND) : token.start],
        "suffix": text[token.end : token.end + _AROUND],
    }
    position = {"type": "TextPositionSelector", "start": token.start, "end": token.end}
    return {"type": "SpecificResource", "source": iri, "selector": [position, quote]}
