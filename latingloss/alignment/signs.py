"""Signs in the English rendering of what each Latin word is: of case, number, person and mood.

`of the city` is a sign of a genitive, a noun before the verb of a nominative, `let` of a subjunctive. They are read
off the links of the aligner.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from latingloss.alignment.grammar import FUNCTION_WORDS
from latingloss.english.vocabulary import has_adverb
from latingloss.english.words import base_forms

_REACH = 4  # English words between a noun and its verb or preposition
_LONGEST_CALL = 7  # English words
_BREAKS = frozenset('.,;:?!—–"“”')
_STOPS = frozenset(".;:?!")
_DETERMINERS = frozenset("the a an his her my your their our its thy this that".split())
_GRAMMAR = FUNCTION_WORDS | frozenset(
    "thou thee ye thy thine me him us them whom unto upon o oh was were is are am been being has had having did does"
    " will would shall should may might let not an as thus what whatever whoever those these himself herself itself"
    " themselves ourselves yourselves why".split()
)
# what tells of a subject, or of a verb that is no command, beside a bare verb
_NO_COMMAND = frozenset(
    "i we he she it they thou ye who that to am is are was were will shall would should may might had has hath did does"
    " let".split()
)
# words of grammar among the names of who is called
_CALLING = frozenset("o oh you ye thou my our thy your and or".split())
_PREPOSITIONS = frozenset(
    "of to unto for with by from in on at into about through upon than against among before after under over as like"
    " without within between toward towards beside behind".split()
)
_BE = frozenset("am is are was were be been art wast".split())


class _Rendering(NamedTuple):
    """An English rendering with what is known of its words."""

    words: list[str]  # in lower case
    owner: dict[int, int]  # the Latin token that each is linked to
    verbal: set[int]  # those that stand for a finite verb


def english_signs(
    linked: Sequence[Sequence[int]], english: Sequence[str], *, verbs: Sequence[bool]
) -> list[tuple[str, ...]]:
    """Return the signs of each Latin token.

    `linked` has the English tokens linked to each Latin token; `verbs` says which Latin tokens are finite verbs.
    """
    lower = [word.lower() for word in english]
    owner = {j: i for i, js in enumerate(linked) for j in js}
    verbal = {j for js, verb in zip(linked, verbs, strict=True) if verb for j in _verb_words(js, lower)}
    rendering = _Rendering(lower, owner, verbal)
    return [_signs(i, sorted(js), rendering) for i, js in enumerate(linked)]


def _verb_words(linked: Sequence[int], english: Sequence[str]) -> list[int]:
    """Return the English words that stand for a Latin verb: those with a sense, or else the forms of `be`."""
    return [j for j in linked if english[j] not in _GRAMMAR] or [j for j in linked if english[j] in _BE]


def _signs(token: int, linked: list[int], rendering: _Rendering) -> tuple[str, ...]:
    if not linked:
        return ("alone",)
    english, verbal = rendering.words, rendering.verbal - set(linked)
    content = [j for j in linked if english[j] not in _GRAMMAR]
    found = ["has " + english[j] for j in linked if english[j] in _GRAMMAR]
    if content:
        found += _shape(english[content[-1]])
    first, last = (content or linked)[0], (content or linked)[-1]
    found += _around(token, first, rendering)
    bare = "bare" in found and _NO_COMMAND.isdisjoint(english[j] for j in linked)
    if bare and (_opens(linked[0], english) or _joins_command(linked[0], rendering)):
        found.append("opens bare")
    if _is_called(first, last, english, verbal=verbal):
        found.append("called")
    if content and _without_preposition(first, english, verbal=verbal):
        found.append("without preposition")
    if content and not _after_will(last, english):
        found.append("without will")
    if last + 1 < len(english):
        found.append("then " + _kind(english[last + 1]))
    found.append(_place(first, last, english, verbal=verbal))
    return tuple(dict.fromkeys(found))


def _joins_command(place: int, rendering: _Rendering) -> bool:
    """Tell whether `and` joins a word to a bare verb that opens the clause: `arise and come`, `help us and free us`."""
    english = rendering.words
    if not place or english[place - 1] not in ("and", "or"):
        return False
    for j in range(place - 2, -1, -1):
        if english[j] in _STOPS or english[j] in _NO_COMMAND:
            return False
        if j in rendering.verbal and _opens(j, english):
            return base_forms(english[j])[0] == english[j]
    return False


def _is_called(first: int, last: int, english: list[str], *, verbal: set[int]) -> bool:
    """Tell whether words stand between marks, no article or verb with them, as who is called does: `my daughter,`."""
    start, end = first, last + 1
    while not _opens(start, english):
        start -= 1
    while not _ends(end, english):
        end += 1
    if english[start] in ("and", "or") or english[end + 1 : end + 2] in (["and"], ["or"]):
        return False  # in a list
    if end - start > _LONGEST_CALL or not verbal.isdisjoint(range(start, end)):
        return False
    called = english[start:end]
    if "of" in called and (not start or english[start - 1] in _STOPS):  # soul of the world, hear
        called = called[: called.index("of")]
    within = first - start < len(called)
    return within and all(word in _CALLING or word not in _GRAMMAR | _PREPOSITIONS for word in called)


def _without_preposition(first: int, english: list[str], *, verbal: set[int]) -> bool:
    """Tell whether there is no preposition before a word and what goes with it: `the`, `his`, adjectives."""
    for j in range(first - 1, max(-1, first - 1 - _REACH), -1):
        if english[j] in _PREPOSITIONS or english[j] in ("and", "or"):
            return False
        if j in verbal or english[j] in _BREAKS or (english[j] in _GRAMMAR and english[j] not in _DETERMINERS):
            return True
    return first <= _REACH


def _ends(place: int, english: list[str]) -> bool:
    return place >= len(english) or english[place] in _BREAKS


def _opens(place: int, english: list[str]) -> bool:
    return not place or english[place - 1] in _BREAKS


def _shape(word: str) -> list[str]:
    """How the word is inflected: plural or third person -s, past -ed, -ing; an adverb in -ly, an adjective without."""
    base = base_forms(word)[0]
    if word.endswith("ly"):
        return ["-ly"]
    if base == word:
        return ["bare", "could have -ly"] if has_adverb(word) else ["bare"]
    for ending in ("ing", "ed", "s", "eth", "est"):
        if word.endswith(ending):
            return ["-" + ending]
    return ["changed"]


def _after_will(place: int, english: list[str]) -> bool:
    """Tell whether `will` or `shall` stands before a word in its sentence."""
    for j in range(place, -1, -1):
        if english[j] in ("will", "shall", "wilt", "shalt"):
            return True
        if english[j] in _STOPS:
            return False
    return False


def _around(token: int, first: int, rendering: _Rendering) -> list[str]:
    """The words of grammar right before, this word's own or not: `in the`, `of`, `to`."""
    found, english = [], rendering.words
    for back in (1, 2, 3):
        j = first - back
        if j < 0 or english[j] in _BREAKS:
            if back == 1:
                found.append("opens")
            break
        if english[j] not in _GRAMMAR:
            if back == 1:
                found.append("after content")
            break
        mine = rendering.owner.get(j, token) == token
        found.append(("own " if mine else "other ") + english[j])
        if english[j] not in _DETERMINERS:
            break
    return found


def _kind(word: str) -> str:
    return word if word in _GRAMMAR or word in _BREAKS else "content"


def _place(first: int, last: int, english: list[str], *, verbal: set[int]) -> str:
    """Whether a verb follows, precedes, or both, within reach and without a break."""
    after = _within_reach(english, range(last + 1, min(len(english), last + 1 + _REACH)), verbal)
    before = _within_reach(english, range(first - 1, max(-1, first - 1 - _REACH), -1), verbal)
    if before in _BE:
        return "between be and verb" if after else "after be"
    return {(True, False): "before verb", (False, True): "after verb", (True, True): "between verbs"}.get(
        (bool(after), bool(before)), "no verb near"
    )


def _within_reach(english: list[str], places: range, verbal: set[int]) -> str:
    """Return the first word of a verb on the way, before any break; an empty string if there is none."""
    for j in places:
        if english[j] in _BREAKS:
            break
        if j in verbal:
            return english[j]
    return ""
