"""From letters to Latin speech sounds: which i and u are consonants, which two vowels make one.

A sound string has one sign a letter, so it runs side by side with the spelling. Vowels are `aeiouyæœ`, capital
where a long mark is written; `ᵉ ᵘ ⁱ` are second halves of diphthongs; `j` and `v` are always consonants; `ʰ` is the h
of ch ph th rh; `ʷ` is the u of qu, ngu and suāvis; `ɪ` is the i of adiciō, spoken ji; `?` is a letter not Latin.

Sources: Allen, Vox Latina (1978), on semivowels and diphthongs; Bennett, New Latin Grammar (1918), sections 2-3. In
the patterns a capital is a vowel with a mark of its own (see `spelling`).
"""

from __future__ import annotations

import re

from latingloss.pronunciation.spelling import LONG, Spelling

VOWELS = "aeiouyæœAEIOUYÆŒɪ"
GLIDES = "ᵉᵘⁱ"
_V = f"[{VOWELS}]"

# A v that cannot be a consonant shows a text that writes every u so: VIVVM, TVA, QVI.
_STRAY_V = re.compile(f"v(?!{_V})|^[bcdfgpst]v|[gq]v")
_STRAY_J = re.compile(f"j(?!{_V})")
_ASPIRATE = re.compile("(?<=[cptrk])h")
# su is a consonant pair only in suāvis, suādeō, suēscō and their kin; suē-t, suē-v only behind a prefix (cōnsuētus).
_LABIAL = re.compile(
    f"(?:(?<=q)|(?<=ng)|(?<=^g))u(?={_V})|(?<=s)u(?=(?i:a[dv]|as[iou]|esc))|(?<=[nsd]s)u(?=(?i:e[tv]))"
)

# Forms of eō keep i a vowel: ierat, ierint, iēns; so do Greek words: iambus, iaspis, Iāsōn, Iacchus, Iōnia.
_EO = "(?i:er(?:a[mst]|ant|amus|atis|i[mst]|int|imus|itis|o|unt)$|ens$|ent[ei])"
_GREEK = "(?i:a(?:mb|sp|son|cc|py)|on(?:i|es$)|o$|ul(?:us|um|o)$)"
_FIRST_I = re.compile(f"^i(?={_V})(?!i|I|{_EO}|{_GREEK})")
_EO_COMPOUND = re.compile(f"^(?i:intro|retro|prae|ante|co)i(?={_EO}|i)")
# Prefixes, and behind them the roots of jaceō jaciō jungō jugum jūdex jūs jūrō juvō jubeō jocus.
_PREFIX = "(?i:ab|ad|circum|con|dis|ex|in|inter|[ij]us|ob|per|post|sub|super|trans)"
_PREFIXED_I = re.compile(f"^{_PREFIX}{{1,2}}i(?=(?i:ac|ec[eit]|oc|u(?!(?:[sm]|nt|ntur)$)))")
# adiciō stands for adjiciō: one written i for the consonant and the vowel.
_THROWN = re.compile("^(?i:ab|ad|con?|de|dis|e|in|inter|ob|pro|re|sub|super|tra|trans|circum)i(?=c(?!id)(?i:e|i|unt))")
_MIDDLE_I = re.compile(f"(?<={_V})(?<!^tenu)[iy](?={_V})")

_FIRST_U = re.compile(f"^u(?={_V})")
_MIDDLE_U = re.compile(f"(?<={_V})u(?={_V})")
_PREFIX_U = re.compile(f"^(?i:con|in|ad|per|ob|sub|trans|circum|inter|super)u(?={_V})")
_ROOT_U = re.compile(f"(?:^|{_V})(?i:[cs]er|par|[sc]al|s[io]l|[cp]ur|ner|lar|[fp]ul|[ct]or)u(?={_V})(?!i[st]?$)")

