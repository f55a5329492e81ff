"""Base forms of English words, modern and archaic: what `hath`, `cities` and `thy` are forms of.

Modern inflection is looked up with LemmInflect (Jascob 2019), which is loaded on first use; the archaic forms of
prayer books and old Bibles are undone here. Spelling rules are those of any grammar of Early Modern English.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from latingloss.tables import built_once

if TYPE_CHECKING:
    from collections.abc import Callable

# Words whose old form no rule undoes, and pronouns in their modern dress.
_OLD = {
    "art": "be", "wert": "be", "wast": "be", "beest": "be", "hath": "have", "hast": "have", "hadst": "have",
    "doth": "do", "dost": "do", "doest": "do", "doeth": "do", "didst": "do", "saith": "say", "saist": "say",
    "shalt": "shall", "shouldst": "should", "wilt": "will", "wouldst": "would", "mayest": "may", "mayst": "may",
    "mightest": "might", "canst": "can", "couldst": "could", "wist": "know", "wot": "know", "spake": "speak",
    "brake": "break", "bare": "bear", "sware": "swear", "gat": "get", "begat": "beget", "holpen": "help",
    "slew": "slay", "clave": "cleave", "shew": "show", "shewed": "show", "shewn": "show", "sheweth": "show",
    "brethren": "brother", "kine": "cow", "unto": "to", "upon": "on", "thou": "you", "thee": "you", "ye": "you",
    "thy": "your", "thine": "your", "thyself": "yourself", "yourselves": "yourself", "mine": "my", "o": "o", "oh": "o",
    "amongst": "among", "whilst": "while", "betwixt": "between", "yea": "yes", "nay": "no", "whoso": "whoever",
    "whosoever": "whoever", "whatsoever": "whatever", "an": "a", "cannot": "can", "ours": "our", "yours": "your",
    "theirs": "their", "hers": "her", "aught": "anything", "naught": "nothing", "nought": "nothing",
    "everlastingly": "everlasting", "hither": "here", "thither": "there", "whither": "where", "hence": "here",
    "thence": "there", "whence": "where", "hearken": "listen", "behold": "behold", "lo": "behold",
}  # fmt: skip
_PLAIN = {
    "am": "be", "is": "be", "are": "be", "was": "be", "were": "be", "been": "be", "being": "be", "be": "be",
    "has": "have", "had": "have", "having": "have", "does": "do", "did": "do", "done": "do", "doing": "do",
}  # fmt: skip
_CONTRACTED = ("n't", "'s", "'ll", "'re", "'ve", "'d", "'m")
# Words that only look inflected, or whose dictionary form would hide what they are.
_FIXED = frozenset(
    word
    for line in (
        "a i he she it we they you me him her us them his its our your their my this that these those who whom whose",
        "which what as has his us is thus this yes always perhaps towards afterwards besides unless across during",
        "regarding according nothing something anything everything evening morning concerning notwithstanding less",
        "least more most worse worst better best other others else upon jesus moses james lest ever never over under",
        "after before ought might must should would could lord",
    )
    for word in line.split()
)
_OLD_ENDINGS = ("edst", "eth", "est")


@built_once
def _lemmas() -> Callable[[str], dict[str, tuple[str, ...]]]:
    from lemminflect import getAllLemmas

    getAllLemmas("be")  # reads its tables now, while the collector is paused
    return getAllLemmas  # type: ignore[no-any-return]


def _looked_up(word: str) -> list[str]:
    found = _lemmas()(word)
    order = ("VERB", "NOUN", "ADJ", "ADV", "AUX")
    listed = [base for upos in order for base in found.get(upos, ())]
    # `left` is a form of `leave` as well as a word; the inflected reading comes first, the word itself last
    return list(dict.fromkeys([*(b for b in listed if b != word), *(b for b in listed if b == word)]))


def _old_verb(word: str) -> list[str]:
    """Undo -eth, -est and -edst: `giveth`, `lovedst`, `sittest`."""
    for ending in _OLD_ENDINGS:
        if word.endswith(ending) and len(word) > len(ending) + 1:
            stem = word[: -len(ending)]
            trials = [stem, stem + "e"]
            if stem[-1:] == stem[-2:-1]:
                trials.append(stem[:-1])
            if stem.endswith("i"):
                trials.append(stem[:-1] + "y")
            known = [t for t in trials if "VERB" in _lemmas()(t)]
            if known:
                return [b for t in known for b in _lemmas()(t)["VERB"]]
    return []


@lru_cache(maxsize=100_000)
def base_forms(word: str) -> tuple[str, ...]:
    """Return the base forms an English word may have, likeliest first, in lower case; never empty.

    Archaic pronouns and verbs are given their modern base: `thou`, `thee` and `ye` give `you`, `thy` gives `your`,
    `hath` gives `have`. A possessive `'s` is left off. An unknown word is its own base form.

    >>> base_forms("cities"), base_forms("Hath"), base_forms("giveth"), base_forms("saw")
    (('city',), ('have',), ('give',), ('see', 'saw'))
    """
    key = word.lower().replace("’", "'")
    for mark in _CONTRACTED:
        if key.endswith(mark) and len(key) > len(mark):
            key = key[: -len(mark)]
    key = key.strip("'") or key
    if key in _OLD:
        return (_OLD[key],)
    if key in _PLAIN:
        return (_PLAIN[key],)
    if key in _FIXED:
        return (key,)
    found = _looked_up(key)
    if key.endswith(_OLD_ENDINGS) and (old := _old_verb(key)):
        return tuple(dict.fromkeys([*found, *old]))
    return tuple(found) or (key,)
