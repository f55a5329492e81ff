"""What the signs of the English rendering are worth for the readings of a Latin word.

What each sign is worth for each ending is learned, see `building.chooser`.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache, lru_cache
from math import log

from latingloss.alignment.translations import translations_of
from latingloss.alignment.units import lexeme_key
from latingloss.context.tags import english_tag
from latingloss.english.words import base_forms
from latingloss.morphology.lexicon import Lexeme
from latingloss.morphology.ranking import Weighed, by_score
from latingloss.tables import read_table


def linked_words(linked: Sequence[int], english: Sequence[str]) -> tuple[str, ...]:
    """Return the base forms of the English words linked to a Latin word."""
    return tuple(base_forms(english[j])[0] for j in linked)


_CLOSED = (".ADP", ".SCONJ", ".CCONJ", ".PRON")
_UNRELATED = 1e-3  # probability of an English word that a lexeme has never been rendered by


def word_odds(lexeme: Lexeme, words: tuple[str, ...]) -> float:
    """Return how much better than an unrelated word the best of some English words renders a lexeme: log odds."""
    if not words:
        return 0.0
    return max(_word_odds(lexeme_key(lexeme), lexeme.gloss, word) for word in words)


@lru_cache(maxsize=200_000)
def _word_odds(key: str, gloss: str, word: str) -> float:
    glossed = word in gloss.replace(";", " ").split()
    if key.endswith(_CLOSED):  # the tables were learned before their homographs (cum, quam, quod) were told apart
        probability = 0.3 if glossed else 0.0
    else:
        _, total, links = translations_of(key)
        probability = (links.get(word, 0.0) + 0.5 * glossed) / (total + 1.0)
    return log(probability + _UNRELATED) - log(_UNRELATED)


@cache
def sign_weights() -> dict[str, dict[str, float]]:
    """Return what each sign is worth, in log-odds, by tag (see `english_tag`) and sign; `<word>` weighs `word_odds`."""
    weights: dict[str, dict[str, float]] = {}
    for tag, sign, weight in read_table("context/english.tsv"):
        weights.setdefault(tag, {})[sign] = float(weight)
    return weights


def reweigh(readings: Weighed, signs: Sequence[str], words: tuple[str, ...]) -> Weighed:
    """Return the readings of a word with probabilities that take the English into account, best first."""
    if len(readings) < 2 or not signs:
        return readings
    weights = sign_weights()
    word_weight = weights["<word>"]["<odds>"]
    logits = []
    for candidate, probability in readings:
        said = weights.get(english_tag(candidate), {})
        logit = log(max(probability, 1e-9)) + sum(said.get(sign, 0.0) for sign in signs)
        logits.append(logit + word_weight * word_odds(candidate.lexeme, words))
    return by_score([candidate for candidate, _ in readings], logits)
