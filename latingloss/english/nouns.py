"""English plurals, and which nouns have none: `groups of four`, no `informations`."""

from __future__ import annotations

import re
from functools import lru_cache

from latingloss.english.bases import base, bases
from latingloss.english.spelling import with_s
from latingloss.english.vocabulary import forms, listed_bases

_PLURALS = {
    "ox": "oxen", "roof": "roofs", "staff": "staffs", "person": "people",
    "people": "peoples", "pus": "pus", "anus": "anuses",
    "tuber": "tubers", "cloth": "cloths", "index": "indexes", "stylus": "styluses", "cherub": "cherubim",
    "seraph": "seraphim", "buffalo": "buffaloes", "fish": "fish", "abridgement": "abridgements", "omen": "omens",
    "antelope": "antelopes", "murmur": "murmurs", "writing": "writings", "bramble": "brambles", "myrtle": "myrtles",
    "will": "wills", "lack": "lacks", "grasp": "grasps", "blare": "blares", "underworld": "underworlds",
    "mainland": "mainlands",
}  # fmt: skip
# stuff and qualities that take no `the` of themselves: `of peace`; beside those that are their own plural in the table
_MASS = frozenset(
    """ambition beauty birth bread bronze charity cheese concord confidence cruelty death faith fat fear fire food
    fortune freedom friendship glory gold grace grain grass grief hatred help honey honour hope iron ivory joy labour
    laughter life love malice mercy milk oil piety prayer pride prudence purity reason reverence safety salt sand
    silence silk sin smoke snow sorrow strength truth victory virtue war water wheat wine wisdom wood youth""".split()
)
_NO_PLURAL = frozenset(
    """advice blood booty gold hay honey information ivory knowledge milk porridge silk smoke snow thirst
    wheat""".split()
)
_COUNT = frozenset("bramble congratulation dealing deer dice ibex people sheep rhinoceros series shellfish".split())
# words behind the head of a phrase: group *of* four, going *out*
_TAIL = frozenset(
    """of for in on at by to from with under over who that which between about against as out up down away back off
    round around together forth along through across forward aside into without among apart again upon near after
    before above below behind born""".split()
)


def mass(noun: str) -> bool:
    """Tell whether an English noun names stuff or a quality, so that it takes no `the` of itself.

    >>> mass("information"), mass("love"), mass("city")
    (True, True, False)
    """
    return (
        noun in _MASS or noun in _NO_PLURAL or (noun not in _COUNT and forms(noun.lower(), "NOUN") == (noun.lower(),))
    )


def _plural_word(noun: str) -> str:
    if noun.endswith("-in-law"):
        return _plural_word(noun.removesuffix("-in-law")) + "-in-law"
    if noun in _PLURALS:
        return _PLURALS[noun]
    if noun in _NO_PLURAL or _already_plural(noun):
        return noun
    if found := forms(noun.lower(), "NOUN"):
        return found[0] if noun.islower() else found[0].capitalize()
    if listed_bases(noun, "NOUN") == (noun,):  # a noun that the table gives no plural
        return noun
    if re.search("[^aious]s$", noun):  # a plural that the table does not have: moneychangers
        return noun
    if noun.endswith("man") and noun.islower():  # but Romans
        return noun[:-2] + "en"
    return with_s(noun) if noun.islower() or not noun.endswith("y") else noun + "s"


def _already_plural(noun: str) -> bool:
    found = bases(noun, "NOUN") if noun.endswith(("s", "en", "im")) and not noun.endswith("ss") else ()
    return bool(found) and noun not in found


@lru_cache(maxsize=10_000)
def plural(noun: str) -> str:
    """Return the plural of a noun or noun phrase; nouns without one, and plurals, come back as they are.

    >>> plural("child"), plural("group of four"), plural("bringing up"), plural("information"), plural("one who heals")
    ('children', 'groups of four', 'bringings up', 'information', 'those who heal')
    """
    if found := re.fullmatch("(.+?) who (is|[a-z]+)(.*)", noun):
        those = "those" if found[1] == "one" else plural(found[1])
        return f"{those} who {'are' if found[2] == 'is' else base(found[2], 'VERB')}{found[3]}"
    words = noun.split(" ")
    if words[0] in ("what", "those", "the"):
        return noun
    end = next((i for i, w in enumerate(words) if i and w in _TAIL), len(words))
    return " ".join([*words[: end - 1], _plural_word(words[end - 1]), *words[end:]])
