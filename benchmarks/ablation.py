"""What each kind of evidence adds to the choice of a reading: the figures without it, everything else as shipped.

Nothing is learned anew, so that a part whose work another could take over looks more needed than it is.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from unittest.mock import patch

import numpy as np

import latingloss
from benchmarks.accuracy import new_testament
from benchmarks.figures import Figure
from benchmarks.sources import Sources, sentences, tool
from latingloss.alignment import rendering
from latingloss.context.network import DILATIONS, Network, Weights, shipped
from latingloss.engines.builtin import BuiltInEngine
from latingloss.pipeline import Annotator

_TREEBANK = "proiel-dev"


def _without(*names: str) -> Callable[[Weights], Weights]:
    return lambda weights: weights._replace(**{name: np.zeros_like(getattr(weights, name)) for name in names})


def _reaching(words: int) -> Callable[[Weights], Weights]:
    """Return what cuts the layers off that look further than so many words."""

    def cut(weights: Weights) -> Weights:
        mixing, size = weights.mixing.copy(), weights.mixing.shape[2]
        for layer, distance in enumerate(DILATIONS):
            if distance > words:
                mixing[layer, :size] = mixing[layer, 2 * size :] = 0
        return weights._replace(mixing=mixing)

    return cut


_PARTS: Mapping[str, Callable[[Weights], Weights]] = {
    "all": lambda weights: weights,
    "lemmas": _without("lemmas"),
    "words that govern": _without("signs", "signs_out"),
    "layers that look four and eight words away": _reaching(2),
    "layers that look two and more words away": _reaching(1),
    "neighbours": _reaching(0),
    "everything but the prior": _without("endings_out", "signs_out"),
}


def ablation(sources: Sources) -> Iterator[Figure]:
    """Yield case, number and person on a treebank without each part, and on the New Testament without the English."""
    network = shipped()
    for name, change in _PARTS.items():
        rates = _rates(sources, replace(network, weights=change(network.weights)))
        yield Figure(_title(name, _TREEBANK), rates["CNP"], "%")
    if not sources.quick:
        yield from _english(sources)


def _title(name: str, where: str) -> str:
    return f"ablation: {where}, {'with all' if name == 'all' else f'without {name}'}, CNP"


def _rates(sources: Sources, network: Network) -> dict[str, float]:
    annotate = Annotator(BuiltInEngine(network)).annotate_tokens
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
