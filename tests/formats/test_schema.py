"""The project's own JSON."""

from __future__ import annotations

import json
import re

import pytest
from documents import documents, linked_documents
from hypothesis import given
from hypothesis import strategies as st

from latingloss.document import SCHEMA_VERSION, Document
from latingloss.errors import FormatError
from latingloss.formats import schema


@given(st.one_of(documents(), linked_documents()))
def test_a_document_comes_back_the_same(document: Document) -> None:
    assert schema.read(schema.write(document)) == document


def test_the_schema_has_its_version_and_documents_every_object() -> None:
    found = schema.json_schema()
    assert found["$id"].endswith(f":{SCHEMA_VERSION}")
    assert found["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert all("description" in part for part in found["$defs"].values())
    assert json.loads(json.dumps(found)) == found


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{", "JSON document"),
        ('{"source": "", "passages": [{"start": -1}]}', "passages[0].start"),
        ('{"source": "", "passages": [], "extra": 1}', "extra"),
        ('{"source": "", "passages": [], "schema_version": "9.0"}', "schema_version is '9.0'"),
    ],
)
def test_what_is_wrong_is_said_with_its_place(text: str, said: str) -> None:
    with pytest.raises(FormatError, match=re.escape(said)):
        schema.read(text)
