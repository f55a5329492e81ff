"""Restored classical pronunciation: the phones of a sound string.

Source: Allen, Vox Latina (1978), on consonants, semivowels and vowels. Broad transcription: no nasal vowels, no velar
n before g or c, m at the end of a word as written; between vowels a consonantal i is double behind a short one, and z
is double.
"""

from __future__ import annotations

from latingloss.pronunciation.phones import SoundRules
from latingloss.pronunciation.sounds import GLIDES, VOWELS

_V = f"[{VOWELS}]"
_AFTER_V = f"(?<=[{VOWELS}{GLIDES}])"

RULES = SoundRules(
    ("x(?=s)", "k"),
    (f"{_AFTER_V}x(?={_V})", "k.s"),
    (f"{_AFTER_V}z(?={_V})", "z.z"),
    (f"(?<=[aeouy])j(?={_V})", "i̯.i̯"),
    ("(?<=s)ʷ", "u̯"),
    ("(?<=r)ʰ", ""),
    signs={
        **{vowel.upper(): vowel + "ː" for vowel in "aeiouy"},
        **dict.fromkeys("æÆ", "ae̯"),
        **dict.fromkeys("œŒ", "oe̯"),
        **dict.fromkeys("cq", "k"),
        **dict.fromkeys("vw", "u̯"),
        "ᵉ": "e̯",
        "ᵘ": "u̯",
        "ⁱ": "i̯",
        "j": "i̯",
        "ɪ": "i̯i",
        "g": "ɡ",
        "x": "ks",
    },
)
