"""English relatives: what is offered, in which order, and what an outside list of derivatives says of it."""

import csv
import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss.document import Relative
from latingloss.kin import english_zipf, relatives
from latingloss.kin.correspondences import english_shapes, english_stems, letters
from latingloss.kin.learning import learn_weights
from latingloss.kin.relations import KNOWN_ZIPF, natives, relations
from latingloss.morphology.lexicon import Lexeme, find, lexemes
from latingloss.tables import read_table
from latingloss.text.orthography import without_lengths


def words(lemma: str, upos: str | None = None) -> list[str]:
    return [relative.word for relative in relatives(lemma, upos=upos)]


def test_better_known_and_more_alike_comes_first() -> None:
    water = words("aqua")
    assert {"aquatic", "aquarium"} <= set(water)
    assert set(water[:2]) == {"aquatic", "aquarium"}
    assert water.index("aquavit") > 1


def test_what_the_lexicon_lists_counts_at_once() -> None:
    lexeme = find("rosa")[0]._replace(kin="rosy; ~newly; freshword")
    found = {relation.word: relation.kind for relation in relations(lexeme)}
    assert found["newly"] == "shared root"
    assert found["freshword"] == "family"


def test_everything_the_lexicon_lists_is_offered() -> None:
    for lexeme in lexemes():
        listed = {word.removeprefix("~") for word in lexeme.kin.split("; ") if word}
        assert listed <= set(words(lexeme.lemma, lexeme.upos)), lexeme.lemma


def test_lengths_may_be_left_out_and_unknown_lemmas_have_none() -> None:
    assert set(words("lībertās")) == set(words("libertas"))
    assert relatives("qqqq") == ()
    assert relatives("") == ()


@given(st.sampled_from(lexemes()))
def test_relatives_are_distinct_and_round_trip(lexeme: Lexeme) -> None:
    found = relatives(without_lengths(lexeme.lemma))
    assert len({relative.word for relative in found}) == len(found)
    assert all(Relative.model_validate_json(relative.model_dump_json()) == relative for relative in found)


@given(st.text(max_size=20))
def test_any_text_may_be_asked(text: str) -> None:
    assert isinstance(relatives(text), tuple)
    assert all(stem.isalpha() and letters(text).startswith(stem) for stem in english_stems(text))
    assert 0 < english_zipf(text) < 8


def test_enough_lemmas_have_a_relative() -> None:
    assert sum(bool(relations(lexeme)) for lexeme in lexemes()) >= 4000


def test_rows_of_the_table_are_whole() -> None:
    kinds = {"borrowed", "through French", "family", "shared root"}
    for _, _, word, kind, chain, alike, distance in read_table("kin/relatives.tsv"):
        assert kind in kinds
        assert not chain or chain.endswith(f"> {word}")
        assert 0 <= float(alike) <= 1
        assert bool(distance) == (english_zipf(word) >= KNOWN_ZIPF)


def test_refused_words_are_not_offered() -> None:
    lemmas = {lexeme.spelled for lexeme in lexemes()}
    for lemma, word, reason in read_table("kin/refused.tsv"):
        assert lemma in lemmas and reason
        assert word not in words(lemma), (lemma, word)


def test_drifted_words_are_among_the_relatives() -> None:
    every = {(lexeme.lemma.partition("#")[0], r.word) for lexeme in lexemes() for r in relations(lexeme)}
    for lemma, word, warning in read_table("kin/drift.tsv"):
        assert (lemma, word) in every
        assert warning
    assert "courage" in {r.word: r for r in relatives("virtūs")}["virtue"].drift


def test_cousins_are_native_words_and_among_the_relatives() -> None:
    every = {(lexeme.lemma, lexeme.upos): {r.word: r.kind for r in relations(lexeme)} for lexeme in lexemes()}
    for lemma, upos, listed in read_table("kin/cousins.tsv"):
        for word in listed.split(" "):
            assert every[lemma, upos].get(word) == "shared root", (lemma, word)


# Fortson, Indo-European Language and Culture (2004), chapter 15: native English words that Grimm's law explains
@pytest.mark.parametrize("word", "foot father three horn hound heart tooth ten knee hundred brother bear".split())
def test_native_words_are_known_as_such(word: str) -> None:
    assert word in natives()


def test_borrowed_words_are_not_native() -> None:
    """Baugh and Cable, A History of the English Language, on the words taken from Latin before 1066 and from French."""
    assert natives().isdisjoint("street wall wine cheese mile altar candle school charity justice joy uncle".split())


def test_zipf_values_fall_as_words_get_rarer() -> None:
    values = [english_zipf(word) for word in ("the", "water", "aquatic", "stramineous")]
    assert values == sorted(values, reverse=True)


@pytest.mark.parametrize(
    ("lemma", "english"),
    [
        ("lībertās", "liberty"), ("nātiō", "nation"), ("gloria", "glory"), ("vīsibilis", "visible"),
        ("necessārius", "necessary"),
        ("prūdentia", "prudence"), ("mittō", "mission"),
        ("longitūdō", "longitude"), ("glōriōsus", "glorious"), ("testimōnium", "testimony"), ("nātūra", "nature"),
    ],
)  # fmt: skip
def test_regular_endings(lemma: str, english: str) -> None:
    """Greenough and Kittredge, Words and their Ways in English Speech (1901), chapter 14."""
    assert english in {shape for lexeme in find(lemma) for shape in english_shapes(lexeme)}


def test_learning_finds_a_change_of_letters() -> None:
    pairs = [("pater", "fater"), ("pes", "fet"), ("plen", "ful"), ("porc", "farou"), ("pisc", "fis"), ("pecu", "fee")]
    table = learn_weights(pairs)
    assert table["p"]["f"] > table["p"]["p"]


def test_derivatives_of_dooge_are_found(shared: Path) -> None:
    """D'Ooge, Latin for Beginners (1911), the lesson vocabularies: the derivatives printed after the words."""
    path = shared / "checks" / "dooge-1911-lesson-vocabulary.tsv"
    asked = found = 0
    with path.open(encoding="utf-8") as lines:
        for row in csv.DictReader(lines, delimiter="\t"):
            offered = {stem for word in words(row["lemma"]) for stem in english_stems(word)}
            if not find(row["lemma"]):
                continue
            for word in re.findall(r"(?<![^ ])[a-z]{3,}(?=,|$)", row["english_derivatives"].replace("-", "")):
                asked += 1
                found += not offered.isdisjoint(english_stems(word))
    assert asked > 150
    assert found / asked >= 0.75
