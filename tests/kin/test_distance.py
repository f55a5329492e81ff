"""Cognate distance: properties that any text keeps, and what outside lists of kin say of it."""

import csv
import re
import unicodedata
from bisect import bisect_left, bisect_right
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import latingloss
from latingloss.kin import cognate_distance
from latingloss.kin.letters import ALPHABET, GAP, alignment_scores, self_score, weights
from latingloss.morphology.lexicon import lexemes
from latingloss.tables import read_table
from latingloss.text.orthography import plain, without_lengths

LEMMAS = [lexeme.lemma.partition("#")[0] for lexeme in lexemes()[::50]]
latin_words = st.sampled_from(LEMMAS) | st.text("abcdefghilmnopqrstuvxyāēīōū", min_size=1, max_size=12)
english_words = st.text("abcdefghijklmnopqrstuvwxyz", min_size=1, max_size=12)


def auc(near: list[float], far: list[float]) -> float:
    """Return the probability that a distance from `near` is below one from `far`, ties counting half."""
    far = sorted(far)
    above = sum(len(far) - (bisect_left(far, d) + bisect_right(far, d)) / 2 for d in near)
    return above / (len(near) * len(far))


@settings(deadline=None)
@given(st.text(max_size=30), st.text(max_size=30))
def test_any_text_has_a_distance(latin: str, english: str) -> None:
    assert 0.0 <= cognate_distance(latin, english) <= 1.0


@settings(deadline=None)
@given(latin_words)
def test_the_same_spelling_is_at_no_distance(word: str) -> None:
    assert cognate_distance(word, plain(word)) == 0.0
    assert cognate_distance(word.upper(), word) == 0.0


@settings(deadline=None)
@given(latin_words, english_words)
def test_other_spellings_are_at_some_distance(latin: str, english: str) -> None:
    assert (cognate_distance(latin, english) == 0.0) == (plain(latin) == plain(english))


@settings(deadline=None)
@given(latin_words, english_words)
def test_vowel_lengths_and_composition_do_not_matter(latin: str, english: str) -> None:
    distance = cognate_distance(latin, english)
    assert cognate_distance(without_lengths(latin), english) == distance
    assert cognate_distance(unicodedata.normalize("NFD", latin), unicodedata.normalize("NFD", english)) == distance


@settings(deadline=None)
@given(latin_words, english_words)
def test_articles_and_case_do_not_matter(latin: str, english: str) -> None:
    word = "x" + english  # no article itself
    assert cognate_distance(latin, "the " + word) == cognate_distance(latin, word.upper())


@given(st.text(ALPHABET, max_size=9), st.text(ALPHABET, max_size=9))
def test_no_alignment_beats_that_of_a_word_with_itself(one: str, other: str) -> None:
    table = weights()
    best = alignment_scores(one, other, table)[-1][-1]
    assert best <= max(self_score(one, table), self_score(other, table)) + 1e-9


def test_grimms_law_is_learned() -> None:
    """Grimm 1822 (any handbook of Germanic, such as Prokosch 1939, sections 9-18): p f, d t, g k, c h, f b."""
    table = weights("cousins")
    for latin, native in ("pf", "dt", "gc", "ch", "fb"):
        rivals = [c for c in ALPHABET if c not in "aeioux" and c not in (latin, native)]
        assert table[latin][native] > max(table[latin][c] for c in rivals if c != "z"), (latin, native)
    assert set(table) == {*ALPHABET, GAP}


@pytest.mark.parametrize(
    ("latin", "near", "far"),
    [
        ("viridis", "verdant", "green"), ("locus", "local", "place"), ("rēx", "regal", "king"),
        ("miles", "military", "soldier"), ("loca", "local", "sky"), ("caelum", "celestial", "heaven"),
        ("philosophia", "philosophy", "wisdom"), ("pater", "father", "boy"), ("scrībere", "scribe", "write"),
        ("faciō", "fiction", "make"), ("piscis", "fish", "bird"), ("nōmen", "name", "fame"), ("dēns", "tooth", "bite"),
    ],
)  # fmt: skip
def test_kin_are_nearer_than_mere_translations(latin: str, near: str, far: str) -> None:
    assert cognate_distance(latin, near) < 0.7 < cognate_distance(latin, far)


@pytest.mark.parametrize(
    ("latin", "english"),
    [("deus", "God"), ("diēs", "day"), ("multus", "much")],
)
def test_native_words_that_look_alike_are_not_near(latin: str, english: str) -> None:
    """Watkins, Dictionary of Indo-European Roots (2000): god under gheu(ə)-, day under agh-, much under meg-."""
    assert latingloss.cognate_distance(latin, english) > 0.6


@pytest.mark.parametrize(("made", "base", "english"), [("congaudeō", "gaudeō", "joy"), ("cōnsonō", "sonō", "sound")])
def test_a_word_shares_the_kin_of_its_family(made: str, base: str, english: str) -> None:
    assert latingloss.cognate_distance(base, english) < 0.65 > latingloss.cognate_distance(made, english)


def test_derivatives_of_dooge_are_near_and_his_glosses_far(shared: Path) -> None:
    """D'Ooge, Latin for Beginners (1911), the lesson vocabularies with their English derivatives."""
    path = shared / "checks" / "dooge-1911-lesson-vocabulary.tsv"
    near, far = [], []
    with path.open(encoding="utf-8") as lines:
        for row in csv.DictReader(lines, delimiter="\t"):
            derived = re.findall(r"(?<![^ ])[a-z]{3,}(?=,|$)", row["english_derivatives"].replace("-", ""))
            if not derived:
                continue
            near += [cognate_distance(row["lemma"], word) for word in derived]
            far += [cognate_distance(row["lemma"], word) for word in re.findall(r"[a-z]{4,}", row["gloss"])]
    assert len(near) > 150
    assert sum(distance < 0.5 for distance in near) / len(near) >= 0.9
    assert auc(near, far) >= 0.95


def test_expert_cognates_are_nearer_than_other_translations(shared: Path) -> None:
    """CogNet (Batsuren, Bella and Giunchiglia 2019), pairs judged by experts; string likeness has AUC 0.84."""
    path = shared / "checks" / "cognet-lat-eng-sample.tsv"
    with path.open(encoding="utf-8") as lines:
        scored = [
            (row["cognate"], latingloss.cognate_distance(row["latin"], row["english"]))
            for row in csv.DictReader(lines, delimiter="\t")
        ]
    assert auc([d for cognate, d in scored if cognate == "1"], [d for cognate, d in scored if cognate == "0"]) >= 0.9


def test_the_distances_of_the_table_are_those_worked_out() -> None:
    rows = [row for row in read_table("kin/relatives.tsv") if row[6]]
    assert len(rows) > 5000
    for lemma, _, word, *_, distance in rows[::40]:
        assert float(distance) == pytest.approx(cognate_distance(lemma.partition("#")[0], word), abs=6e-5), lemma
