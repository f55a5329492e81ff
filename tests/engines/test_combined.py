"""Two engines as one: the arithmetic by hand, and on a real model; nothing stands in for it."""

from __future__ import annotations

import gzip
from collections.abc import Sequence
from math import exp, log
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss import Annotator, corrections
from latingloss.engines import Choice, TokenChoices
from latingloss.engines.builtin import BuiltInEngine
from latingloss.engines.combined import CombinedEngine
from latingloss.errors import InputTypeError, OptionError
from latingloss.formats import conllu
from latingloss.morphology.ranking import candidates
from latingloss.text.orthography import plain

_SENTENCES = [["Stellae", "lucent", "populusque", "vigilat"], [], ["Xyzabus", "cum", "nocte", "vēnit"]]


class Priors:
    """An engine of a third party: every word by its prior alone, whatever stands around it."""

    name = "priors"

    def read(self, sentences: Sequence[Sequence[str]]) -> list[list[TokenChoices]]:
        return [
            [(Choice(token, tuple((c, c.prior) for c in candidates(token))),) for token in sentence]
            for sentence in sentences
        ]


class Sure(Priors):
    """An engine that believes in one case alone, and does not offer the others."""

    name = "sure"

    def __init__(self, case: str) -> None:
        self._case = case

    def read(self, sentences: Sequence[Sequence[str]]) -> list[list[TokenChoices]]:
        def sure(token: str) -> TokenChoices:
            kept = [c for c in candidates(token) if c.features.get("Case") == self._case] or list(candidates(token))
            return (Choice(token, tuple((c, 1 / len(kept)) for c in kept)),)

        return [[sure(token) for token in sentence] for sentence in sentences]


@pytest.mark.parametrize("second", [Priors(), BuiltInEngine(), Sure("Gen")])
def test_without_weight_the_first_stands(second: Priors) -> None:
    alone = BuiltInEngine().read(_SENTENCES)
    for one, other in zip(alone, CombinedEngine(BuiltInEngine(), second, weight=0).read(_SENTENCES), strict=True):
        for choice, mixed in zip((c for t in one for c in t), (c for t in other for c in t), strict=True):
            assert [c for c, _ in mixed.readings] == [c for c, _ in choice.readings]
            assert [p for _, p in mixed.readings] == pytest.approx([p for _, p in choice.readings], abs=1e-6)


def test_one_that_only_knows_the_priors_adds_nothing() -> None:
    sentence = [["Stellae", "lucent", "nocte"]]
    alone = BuiltInEngine().read(sentence)[0]
    for (one,), (mixed,) in zip(
        alone, CombinedEngine(BuiltInEngine(), Priors(), weight=1).read(sentence)[0], strict=True
    ):
        assert [p for _, p in mixed.readings] == pytest.approx([p for _, p in one.readings], abs=1e-6)


def test_the_arithmetic_by_hand() -> None:
    first, second = Priors().read([["rosae"]])[0][0][0], Sure("Gen").read([["rosae"]])[0][0][0]
    votes = {str(c): p for c, p in second.readings}
    powers = {
        str(c): exp(log(p) + 0.5 * (log(votes.get(str(c), 1e-9)) - log(c.prior))) for c, p in first.readings
    }  # fmt: skip
    mixed = CombinedEngine(Priors(), Sure("Gen"), weight=0.5).read([["rosae"]])[0][0][0]
    for candidate, p in mixed.readings:
        assert p == pytest.approx(powers[str(candidate)] / sum(powers.values()))
    assert mixed.readings[0][0].features["Case"] == "Gen"


@given(st.lists(st.lists(st.text(st.characters(), min_size=1, max_size=9), max_size=5), max_size=3), st.floats(0, 1))
def test_no_reading_is_lost_and_chances_sum_to_1(sentences: list[list[str]], weight: float) -> None:
    alone = BuiltInEngine().read(sentences)
    for one, other in zip(
        alone, CombinedEngine(BuiltInEngine(), Sure("Abl"), weight=weight).read(sentences), strict=True
    ):
        for choice, mixed in zip((c for t in one for c in t), (c for t in other for c in t), strict=True):
            assert sorted(str(c) for c, _ in mixed.readings) == sorted(str(c) for c, _ in choice.readings)
            odds = [p for _, p in mixed.readings]
            assert sum(odds) == pytest.approx(1) and odds == sorted(odds, reverse=True)


def test_where_the_second_cuts_otherwise_the_first_stands() -> None:
    (token,) = CombinedEngine(BuiltInEngine(), Priors(), weight=1).read([["populusque"]])[0]
    assert [choice.form for choice in token] == ["populus", "que"]


def test_corrections_narrow_both() -> None:
    said = corrections.read("everywhere: [{word: stellae, features: Case=Dat}]")
    annotator = Annotator(CombinedEngine(BuiltInEngine(), Sure("Gen"), weight=1))
    document = annotator.annotate("Stellae lucent.", corrections=said)
    assert document.passages[0].tokens[0].words[0].features["Case"] == "Dat"
    assert document.engine == "built-in + sure"


@pytest.mark.parametrize("weight", [-0.1, 1.1, float("nan"), float("inf")])
def test_a_weight_outside_is_refused(weight: float) -> None:
    with pytest.raises(OptionError, match="weight is"):
        CombinedEngine(Priors(), Priors(), weight=weight)


@pytest.mark.parametrize("given_", [{"weight": True}, {"weight": "0.1"}, {"second": None}, {"first": "stanza"}])
def test_what_is_no_engine_or_number_is_refused(given_: dict[str, object]) -> None:
    with pytest.raises(InputTypeError):
        CombinedEngine(**({"first": Priors(), "second": Priors()} | given_))  # type: ignore[arg-type]


@pytest.mark.heavy
@pytest.mark.filterwarnings("default")  # Torch warns of its own future
def test_together_they_are_better_than_each_alone(shared: Path) -> None:
    """On PROIEL dev: more lemmas, and more cases with numbers and persons, than either part has right."""
    pytest.importorskip("stanza", reason='needs the extra stanza: pip install "latingloss[stanza]"')
    from latingloss.engines.stanza import StanzaEngine

    with gzip.open(shared / "treebanks" / "check" / "proiel-dev.conllu.gz", "rt", encoding="utf-8") as lines:
        gold = [[w for t in p.tokens for w in t.words] for p in conllu.read(lines.read()).passages]
    parts = (BuiltInEngine(), StanzaEngine(model_dir=shared / "models" / "stanza-la"))
    alone = [_right(gold, engine) for engine in parts]
    both = _right(gold, CombinedEngine(*parts))
    assert all(together > best for together, best in zip(both, map(max, *alone), strict=True))


def _right(gold: list, engine: BuiltInEngine | CombinedEngine) -> tuple[int, int]:  # type: ignore[type-arg]
    lemmas = features = 0
    for sentence, found in zip(gold, engine.read([[word.form for word in one] for one in gold]), strict=True):
        for word, token in zip(sentence, found, strict=True):
            best = token[0].readings[0][0]
            wanted = {k: v for k, v in word.features.items() if k in ("Case", "Number", "Person")}
            lemmas += plain(best.lexeme.lemma.partition("#")[0]) == plain(word.lemma)
            features += bool(wanted) and all(best.features.get(k) == v for k, v in wanted.items())
    return lemmas, features
