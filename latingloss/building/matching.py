"""Which of the analyser's readings a treebank's word is: the bridge from their conventions to ours."""

from __future__ import annotations

import re

from latingloss.building.sources import GoldWord
from latingloss.morphology.ranking import Candidate
from latingloss.text.orthography import plain

_SAME_LEMMA = {"sui": "se", "sese": "se", "nullusdum": "nullus"}


def lemma_key(lemma: str) -> str:
    """Return a lemma as it is compared: plain, without homograph numbers and bracketed variants."""
    key = plain(re.sub(r"\(.*?\)|#\d+|\d+$", "", lemma))
    return _SAME_LEMMA.get(key, key)


def agreement(candidate: Candidate, gold: GoldWord) -> float:
    """Return how well a reading matches a gold word: 1 lemma and features, down to below 0 for a contradiction.

    Case, Number and Person must not contradict; lemma, mood, tense, gender and part of speech add.
    """
    have, want = candidate.features, gold.features
    if any(name in want and have.get(name) != want[name] for name in ("Case", "Number")):
        return -1.0
    verbal = gold.upos in ("VERB", "AUX")
    if verbal and want.get("Person") != have.get("Person"):
        return -1.0
    if verbal != ("VerbForm" in have or candidate.upos in ("VERB", "AUX")):
        adjectival = gold.upos in ("ADJ", "NOUN") and have.get("VerbForm") in ("Part", "Gdv", "Ger")
        if not adjectival and not (verbal and want.get("VerbForm") in ("Part", "Gdv", "Ger")):
            return -1.0
    if "Case" in have and "Case" not in want:
        return -1.0
    score = 1.0 if lemma_key(candidate.lexeme.lemma) == lemma_key(gold.lemma) else 0.0
    score += 0.5 if candidate.upos == gold.upos else 0.0
    for name, worth in (("Mood", 0.5), ("VerbForm", 0.3), ("Tense", 0.2), ("Aspect", 0.2), ("Voice", 0.1)):
        if name in want:
            score += worth if have.get(name) == want[name] else -worth
    if "Gender" in want and "Gender" in have:
        score += 0.2 if want["Gender"] in have["Gender"] else -0.2
    return score


def gold_reading(choices: tuple[Candidate, ...], gold: GoldWord) -> int | None:
    """Return the index of the reading that a gold word is, or None if the analyser does not have it."""
    scores = [agreement(c, gold) for c in choices]
    best = max(range(len(scores)), key=lambda i: (scores[i], -i))
    return best if scores[best] >= 0 else None
