"""Difficulty: in range, monotone in each part, and told in words that are true."""

import csv
import random
from itertools import pairwise
from math import exp
from statistics import mean

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss import cognate_distance, pronounce
from latingloss.difficulty.score import difficulty, known_relatives, shipped_weights
from latingloss.difficulty.shape import clusters, crowding, ways_of, ways_to_read
from latingloss.kin.relations import KNOWN_ZIPF
from latingloss.morphology.lexicon import find, lexemes
from latingloss.morphology.ranking import candidates
from latingloss.pronunciation import syllable_count

PARTS = ("frequency", "length", "cognate", "shape", "clusters", "readings")
SIGNS = (-1, 1, 1, 1, 1, 1)
WORDS = str.split("et non homo urbs gratia misericordia ovis agricola tulit fecerunt innumerabilibus sol vox xyzzyq")


def score_of(form):
    return difficulty(form, candidates(form)[0])


@pytest.fixture(scope="module")
def sample():
    """Scores of 400 lemmas of the lexicon, drawn blindly."""
    drawn = random.Random(20261130).sample(lexemes(), 400)
    return [score_of(x.lemma.partition("#")[0]) for x in drawn]


@pytest.mark.parametrize("word", WORDS)
def test_a_score_is_in_range_and_is_its_parts(word):
    found = score_of(word)
    assert tuple(p.name for p in found.parts) == PARTS
    assert 0 <= found.score <= 1
    assert found.score == pytest.approx(1 / (1 + exp(-1.6 * sum(p.effect for p in found.parts))), abs=1e-3)
    for part in found.parts:
        assert part.effect == pytest.approx(shipped_weights()[part.name].effect(part.value), abs=2e-3)


def test_what_is_rarer_longer_less_alike_and_farther_from_its_lemma_is_harder(sample):
    """Signs after the British Council's Knowledge-based Vocabulary Lists, as the weights' table says."""
    found = [([s * p.value for s, p in zip(SIGNS, d.parts, strict=True)], d.score) for d in sample]
    dominated = 0
    for values, score in found:
        for others, lower in found:
            if values != others and all(a >= b for a, b in zip(values, others, strict=True)):
                dominated += 1
                assert score >= lower
    assert dominated > 500  # the check is not empty


def test_each_part_counts(sample):
    for name, sign in zip(PARTS, SIGNS, strict=True):
        weight = shipped_weights()[name]
        assert weight.deviation > 0 and weight.weight * sign > 0
        values = sorted({p.value for d in sample for p in d.parts if p.name == name})
        assert all(sign * weight.effect(a) < sign * weight.effect(b) for a, b in pairwise(values))


@pytest.mark.parametrize(
    ("easier", "harder"),
    [("via", "angiportus"), ("dico", "praedestinavisti"), ("familia", "supellex"), ("laudat", "laudaverunt")],
)
def test_plain_cases(easier, harder):
    assert score_of(easier).score < score_of(harder).score


# Bennett, New Latin Grammar (1918), 4, words divided into syllables, and 3, u consonantal after ng, q and s.
@pytest.mark.parametrize(
    "divided",
    str.split(
        "vo-lat ge-rit pe-rit a-dest vit-ta mis-sus ma-gis-ter dig-nus mon-strum sis-te-re a-gris vo-lu-cris pa-tris"
        " ab-est ob-la-tus lin-gua san-guis sua-vis aes-tas cau-sa ser-vus sil-va vul-nus in-vi-a con-ven-tus po-ë-ta"
        " jam ju-gum ma-jor"
    ),
)
def test_syllables_are_counted_as_bennett_divides(divided):
    assert syllable_count(divided.replace("-", "")) == divided.count("-") + 1


def test_syllables_are_those_of_the_pronunciation():
    drawn = [x.lemma.partition("#")[0] for x in random.Random(4).sample(lexemes(), 400)]
    wrong = [w for w in drawn if syllable_count(w) != len(pronounce(w).syllables)]
    assert len(wrong) <= 4, wrong


