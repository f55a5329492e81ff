"""How the sound rules of a tradition are written down, and how they turn a sound string into spoken syllables."""

from __future__ import annotations

import re
from collections.abc import Mapping

from latingloss.pronunciation.spelling import FOREIGN


class SoundRules:
    """An ordered list of rules, pattern to phones, and below them one phone for each remaining sign.

    The first pattern that fits at a place wins. A pattern that spans several signs is spoken where the first stands.
    A dot among the phones is a syllable boundary, in place of the one beside it: x in dīxit is `k.s`.
    """

    def __init__(self, *rules: tuple[str, str], signs: Mapping[str, str]) -> None:
        self._pattern = re.compile("|".join(f"({pattern})" for pattern, _ in rules))
        self._phones = [phones for _, phones in rules]
        self._signs = signs

    def spoken_syllables(self, sounds: str, starts: tuple[int, ...], *, letters: tuple[str, ...]) -> list[str]:
        """Return the phones of each syllable; `letters` gives those of other alphabets, kept as they are."""
        phones = [self._signs.get(sign, sign) if sign != FOREIGN else letters[i] for i, sign in enumerate(sounds)]
        for match in self._pattern.finditer(sounds):
            start, end = match.span()
            phones[start:end] = [self._phones[(match.lastindex or 1) - 1], *[""] * (end - start - 1)]
        return _cut(phones, starts)


def _cut(phones: list[str], starts: tuple[int, ...]) -> list[str]:
    syllables = ["".join(phones[start:end]) for start, end in zip(starts, (*starts[1:], len(phones)), strict=True)]
    for index in range(1, len(syllables)):
        before, behind = syllables[index - 1], syllables[index]
        if "." in behind:  # di|k.sit
            moved, behind = behind.split(".", 1)
            before += moved
        elif "." in before:  # ek.s|al
            before, moved = before.rsplit(".", 1)
            behind = moved + behind
        syllables[index - 1 : index + 1] = [before, behind]
    return syllables
