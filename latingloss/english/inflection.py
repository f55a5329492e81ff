"""English inflection for the literal glosses: verbs, nouns and adjectives, modern and archaic, words and phrases.

The forms come from LemmInflect, imported on first use; what stands here is what it leaves open (it lists `lied`
beside `lay`), what English says otherwise (no `informations`, `more powerful` for `powerfuler`), and phrases, where
one word takes the ending: `sent away`, `groups of four`, `is able`.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache, lru_cache

# past, past participle and -ing form, where LemmInflect's first choice is not the usual one
_VERBS = {
    "be": "was been being", "bear": "bore borne bearing", "beware": "bewared bewared bewaring",
    "bid": "bade bidden bidding", "cleave": "cleaved cloven cleaving", "fit": "fitted fitted fitting",
    "get": "got got getting", "gird": "girded girded girding", "heave": "heaved heaved heaving",
    "lean": "leaned leaned leaning", "level": "levelled levelled levelling", "lie": "lay lain lying",
    "light": "lit lit lighting", "mow": "mowed mown mowing", "rival": "rivalled rivalled rivalling",
    "shoe": "shod shod shoeing", "signal": "signalled signalled signalling", "smell": "smelled smelled smelling",
    "spit": "spat spat spitting", "spoil": "spoiled spoiled spoiling", "swell": "swelled swollen swelling",
    "travel": "travelled travelled travelling", "unravel": "unravelled unravelled unravelling",
    "wake": "woke woken waking", "weave": "wove woven weaving", "wet": "wetted wetted wetting",
    "ungird": "ungirded ungirded ungirding", "disprove": "disproved disproved disproving",
}  # fmt: skip
_TAGS = ("VBD", "VBN", "VBG")
_THIRD = {"be": "is", "have": "has", "fulfil": "fulfils", "re-echo": "re-echoes", "can": "can", "must": "must"}
_MODALS = ("can", "must", "ought", "may", "shall", "will", "would", "should", "might", "could")
_ARCHAIC_SECOND = {
    "am": "art", "are": "art", "was": "wast", "were": "wast", "have": "hast", "had": "hadst", "do": "dost",
    "did": "didst", "will": "wilt", "shall": "shalt", "can": "canst", "may": "mayest", "might": "mightest",
    "would": "wouldst", "should": "shouldst", "could": "couldst", "must": "must", "let": "let",
}  # fmt: skip
_ARCHAIC_THIRD = {"is": "is", "has": "hath", "does": "doth", "says": "saith"}
_ARCHAIC_PAST = {
    "begat": "beget", "spake": "speak", "brake": "break", "bare": "bear", "sware": "swear", "clave": "cleave",
    "wrought": "work", "drave": "drive", "gat": "get", "holpen": "help", "shew": "show", "shewed": "show",
    "shewn": "show", "sat": "sit", "slew": "slay", "besought": "beseech", "art": "be", "wast": "be", "wert": "be",
    "hath": "have", "hast": "have", "hadst": "have", "doth": "do", "dost": "do", "didst": "do", "saith": "say",
    "wilt": "will", "shalt": "shall", "canst": "can", "couldst": "can", "could": "can",
}  # fmt: skip
_PLURALS = {
    "ox": "oxen", "roof": "roofs", "staff": "staffs", "person": "people", "pus": "pus", "anus": "anuses",
    "tuber": "tubers", "cloth": "cloths", "index": "indexes", "stylus": "styluses", "cherub": "cherubim",
    "seraph": "seraphim", "buffalo": "buffaloes", "fish": "fish", "abridgement": "abridgements", "omen": "omens",
    "antelope": "antelopes", "murmur": "murmurs", "writing": "writings", "bramble": "brambles", "myrtle": "myrtles",
}  # fmt: skip
# stuff and qualities that take no `the` of themselves: `of peace`; beside those without a plural in LemmInflect
_MASS = frozenset(
    """ambition beauty birth bread bronze charity cheese concord confidence cruelty death faith fat fear fire food
    fortune freedom friendship glory gold grace grain grass grief hatred help honey honour hope iron ivory joy labour
    laughter life love malice mercy milk oil piety prayer pride prudence purity reason reverence safety salt sand
    silence silk sin smoke snow sorrow strength truth victory virtue war water wheat wine wisdom wood youth""".split()  # noqa: SIM905
)
_NO_PLURAL = frozenset(
    """advice blood booty gold hay honey information ivory knowledge milk porridge silk smoke snow thirst
    wheat""".split()  # noqa: SIM905
)
_COUNT = frozenset("bramble congratulation dealing deer dice ibex people sheep rhinoceros series shellfish".split())  # noqa: SIM905
_GRADES = {
    "good": "better best", "well": "better best", "bad": "worse worst", "badly": "worse worst", "evil": "worse worst",
    "ill": "worse worst", "much": "more most", "many": "more most", "little": "less least", "far": "farther farthest",
    "free": "freer freest", "fierce": "fiercer fiercest", "old": "older oldest", "late": "later latest",
    "soon": "sooner soonest", "often": "oftener oftenest", "upper": "higher highest", "former": "former foremost",
}  # fmt: skip
_NO_ENDING = frozenset(("like", "just", "right", "choice", "exact", "wrong", "real", "dead", "golden", "wooden"))
# words behind the head of a phrase: group *of* four, going *out*
_TAIL = frozenset(
    """of for in on at by to from with under over who that which between about against as out up down away back off
    round around together forth along through across forward aside into without among apart again upon near after
    before above below behind born""".split()  # noqa: SIM905
)
_BEFORE_VERB = frozenset(("not", "usually", "never", "always"))


@cache
def _lookup(word: str, tag: str) -> tuple[str, ...]:
    import lemminflect

    return tuple(lemminflect.getInflection(word, tag, inflect_oov=False))


@cache
def _regular(word: str, tag: str) -> str:
    import lemminflect

    return str(next(iter(lemminflect.getInflection(word, tag)), word))


def _on_verb(phrase: str, form: Callable[[str], str]) -> str:
    """Inflect the verb of a phrase: its first word, adverbs before it left alone."""
    words = phrase.split(" ")
    at = next((i for i, w in enumerate(words) if not (w in _BEFORE_VERB or (w.endswith("ly") and words[i + 1 :]))), 0)
    return " ".join([*words[:at], form(words[at]), *words[at + 1 :]])


def _verb_form(verb: str, column: int) -> str:
    if verb in _VERBS:
        return _VERBS[verb].split()[column]
    return (_lookup(verb, _TAGS[column]) or (_regular(verb, _TAGS[column]),))[0]


@lru_cache(maxsize=10_000)
def past(verb: str) -> str:
    """Return the past tense of a verb or verb phrase, third person singular.

    >>> past("lie"), past("send away"), past("be able")
    ('lay', 'sent away', 'was able')
    """
    return _on_verb(verb, lambda v: _verb_form(v, 0))


@lru_cache(maxsize=10_000)
def past_participle(verb: str) -> str:
    """Return the past participle of a verb or verb phrase.

    >>> past_participle("bear"), past_participle("cut off")
    ('borne', 'cut off')
    """
    return _on_verb(verb, lambda v: _verb_form(v, 1))


@lru_cache(maxsize=10_000)
def present_participle(verb: str) -> str:
    """Return the -ing form of a verb or verb phrase.

    >>> present_participle("be able"), present_participle("lie down")
    ('being able', 'lying down')
    """
    return _on_verb(verb, lambda v: _verb_form(v, 2))


def _third(verb: str) -> str:
    return _THIRD.get(verb) or (_lookup(verb, "VBZ") or (_regular(verb, "VBZ"),))[0]


def _finite(verb: str, *, person: str, singular: bool, before: bool) -> str:
    if verb == "be":
        if before:
            return "was" if singular and person != "2" else "were"
        return {"1": "am", "3": "is"}.get(person, "are") if singular else "are"
    if before:
        return {"may": "might", "shall": "should", "will": "would", "must": "must"}.get(verb) or _verb_form(verb, 0)
    return _third(verb) if singular and person == "3" and verb not in _MODALS else verb


def _archaic(modern: str, *, person: str, before: bool, verb: str) -> str:
    """The forms of thou and he: cryest is spelled criest, sittest doubles as sitting does."""
    if person == "2":
        if modern in _ARCHAIC_SECOND:
            return _ARCHAIC_SECOND[modern]
        if before:
            return modern + ("st" if modern.endswith(("ed", "e")) else "est")
        return _archaic_stem(verb, "st")
    if before or modern in _MODALS:
        return modern
    return _ARCHAIC_THIRD.get(modern) or _archaic_stem(verb, "th")


def _archaic_stem(verb: str, ending: str) -> str:
    if verb.endswith("e"):
        return verb + ending
    stem = _verb_form(verb, 2).removesuffix("ing")
    if re.search("[^aeiou]y$", stem):
        stem = stem[:-1] + "i"
    return stem + "e" + ending


def agree(verb: str, *, person: str, number: str, before: bool = False, archaic: bool = False) -> str:
    """Return the one-word present (or, if `before`, past) of a verb or phrase as its subject wants it.

    `person` is 1, 2 or 3 and `number` Sing or Plur, as in Universal Dependencies; `archaic` gives the forms of
    thou and the third person in -eth.

    >>> agree("be able", person="1", number="Sing"), agree("cry out", person="3", number="Sing")
    ('am able', 'cries out')
    >>> agree("cry", person="2", number="Sing", archaic=True), agree("sit", person="3", number="Sing", archaic=True)
    ('criest', 'sitteth')
    """
    singular = number == "Sing"

    def form(v: str) -> str:
        modern = _finite(v, person=person, singular=singular, before=before)
        old = archaic and singular and person in ("2", "3")
        return _archaic(modern, person=person, before=before, verb=v) if old else modern

    return _on_verb(verb, form)


def mass(noun: str) -> bool:
    """Tell whether an English noun names stuff or a quality, so that it takes no `the` of itself.

    >>> mass("information"), mass("love"), mass("city")
    (True, True, False)
    """
    return noun in _MASS or noun in _NO_PLURAL or (noun not in _COUNT and _lookup(noun, "NNS")[:1] == (noun,))


def _plural_word(noun: str) -> str:
    if noun.endswith("-in-law"):
        return _plural_word(noun.removesuffix("-in-law")) + "-in-law"
    if noun in _PLURALS:
        return _PLURALS[noun]
    if noun in _NO_PLURAL or _already_plural(noun):
        return noun
    if found := _lookup(noun, "NNS"):
        return found[0]
    if noun.endswith("man"):
        return noun[:-2] + "en"
    if noun.endswith(("s", "x", "z", "ch", "sh")):
        return noun + "es"
    return noun[:-1] + "ies" if re.search("[^aeiou]y$", noun) and noun.islower() else noun + "s"


def _already_plural(noun: str) -> bool:
    import lemminflect

    if not noun.endswith(("s", "en", "im")) or noun.endswith("ss"):
        return False
    found = lemminflect.getAllLemmas(noun, "NOUN").get("NOUN", ())
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


def _syllables(word: str) -> int:
    return len(re.findall("[aeiouy]+", re.sub("(?<=[^aeiouyl])e$", "", word)))


@lru_cache(maxsize=10_000)
def _graded(adjective: str, degree: int) -> str:
    first = adjective.removeprefix("very ")
    if first in _GRADES:
        return _GRADES[first].split()[degree]
    lemma = base(first, "ADJ")
    if lemma != first and first.endswith(("er", "est")):
        return first if degree == 0 and first.endswith("er") else _graded(lemma, degree)
    short = _syllables(first) == 1 or (_syllables(first) == 2 and first.endswith(("y", "le", "ow")))
    if short and first not in _NO_ENDING and (found := _lookup(first, ("JJR", "JJS")[degree])):
        return found[0]
    return ("more ", "most ")[degree] + first


def comparative(adjective: str) -> str:
    """Return the comparative of an adjective, adverb or phrase.

    >>> comparative("high"), comparative("powerful"), comparative("good"), comparative("full of light")
    ('higher', 'more powerful', 'better', 'more full of light')
    """
    return _graded(adjective, 0)


def superlative(adjective: str) -> str:
    """Return the superlative of an adjective, adverb or phrase.

    >>> superlative("holy"), superlative("powerful")
    ('holiest', 'most powerful')
    """
    return _graded(adjective, 1)


@lru_cache(maxsize=10_000)
def bases(word: str, upos: str) -> tuple[str, ...]:
    """Return the possible base forms of an English word as VERB, NOUN or ADJ; empty if it is none.

    Archaic verb forms are known: hath, spake, crieth, lovest.

    >>> bases("saw", "VERB"), bases("crieth", "VERB"), bases("cities", "NOUN"), bases("city", "VERB")
    (('see', 'saw'), ('cry',), ('city',), ())
    """
    import lemminflect

    if upos == "VERB" and word in _ARCHAIC_PAST:
        return (_ARCHAIC_PAST[word],)
    if found := tuple(lemminflect.getAllLemmas(word, upos).get(upos, ())):
        return found
    if upos == "NOUN" and re.search("[^s]s$", word) and not lemminflect.getAllLemmas(word):
        return (re.sub("ie$", "y", word[:-1]),)  # shekels, which LemmInflect does not have
    ending = re.fullmatch("(.+?)(?:e?st|e?th)", word) if upos == "VERB" and len(word) > 4 else None
    if ending and not _lookup(word, "NNS"):
        stem = ending[1]
        undoubled = stem[:-1] if stem[-2:-1] == stem[-1:] else stem
        tries = (stem, stem + "e", undoubled, re.sub("i$", "y", stem))
        return next(((t,) for t in tries if _lookup(t, "VBZ")), bases(stem, "VERB"))
    return ()


def base(word: str, upos: str) -> str:
    """Return the likeliest base form of an English word, the word itself if it has none.

    >>> base("sent", "VERB"), base("hath", "VERB"), base("children", "NOUN")
    ('send', 'have', 'child')
    """
    return next(iter(bases(word, upos)), word)
