"""Restored classical sounds against Allen, Vox Latina (1978), whose statements the comments give."""

import pytest

from latingloss.pronunciation import pronounce

ALLEN_RULES = [
    ("Cicerō", "ˈki.ke.roː", "c is [k] before every vowel"),
    ("gerō", "ˈɡe.roː", "g is [g] before every vowel"),
    ("vīnum", "ˈu̯iː.num", "consonantal u is [w]"),
    ("caelum", "ˈkae̯.lum", "ae as in high"),
    ("poena", "ˈpoe̯.na", "oe as in boy"),
    ("aurum", "ˈau̯.rum", "au as in how"),
    ("seu", "ˈseu̯", "eu only in a few words"),
    ("cui", "ˈkui̯", "ui in cui, huic"),
    ("huic", "ˈhui̯k", "ui in cui, huic"),
    ("philosophus", "pʰiˈlo.so.pʰus", "ph is an aspirate, not f"),
    ("pulcher", "ˈpul.kʰer", "ch is an aspirate"),
    ("theātrum", "tʰeˈaː.trum", "th is an aspirate"),
    ("quis", "ˈkʷis", "qu is one labialised consonant"),
    ("lingua", "ˈlin.ɡʷa", "gu likewise behind n"),
    ("arguō", "ˈar.ɡu.oː", "but gu is two sounds behind r"),
    ("suāvis", "ˈsu̯aː.u̯is", "su is [sw] in suāvis"),
    ("cōnsuētus", "koːnˈsu̯eː.tus", "and in suēscō"),
    ("suus", "ˈsu.us", "but not in suus"),
    ("maior", "ˈmai̯.i̯or", "consonantal i is double between vowels"),
    ("eius", "ˈei̯.i̯us", "double between vowels"),
    ("Gāius", "ˈɡaː.i̯us", "single behind a long vowel"),
    ("iam", "ˈi̯am", "initial i before a vowel"),
    ("coniungō", "konˈi̯un.ɡoː", "behind a prefix"),
    ("adiciō", "adˈi̯i.ki.oː", "one i written for ji in compounds of iaciō"),
    ("gaza", "ˈɡaz.za", "z is double between vowels"),
    ("rēx", "ˈreːks", "x is [ks]"),
    ("mihi", "ˈmi.hi", "h is sounded"),
    ("nātiō", "ˈnaː.ti.oː", "ti keeps its t"),
    ("agnus", "ˈaɡ.nus", "gn is not [ɲ]; the nasal before n is left to narrow transcription"),
]


@pytest.mark.parametrize(("word", "ipa", "rule"), ALLEN_RULES)
def test_a_rule_of_vox_latina_holds(word: str, ipa: str, rule: str) -> None:
    assert pronounce(word, "classical").ipa == ipa, rule


@pytest.mark.parametrize(
    ("word", "respelling"),
    [
        ("caelum", "KYE-loom"),
        ("aeternus", "eye-TEHR-noos"),
        ("vīta", "WEE-tah"),
        ("rēx", "RAYKS"),
        ("Troia", "TROY-yah"),
    ],
)
def test_the_respelling_names_classical_sounds(word: str, respelling: str) -> None:
    """Common practice, no source."""
    assert pronounce(word, "classical").respelling == respelling


@pytest.mark.parametrize("word", ["deus", "meum", "aureus", "euntem"])
def test_latin_e_and_u_stay_apart(word: str) -> None:
    """Bennett, New Latin Grammar (1918), section 2: eu is a diphthong in neu, seu, ceu and Greek words only."""
    assert "e.u" in pronounce(word, "classical").ipa.replace("ˈ", ".")


@pytest.mark.parametrize("word", ["Orpheus", "Eurōpa", "heu", "neu", "ceu", "pleurīticus"])
def test_greek_eu_is_one_syllable(word: str) -> None:
    assert "eu̯" in pronounce(word, "classical").ipa


@pytest.mark.parametrize("word", ["iambus", "iaspis", "Iōnia", "iērunt", "iēns", "iit"])
def test_initial_i_stays_a_vowel_in_greek_words_and_in_forms_of_eo(word: str) -> None:
    """The verse of the poets: i-am-bus, i-as-pis, I-ō-ni-a; common practice."""
    assert pronounce(word, "classical").syllables[0] == "i"
