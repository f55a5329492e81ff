"""Analysis: every form that inflection makes is found again, and forms outside the lexicon are guessed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

import latingloss
from latingloss.errors import InputTypeError, TextError
from latingloss.morphology.analysis import analyses
from latingloss.morphology.inflection import forms_of
from latingloss.morphology.lexicon import lexemes
from latingloss.morphology.ranking import candidates
from latingloss.text.orthography import plain

LEXEMES = lexemes()


@given(st.integers(0, len(LEXEMES) - 1))
def test_every_form_of_a_lexeme_is_analysed_as_that_cell(number: int) -> None:
    lexeme = LEXEMES[number]
    for form, features in forms_of(lexeme):
        found = [a.features for a in analyses(plain(form)) if a.lexeme == number]
        assert features in found, (lexeme.lemma, form, features)


# Bennett, New Latin Grammar (1918), section 116: forms shortened from -avi, -evi, -ovi, -ivi
@pytest.mark.parametrize(
    ("form", "lemma"),
    [
        ("amāsti", "amō"), ("amāvisti", "amō"), ("amārunt", "amō"), ("amāsse", "amō"), ("dēlēsti", "dēleō"),
        ("dēlērunt", "dēleō"), ("nōsti", "nōscō"), ("nōsse", "nōscō"), ("audīsti", "audiō"), ("audīsse", "audiō"),
        ("audierunt", "audiō"),
    ],
)  # fmt: skip
def test_shortened_perfects(form: str, lemma: str) -> None:
    assert lemma in {r.lemma for r in latingloss.analyze(form)}


# Bennett (1918), sections 125-137: the irregular verbs
@pytest.mark.parametrize(
    ("form", "lemma"),
    [
        ("potuērunt", "possum"), ("prōdest", "prōsum"), ("tulit", "ferō"), ("fertis", "ferō"), ("nōlīte", "nōlō"),
        ("māvult", "mālō"), ("fīet", "fīō"), ("ībunt", "eō"), ("euntis", "eō"), ("abiit", "abeō"), ("ēsse", "edō"),
        ("datur", "dō"), ("inquit", "inquam"), ("aiunt", "aiō"), ("coepit", "coepī"), ("mementō", "meminī"),
        ("ōdit", "ōdī"), ("dīc", "dīcō"), ("dūc", "dūcō"), ("fac", "faciō"), ("ausus", "audeō"),
    ],
)  # fmt: skip
def test_irregular_verbs(form: str, lemma: str) -> None:
    assert lemma in {r.lemma for r in latingloss.analyze(form)}


def test_written_lengths_choose_the_case() -> None:
    assert latingloss.analyze("rosā")[0].features["Case"] == "Abl"
    assert {r.features["Case"] for r in latingloss.analyze("rosa") if r.lemma == "rosa"} == {"Nom", "Voc", "Abl"}


@pytest.mark.parametrize(
    "pair", [("cælum", "caelum"), ("cœlum", "caelum"), ("jūs", "ius"), ("VENITE", "venite"), ("glória", "gloria")]
)
def test_spellings_are_one_word(pair: tuple[str, str]) -> None:
    one, other = (latingloss.analyze(form) for form in pair)
    assert one[0].lemma == other[0].lemma


@pytest.mark.parametrize(
    ("form", "lemma"),
    [
        ("charitatem", "cāritās"), ("nunciare", "nūntiō"), ("michi", "ego"), ("adtendite", "attendō"),
        ("conlocare", "collocō"), ("coena", "cēna"), ("Hevæ", "Ēva"),
    ],
)  # fmt: skip
def test_church_spellings(form: str, lemma: str) -> None:
    """Spellings named in Blaise, Manuel du latin chrétien (1955), sections 1-10; from memory."""
    assert plain(lemma) in {plain(r.lemma) for r in latingloss.analyze(form)}


@given(st.text(st.characters(categories=["L"]), min_size=1, max_size=20))
def test_any_word_has_readings_that_sum_to_one(form: str) -> None:
    readings = latingloss.analyze(form)
    assert readings
    assert sum(r.probability for r in readings) == pytest.approx(1.0, abs=1e-6)


def test_unknown_words_are_guessed_with_their_ending() -> None:
    best = latingloss.analyze("Brundulatium")
    assert all(r.guessed for r in best)
    assert any(r.features.get("Case") == "Acc" for r in best)


def test_bad_input_is_ours() -> None:
    with pytest.raises(InputTypeError):
        latingloss.analyze(b"rosa")  # type: ignore[arg-type]
    with pytest.raises(TextError):
        latingloss.analyze("123")
    with pytest.raises(LookupError):
        latingloss.inflect("brundulatium")


def test_priors_know_the_common_word() -> None:
    assert candidates("est")[0].lexeme.lemma == "sum"
    assert candidates("in")[0].upos == "ADP"
