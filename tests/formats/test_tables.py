"""CSV and TSV: read by any reader of tables, and the tokens come back."""

from __future__ import annotations

import csv
import io

import pytest
from documents import documents
from hypothesis import given
from hypothesis import strategies as st

from latingloss import annotate
from latingloss.document import Document
from latingloss.errors import FormatError, OptionError
from latingloss.formats import tables


@given(documents(), st.sampled_from([",", "\t"]))
def test_tokens_come_back(document: Document, separator: str) -> None:
    back = tables.read(tables.write(document, separator=separator), separator=separator)
    kept = [passage.tokens for passage in document.passages if passage.tokens]
    for one, other in zip(kept, back, strict=True):
        for a, b in zip(one, other, strict=True):
            assert (a.text, a.start, a.end, a.kind, a.emphasis) == (b.text, b.start, b.end, b.kind, b.emphasis)
            assert [(w.form, w.lemma, w.upos, w.features, w.gloss) for w in a.words] == [
                (w.form, w.lemma, w.upos, w.features, w.gloss) for w in b.words
            ]


def test_every_row_is_as_wide_as_the_header_and_lines_end_as_rfc_4180_says() -> None:
    text = tables.write(annotate('Lux, "lucet"; populusque\nvigilat.', "Light shines; and the people\nwatch."))
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    assert {len(row) for row in rows} == {18}
    assert text.count("\r\n") == len(rows) + 1
    assert [row["word"] for row in rows if row["text"] == "populusque"] == ["1", "2"]


@pytest.mark.parametrize(
    "text", ["a\r\nx,y\r\n", tables.write(annotate("Lux.")).replace(",word,", ",wort,"), 'h\r\n"x']
)
def test_what_is_wrong_is_said_with_its_line(text: str) -> None:
    with pytest.raises(FormatError, match="table, line 2"):
        tables.read(text)


def test_other_separators_are_refused() -> None:
    with pytest.raises(OptionError, match="give ',' for CSV"):
        tables.write(annotate("Lux."), separator=";")
