"""CoNLL-U: the rules of https://universaldependencies.org/format.html, and nothing lost on the way and back."""

from __future__ import annotations

import gzip
import re
import unicodedata
from io import StringIO
from pathlib import Path
from tempfile import NamedTemporaryFile

import pytest
from documents import documents, linked_documents
from hypothesis import given, settings
from hypothesis import strategies as st

from latingloss import annotate
from latingloss.document import Document, Token
from latingloss.errors import FormatError
from latingloss.formats import conllu


def _carried(token: Token) -> tuple[object, ...]:
    words = [(w.form, w.lemma, w.upos, w.features, w.gloss, w.marked_form, w.guessed) for w in token.words]
    return token.text, token.start, token.end, words


@given(documents())
def test_tokens_offsets_and_analyses_come_back(document: Document) -> None:
    back = conllu.read(conllu.write(document))
    kept = [passage for passage in document.passages if passage.tokens]
    if kept:
        assert back.source == document.source
    for one, other in zip(kept, back.passages, strict=True):
        assert [_carried(t) for t in one.tokens] == [_carried(t) for t in other.tokens]
        assert [t.kind for t in one.tokens] == [t.kind for t in other.tokens]
        for a, b in zip(one.tokens, other.tokens, strict=True):
            assert (a.difficulty and a.difficulty.score) == pytest.approx(b.difficulty and b.difficulty.score)
            assert [w.confidence for w in a.words] == pytest.approx([w.confidence for w in b.words], abs=1e-5)


@given(linked_documents())
def test_renderings_and_links_come_back(document: Document) -> None:
    back = conllu.read(conllu.write(document))
    assert [p.links for p in back.passages] == [p.links for p in document.passages]
    for one, other in zip(document.passages, back.passages, strict=True):
        assert len(one.rendering) == len(other.rendering)
        assert all(back.english and back.english[t.start : t.end] == t.text for t in other.rendering)


@given(documents())
def test_the_format_is_kept(document: Document) -> None:
    text = conllu.write(document)
    assert text == unicodedata.normalize("NFC", text)  # "encoded in UTF-8 ... normalized to NFC"
    assert "\r" not in text
    assert not text or text.endswith("\n\n")  # "blank lines marking sentence boundaries"
    for block in text.split("\n\n")[:-1]:
        comments = [line for line in block.split("\n") if line.startswith("#") and "\t" not in line]
        rows = [line.split("\t") for line in block.split("\n")[len(comments) :]]
        assert any(line.startswith("# sent_id = ") for line in comments)
        assert all(len(row) == 10 and all(cell for cell in row) for row in rows)
        assert all(not re.search(r"\s", cell) for row in rows for k, cell in enumerate(row) if k not in (1, 2, 9))
        assert [row[0] for row in rows if "-" not in row[0]] == [
            str(i) for i in range(1, 1 + sum("-" not in r[0] for r in rows))
        ]
        assert next(line for line in comments if line.startswith("# text = ")) == "# text = " + _spelled(rows)


def _spelled(rows: list[list[str]]) -> str:
    """Return the text as FORM and SpaceAfter spell it, words within a range left out."""
    text, last = "", 0
    for row in rows:
        first, _, end = row[0].partition("-")
        if int(first) > last:
            text += row[1] + ("" if "SpaceAfter=No" in row[9].split("|") else " ")
        last = max(last, int(end or first)) if end or int(first) > last else last
    return text.strip(" ")


@given(st.one_of(documents(), linked_documents()))
@settings(max_examples=30)
def test_the_validator_of_universal_dependencies_accepts_it(document: Document) -> None:
    """The validator of UD (PyPI udtools), level 2: format, tree and features whatever the text."""
    validator = pytest.importorskip("udtools.validator", reason="needs the validator of UD: pip install udtools")
    text, said = conllu.write(document), StringIO()
    with NamedTemporaryFile("w", suffix=".conllu", encoding="utf-8", newline="") as file:
        file.write(text or conllu.write(annotate("Lux.")))
        file.flush()
        state = validator.Validator(lang="la", level=2, output=said, max_store=10).validate_files([file.name])
    assert state.passed(), said.getvalue()


