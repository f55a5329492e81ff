"""How far a word's confidence can be trusted: it should be right as often as it says."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchmarks.figures import Figure
from benchmarks.gold import GoldWord, gold_words
from benchmarks.sources import Sources
from latingloss import Word

_BINS = 10
_CHECKED_SHARE = 0.10


def figures(sources: Sources, treebank: str = "proiel-dev") -> Iterator[Figure]:
    """Yield the calibration of `confidence`, and how many errors the least certain tenth of the words holds."""
    words = [word for word in gold_words(sources, treebank) if word.word is not None]
    right = [word.right for word in words]
    confidence = [word.word.confidence for word in words if word.word]
    summed = [_summed(word.word, word) for word in words if word.word]
    name = f"calibration: {treebank}"
    error = calibration_error(confidence, right)
    note = "expected calibration error, 10 bins; `confidence` is of the whole reading, correctness of CNP alone"
    yield Figure(f"{name}, confidence", round(error, 4), "0..1", "<= 0.03", note)
    note = "the same for the sum over readings of one case, number and person, which is the probability of CNP"
    yield Figure(f"{name}, confidence summed over CNP", round(calibration_error(summed, right), 4), "0..1", note=note)
    caught = 100 * errors_caught(confidence, right)
    most = min(100.0, 100 * _CHECKED_SHARE * len(right) / (len(right) - sum(right)))
    note = f"share of all CNP errors among the 10% of words of least confidence; {most:.1f}% would be all they can hold"
    yield Figure(f"{name}, errors caught", round(caught, 1), "%", ">= 60", note)
    yield Figure(f"{name}, errors caught by the sum", round(100 * errors_caught(summed, right), 1), "%", note=note)
    note = "if every confidence were exactly how often the word is right, the 10% would hold this share of the errors"
    yield Figure(f"{name}, errors expected among them", round(100 * _expected(confidence), 1), "%", note=note)


def calibration_error(confidence: Sequence[float], right: Sequence[bool]) -> float:
    """Return the expected calibration error over bins of equal width (Naeini, Cooper and Hauskrecht 2015)."""
    bins: list[list[tuple[float, bool]]] = [[] for _ in range(_BINS)]
    for pair in zip(confidence, right, strict=True):
        bins[min(int(pair[0] * _BINS), _BINS - 1)].append(pair)
    gaps = (abs(sum(said for said, _ in pairs) - sum(hit for _, hit in pairs)) for pairs in bins)
    return sum(gaps) / len(confidence)


def errors_caught(confidence: Sequence[float], right: Sequence[bool], *, share: float = _CHECKED_SHARE) -> float:
    """Return the share of errors found by checking that share of the words, the least certain first."""
    by_doubt = sorted(range(len(right)), key=lambda i: confidence[i])
    checked = by_doubt[: round(share * len(right))]
    errors = len(right) - sum(right)
    return sum(not right[i] for i in checked) / errors if errors else 1.0


def _expected(confidence: Sequence[float], *, share: float = _CHECKED_SHARE) -> float:
    doubts = sorted((1 - c for c in confidence), reverse=True)
    return sum(doubts[: round(share * len(doubts))]) / (sum(doubts) or 1.0)


def _summed(word: Word, gold: GoldWord) -> float:
    chosen = {name: word.features.get(name) for name in gold.want}
    alike = (a.probability for a in word.alternatives if all(a.features.get(n) == v for n, v in chosen.items()))
    return min(1.0, word.confidence + sum(alike))
