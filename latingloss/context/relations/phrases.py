"""What belongs together in a phrase: preposition and noun, noun and adjective, two names for one.

Agreement is that of Bennett 1918, sections 234-235, apposition 169.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from latingloss.context.relations.lemmas import KIN, PERSONS, PLACES, POINTING
from latingloss.context.relations.words import Word

Found = dict[int, Word]  # place of a word -> place of its partner's word
_CASES = {"acc": "Acc", "abl": "Abl", "gen": "Gen"}
ADJECTIVAL = frozenset(("adjective", "determiner", "participle"))
_STANDING = frozenset(("adjective", "participle"))


def governed(words: list[Word]) -> Found:
    """Return for the words of prepositional phrases their preposition."""
    found: Found = {}
    for i, word in enumerate(words):
        if word.kind != "preposition":
            continue
        cases = {_CASES.get(g, "") for g in word.reading.lexeme.governs.split("/")} - {"Gen"}
        if word.part and i:  # mēcum
            found[i - 1] = word
        elif cases:
            for other in _phrase(words, i, cases):
                found[other.place] = word
    return found


def _phrase(words: list[Word], i: int, cases: set[str]) -> Iterator[Word]:
    """The words that the preposition at a place governs: a noun with its adjectives, and what `and` joins to it."""
    head: Word | None = None
    case = ""
    joined = False
    before: list[Word] = []  # of the noun: its adjectives, or what stands for a noun
    for other in words[i + 1 : i + 10]:
        kind = other.kind
        if kind in ("finite", "preposition", "subordinator", "infinitive") or other.mark == ".":
            return
        if kind == "coordinator":
            joined = True
            continue
        if other.mark and not joined and (head is not None or case):
            return
        if other.case in ("", "Gen"):
            if not other.case and kind in ("noun", "adjective") and (head is None or joined):
                head = other if kind == "noun" else head
                yield other
            continue
        if other.case not in (cases if not case else (case,)):
            if kind == "participle" or case == "":
                continue
            return
        if head is not None and not joined and not _goes_with(other, head):
            return
        if head is None and kind == "noun" and any(not other.agrees(w) for w in before):
            return  # propter hoc lēgem: the phrase ends with hoc
        before.append(other)
        case = other.case
        if kind in ("noun", "pronoun") or (head is not None and joined):
            head, joined = other, False
        yield other


def _goes_with(other: Word, head: Word) -> bool:
    if other.kind in ADJECTIVAL:
        return other.agrees(head)
    return other.place == head.place + 1 and _names_the_same(head, other)


def _names_the_same(one: Word, other: Word) -> bool:
    """Tell whether two nouns side by side name one person or place: David king, city of Jerusalem."""
    if one.kind != "noun" or other.kind != "noun" or one.case != other.case or one.number != other.number:
        return False
    upos = {one.reading.upos, other.reading.upos}
    if "PROPN" not in upos:
        return one.lemma == "dominus" and other.lemma == "deus"
    if upos == {"PROPN"}:  # of two names in the genitive the second may be the father's
        return other.case != "Gen" or other.lemma == "Chrīstus"
    common, name = (one, other) if one.reading.upos == "NOUN" else (other, one)
    called = common.reading.lexeme.gloss.split("; ")[0]
    if called in PLACES:
        return other.case != "Gen"
    if other.case == "Gen" and called in KIN and name is other:
        return False  # fīliī David: of David's son
    person = called in PERSONS or other.case != "Gen"
    return person and name.reading.lexeme.kind in ("person", "god", "") and not one.genders.isdisjoint(other.genders)


def apposed(words: list[Word]) -> Found:
    """Return for nouns that name a noun before them again that noun: `rēgī` of `Herōdī rēgī`."""
    found: Found = {}
    for before, word in pairwise(words):
        if word.kind == "noun" and word.case and word.mark != "." and _names_the_same(before, word):
            found[word.place] = before
    return found


def agreeing(words: list[Word], prepositions: Found) -> Found:
    """Return for adjectives, determiners and participles the noun that they go with."""
    found: Found = {}
    for word in words:
        partner = None
        if word.kind in ADJECTIVAL and word.case:
            partner = _noun_of(words, word, prepositions)
        if partner is None and word.kind == "participle" and word.case != "Nom" and _stands(words, word, found):
            partner = words[word.place - 1]
        if partner is None and (word.kind == "determiner" or (word.kind == "pronoun" and _may_be_beside(word))):
            partner = _beside_it(words, word)
        if partner is not None:
            found[word.place] = partner
    return found


def _stands(words: list[Word], word: Word, found: Found) -> bool:
    """Tell whether the word before a participle is an adjective that stands as its noun: `impium exaltātum`."""
    before = words[word.place - 1]
    return (
        not word.mark
        and word.place > 0
        and before.kind == "adjective"
        and before.place not in found
        and word.agrees(before)
    )


def _may_be_beside(word: Word) -> bool:
    """Tell whether a pronoun can stand beside a noun: quī and aliquis can, tū and sē cannot."""
    return word.reading.lexeme.constant.get("PronType") != "Prs"


def _beside_it(words: list[Word], word: Word) -> Word | None:
    """The adjective that stands as a noun beside a determiner (`omnēs sānctī`), or the noun behind `quī`, `aliquis`."""
    pointing = word.lemma in POINTING
    if pointing and word.case == "Nom":
        return None  # hic sapientior est: this man is wiser
    kinds = ("noun",) if word.kind == "pronoun" else ("adjective",) if pointing else _STANDING
    for j in (word.place + 1, word.place - 1) if word.kind == "determiner" else (word.place + 1,):
        other = words[j] if 0 <= j < len(words) else word
        edge = other if j > word.place else word
        fits = other.kind in kinds and other.clause == word.clause and not edge.mark and word.agrees(other)
        if fits and not other.reading.lexeme.constant.get("Person"):
            return other
    return None


def _noun_of(words: list[Word], word: Word, prepositions: Found) -> Word | None:
    i = word.place
    pointing = word.lemma in POINTING
    if pointing and word.lemma == "is" and word.case == "Gen":
        after = words[i + 1] if i + 1 < len(words) else None
        return after if after is not None and after.kind == "noun" and not after.mark and word.agrees(after) else None
    reach = 2 if pointing else (6 if word.case == "Nom" else 4) if word.kind == "participle" else 5
    best, distance = None, reach + 1
    for step in (-1, 1):
        for k, other in _beside(words, word, step=step, reach=reach):
            if k < distance and _may_agree(word, other, prepositions):
                best, distance = other, k
                break
    return best


def _may_agree(word: Word, other: Word, prepositions: Found) -> bool:
    if not word.agrees(other):
        return False
    together = prepositions.get(word.place) is prepositions.get(other.place)
    if other.kind == "noun":
        return together or word.place < other.place
    if not together:
        return False
    if other.kind == "determiner":  # eō dīcente
        return word.kind == "participle" and other.lemma in POINTING
    return other.kind == "pronoun" and not other.relative and word.kind != "determiner" and bool(other.number)


def _beside(words: list[Word], word: Word, *, step: int, reach: int) -> Iterator[tuple[int, Word]]:
    """Words on one side of a word, nearest first, up to where its phrase or clause must end."""
    participle = word.kind == "participle"
    pointing = word.lemma in POINTING
    joined = False
    for k in range(1, reach + 1):
        j = word.place + step * k
        if not 0 <= j < len(words):
            return
        other = words[j]
        edge = other if step > 0 else words[j + 1]
        if other.clause != word.clause or edge.mark == "." or (edge.mark and not participle):
            return
        kind = other.kind
        if kind == "preposition" and not (step > 0 and k == 1 and not pointing) and not participle:
            return
        if kind == "finite" and (pointing or k > 2) and not participle:
            return
        if pointing and k > 1 and kind != "noun":
            return
        if kind == "coordinator" and not participle:
            joined = True
        elif joined and kind not in ADJECTIVAL:
            return
        elif kind in ADJECTIVAL and joined and word.agrees(other):
            joined = False
        else:
            yield k, other
