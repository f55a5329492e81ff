"""How common words are: the Zipf scale of van Heuven, Mandera, Keuleers and Brysbaert (2014)."""

import gzip
import re
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss.difficulty.frequency import Frequencies, corpus_words, form_zipf, lexeme_zipf, per_million, zipf
from latingloss.errors import TextError
from latingloss.morphology.lexicon import find
from latingloss.text.orthography import plain


@pytest.mark.parametrize(("per", "value"), [(1, 3.0), (10, 4.0), (100, 5.0), (1000, 6.0)])
def test_once_in_a_million_words_is_three(per, value):
    """van Heuven et al. (2014): Zipf = log10(frequency per million words) + 3."""
    assert zipf(per * 1000, 1_000_000_000) == pytest.approx(value, abs=0.01)


@given(st.integers(0, 10**7), st.integers(0, 10**7), st.integers(10**5, 10**9))
def test_what_comes_oftener_is_commoner(a, b, total):
    assert (zipf(a, total) > zipf(b, total)) == (a > b)


def test_a_form_is_as_common_however_it_is_spelled():
    assert form_zipf("cǽlum") == form_zipf("CÆLVM") == form_zipf("caelum") > form_zipf("xyzzyq")


def test_unseen_words_have_half_a_count():
    assert form_zipf("xyzzyq") == pytest.approx(zipf(0, corpus_words()))


def test_a_lexeme_is_commoner_than_its_single_forms():
    assert lexeme_zipf(find("urbs")[0]) >= form_zipf("urbium")


@pytest.mark.parametrize(
    ("value", "said"),
    [
        (2.5, "less than 1 in a million words"),
        (3.0, "about 1 in a million words"),
        (7.5, "about 32,000 in a million words"),
    ],
)
def test_frequencies_in_words(value, said):
    assert per_million(value) == said


@given(st.floats(0, 9))
def test_words_are_near_the_number(value):
    said = per_million(value)
    times = 10 ** (value - 3)
    if times < 1:
        assert said.startswith("less than 1 ")
    else:
        assert int(said.split()[1].replace(",", "")) == pytest.approx(times, rel=0.1, abs=0.5)


def test_counts_are_those_of_the_corpus(shared):
    """The Clementine Vulgate, counted anew; the shipped counts have the learn treebanks besides."""
    counts: Counter[str] = Counter()
    with gzip.open(shared / "corpora" / "vulgate-cpdv.tsv.gz", "rt", encoding="utf-8") as lines:
        for line in lines:
            counts.update(re.findall(r"[^\W\d_]+", line.split("\t")[3]))
    for form in ("et", "in", "est", "autem", "terram", "regem"):
        total = sum(n for word, n in counts.items() if plain(word) == form)
        assert form_zipf(form) == pytest.approx(zipf(total, sum(counts.values())), abs=0.15)
    assert sum(counts.values()) < corpus_words() < 1.2 * sum(counts.values())


def test_an_own_corpus_is_counted_in_one_call():
    counted = Frequencies.counted(["Agnus et pastor.", "Pastorque agnum quaerit."])
    assert counted.words == 6
    assert counted.counts["agnus", "NOUN"] == pytest.approx(2, abs=0.05)
    assert counted.counts["pāstor", "NOUN"] == pytest.approx(2, abs=0.05)
    assert counted.zipf(find("pāstor")[0]) > lexeme_zipf(find("pāstor")[0])


def test_a_large_corpus_has_its_own_way(shared):
    """The Gospel of John in the Clementine Vulgate: each lexeme as common as its own forms, counted by hand."""
    texts = []
    with gzip.open(shared / "corpora" / "vulgate-cpdv.tsv.gz", "rt", encoding="utf-8") as lines:
        texts = [cells[3] for cells in (line.split("\t") for line in lines) if cells[0] == "John"]
    counted = Frequencies.counted(texts)
    times = sum(len(re.findall(r"\b[Ll]u(?:x|cis|ci|cem|ce)\b", text)) for text in texts)
    assert counted.counts["lūx", "NOUN"] == pytest.approx(times, rel=0.1)


def test_a_corpus_without_words_is_refused():
    with pytest.raises(TextError, match="no word"):
        Frequencies.counted(["1, 2.", ""])


def test_church_is_the_vulgate_alone(shared):
    """Lemmas with no homograph, their forms counted by hand in the Clementine Vulgate."""
    with gzip.open(shared / "corpora" / "vulgate-cpdv.tsv.gz", "rt", encoding="utf-8") as lines:
        text = " ".join(line.split("\t")[3] for line in lines)
    church = Frequencies.church()
    for lemma, stems in (("stēlla", "[Ss]tell(?:a|am|ae|æ|as|is|arum)"), ("turba", "[Tt]urb(?:a|am|ae|æ|as|is|arum)")):
        assert church.counts[lemma, "NOUN"] == pytest.approx(len(re.findall(rf"\b{stems}\b", text)), rel=0.15)
    assert church.words == pytest.approx(len(re.findall(r"[^\W\d_]+", text)), rel=0.02)


def test_classical_is_the_treebank_alone(shared):
    """UD Latin-CIRCSE (Cecchini and others), lemmas counted by hand in its files."""
    lemmas: Counter[str] = Counter()
    for part in ("train", "dev"):
        path = shared / "treebanks" / "learn" / f"circse-{part}.conllu.gz"
        with gzip.open(path, "rt", encoding="utf-8") as lines:
            rows = [line.split("\t") for line in lines if line[0].isdigit()]
        lemmas.update(row[2] for row in rows if row[0].isdigit() and row[3] != "PUNCT")
    classical = Frequencies.classical()
    for lemma, spelled in (("thalamus", "thalamus"), ("soror", "soror"), ("rēgnum", "regnum")):
        assert classical.counts[lemma, "NOUN"] == pytest.approx(lemmas[spelled], rel=0.15), lemma
    assert 0.95 * lemmas.total() < classical.words <= lemmas.total()


@pytest.mark.parametrize(
    ("lemma", "commoner"),
    [("discipulus", "church"), ("sacerdōs", "church"), ("thalamus", "classical"), ("superī", "classical")],
)
def test_domains_differ_as_their_texts_do(lemma, commoner):
    church, classical = (f.zipf(find(lemma)[0]) for f in (Frequencies.church(), Frequencies.classical()))
    assert (church > classical) == (commoner == "church")
