"""Whose something is: the noun that a genitive belongs to (Bennett 1918, sections 195-204)."""

from __future__ import annotations

from latingloss.context.relations.lemmas import LIGHT, PERSONS, WITH_GENITIVE
from latingloss.context.relations.phrases import ADJECTIVAL, Found
from latingloss.context.relations.words import Word


def owners(words: list[Word], agreement: Found, apposition: Found) -> Found:
    """Return for genitives the noun that they belong to."""
    found: Found = {}
    for word in words:
        if word.case == "Gen" and word.place not in agreement and word.place not in apposition:
            owner = _owner(words, word, agreement)
            if owner is not None:
                found[word.place] = owner
    return found


def _owner(words: list[Word], word: Word, agreement: Found) -> Word | None:
    """The nearest noun before a genitive, else the nearest after; a relative's comes after."""
    sides = [_held(words, word, agreement, step=step) for step in (-1, 1)]
    if word.relative:
        return sides[1][1]
    (left, before), (right, after) = sides
    if before is None or after is None:
        return before or after
    return before if left <= right or left == 1 else after


def _held(words: list[Word], word: Word, agreement: Found, *, step: int) -> tuple[int, Word | None]:
    """The noun on one side of a genitive, with nothing between but what goes with either."""
    for k in range(1, 5):
        j = word.place + step * k
        if not 0 <= j < len(words):
            break
        other = words[j]
        edge = other if step > 0 else words[j + 1]
        if other.clause != word.clause or edge.mark:
            break
        if other.lemma in WITH_GENITIVE or (other.kind == "adjective" and other.case and other.features.get("NumType")):
            return k, other
        if other.kind == "noun" and not other.case and word.reading.lexeme.gloss.split("; ")[0] in PERSONS:
            break  # Asa rēgis: the undeclined name is itself the king's
        if other.kind == "noun" and (step < 0 or other.case != "Gen" or word.kind != "noun"):
            return k, other
        if other.kind == "coordinator" and step < 0:
            return _coordinate(words, j, agreement)
        if other.kind not in ADJECTIVAL and other.lemma not in LIGHT:
            break
    return 9, None


def _coordinate(words: list[Word], j: int, agreement: Found) -> tuple[int, Word | None]:
    """The owner of a genitive behind `and` is that of the genitive before it."""
    before = words[j - 1] if j else None
    if before is None or before.case != "Gen" or before.place in agreement:
        return 9, None
    return _held(words, before, agreement, step=-1)
