"""All of Unicode as text in: offsets are right, no character is lost, no error is raised but ours."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import latingloss
from benchmarks.bad_inputs import TEXTS, kept
from latingloss.errors import LatinglossError, TextError

_ANY = st.text(st.characters(), max_size=60)  # half characters too
_LETTERS = st.text("aeiouxtlqmN\u0304\u0301\u00adæœ'-\n .", min_size=1, max_size=30)
_BAD = st.sampled_from([text for _, text in TEXTS.values() if len(text) < 300])
texts = st.lists(st.one_of(_ANY, _LETTERS, _BAD), min_size=1, max_size=3).map("".join)


@settings(max_examples=150)
@given(texts)
def test_a_text_is_annotated_whole_or_refused(text: str) -> None:
    try:
        document = latingloss.annotate(text)
    except TextError:
        halved = any("\ud800" <= c <= "\udfff" for c in text)
        assert halved or not any(c.isascii() and c.isalpha() for c in text)
    else:
        assert document.source == text
        kept(document)


@settings(max_examples=80)
@given(texts, texts)
def test_with_any_rendering_links_stay_in_range(latin: str, english: str) -> None:
    try:
        document = latingloss.annotate(latin, english)
    except TextError:
        return
    kept(document)
    assert document.english == english
    rendered = [token for passage in document.passages for token in passage.rendering]
    assert all(english[token.start : token.end] == token.text for token in rendered)
    inside = {i for token in rendered for i in range(token.start, token.end)}
    assert all(c.isspace() for i, c in enumerate(english) if i not in inside)


@settings(max_examples=150)
@given(st.lists(st.lists(st.text(st.characters(), max_size=8), max_size=5), max_size=4))
def test_any_tokens_are_taken_as_given_or_refused(sentences: list[list[str]]) -> None:
    try:
        document = latingloss.annotate_tokens(sentences)
    except TextError:
        assert any(not t.strip() or any("\ud800" <= c <= "\udfff" for c in t) for s in sentences for t in s)
    else:
        assert [[t.text for t in p.tokens] for p in document.passages] == sentences


@settings(max_examples=200)
@given(texts)
@pytest.mark.parametrize("ask", [latingloss.analyze, latingloss.inflect, latingloss.relatives, latingloss.pronounce])
def test_a_word_may_be_anything(ask: object, text: str) -> None:
    try:
        ask(text)  # type: ignore[operator]
    except LatinglossError as error:
        assert str(error)