# Two vowels that stay apart though no mark says so. Each pattern ends with the second of them.
_APART = re.compile(
    "^ae(?=r(?:em)?$)|^pʰae(?=t)|(?:isr|micʰ|rapʰ|ism|mis|tʰan)ae(?=l)"  # aer, Phaethon, Israel, Nathanael
    "|^coe(?=g|rc|m(?:o|er|i|pt)|s[st]|x|pisc|unt|o$|a[mst]$)|^(?:intr|retr)oe|^poe(?=[tms])|^boe(?=t)"
    "|^heroe(?=[ms]?$)|.oe$"  # heroem, aloe, Noe
    "|[aeiouy][^aeiouy]+au(?=[ms]?$)|^sau(?=l(?:em|is)?$)"  # Nicolaus, Capharnaum, Esau, Saul
    "|eu(?=[ms]$|n[dt])"  # deus, meum, euntis
)
_GREEK_EU = re.compile("^(?:h|z|orpʰ|tʰes|pers|atr|pel|prot|ner|morpʰ|odyss|prometʰ|tyd|capan|idomen)eus$")
_PRONOUN_UI = re.compile("^(?:(?:ali|ne|si)?cu|hu)i(?=c?$|[^aeiou])")
_JOINED = ("ae", "oe", "au", "eu")
_SECOND_E = re.compile("(?<=[ao])e")
_SECOND_U = re.compile("(?<=[ae])u")


def speech_sounds(spelling: Spelling) -> str:
    """Return the sound string of a word, one sign a letter.

    >>> from latingloss.pronunciation.spelling import read_spelling
    >>> [speech_sounds(read_spelling(word)) for word in ("injūria", "inquit", "adiciō", "aurum", "deus")]
    ['injUria', 'inqʷit', 'adɪciO', 'aᵘrum', 'deus']
    """
    pattern = spelling.pattern  # each rule is tried only on words with its letter, which is far quicker
    if "j" in pattern:
        pattern = _STRAY_J.sub("i", pattern)
    if "u" not in pattern and _STRAY_V.search(pattern):
        pattern = pattern.replace("v", "u")
    if "h" in pattern:
        pattern = _ASPIRATE.sub("ʰ", pattern)
    if "u" in pattern:
        pattern = _LABIAL.sub("ʷ", pattern)
    if "i" in pattern:
        pattern = _settle_early_i(pattern)
    if "v" not in pattern and "u" in pattern:
        pattern = _settle_u(pattern)
    if "i" in pattern or "y" in pattern:
        pattern = _MIDDLE_I.sub("j", pattern)
    return _with_lengths(_join_diphthongs(pattern), spelling.lengths)


def _settle_early_i(pattern: str) -> str:
    """Settle the i at the start of the word or behind a prefix."""
    pattern = _FIRST_I.sub("j", pattern)
    pattern = _EO_COMPOUND.sub(lambda match: match[0][:-1] + "I", pattern)
    pattern = _THROWN.sub(lambda match: match[0][:-1] + "ɪ", pattern)
    return _PREFIXED_I.sub(lambda match: match[0][:-1] + "j", pattern)


def _settle_u(pattern: str) -> str:
    """Settle u in a word that writes no v, so may write u for both."""
    pattern = _MIDDLE_U.sub("v", _FIRST_U.sub("v", pattern))
    pattern = _PREFIX_U.sub(lambda match: match[0][:-1] + "v", pattern)
    return _ROOT_U.sub(lambda match: match[0][:-1] + "v", pattern)


def _join_diphthongs(pattern: str) -> str:
    if "ui" in pattern:
        pattern = _PRONOUN_UI.sub(lambda match: match[0][:-1] + "ⁱ", pattern)
    if not any(pair in pattern for pair in _JOINED):
        return pattern
    if not _GREEK_EU.match(pattern):
        pattern = _APART.sub(lambda match: match[0][:-1] + match[0][-1].upper(), pattern)
    return _SECOND_U.sub("ᵘ", _SECOND_E.sub("ᵉ", pattern))


def _with_lengths(pattern: str, lengths: str) -> str:
    if LONG not in lengths:
        return pattern.lower()
    signs = zip(pattern.lower(), lengths, strict=True)
    return "".join(sign.upper() if length == LONG else sign for sign, length in signs)
