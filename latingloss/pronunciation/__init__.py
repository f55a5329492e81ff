"""How a Latin word sounds, in the church's tradition or in the restored classical one.

The way: `spelling` reads letters and marks, `sounds` settles i, u and diphthongs, `syllables` and `stress` place the
accent, `ecclesiastical` and `classical` hold the rules of the two traditions, `respelling` writes for English readers.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, cast, get_args

from latingloss.document import Pronunciation
from latingloss.errors import InputTypeError, OptionError, TextError
from latingloss.pronunciation import classical, ecclesiastical
from latingloss.pronunciation.respelling import build_up_steps, respell
from latingloss.pronunciation.sounds import speech_sounds
from latingloss.pronunciation.spelling import Spelling, has_letters, read_spelling
from latingloss.pronunciation.stress import find_stress
from latingloss.pronunciation.syllables import syllable_starts

__all__ = ["Tradition", "build_up", "pronounce"]

Tradition = Literal["ecclesiastical", "classical"]
_TRADITIONS: tuple[str, ...] = get_args(Tradition)
_RULES = {"ecclesiastical": ecclesiastical.RULES, "classical": classical.RULES}


def pronounce(word: str, tradition: str = "ecclesiastical", *, enclitic: str = "") -> Pronunciation:
    """Say how one word sounds: IPA, syllables, stress and an English respelling.

    Vowel lengths (macrons, breves), church accents (`glória`), `æ œ`, diaereses (`poëta`), capitals and either way of
    writing i/j and u/v are understood. `enclitic` names the -que, -ne or -ve at the end of the word, which draws the
    stress to the syllable before it. Letters of other alphabets are kept, with `certain=False`.

    Raises TextError for text without a letter, for more than one word, or if the word does not end in the enclitic;
    OptionError for another tradition; InputTypeError if the word is not a string.
    Sources: Liber usualis (1961), preface; Allen, Vox Latina (1978).

    >>> pronounce("caelum").respelling, pronounce("caelum", "classical").respelling
    ('CHEH-loom', 'KYE-loom')
    >>> pronounce("grātia").ipa, pronounce("virumque", enclitic="que").respelling
    ('ˈɡrat.t͡si.a', 'vee-ROOM-kweh')
    """
    if not isinstance(word, str):
        raise InputTypeError(f"pronounce takes a word as str, not {type(word).__name__}: decode or convert it first")
    if tradition not in _TRADITIONS:
        raise OptionError(f"tradition is {tradition!r}: choose 'ecclesiastical' or 'classical'")
    return _pronounce(word, cast(Tradition, tradition), enclitic)


def build_up(word: str, tradition: str = "ecclesiastical", *, enclitic: str = "") -> tuple[str, ...]:
    """Return the respelling grown from its last syllable, for practice aloud.

    Takes and raises what `pronounce` does.

    >>> build_up("caelum")
    ('loom', 'CHEH-loom')
    """
    return build_up_steps(pronounce(word, tradition, enclitic=enclitic).respelling)


@lru_cache(maxsize=1 << 16)
def syllable_count(text: str) -> int:
    """Return how many syllables a word has, or several words together; 0 for what has no letter to pronounce.

    >>> syllable_count("laudāmus"), syllable_count("iam"), syllable_count("poëta"), syllable_count("lingua")
    (3, 1, 3, 2)
    """
    words = (word for word in text.split() if has_letters(word))
    return sum(len(syllable_starts(speech_sounds(read_spelling(word)))) for word in words)


@lru_cache(maxsize=1 << 14)
def _pronounce(word: str, tradition: Tradition, enclitic: str) -> Pronunciation:
    spelling = read_spelling(word)
    sounds, tail = _sounds_before_enclitic(spelling, enclitic) if enclitic else (speech_sounds(spelling), 0)
    church = tradition == "ecclesiastical"
    if church:
        sounds = ecclesiastical.church_sounds(sounds)
    starts = syllable_starts(sounds, church=church)
    stress = find_stress(spelling, sounds, starts, enclitic=tail)
    spoken = _RULES[tradition].spoken_syllables(sounds, starts, letters=spelling.letters)
    if not any(spoken):  # a lone h
        spoken = ["".join(spelling.letters)]
    marks = ["." if index else "" for index in range(len(spoken))]
    marks[stress.syllable] = "ˈ"
    ends = (*starts[1:], len(sounds))
    return Pronunciation(
        word=word,
        tradition=tradition,
        ipa="".join(mark + syllable for mark, syllable in zip(marks, spoken, strict=True)),
        syllables=tuple("".join(spelling.letters[a:b]) for a, b in zip(starts, ends, strict=True)),
        stress=stress.syllable,
        respelling=respell(spoken, tradition, stress=stress.syllable),
        certain=stress.certain,
    )


def _sounds_before_enclitic(spelling: Spelling, enclitic: str) -> tuple[str, int]:
    """Return the sound string, host and enclitic each read as a word, and the number of letters of the enclitic."""
    tail = read_spelling(enclitic)
    cut = len(spelling.pattern) - len(tail.pattern)
    if cut < 1 or spelling.pattern[cut:].lower() != tail.pattern.lower():
        raise TextError(f"the word does not end in a host and {enclitic!r}: give the enclitic as the word spells it")
    host = spelling._replace(pattern=spelling.pattern[:cut], lengths=spelling.lengths[:cut])
    return speech_sounds(host) + speech_sounds(tail), len(tail.pattern)
