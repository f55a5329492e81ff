"""The benchmarks' own arithmetic; what they measure is in `benchmarks/`."""

import json
from pathlib import Path

import pytest

import latingloss
from benchmarks.calibration import calibration_error, errors_caught
from benchmarks.conventions import convention
from benchmarks.figures import Figure, as_json, markdown
from benchmarks.gate import GATED, read_baseline, regressions
from benchmarks.gold import GoldWord
from benchmarks.lemmas import Miss
from benchmarks.sample import relatives, words
from benchmarks.sources import Sources, tool

BASELINE = {"words: lemma": 90.0, "alignment: error rate": 5.0}


def test_a_loss_beyond_the_tolerance_is_a_regression_in_either_direction() -> None:
    worse = [Figure("words: lemma", 89.6, "%"), Figure("alignment: error rate", 5.4, "%", "<= 9")]
    assert len(regressions(worse, BASELINE)) == 2


def test_a_small_loss_or_a_gain_is_none() -> None:
    near = [Figure("words: lemma", 89.7, "%"), Figure("alignment: error rate", 3.0, "%", "<= 9")]
    assert regressions(near, BASELINE) == []


def test_a_figure_that_is_not_measured_any_more_is_a_regression() -> None:
    left = [Figure("words: lemma", None, "%")]
    assert regressions(left, BASELINE) == [
        "words: lemma: 90.0 before, not measured now",
        "alignment: error rate: 5.0 before, not measured now",
    ]


def test_the_baseline_has_accuracy_only() -> None:
    assert {name.partition(": ")[0] for name in read_baseline()} == set(GATED)


def test_calibration_error_by_hand() -> None:
    # one bin says 0.95 and is right half the time, one says 0.25 and is right half the time: mean gap 0.35
    assert calibration_error([0.95, 0.95, 0.25, 0.25], [True, False, True, False]) == pytest.approx(0.35)
    assert calibration_error([1.0, 1.0], [True, True]) == 0


def test_errors_caught_by_hand() -> None:
    confidence = [0.1, 0.2, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9]
    right = [False, False, False, True, True, True, True, True, True, True]
    assert errors_caught(confidence, right, share=0.2) == pytest.approx(2 / 3)


def test_figures_print_with_aim_and_without_value() -> None:
    figures = [
        Figure("speed: align", 320.0, "pairs/s", ">= 300"),
        Figure("speed: other", None, "x", ">= 2", "why | not"),
    ]
    page = markdown(figures, {"machine": "one"})
    assert "| align | 320 | pairs/s | >= 300 | yes |  |" in page
    assert "| other | not measured | x | >= 2 |  | why \\| not |" in page
    rows = json.loads(as_json(figures, {"machine": "one"}))["figures"]
    assert [row["reached"] for row in rows] == [True, None]


@pytest.mark.parametrize(
    ("gold", "ours", "number", "parts", "kind"),
    [
        ("inlumino", "illumino", None, ("VERB", "VERB"), "spelling"),
        ("intelligibilis", "intellegibilis", "Sing", ("ADJ", "ADJ"), "spelling"),
        ("ceterus", "ceteri", "Plur", ("ADJ", "ADJ"), "number"),
        ("subiectum", "subiectus", "Sing", ("NOUN", "ADJ"), "own lemma"),
        ("sapiens", "sapio", "Sing", ("ADJ", "VERB"), "own lemma"),
        ("fortis", "fortiter", None, ("ADV", "ADV"), "own lemma"),
        ("sive", "seu", None, ("CCONJ", "CCONJ"), "short form"),
        ("sui", "se", None, ("PRON", "PRON"), "closed class"),
        # other words, however alike: a name, an oblique case, two nouns, a number written like a pronoun
        ("moses", "moyses", "Sing", ("PROPN", "PROPN"), None),
        ("re", "res", "Sing", ("NOUN", "NOUN"), None),
        ("medica", "medicus", "Sing", ("NOUN", "NOUN"), None),
        ("ii", "is", None, ("NUM", "DET"), None),
        ("porta", "portus", "Sing", ("NOUN", "NOUN"), None),
        ("sui", "suus", "Sing", ("PRON", "DET"), None),
    ],
)
def test_a_convention_is_told_from_another_word(
    gold: str, ours: str, number: str | None, parts: tuple[str, str], kind: str | None
) -> None:
    # headwords as the school dictionaries have them: common practice, no source
    assert convention(gold, ours, number=number, parts=parts) == kind


def test_a_miss_goes_to_the_first_cause_whose_rule_holds() -> None:
    word = latingloss.annotate("seu").passages[0].tokens[0].words[0]
    gold = GoldWord("seu", "sive", "CCONJ", {}, word, True)
    assert Miss(gold, "siue", "seu", ("siue",)).cause == "wrong word chosen"
    assert Miss(gold, "siue", "seu").cause == "convention, short form"
    assert Miss(gold._replace(split_alike=False), "siue", "seu").cause == "split otherwise"
    assert Miss(gold._replace(lemma="calendar"), "calendar", "seu").cause == "placeholder"
    guessed = gold._replace(form="Kal.", word=word.model_copy(update={"guessed": True}))
    assert Miss(guessed, "kalendae", "kal.").cause == "abbreviation"
    assert Miss(guessed._replace(form="xyzus"), "uox", "xyzus").cause == "unknown word"
    assert Miss(gold, "uox", "seu").cause == "our lemma differs"


def test_a_sample_is_drawn_from_the_lexicon_and_can_be_drawn_again() -> None:
    for sample in (words, relatives):
        lines = list(sample(7, size=20))
        assert len(lines) == 21 and lines == list(sample(7, size=20)) != list(sample(8, size=20))


def test_the_scoring_tools_are_imported_from_where_they_lie(shared: Path) -> None:
    assert tool(Sources(shared), "words").edit("abc", "abd") == 1
    with pytest.raises(SystemExit, match="--shared"):
        tool(Sources(shared / "checks"), "words")
