"""Links against the hand-aligned pairs (Och and Ney 2003 for the error rate), and what must hold of any links."""

from __future__ import annotations

import json
from collections import Counter, defaultdict
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from latingloss.alignment import align
from latingloss.errors import InputTypeError, TextError
from latingloss.morphology.ranking import candidates

GOLD = Path(__file__).parents[3] / "shared" / "gold" / "alignment-dev.jsonl"
HIGHEST_AER = {"all": 5.0, "v": 4.5, "p": 8.2}  # per cent; all, verses, prayers
LEAST_PRECISION, LEAST_RECALL = 96.0, 93.5


def pairs(latin: str, english: str) -> dict[str, list[str]]:
    """Return the English words linked to each Latin word."""
    left, right = latin.split(), english.split()
    found: dict[str, list[str]] = defaultdict(list)
    for link in align(left, right):
        found[left[link.latin]].append(right[link.english])
    return dict(found)


def counted() -> dict[str, Counter[str]]:
    """Return links proposed, sure, possible and right, over all and for verses and prayers apart."""
    counts: dict[str, Counter[str]] = defaultdict(Counter)
    for line in GOLD.read_text(encoding="utf-8").splitlines():
        row = json.loads(line)
        links = {(link.latin, link.english) for link in align(row["latin"], row["english"])}
        sure, possible = ({tuple(x) for x in row[kind]} for kind in ("sure", "possible"))
        for group in ("all", row["id"][0]):
            counts[group].update(
                proposed=len(links), right=len(links & possible), found=len(links & sure), sure=len(sure)
            )
    return counts


@pytest.mark.skipif(not GOLD.exists(), reason="needs ../shared/gold/alignment-dev.jsonl")
def test_error_rate_on_hand_aligned_pairs() -> None:
    counts = counted()
    for group, highest in HIGHEST_AER.items():
        c = counts[group]
        error = 100 * (1 - (c["found"] + c["right"]) / (c["proposed"] + c["sure"]))
        assert error <= highest, f"{group}: {error:.2f}"
    c = counts["all"]
    assert 100 * c["right"] / c["proposed"] >= LEAST_PRECISION
    assert 100 * c["found"] / c["sure"] >= LEAST_RECALL


@pytest.mark.skipif(not GOLD.exists(), reason="needs ../shared/gold/alignment-dev.jsonl")
def test_confidence_is_close_to_the_share_that_is_right() -> None:
    bins: dict[bool, list[tuple[float, bool]]] = defaultdict(list)
    for line in GOLD.read_text(encoding="utf-8").splitlines():
        row = json.loads(line)
        possible = {tuple(x) for x in row["possible"]}
        for link in align(row["latin"], row["english"]):
            right = (link.latin, link.english) in possible
            bins[link.confidence >= 0.95].append((link.confidence, right))
    for links in bins.values():
        stated = sum(confidence for confidence, _ in links) / len(links)
        measured = sum(right for _, right in links) / len(links)
        assert abs(stated - measured) <= 0.06


# The conventions of the alignment guidelines, one line each; the English is ours.
@pytest.mark.parametrize(
    ("latin", "english", "word", "rendering"),
    [
        ("Ancilla aquam portat .", "The maid carries water .", "Ancilla", ["The", "maid"]),
        ("Servi reginae veniunt .", "The servants of the queen come .", "reginae", ["of", "the", "queen"]),
        ("Clamamus ad regem .", "We cry to the king .", "Clamamus", ["We", "cry"]),
        ("Clamamus ad regem .", "We cry to the king .", "ad", ["to"]),
        ("Clamamus ad regem .", "We cry to the king .", "regem", ["the", "king"]),
        ("Exaudietur vox populi .", "The voice of the people will be heard .", "Exaudietur", ["will", "be", "heard"]),
        ("Audivitque verbum .", "And he heard the word .", "Audivitque", ["And", "he", "heard"]),
        ("Ego te baptizo .", "I baptize thee .", "Ego", ["I"]),
        ("Quem vidistis , pastores ?", "Whom have ye seen , O shepherds ?", "vidistis", ["have", "ye", "seen"]),
        ("Misit servum suum .", "He sendeth his servant .", "Misit", ["He", "sendeth"]),
        ("Mecum manet .", "He remaineth with me .", "Mecum", ["with", "me"]),
    ],
)
def test_conventions_of_the_guidelines(latin: str, english: str, word: str, rendering: list[str]) -> None:
    assert pairs(latin, english)[word] == rendering


def test_auxiliary_of_a_periphrastic_verb_has_the_english_auxiliary_and_the_verb() -> None:
    # guideline 7: every Latin part to the content verb, auxiliaries to the auxiliary that matches
    found = pairs("Urbs capta est .", "The city was captured .")
    assert found["capta"] == ["captured"]
    assert found["est"] == ["was", "captured"]


def test_words_without_a_counterpart_stay_unlinked() -> None:
    assert pairs("Agricola arat .", "Yesterday !") == {}


def test_empty_sides_and_punctuation_alone() -> None:
    assert align([], []) == ()
    assert align(["Pax"], []) == ()
    assert align([], ["Peace"]) == ()
    assert align([".", "!"], ["."]) == ()


def test_wrong_input_is_named() -> None:
    with pytest.raises(InputTypeError, match="latin_tokens"):
        align("Pax vobis", ["Peace"])
    with pytest.raises(TextError, match="readings has 0 items"):
        align(["Pax"], ["Peace"], readings=[])


def test_chosen_readings_are_believed() -> None:
    latin, english = ["Malum", "edit", "."], ["He", "eats", "an", "apple", "."]
    chosen = [tuple(c for c in candidates(form)[:1]) if form.isalpha() else () for form in latin]
    links = {(k.latin, k.english) for k in align(latin, english, readings=chosen)}
    assert {(1, 0), (1, 1)} <= links


LATIN = st.sampled_from(
    [
        "Dominus",
        "dixit",
        "et",
        "populusque",
        ",",
        ".",
        "in",
        "terra",
        "magna",
        "amabitur",
        "natum",
        "est",
        "xyzzy",
        "℟",
        "12",
        "nobiscum",
        "!",
        "æternum",
    ]
)
ENGLISH = st.sampled_from(
    [
        "the",
        "Lord",
        "said",
        "and",
        "of",
        "people",
        ",",
        ".",
        "in",
        "great",
        "earth",
        "will",
        "be",
        "loved",
        "thee",
        "didst",
        "12",
        "God's",
        "-",
        "“",
        "”",
        "O",
    ]
)


@settings(max_examples=150, deadline=None)
@given(st.lists(LATIN, max_size=12), st.lists(ENGLISH, max_size=14))
def test_links_are_in_range_sorted_and_never_touch_punctuation(latin: list[str], english: list[str]) -> None:
    links = align(latin, english)
    places = [(link.latin, link.english) for link in links]
    assert places == sorted(set(places))
    assert all(any(c.isalpha() for c in latin[i]) and english[j][0].isalnum() for i, j in places)
    assert links == align(latin, english)


@settings(max_examples=100, deadline=None)
@given(st.lists(st.text(max_size=6), max_size=6), st.lists(st.text(max_size=6), max_size=6))
def test_any_text_is_taken(latin: list[str], english: list[str]) -> None:
    for link in align(latin, english):
        assert 0 <= link.latin < len(latin)
        assert 0 <= link.english < len(english)
        assert 0 <= link.confidence <= 1
