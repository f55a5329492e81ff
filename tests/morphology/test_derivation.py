"""Words derived from words of the lexicon: lemma, ending and composed gloss."""

from pathlib import Path

import pytest

from latingloss import analyze
from latingloss.morphology.derivation import derived
from latingloss.morphology.lexicon import find
from latingloss.text.orthography import plain


# Allen and Greenough (1903), sections 237-256: the meanings that these suffixes give
@pytest.mark.parametrize(
    ("form", "lemma", "upos", "gloss"),
    [
        ("laudationibus", "laudātiō", "NOUN", "the act of praising"),
        ("laudatoris", "laudātor", "NOUN", "one who praises"),
        ("laudatricem", "laudātrīx", "NOUN", "woman who praises"),
        ("laudabilis", "laudābilis", "ADJ", "able to be praised"),
        ("fortiter", "fortiter", "ADV", "strongly"),
        ("crudelitatem", "crūdēlitās", "NOUN", "cruelness"),
    ],
)
def test_a_suffix_gives_lemma_part_of_speech_and_gloss(form: str, lemma: str, upos: str, gloss: str):
    best = derived(form)[0]
    assert (best.lexeme.lemma, best.upos) == (lemma, upos)
    assert gloss in best.lexeme.gloss.split("; ")


# Allen and Greenough (1903), sections 16 and 267: assimilated prefixes; section 15: weakened vowels
@pytest.mark.parametrize(
    ("form", "lemma"),
    [
        ("conficit", "cōnficiō"), ("attinet", "attineō"), ("comportant", "comportō"), ("illatas", "illātus"),
        ("impiorum", "impius"), ("redeunt", "redeō"), ("corripiunt", "corripiō"), ("supponit", "suppōnō"),
    ],
)  # fmt: skip
def test_a_prefix_is_found_in_its_assimilated_shape(form: str, lemma: str):
    assert lemma in [d.lexeme.lemma for d in derived(form)[:3]]


def test_negative_in_says_not():
    best = derived("inhumanorum")[0]
    assert best.upos == "ADJ" and best.features["Case"] == "Gen" and best.lexeme.gloss.startswith("not ")


def test_a_form_of_no_known_base_is_not_derived():
    assert derived("zorkblat") == []


def test_derived_readings_of_an_unknown_word_are_marked_guessed_and_come_first():
    readings = analyze("redormit")
    assert all(r.guessed for r in readings)
    assert readings[0].lemma == "redormiō" and "again" in readings[0].gloss
    assert sum(r.probability for r in readings) == pytest.approx(1)


def test_most_derived_words_of_unimorph_get_their_lemma(shared: Path):
    """UniMorph derivations (Batsuren et al. 2021) whose base the lexicon has; its own entry is not asked for."""
    suffixes = {"tio", "tas", "tor", "bilis", "osus", "itia", "re", "con", "ad", "ex"}
    right = total = 0
    lines = (shared / "checks" / "unimorph-lat-derivations.tsv").read_text(encoding="utf-8").splitlines()
    for base, word, _, affix in (line.split("\t") for line in lines):
        if affix.strip("-") in suffixes and word.islower() and find(base) and find(word):
            total += 1
            right += bool(found := derived(word)) and plain(found[0].lexeme.lemma) == plain(word)
    print(f"UniMorph: {right} of {total} lemmas right")
    assert total > 500 and right / total >= 0.85
