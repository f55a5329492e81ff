"""Church pronunciation: the phones of a sound string.

Source: Liber usualis (1961), preface, "Rules for pronunciation". Broad transcription: what gn, sc, ti and z stand for
is held long between vowels (ɲɲ, ʃʃ, tt͡s, dd͡z), as Italian does; a final or middle s is s.
"""

from __future__ import annotations

from latingloss.pronunciation.phones import SoundRules
from latingloss.pronunciation.sounds import GLIDES, VOWELS
from latingloss.pronunciation.syllables import FRONT

_V = f"[{VOWELS}]"
_AFTER_V = f"(?<=[{VOWELS}{GLIDES}])"


def church_sounds(sounds: str) -> str:
    """Return the sound string as the church reads it: cui has two syllables (Liber usualis, preface, on u).

    >>> church_sounds("cuⁱ"), church_sounds("huⁱc")
    ('cui', 'huⁱc')
    """
    return "cui" if sounds == "cuⁱ" else sounds


RULES = SoundRules(
    ("[ao]ᵉ", "e"),
    (f"x(?=s|c{FRONT})", "k"),
    (f"{_AFTER_V}x(?={_V})", "k.s"),
    (f"(?<=x)c(?={FRONT})", "ʃ"),
    (f"{_AFTER_V}sc(?={FRONT})", "ʃ.ʃ"),
    (f"sc(?={FRONT})", "ʃ"),
    (f"c(?=c{FRONT})", "t"),
    (f"c(?={FRONT})", "t͡ʃ"),
    (f"{_AFTER_V}gn(?={_V})", "ɲ.ɲ"),
    (f"gn(?={_V})", "ɲ"),
    (f"g(?=g{FRONT})", "d"),
    (f"g(?={FRONT})", "d͡ʒ"),
    (f"{_AFTER_V}t(?=[iI]{_V})", "t.t͡s"),
    (f"(?<=[^stx])t(?=[iI]{_V})", "t͡s"),
    ("(?<=^m[iI])h(?=[iI]$)|(?<=n[iI])h(?=il)", "k"),
    (f"{_AFTER_V}z(?={_V})", "d.d͡z"),
    ("z(?=z)", "d"),
    ("pʰ", "f"),
    signs={
        **{vowel.upper(): vowel for vowel in "aeiou"},
        **dict.fromkeys("æœÆŒ", "e"),
        **dict.fromkeys("yY", "i"),
        **dict.fromkeys("hʰ", ""),
        **dict.fromkeys("cq", "k"),
        "ɪ": "ji",
        "ᵘ": "u̯",
        "ⁱ": "i̯",
        "ʷ": "w",
        "w": "v",
        "g": "ɡ",
        "x": "ks",
        "z": "d͡z",
    },
)
