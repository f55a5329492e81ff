"""Spelling: one key for all the ways a Latin word is written, and the marks that tell its sounds.

`plain` folds what editors vary (case, vowel lengths, accents, ligatures, u/v, i/j), so that a word is the same
word however it is printed. `spellings` proposes what a church or schoolroom spelling stands for.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from functools import lru_cache

_LENGTHS = dict(zip("āēīōūȳĀĒĪŌŪȲ", "aeiouyAEIOUY", strict=True))
_FOLD = {"æ": "ae", "œ": "oe", "ǽ": "ae", "Æ": "Ae", "Œ": "Oe", "Ǽ": "Ae", "ﬁ": "fi", "ﬂ": "fl", "ß": "ss", "ſ": "s"}
_PLAIN = str.maketrans(_LENGTHS | _FOLD | {"v": "u", "j": "i", "V": "u", "J": "i"})
_MARKS_OFF = str.maketrans(_LENGTHS)
LONGEST_WORD = 60  # letters; what is longer is no Latin word, and not worth the time
_MACRON, _BREVE = "\u0304", "\u0306"


@lru_cache(maxsize=1 << 17)
def plain(form: str) -> str:
    """Return the comparison key of a form: lower case, no marks, ae for æ, u for v, i for j.

    >>> plain("Cǽcus"), plain("jūstitiā"), plain("VENITE")
    ('caecus', 'iustitia', 'uenite')
    """
    key = form.translate(_PLAIN).lower()
    if key.isascii():
        return key
    key = "".join(c for c in unicodedata.normalize("NFD", key) if not unicodedata.combining(c))
    return key.translate(_PLAIN)


def without_lengths(form: str) -> str:
    """Return a form without vowel-length marks, everything else kept: `jūs` -> `jus`.

    >>> without_lengths("jūstitiā")
    'justitia'
    """
    return form.translate(_MARKS_OFF)


def printed(form: str) -> str:
    """Return the form as latingloss prints it: i for the lexicon's j, one i in iciō; vowel lengths kept.

    >>> printed("jūstitia"), printed("prōjiciō")
    ('iūstitia', 'prōiciō')
    """
    return form.replace("ji", "i").replace("j", "i").replace("J", "I")


def has_lengths(form: str) -> bool:
    """Tell whether a form has a macron or breve written on it.

    >>> has_lengths("rosā"), has_lengths("glória")
    (True, False)
    """
    return not form.isascii() and any(c in (_MACRON, _BREVE) for c in unicodedata.normalize("NFD", form))


def lengths(form: str) -> str:
    """Return the lengths written on a form's letters: `-` macron, `u` breve, `.` none, one sign a plain letter.

    >>> lengths("rosā")
    '...-'
    """
    signs: list[str] = []
    for c in unicodedata.normalize("NFD", form):
        if unicodedata.combining(c):
            if signs and c in (_MACRON, _BREVE):
                signs[-1] = "-" if c == _MACRON else "u"
        else:
            signs.extend("." * len(_FOLD.get(c, c)))
    return "".join(signs)


# What may stand for what in church, medieval and school spellings: (pattern, replacement) on plain keys, most
# telling first. Blaise (1955) and Stotz (1996) describe them; the list is common practice, no source.
_VARIANTS = [
    (re.compile(p), r)
    for p, r in (
        (r"^c(oe|ae)([nlmt])", r"ce\2"),
        (r"^michi", "mihi"),
        (r"^nichil", "nihil"),
        (r"oe", "ae"),
        (r"ae", "e"),
        (r"oe", "e"),
        (r"ae", "oe"),
        (r"e", "ae"),
        (r"e", "oe"),
        (r"ci(?=[aeou])", "ti"),
        (r"ti(?=[aeou])", "ci"),
        (r"ch", "c"),
        (r"c(?=[aelor])", "ch"),
        (r"^ch", "c"),
        (r"ph", "f"),
        (r"f", "ph"),
        (r"th", "t"),
        (r"t", "th"),
        (r"y", "i"),
        (r"i", "y"),
        (r"mpn", "mn"),
        (r"mpt", "mt"),
        (r"mt", "mpt"),
        (r"ms", "mps"),
        (r"^h", ""),
        (r"^(?=[aeiou])", "h"),
        (r"(?<=[aeiou])h(?=[aeiou])", ""),
        (r"uu", "uo"),
        (r"quu", "cu"),
        (r"^quu", "cu"),
        (r"quo", "co"),
        (r"cu", "quu"),
        (r"uo(?=[lrs])", "ue"),
        (r"uo(?=[lnm])", "uu"),
        (r"iic", "ic"),
        (r"ic", "iic"),
        (r"iec", "iiec"),
        (r"^ads", "ass"),
        (r"^adsc", "asc"),
        (r"^adsp", "asp"),
        (r"^asp", "adsp"),
        (r"^asc", "adsc"),
        (r"^ast", "adst"),
        (r"^adgn", "agn"),
        (r"^agn", "adgn"),
        (r"^ad([cfglnprst])", r"a\1\1"),
        (r"^a([cfglnprst])\1", r"ad\1"),
        (r"^adqu", "acqu"),
        (r"^acqu", "adqu"),
        (r"^co[nm]l", "coll"),
        (r"^co[nm]r", "corr"),
        (r"^con([mpb])", r"com\1"),
        (r"^com(?=[cdfgnqstu])", "con"),
        (r"^coll", "conl"),
        (r"^corr", "conr"),
        (r"^com([mpb])", r"con\1"),
        (r"^in([mpb])", r"im\1"),
        (r"^inl", "ill"),
        (r"^inr", "irr"),
        (r"^im([mpb])", r"in\1"),
        (r"^ill", "inl"),
        (r"^irr", "inr"),
        (r"^ob([cfp])", r"o\1\1"),
        (r"^o([cfp])\1", r"ob\1"),
        (r"^opt", "obt"),
        (r"^ops", "obs"),
        (r"^sub([cfgmpr])", r"su\1\1"),
        (r"^su([cfgmpr])\1", r"sub\1"),
        (r"^sups", "subs"),
        (r"^supt", "subt"),
        (r"^subst", "sust"),
        (r"^sust", "subst"),
        (r"^sus(?=[ptc])", "subs"),
        (r"^susp", "suscp"),
        (r"^exs", "ex"),
        (r"^ex(?=[aeiouptc])", "exs"),
        (r"^ecf", "eff"),
        (r"^exf", "eff"),
        (r"^dis?f", "diff"),
        (r"^trans", "tra"),
        (r"^tra(?=[dniluc])", "trans"),
        (r"^transs", "trans"),
        (r"^trans(?=[cptu])", "transs"),
        (r"([bcdfglmnprst])\1", r"\1"),
        (r"(?<=[aeiouy])([bcdfglmnprst])(?=[aeiouy])", r"\1\1"),
        (r"xs", "x"),
        (r"x(?=[aeiou])", "xs"),
        (r"nqu", "mqu"),
        (r"mqu", "nqu"),
        (r"nd", "md"),
        (r"md", "nd"),
        (r"umc", "unc"),
        (r"unc", "umc"),
        (r"^k", "c"),
        (r"ngu(?=[aeiou])", "ng"),
        (r"ng(?=[aeiou])", "ngu"),
        (r"^set$", "sed"),
        (r"^aput$", "apud"),
        (r"^haut$", "haud"),
        (r"d$", "t"),
        (r"(?<=[aeu])t$", "d"),
        (r"i$", "ii"),
        (r"is$", "iis"),
        (r"undum$", "endum"),
        (r"b(?=[st])", "p"),
        (r"p(?=[st])", "b"),
    )
]


def spellings(key: str) -> Iterator[str]:
    """Yield other spellings that a plain key may stand for, the most telling first; each once, the key not.

    None of a key longer than any word, `LONGEST_WORD`.

    >>> "caritas" in set(spellings("charitas")), "attendite" in set(spellings("adtendite"))
    (True, True)
    """
    if len(key) > LONGEST_WORD:
        return
    seen = {key}
    for pattern, replacement in _VARIANTS:
        for match in pattern.finditer(key):
            new = match.expand(replacement) if "\\" in replacement else replacement  # expanding is slow
            changed = key[: match.start()] + new + key[match.end() :]
            if changed not in seen:
                seen.add(changed)
                yield changed
