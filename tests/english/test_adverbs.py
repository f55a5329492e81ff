"""English adverbs: the words are those of any dictionary of English (common practice, no source)."""

from __future__ import annotations

import re

import pytest

from latingloss.english.adverbs import adverb, adverb_gloss
from latingloss.morphology.lexicon import lexemes


@pytest.mark.parametrize(
    ("adjective", "word"),
    [
        ("happy", "happily"),
        ("gentle", "gently"),
        ("true", "truly"),
        ("public", "publicly"),
        ("full", "fully"),
        ("tragic", "tragically"),
        ("good", "well"),
        ("fast", "fast"),
        ("ugly", "in an ugly way"),
        ("holy", "in a holy way"),
        ("warlike", "in a warlike way"),
        ("following", "next"),
        ("of gold", "in the manner of gold"),
        ("by chance", "by chance"),
        ("able to feel", "in a way that is able to feel"),
    ],
)
def test_adverbs(adjective: str, word: str) -> None:
    assert adverb(adjective) == word


def test_words_come_before_phrases() -> None:
    assert adverb_gloss("warlike; fierce") == "fiercely; in a warlike way"


def test_no_adverb_of_the_lexicon_is_malformed() -> None:
    """None doubles an ending, has `a` before a vowel, or ends in -lily as no English word does."""
    malformed = re.compile(r"\ba [aeiou](?!ni|se|ne\b)|lily\b|lyly|ically?ly|yly\b")
    wrong = {x.lemma: x.gloss for x in lexemes() if x.upos == "ADV" and malformed.search(x.gloss)}
    assert not wrong
