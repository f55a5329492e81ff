"""Where one syllable of a sound string ends and the next begins.

A single consonant goes with the vowel behind it, of several only the last; a stop or f with l or r stays together,
and so do qu, ngu, ch, ph, th. The prefixes ab-, ob-, sub- keep their b before l and r, ex- its x. Sources: Bennett,
New Latin Grammar (1918), section 4; Allen, Vox Latina (1978), on syllables and quantity. Church books also keep gn, and
sc before a front vowel, together, since each is one sound: Liber usualis (1961), preface, `agnus`, `descendit`.
"""

from __future__ import annotations

import re

from latingloss.pronunciation.sounds import GLIDES, VOWELS

FRONT = "(?:[eiyæœEIYÆŒɪ]|[ao]ᵉ)"
_NUCLEUS = f"[{VOWELS}][{GLIDES}]?"
_S = f"(?<=[^{VOWELS}{GLIDES}])s(?=[cpqt])"  # mōn-strum
_ONSET = f"(?:{_S})?(?:(?:[bcfgp]|[cp]ʰ)[lr]ʰ?|(?:d|tʰ?)rʰ?|[gqs]ʷ|[ckprt]ʰ|[^{VOWELS}])"
_SYLLABLE = re.compile(f"(?:{_ONSET}(?!ɪ))?{_NUCLEUS}")
_CHURCH_SYLLABLE = re.compile(f"(?:(?:gn|sc(?={FRONT})|{_ONSET})(?!ɪ))?{_NUCLEUS}")
_PREFIX = re.compile(f"[ao]b(?!ra)(?=[lr])|sub(?=[lr])|ex(?=[{VOWELS}])")


def syllable_starts(sounds: str, *, church: bool = False) -> tuple[int, ...]:
    """Return the index at which each syllable starts; the first is always 0.

    >>> syllable_starts("magnus"), syllable_starts("magnus", church=True), syllable_starts("brr")
    ((0, 3), (0, 2), (0,))
    """
    pattern = _CHURCH_SYLLABLE if church else _SYLLABLE
    starts = [match.start() for match in pattern.finditer(sounds)]
    prefix = _PREFIX.match(sounds)
    if prefix and len(starts) > 1:
        starts[1] = prefix.end()
    return (0, *starts[1:])