@pytest.mark.parametrize("word", WORDS)
def test_reasons_tell_the_numbers(word):
    frequency, length, cognate, _, clustered, readings = score_of(word).parts
    assert frequency.reason.split(":")[0] in ("very common", "common", "uncommon", "rare")
    assert length.reason.startswith(f"{len(word)} letters")
    assert (cognate.reason == "no English relative that a reader knows") == (cognate.value == 1.0)
    assert readings.reason == (f"can be read in {readings.value:.0f} ways" if readings.value > 1 else "")
    assert clustered.value or not clustered.reason


# Allen and Greenough, New Latin Grammar (1903), 3-4: ch, ph, th are single sounds, x is cs, qu is one; 11 on doubled
@pytest.mark.parametrize(
    ("form", "found", "behind"),
    [
        ("terra", (), 0), ("stēlla", ("st",), 1), ("aqua", (), 0), ("philosophus", (), 0), ("chorus", (), 0),
        ("mōnstrāvit", ("nstr",), 3), ("prōmptus", ("pr", "mpt"), 3), ("dextra", ("xtr",), 3), ("lēx", (), 0),
        ("silva", ("lv",), 1), ("afflīctus", ("ffl", "ct"), 2), ("diphthongus", ("phth", "ng"), 2),
    ],
)  # fmt: skip
def test_clusters_are_consonants_together(form, found, behind):
    assert clusters(form) == found
    assert crowding(found) == behind


# Bennett, New Latin Grammar (1918), 20-49: cases alike in the paradigms of porta, bellum, manus, diēs, rēx, fortis
@pytest.mark.parametrize(
    ("form", "ways"),
    [
        ("portae", {("Gen", "Sing"), ("Dat", "Sing"), ("Nom", "Plur")}),
        ("bella", {("Nom", "Plur"), ("Acc", "Plur")}), ("regem", {("Acc", "Sing")}),
        ("regibus", {("Dat", "Plur"), ("Abl", "Plur")}), ("rosis", {("Dat", "Plur"), ("Abl", "Plur")}),
    ],
)  # fmt: skip
def test_ways_to_read_are_the_cases_that_look_alike(form, ways):
    seen = {(c.features.get("Case"), c.features.get("Number")) for c in candidates(form) if c.prior > 0.01}
    assert ways <= seen
    assert len(ways) <= ways_of(form) <= len(ways) + 1  # a vocative or another word besides


def test_what_a_reading_never_is_does_not_count():
    assert ways_to_read([c for c in candidates("rosae") if c.prior < 0.01]) == 0
    assert ways_of("et") == ways_of("regem") == 1


@given(st.text("abcdefghijklmnopqrstuvxyzāēīōū", max_size=14))
def test_any_word_has_a_shape(form):
    assert all(run in form for run in clusters(form))
    assert 0 <= crowding(clusters(form)) <= 2 * len(form)


def test_known_relatives_are_nearest_first():
    for lemma in ("aqua", "māter", "scrībō", "portō"):
        found = known_relatives(find(lemma)[0])
        assert found and [d for d, _ in found] == sorted(d for d, _ in found)
        assert all(
            d == pytest.approx(cognate_distance(lemma, r.word), abs=6e-5) and r.zipf >= KNOWN_ZIPF for d, r in found
        )


# how English Bibles write them: King James Version (1611)
@pytest.mark.parametrize(
    ("latin", "english"),
    [("David", "David"), ("Moyses", "Moses"), ("Ierusalem", "Jerusalem"), ("Pharao", "Pharaoh"), ("Ioseph", "Joseph")],
)
def test_a_name_is_recalled_by_the_english_name(latin, english):
    cognate = next(part for part in score_of(latin).parts if part.name == "cognate")
    assert cognate.reason == f"in English “{english}”" and cognate.value < 0.6


def test_words_with_an_english_derivative_are_nearer_to_english(shared):
    """D'Ooge, Latin for Beginners (1911), names English derivatives of some words of his lesson vocabularies."""
    path = shared / "checks" / "dooge-1911-lesson-vocabulary.tsv"
    with path.open(encoding="utf-8") as lines:
        rows = [r for r in csv.DictReader(lines, delimiter="\t") if r["lemma"].isalpha()]
    given, none = [], []
    for row in rows:
        found = score_of(row["lemma"])
        (given if row["english_derivatives"] else none).append(found.parts[2].value)
    assert len(given) > 100 and len(none) > 100
    assert mean(none) - mean(given) > 0.2
