"""What each kind of evidence adds to the choice of a reading: the figures without it, everything else as shipped.

Nothing is learned anew, so that a part whose work another could take over looks more needed than it is.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from unittest.mock import patch

import numpy as np

import latingloss
from benchmarks.accuracy import new_testament
from benchmarks.figures import Figure
from benchmarks.sources import Sources, sentences, tool
from latingloss.alignment import rendering
from latingloss.context.evidence import SIGN_SLOTS, SLOTS, VERBS
from latingloss.context.model import Model, Round, shipped
from latingloss.engines.builtin import BuiltInEngine
from latingloss.pipeline import Annotator

_TREEBANK = "proiel-dev"


def _without(*names: str) -> Callable[[Round], Round]:
    return lambda weights: weights._replace(**{name: np.zeros_like(getattr(weights, name)) for name in names})


def _without_verbs(weights: Round) -> Round:
    near, coarse, agree = (values.copy() for values in (weights.near, weights.coarse, weights.agree))
    for slot in VERBS:
        near[SIGN_SLOTS.index(slot)] = coarse[SIGN_SLOTS.index(slot)] = 0
        agree[SLOTS.index(slot)] = 0
    return weights._replace(near=near, coarse=coarse, agree=agree)


_PARTS: Mapping[str, Callable[[Round], Round]] = {
    "all": lambda weights: weights,
    "what single forms were met as": _without("memory"),
    "words and endings up to three words away": _without("near", "coarse"),
    "agreement and government": _without("agree"),
    "the nearest verb on either side": _without_verbs,
    "everything but the words themselves": _without("near", "coarse", "agree"),
}


def ablation(sources: Sources) -> Iterator[Figure]:
    """Yield case, number and person on a treebank without each part, and on the New Testament without the English."""
    model = shipped()
    for name, change in _PARTS.items():
        rates = _rates(sources, model._replace(rounds=tuple(change(weights) for weights in model.rounds)))
        yield Figure(_title(name, _TREEBANK), rates["CNP"], "%")
    yield Figure(
        _title("the second round", _TREEBANK), _rates(sources, model._replace(rounds=model.rounds[:1]))["CNP"], "%"
    )
    if not sources.quick:
        yield from _english(sources)


def _title(name: str, where: str) -> str:
    return f"ablation: {where}, {'with all' if name == 'all' else f'without {name}'}, CNP"


def _rates(sources: Sources, model: Model) -> dict[str, float]:
    annotate = Annotator(BuiltInEngine(model)).annotate_tokens
    with patch.object(latingloss, "annotate_tokens", annotate):  # the name the scoring tool calls
        rates: dict[str, float] = tool(sources, "treebank").score(sentences(sources, _TREEBANK))
    return rates


def _english(sources: Sources) -> Iterator[Figure]:
    """Yield the New Testament part with the English, and with half of what the English says."""
    weights = rendering.sign_weights()
    words = {"<word>": weights["<word>"]}
    for name, kept in (
        ("all", weights),
        ("the signs of the English", words),
        ("how well the linked words render each lemma", weights | {"<word>": {"<odds>": 0.0}}),
    ):
        with patch.object(rendering, "sign_weights", lambda kept=kept: kept):
            rate = new_testament(sources)["with_english"]["CNP"]
        yield Figure(_title(name, "New Testament with English"), rate, "%")
