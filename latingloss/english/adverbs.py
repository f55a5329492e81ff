"""English adverbs from adjectives, for the glosses of Latin adverbs in -ē and -iter."""

from __future__ import annotations

_OWN = {
    "good": "well", "fast": "fast", "hard": "hard", "early": "early", "late": "late", "much": "much",
    "little": "little", "long": "long", "far": "far", "high": "high", "right": "rightly", "true": "truly",
    "whole": "wholly", "due": "duly", "full": "fully", "daily": "daily", "yearly": "yearly", "nightly": "nightly",
    "former": "formerly", "other": "otherwise", "first": "first", "last": "last",
}  # fmt: skip


def adverb(adjective: str) -> str:
    """Return the adverb of an English adjective, or a phrase where English has no one word.

    >>> adverb("happy"), adverb("gentle"), adverb("good"), adverb("of gold")
    ('happily', 'gently', 'well', 'in a way of gold')
    """
    if adjective in _OWN:
        return _OWN[adjective]
    if " " in adjective:
        return ("in a way " if adjective.startswith("of ") else "in a manner ") + adjective
    if adjective.endswith("ly"):
        return f"in a {adjective} way"
    if adjective.endswith("y") and adjective[-2:-1] not in "aeiou":
        return adjective[:-1] + "ily"
    if adjective.endswith("le") and adjective[-3:-2] not in "aeiou":
        return adjective[:-1] + "y"
    if adjective.endswith("ic"):
        return adjective + "ally"
    if adjective.endswith("ll"):
        return adjective + "y"
    return adjective + "ly"


def adverb_gloss(gloss: str) -> str:
    """Return the glosses of an adjective turned into adverbs; at most three, one-word ones where there are any.

    >>> adverb_gloss("holy; sacred")
    'holily; sacredly'
    """
    senses = gloss.split("; ")
    single = [s for s in senses if " " not in s and "-" not in s] or senses
    return "; ".join(dict.fromkeys(adverb(s) for s in single[:3]))
