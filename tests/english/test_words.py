"""Base forms: modern inflection, and the archaic forms of old Bibles and prayer books.

The archaic paradigms (thou -est, he -eth; art, hast, dost, shalt, wilt) are those of Lowth, A Short Introduction
to English Grammar (1762), chapter on verbs; from memory.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss.english.words import base_forms


@pytest.mark.parametrize(
    ("word", "base"),
    [
        ("cities", "city"), ("loved", "love"), ("stopped", "stop"), ("children", "child"), ("went", "go"),
        ("holiest", "holy"), ("praying", "pray"), ("feet", "foot"), ("were", "be"), ("borne", "bear"),
    ],
)  # fmt: skip
def test_modern_forms(word: str, base: str) -> None:
    assert base in base_forms(word)


@pytest.mark.parametrize(
    ("word", "base"),
    [
        ("lovest", "love"), ("loveth", "love"), ("lovedst", "love"), ("sittest", "sit"), ("taketh", "take"),
        ("crieth", "cry"), ("art", "be"), ("hast", "have"), ("hath", "have"), ("dost", "do"), ("didst", "do"),
        ("shalt", "shall"), ("wilt", "will"), ("canst", "can"), ("saith", "say"), ("spake", "speak"),
        ("brethren", "brother"), ("unto", "to"),
    ],
)  # fmt: skip
def test_archaic_forms(word: str, base: str) -> None:
    assert base_forms(word)[0] == base


@pytest.mark.parametrize("word", ["thou", "thee", "ye", "you"])
def test_second_person_is_one_word(word: str) -> None:
    assert base_forms(word) == ("you",)


@pytest.mark.parametrize("word", ["thy", "thine", "your"])
def test_second_person_possessive_is_one_word(word: str) -> None:
    assert base_forms(word) == ("your",)


def test_possessive_mark_is_left_off_and_capitals_do_not_matter() -> None:
    assert base_forms("God’s") == base_forms("god") == ("god",)


def test_words_that_only_look_inflected_stay() -> None:
    for word in ("this", "his", "Moses", "forest", "less", "unless"):
        assert base_forms(word)[0] == word.lower()


@given(st.text(min_size=1, max_size=12))
def test_never_empty_and_stable(word: str) -> None:
    forms = base_forms(word)
    assert forms
    assert forms == base_forms(word)
    assert len(set(forms)) == len(forms)
