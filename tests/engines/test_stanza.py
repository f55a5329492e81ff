"""The Stanza engine, on a real model; nothing stands in for it."""

from __future__ import annotations

import gzip
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss.engines.stanza import StanzaEngine, Tagged, weigh
from latingloss.errors import MissingExtraError, OptionError
from latingloss.formats import conllu
from latingloss.morphology.ranking import candidates


@pytest.fixture(scope="module")
def engine(shared: Path) -> StanzaEngine:
    pytest.importorskip("stanza", reason='needs the extra stanza: pip install "latingloss[stanza]"')
    return StanzaEngine(model_dir=shared / "models" / "stanza-la")


@pytest.mark.heavy
@pytest.mark.filterwarnings("default")  # Torch warns of its own future
def test_readings_are_the_analysers_and_their_probabilities_sum_to_1(engine: StanzaEngine) -> None:
    sentences = [["Stellae", "lucent", "populúsque", "vigilat"], [], ["Nabuchodonosor", "vēnit"]]
    read = engine.read(sentences)
    assert [[len(token) for token in sentence] for sentence in read] == [[1, 1, 2, 1], [], [1, 1]]
    for choice in (choice for sentence in read for token in sentence for choice in token):
        assert sorted(str(c) for c, _ in choice.readings) == sorted(map(str, candidates(choice.form)))
        odds = [p for _, p in choice.readings]
        assert sum(odds) == pytest.approx(1) and odds == sorted(odds, reverse=True)


@pytest.mark.heavy
@pytest.mark.filterwarnings("default")
def test_the_analyser_makes_stanza_better(engine: StanzaEngine, shared: Path) -> None:
    """On 150 sentences of PROIEL dev: more lemmas and cases right than Stanza has alone (83.1, 79.6 on all of it)."""
    with gzip.open(shared / "treebanks" / "check" / "proiel-dev.conllu.gz", "rt", encoding="utf-8") as lines:
        text = "\n\n".join(lines.read().split("\n\n")[:150]) + "\n\n"
    gold = [[w for t in p.tokens for w in t.words] for p in conllu.read(text).passages]
    forms = [[word.form for word in sentence] for sentence in gold]
    alone = [[(tag.lemma, tag.features.get("Case")) for tag in tags] for tags in engine.tag(forms)]
    chosen = [[token[0].readings[0][0] for token in sentence] for sentence in engine.read(forms)]
    limited = [[(c.lexeme.lemma.partition("#")[0], c.features.get("Case")) for c in sentence] for sentence in chosen]
    for part in (0, 1):
        assert _right(gold, limited, part) > _right(gold, alone, part) > 0


def _right(gold: list, given: list, part: int) -> int:  # type: ignore[type-arg]
    from latingloss.text.orthography import plain

    pairs = [
        ((plain(word.lemma), word.features.get("Case"))[part], (plain(own[0]), own[1])[part])
        for sentence, others in zip(gold, given, strict=True)
        for word, own in zip(sentence, others, strict=True)
    ]
    return sum(a == b for a, b in pairs if a is not None)


@given(st.sampled_from(["rosae", "laudandum", "amati", "cum", "Xyzabus"]), st.sampled_from(["Gen", "Dat", "Loc", ""]))
def test_a_vote_never_makes_a_reading_up_nor_loses_one(form: str, case: str) -> None:
    vote = Tagged("rosa", "NOUN", {"Case": case, "Number": "Sing"} if case else {})
    weighed = weigh(candidates(form), vote)
    assert sorted(str(c) for c, _ in weighed) == sorted(map(str, candidates(form)))
    assert sum(p for _, p in weighed) == pytest.approx(1)


@pytest.mark.parametrize("case", ["Gen", "Dat"])
def test_the_vote_decides_between_readings_of_one_form(case: str) -> None:
    best = weigh(candidates("rosae"), Tagged("rosa", "NOUN", {"Case": case, "Number": "Sing"}))[0][0]
    assert (best.features["Case"], best.features["Number"]) == (case, "Sing")


def test_a_missing_model_is_named(tmp_path: Path) -> None:
    (tmp_path / "pos.pt").touch()
    with pytest.raises(OptionError, match=r"no pretrain\.pt, lemma\.pt there"):
        StanzaEngine(model_dir=tmp_path)


def test_without_the_extra_the_command_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("pos.pt", "pretrain.pt", "lemma.pt"):
        (tmp_path / name).touch()
    monkeypatch.setitem(sys.modules, "stanza", None)
    with pytest.raises(MissingExtraError, match=r'pip install "latingloss\[stanza\]"'):
        StanzaEngine(model_dir=tmp_path)
