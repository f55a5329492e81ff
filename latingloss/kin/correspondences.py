"""How Latin words look once they are English: the stems they are taken over in, and the regular endings.

English takes a noun from its oblique stem (`loc-`, `virid-`), a verb from its present or supine stem (`mit-`,
`miss-`), and turns the common suffixes in one way each: -tās into -ty, -tiō into -tion, -bilis into -ble.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from latingloss.kin.letters import ALPHABET
from latingloss.morphology.lexicon import Lexeme
from latingloss.text.orthography import plain

# Latin suffix, as it ends the plain lemma -> what English makes of it. Kent, Language and Philology (1923),
# chapters 4-6, and Greenough and Kittredge, Words and their Ways (1901), chapter 14, treat most of them.
_SUFFIXES = (
    ("tas", ("ty",)), ("tio", ("tion",)), ("sio", ("sion",)), ("xio", ("xion", "ction")), ("io", ("ion",)),
    ("bilis", ("ble", "bility")), ("antia", ("ance", "ancy")), ("entia", ("ence", "ency")), ("ans", ("ant",)),
    ("ens", ("ent",)), ("arius", ("ary", "ar", "arious")), ("arium", ("ary", "arium")), ("aria", ("ary",)),
    ("aris", ("ar", "ary")), ("alis", ("al", "ality")), ("ilis", ("ile", "ility")), ("elis", ("el",)),
    ("orius", ("ory",)), ("orium", ("ory", "orium")), ("oria", ("ory",)), ("osus", ("ous", "ose", "osity")),
    ("ivus", ("ive",)), ("idus", ("id", "idity")), ("inus", ("ine",)), ("ina", ("ine", "in")), ("anus", ("an", "ane")),
    ("icus", ("ic", "ical")), ("ica", ("ic", "ics")), ("aticum", ("age",)), ("ax", ("acious", "acity")),
    ("tudo", ("tude",)), ("mentum", ("ment",)), ("monium", ("mony",)), ("monia", ("mony",)), ("culum", ("cle",)),
    ("culus", ("cle", "cule")), ("cula", ("cle", "cule")), ("tium", ("ce",)), ("tia", ("ce", "cy")),
    ("cium", ("ce",)), ("ium", ("y", "ium")), ("ia", ("y", "ia")), ("tus", ("te", "t")), ("sus", ("se", "s")),
    ("tura", ("ture",)), ("sura", ("sure",)), ("ura", ("ure",)), ("tor", ("tor", "ter")), ("sor", ("sor",)),
    ("ista", ("ist",)), ("ismus", ("ism",)), ("izo", ("ize", "ise")), ("fico", ("fy", "fication")),
    ("eus", ("eous", "ean")), ("ius", ("ious", "y")), ("uus", ("uous",)), ("plex", ("ple", "plex")),
    ("us", ("", "e", "ous")), ("um", ("", "e")), ("a", ("", "e")),
    ("ma", ("m", "me")), ("is", ("", "e")), ("or", ("or",)), ("tes", ("t", "te")),
    ("o", ("", "e", "ate")), ("eo", ("", "e")), ("io", ("", "e")),
)  # fmt: skip
_VERB_TAILS = (
    "", "e", "ion", "ive", "or", "ory", "ure", "able", "al", "ate", "ant", "ent", "ance", "ence", "ible", "ile", "ment",
)  # fmt: skip
_FOLDS = (
    ("ae", "e"), ("oe", "e"), ("ph", "f"), ("th", "t"), ("ch", "c"), ("rh", "r"), ("sh", "s"), ("gh", "g"),
    ("k", "c"), ("q", "c"), ("y", "i"), ("w", "u"),
)  # fmt: skip
_DOUBLED = re.compile(r"([bcdfglmnprstz])\1")


def letters(word: str) -> str:
    """Return a word, Latin or English, with spellings of the same sound made one: ae e, ph f, c k, u v w, i j y.

    What is no letter of the Latin alphabet is left out.

    >>> letters("philosophia"), letters("Caesar"), letters("volvō"), letters("accuse")
    ('filosofia', 'cesar', 'uoluo', 'acuse')
    """
    key = plain(word)
    for old, new in _FOLDS:
        if old in key:
            key = key.replace(old, new)
    return "".join(filter(ALPHABET.__contains__, _DOUBLED.sub(r"\1", key)))


def stems(lexeme: Lexeme) -> Iterator[str]:
    """Yield the plain stems from which English takes a word: of the lemma, oblique, present, supine.

    >>> from latingloss.morphology.lexicon import find
    >>> sorted(stems(find("mittō")[0]))
    ['miss', 'mitt']
    """
    for stem in dict.fromkeys(map(plain, _marked_stems(lexeme))):
        if len(stem) > 1:
            yield stem


def _marked_stems(lexeme: Lexeme) -> Iterator[str]:
    for stem, table in lexeme.stems:
        if table.base not in ("perf", "sync", "isync", "comparative") and not table.mark.startswith(("Cmp", "Sup")):
            yield stem


def english_shapes(lexeme: Lexeme) -> Iterator[str]:
    """Yield the spellings that a lemma would have as an English word; few of them exist.

    >>> from latingloss.morphology.lexicon import find
    >>> "liberty" in set(english_shapes(find("lībertās")[0])), "mission" in set(english_shapes(find("mittō")[0]))
    (True, True)
    """
    lemma = _english_letters(lexeme.spelled)
    seen = {lemma}
    yield lemma
    for latin, english in _SUFFIXES:
        if lemma.endswith(latin) and len(lemma) - len(latin) >= 2:
            for tail in english:
                shape = lemma[: len(lemma) - len(latin)] + tail
                if len(shape) > 2 and shape not in seen:
                    seen.add(shape)
                    yield shape
    tails = _VERB_TAILS if lexeme.upos == "VERB" else ("", "e", "al", "ic", "ous")
    for stem in _marked_stems(lexeme):
        for tail in tails:
            shape = _english_letters(stem) + tail
            if len(shape) > 3 and shape not in seen:
                seen.add(shape)
                yield shape


def _english_letters(word: str) -> str:
    """Keep v and j as English has them; ae and oe become e."""
    bare = plain(word)
    marked = "".join(c for c in word.lower() if c.isalpha())
    if len(bare) == len(marked):
        bare = "".join(m if m in "vj" else b for m, b in zip(marked, bare, strict=True))
    return bare.replace("ae", "e").replace("oe", "e")


_ENGLISH_ENDINGS = (
    "e", "s", "es", "al", "ial", "ual", "an", "ian", "ant", "ent", "ance", "ence", "ancy", "ency", "ar", "ary", "ory",
    "ate", "ation", "ition", "tion", "ion", "ure", "ble", "able", "ible", "ic", "ical", "id", "ide", "ile", "il", "ine",
    "ious", "ous", "eous", "uous", "ity", "ty", "y", "or", "er", "ist", "ism", "ive", "ative", "ment", "us", "um", "a",
    "is", "ium", "ia", "ed", "ing", "ly", "ness", "ful", "itude", "ude", "ify", "ize", "age", "in", "ain", "eer", "ier",
    "le",
)  # fmt: skip


@lru_cache(maxsize=20_000)
def english_stems(word: str) -> tuple[str, ...]:
    """Return an English word folded (see `letters`), whole and then without each ending it may have been given.

    Empty if there is no letter in it.

    >>> english_stems("aquatic")
    ('acuatic', 'acuat')
    """
    whole = letters(word)
    cut = (letters(word[: -len(e)]) for e in _ENGLISH_ENDINGS if word.endswith(e) and len(word) - len(e) > 1)
    stems = (whole, *(stem for stem in cut if whole.startswith(stem)))
    return tuple(stem for stem in dict.fromkeys(stems) if stem)
