"""English phrases around a word of grammar: the noun an article belongs to, the verb an auxiliary belongs to."""

from __future__ import annotations

from latingloss.alignment.evidence import Pair
from latingloss.alignment.grammar import ARTICLES, AUXILIARIES, OBJECTS, POINTERS, POSSESSIVES, STAND_INS, SUBJECTS

_REACH = 7  # words from an auxiliary to its verb at most
_GAP = 2  # unlinked words inside a noun phrase at most


def head(pair: Pair, start: int) -> int | None:
    """Return the linked word that heads the noun phrase starting at a word, or None: `the holy city` -> city."""
    last: int | None = None
    unlinked = 0
    k = start
    while k < len(pair.words) and (k == start or not pair.breaks[k]):
        word = pair.words[k]
        unit = pair.unit_of(k)
        k += 1
        if word in ARTICLES or is_possessive(pair, k - 1):
            if last is not None:
                break
        elif word in POINTERS | OBJECTS or (word in STAND_INS and pair.is_function(k - 1)):
            if unit is not None and (last is None or word not in STAND_INS):
                last = k - 1
            if word in OBJECTS:
                break
        elif pair.is_function(k - 1):
            break
        elif unit is None:
            unlinked += 1
            if unlinked > _GAP:
                break
        else:
            found = pair.units[unit]
            if found.is_kind("noun", odds=0.5):
                return k - 1
            if found.is_kind("adp", "conj", odds=0.9):
                break
            if found.is_kind("verb", odds=0.5) and not found.is_kind("adj", "part", "noun", odds=0.25):
                after_article = pair.words[k - 2] in ARTICLES if k > 1 else False
                return last if last is not None and not after_article else k - 1
            if last is None or not found.is_kind("adv", odds=0.9):
                last = k - 1
    return last


def predicate(pair: Pair, start: int) -> int | None:
    """Return the linked content word that completes a subject pronoun or auxiliary, or None: `he will [be] saved`."""
    has_subject = pair.words[start] in SUBJECTS
    for k in range(start + 1, min(len(pair.words), start + _REACH)):
        word = pair.words[k]
        if pair.breaks[k]:
            return None
        if word in AUXILIARIES or word in ("not", "all"):
            continue
        if word in SUBJECTS and not has_subject:
            has_subject = True
            continue
        if pair.is_function(k):
            return None
        unit = pair.unit_of(k)
        if unit is None or (not is_verbal(pair, unit) and pair.units[unit].is_kind("adv", odds=0.6)):
            continue
        return k
    return None


def is_possessive(pair: Pair, word: int) -> bool:
    """Tell whether a word is a possessive, `her` only if a noun follows: `her people` but `to her`."""
    if pair.words[word] != "her":
        return pair.words[word] in POSSESSIVES
    after = word + 1
    return (
        after < len(pair.words)
        and not pair.breaks[after]
        and (pair.words[after] == "own" or not pair.is_function(after))
    )


def is_verbal(pair: Pair, unit: int) -> bool:
    """Tell whether a unit is likely a form of a verb."""
    return pair.units[unit].is_kind("verb") or pair.units[unit].is_kind("part")
