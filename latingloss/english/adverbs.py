"""English adverbs from adjectives, for the glosses of Latin adverbs in -ē and -iter."""

from __future__ import annotations

import re

from latingloss.english.spelling import with_ly
from latingloss.english.vocabulary import has_adverb

_OWN = {
    "good": "well", "fast": "fast", "hard": "hard", "early": "early", "late": "late", "much": "much",
    "little": "little", "long": "long", "far": "far", "high": "high", "daily": "daily", "yearly": "yearly",
    "nightly": "nightly", "other": "otherwise", "first": "first", "last": "last", "following": "next",
    "single": "singly", "difficult": "with difficulty", "ancient": "of old", "big": "greatly",
    "ill": "badly", "such": "in such a way",
}  # fmt: skip
# phrases that say how, where or when as they stand: by chance, beyond reckoning
_ADVERBIAL = re.compile("(a|at|by|in|on|with|without|above|against|before|beneath|beyond|between|from|under) ")


def adverb(adjective: str) -> str:
    """Return the adverb of an English adjective, or a phrase where English has no such word.

    >>> adverb("happy"), adverb("good"), adverb("ugly"), adverb("warlike"), adverb("of gold"), adverb("by chance")
    ('happily', 'well', 'in an ugly way', 'in a warlike way', 'in the manner of gold', 'by chance')
    """
    if adjective in _OWN:
        return _OWN[adjective]
    if adjective.startswith("of "):
        return f"in the manner {adjective}"
    if adjective.startswith(("that ", "which ", "another")):
        return f"in {adjective} way" if adjective.endswith("'s") else f"in a way {adjective}"
    if " " in adjective:
        return adjective if _ADVERBIAL.match(adjective) else f"in a way that is {adjective}"
    if has_adverb(adjective):
        return with_ly(adjective)
    return f"in {'an' if adjective[0] in 'aeiouAEIOU' else 'a'} {adjective} way"


def adverb_gloss(gloss: str) -> str:
    """Return the glosses of an adjective turned into adverbs; at most three, words before phrases.

    >>> adverb_gloss("warlike; fierce"), adverb_gloss("gentle; soft")
    ('fiercely; in a warlike way', 'gently; softly')
    """
    senses = gloss.split("; ")
    single = [s for s in senses if " " not in s] or senses
    made = dict.fromkeys(adverb(s) for s in single[:3])
    return "; ".join(sorted(made, key=lambda phrase: " " in phrase))