def test_the_tree_says_nothing_of_the_parse() -> None:
    rows = [line.split("\t") for line in conllu.write(annotate("Nunc stellae lucent.")).splitlines() if "\t" in line]
    assert [row[6:9] for row in rows] == [["0", "root", "_"]] + [["1", "dep", "_"]] * 3


def test_an_enclitic_is_a_range() -> None:
    rows = [
        line.split("\t")
        for line in conllu.write(annotate("Populusque vigilat.")).splitlines()
        if line and line[0] != "#"
    ]
    assert [(row[0], row[1]) for row in rows[:3]] == [("1-2", "Populusque"), ("1", "Populus"), ("2", "que")]
    assert rows[0][2:9] == ["_"] * 7  # "all fields except ID, FORM and MISC are underscores"


@pytest.mark.parametrize("name", ["learn/circse-dev", "learn/llct-dev", "check/perseus-train"])
def test_a_treebank_is_read_whole(shared: Path, name: str) -> None:
    with gzip.open(shared / "treebanks" / f"{name}.conllu.gz", "rt", encoding="utf-8") as lines:
        text = "".join(line for _, line in zip(range(20_000), lines, strict=False)).rpartition("\n\n")[0] + "\n\n"
    document = conllu.read(text)
    rows = [line.split("\t") for line in text.split("\n") if line and line[0] != "#"]
    wordless = ("PUNCT", "SYM"), ("NumForm=Roman", "NumForm=Digit")  # marks, and numerals of which nothing more is said
    words = [row for row in rows if row[0].isdecimal() and row[3] not in wordless[0] and row[5] not in wordless[1]]
    read = [word for passage in document.passages for token in passage.tokens for word in token.words]
    assert len(document.passages) == len(re.findall(r"^# sent_id", text, re.MULTILINE))
    assert [(w.form, w.lemma, w.upos) for w in read] == [(row[1], row[2], row[3]) for row in words]
    again = conllu.read(conllu.write(document))
    assert [p.tokens for p in again.passages] == [p.tokens for p in document.passages]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1\tlux\n", "line 1: 2 columns"),
        ("x\tlux" + "\t_" * 8, "line 1, column ID"),
        ("# c\n1\t" + "\t_" * 8, "line 2, column FORM"),
        ("1\tlux\t_\t_\t_\tCase" + "\t_" * 4, "line 1, column FEATS"),
        ("2\tlux" + "\t_" * 8, "line 1, column ID: word 1 expected"),
        ("1-2\tluxque" + "\t_" * 8 + "\n1\tlux" + "\t_" * 8, "line 1, column ID"),
        ("1\tlux" + "\t_" * 7 + "\tDifficulty=hard", "line 1, column MISC"),
        ("1-999999999\tluxque" + "\t_" * 8 + "\n1\tlux" + "\t_" * 8, "line 1, column ID"),
        ("9" * 5000 + "\tlux" + "\t_" * 8, "line 1, column ID"),
        ("# text_en = a\n# tokens_en = 0:1\n1\tlux" + "\t_" * 7 + "\tAlign=" + "9" * 5000, "line 3, column MISC"),
        ("# text_en =  a\n# tokens_en = 0:1\n1\tlux" + "\t_" * 8, "before line 3"),
        ("# text_en = a\n# tokens_en = 0:9\n1\tlux" + "\t_" * 8, "before line 3"),
        ("# text_en = a\n# tokens_en = 0:1\n1\tlux" + "\t_" * 7 + "\tAlign=2", "line 3, column MISC"),
    ],
)
def test_what_is_wrong_is_said_with_its_place(text: str, said: str) -> None:
    with pytest.raises(FormatError, match=re.escape(said)):
        conllu.read(text)
