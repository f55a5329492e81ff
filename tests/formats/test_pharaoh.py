"""Pharaoh links: pairs of numbers from 0, a line a passage, as Moses and eflomal write them (common practice)."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from documents import linked_documents
from hypothesis import given
from hypothesis import strategies as st

from latingloss import annotate_tokens
from latingloss.document import Document
from latingloss.errors import FormatError, InputTypeError
from latingloss.formats import pharaoh


@given(linked_documents())
def test_links_come_back(document: Document) -> None:
    text = pharaoh.write(document)
    assert re.fullmatch(r"(?:(?:[0-9]+-[0-9]+(?: [0-9]+-[0-9]+)*)?\n)*", text)
    pairs = [[(k.latin, k.english) for k in links] for links in pharaoh.read(text)]
    assert pairs == [sorted((k.latin, k.english) for k in passage.links) for passage in document.passages]


@given(st.lists(st.lists(st.tuples(st.integers(0, 10**9 - 1), st.integers(0, 99)), unique=True)))
def test_any_pairs_are_read_as_they_stand(lines: list[list[tuple[int, int]]]) -> None:
    text = "".join(" ".join(f"{a}-{b}" for a, b in pairs) + "\n" for pairs in lines)
    assert [[(k.latin, k.english) for k in links] for links in pharaoh.read(text)] == lines


def test_links_of_real_verses_have_a_line_each_and_point_at_tokens(shared: Path) -> None:
    """The 50 pairs that the aligner is measured on."""
    rows = [json.loads(line) for line in (shared / "gold" / "alignment-dev.jsonl").read_text("utf-8").splitlines()]
    latin, english = [row["latin"] for row in rows], [row["english"] for row in rows]
    links = pharaoh.read(pharaoh.write(annotate_tokens(latin, english)))
    assert len(links) == len(rows) and sum(map(len, links)) > 0
    for found, a, b in zip(links, latin, english, strict=True):
        assert all(link.latin < len(a) and link.english < len(b) for link in found)


@pytest.mark.parametrize("bad", ["0-", "-1", "a-b", "0:1", "0-1-2", "٣-٤", "0--1", "9999999999-1", "\x00"])
def test_what_is_wrong_is_said_with_its_line(bad: str) -> None:
    with pytest.raises(FormatError, match=rf"line 2: {re.escape(repr(bad))}"):
        pharaoh.read(f"0-0\n{bad}\n")


def test_only_text_is_read() -> None:
    with pytest.raises(InputTypeError, match="text must be str"):
        pharaoh.read(b"0-0")  # type: ignore[arg-type]
    assert pharaoh.read("") == []
    assert [len(links) for links in pharaoh.read("\ufeff0-0 0-0\r\n\r\n1-1")] == [1, 0, 1]
