"""The English words that glosses and renderings use: what each can be, and its forms.

`data/english/words.tsv` has common words with the forms that no spelling rule gives, `bases.tsv` the forms whose
base no rule finds. Both were made from LemmInflect (Jascob 2019, MIT), which knows ten times as many and takes half
a second to load; it is asked only about words that are not in the table.
"""

from __future__ import annotations

from functools import cache, lru_cache

from latingloss.english.spelling import with_ed, with_er, with_ing, with_s, without_endings
from latingloss.tables import read_table

REGULAR = {
    "NOUN": (with_s,),
    "VERB": (with_ed, with_ed, with_ing, with_s),
    "ADJ": (with_er, lambda word: with_er(word, "est")),
}
TAGS = {"NOUN": ("NNS",), "VERB": ("VBD", "VBN", "VBG", "VBZ"), "ADJ": ("JJR", "JJS")}
_COLUMN = {"NOUN": 0, "VERB": 1, "ADJ": 2}
_ADVERB = 3


@cache
def table() -> dict[str, tuple[str, ...]]:
    """Return the listed words, each with its cell as noun, verb, adjective and adverb; `+` stands for regular."""
    return {word: tuple(kinds) for word, *kinds in read_table("english/words.tsv")}


@cache
def _bases() -> dict[tuple[str, str], tuple[str, ...]]:
    return {(form, upos): tuple(bases.split()) for form, upos, bases in read_table("english/bases.tsv")}


def regular(word: str, upos: str) -> tuple[str, ...]:
    """Return the forms of a word as the spelling rules make them; `upos` is NOUN, VERB or ADJ.

    >>> regular("hop", "VERB")
    ('hopped', 'hopped', 'hopping', 'hops')
    """
    return tuple(rule(word) for rule in REGULAR[upos])


@lru_cache(maxsize=20_000)
def forms(word: str, upos: str) -> tuple[str, ...]:
    """Return the forms of a word: plural; past, participles and third person; or degrees; empty if it is none.

    >>> forms("city", "NOUN"), forms("go", "VERB"), forms("city", "VERB")
    (('cities',), ('went', 'gone', 'going', 'goes'), ())
    """
    if word not in table():
        return () if listed_bases(word, upos) is not None or not word.islower() else _fallback_forms(word, upos)
    listed = table()[word][_COLUMN[upos]]
    if not listed:
        return ()
    own = listed.split(" ") if listed != "+" else ["+"] * len(REGULAR[upos])
    if "-" in own:
        return ()
    return tuple(made if form == "+" else form for form, made in zip(own, regular(word, upos), strict=True))


def _fallback_forms(word: str, upos: str) -> tuple[str, ...]:
    from lemminflect import getInflection

    found = [getInflection(word, tag, inflect_oov=False) for tag in TAGS[upos]]
    return tuple(f[0] for f in found) if all(found) else ()


def has_adverb(adjective: str) -> bool:
    """Tell whether English has an adverb in -ly of an adjective: gladly, but no uglily.

    >>> has_adverb("glad"), has_adverb("ugly")
    (True, False)
    """
    return bool(table().get(adjective.lower(), ("", "", "", ""))[_ADVERB])


@lru_cache(maxsize=20_000)
def listed_bases(word: str, upos: str) -> tuple[str, ...] | None:
    """Return the base forms that the table has for a word; empty if it is another kind of word, None if unknown.

    >>> listed_bases("saw", "VERB"), listed_bases("saws", "NOUN"), listed_bases("city", "VERB")
    (('see', 'saw'), ('saw',), ())
    """
    if (exception := _bases().get((word, upos))) is not None:
        return exception
    column, rows = _COLUMN[upos], table()
    tries = [t for t in without_endings(word) if t in rows]
    for stem in tries:
        if rows[stem][column] and (stem == word or word in forms(stem, upos)):
            return (stem,)
    other = any(word in forms(stem, kind) for stem in tries for kind in _COLUMN if stem != word)
    other = other or any((word, kind) in _bases() for kind in _COLUMN)
    return () if word in rows or other else None
