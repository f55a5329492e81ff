"""Interlinear glossed text, by the Leipzig Glossing Rules of 2015 (rule numbers beside the checks)."""

from __future__ import annotations

import re
import unicodedata

import pytest
from documents import documents
from hypothesis import given

from latingloss import annotate, paradigms
from latingloss.document import Document
from latingloss.formats import interlinear
from latingloss.formats.interlinear import ABBREVIATIONS, labels


def _starts(line: str) -> set[int]:
    """Return where words start, in columns of the screen."""
    return {m.start() for m in re.finditer(r"\S+", "".join(c for c in line if not unicodedata.combining(c)))}


@given(documents())
def test_every_gloss_starts_where_its_word_starts(document: Document) -> None:  # rule 1
    for passage in document.passages:
        lines = interlinear.write(document.model_copy(update={"passages": (passage,)})).split("\n")
        if passage.tokens and not any(unicodedata.combining(t.text[0]) for t in passage.tokens):
            assert _starts(lines[1]) <= _starts(lines[0])
            assert len(lines[1].split()) >= sum(len(t.words) > 0 for t in passage.tokens[:1])


@pytest.mark.parametrize("lemma", ["rosa", "bonus", "ego", "amō", "hortor", "sum", "bene"])
def test_every_form_has_labels_of_the_list_only(lemma: str) -> None:
    for paradigm in paradigms(lemma):
        for cell in paradigm.forms:
            for label in labels(paradigm.upos, cell.features):
                parts = re.findall(r"[123]|[A-Z]+", label)  # rule 5: person and number unparted, 1PL
                assert parts and all(part in ABBREVIATIONS for part in parts), label


@pytest.mark.parametrize(
    ("latin", "gloss"),
    [
        ("Populusque vigilat.", "people.NOM.SG=and stay.awake.PRS.IND.ACT.3SG"),  # rules 2 and 4
        ("Laudamus.", "praise.PRS.IND.ACT.1PL"),  # rule 5
    ],
)
def test_glosses(latin: str, gloss: str) -> None:
    line = interlinear.write(annotate(latin)).split("\n")[1]
    lexical = re.compile(r"[a-z.]+?(?=\.[A-Z0-9]|=|$)")
    assert re.split(lexical, " ".join(line.split())) == re.split(lexical, gloss)


def test_the_rendering_is_the_third_line_in_quotation_marks() -> None:
    text = interlinear.write(annotate("Stellae lucent.", "The stars shine."))
    assert text.split("\n")[2] == "‘The stars shine.’"
