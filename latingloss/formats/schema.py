"""The project's own JSON, and the JSON Schema that describes it, with its version."""

from __future__ import annotations

from typing import Any

from pydantic import ValidationError

from latingloss.document import SCHEMA_VERSION, Document
from latingloss.errors import FormatError

SCHEMA_ID = f"urn:latingloss:document:{SCHEMA_VERSION}"


def json_schema() -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of a document; its `$id` carries the version.

    >>> json_schema()["$id"]
    'urn:latingloss:document:1.1'
    """
    schema = Document.model_json_schema(mode="serialization")
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "$id": SCHEMA_ID, **schema}


def write(document: Document, *, indent: int | None = None) -> str:
    """Write a document as JSON; `indent` is the spaces a level, None for one line."""
    return document.model_dump_json(indent=indent) + "\n"


def read(text: str) -> Document:
    """Read a document that `write` wrote.

    Raises `FormatError` if the text is not JSON, does not follow the schema, or follows another major version.

    >>> document = Document(source="", passages=())
    >>> read(write(document)) == document
    True
    """
    try:
        document = Document.model_validate_json(text)
    except ValidationError as error:
        first = error.errors()[0]
        where = "".join(f"[{part}]" if isinstance(part, int) else f".{part}" for part in first["loc"]).lstrip(".")
        raise FormatError(f"JSON document, {where or 'the whole'}: {first['msg']}; see json_schema()") from error
    major = SCHEMA_VERSION.partition(".")[0]
    if document.schema_version.partition(".")[0] != major:
        raise FormatError(
            f"schema_version is {document.schema_version!r}, and this latingloss reads {major}.x; "
            "write the document again with this latingloss, or read it with the one that wrote it"
        )
    return document
