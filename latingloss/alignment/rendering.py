"""What the English rendering says of each Latin word: signs of case, number, person and mood.

`of the city` is a sign of a genitive, a noun before the verb of a nominative, `let` of a subjunctive. The signs are
read off the links of the aligner; what each is worth for each ending is learned, see `building.chooser`.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache, lru_cache
from math import log

from latingloss.alignment.grammar import FUNCTION_WORDS
from latingloss.alignment.translations import translations_of
from latingloss.alignment.units import lexeme_key
from latingloss.context.tags import english_tag
from latingloss.english.vocabulary import has_adverb
from latingloss.english.words import base_forms
from latingloss.morphology.lexicon import Lexeme
from latingloss.morphology.ranking import Weighed, by_score
from latingloss.tables import read_table

_REACH = 4  # English words between a noun and its verb
_BREAKS = frozenset('.,;:?!—–"“”')
_DETERMINERS = frozenset("the a an his her my your their our its thy this that".split())
_GRAMMAR = FUNCTION_WORDS | frozenset(
    "thou thee ye thy thine me him us them whom unto upon o oh was were is are am been being has had having did does"
    " will would shall should may might let not an as thus what whatever whoever those these himself herself itself"
    " themselves ourselves yourselves".split()
)
# what tells of a subject, or of a verb that is no command, beside a bare verb
_NO_COMMAND = frozenset(
    "i we he she it they thou ye who that to am is are was were will shall would should may might had has hath did does"
    " let".split()
)
_CALLING = frozenset("o oh my our thy your".split())  # words of grammar before someone called
_BE = frozenset("am is are was were be been art wast".split())


def english_signs(
    linked: Sequence[Sequence[int]], english: Sequence[str], *, verbs: Sequence[bool]
) -> list[tuple[str, ...]]:
    """Return the signs of each Latin token.

    `linked` has the English tokens linked to each Latin token; `verbs` says which Latin tokens are finite verbs.
    """
    lower = [word.lower() for word in english]
    owner = {j: i for i, js in enumerate(linked) for j in js}
    verbal = {j for js, verb in zip(linked, verbs, strict=True) if verb for j in _verb_words(js, lower)}
    return [_signs(i, sorted(js), lower, owner=owner, verbal=verbal) for i, js in enumerate(linked)]


def _verb_words(linked: Sequence[int], english: Sequence[str]) -> list[int]:
    """Return the English words that stand for a Latin verb: those with a sense, or else the forms of `be`."""
    return [j for j in linked if english[j] not in _GRAMMAR] or [j for j in linked if english[j] in _BE]


def _signs(
    token: int, linked: list[int], english: list[str], *, owner: dict[int, int], verbal: set[int]
) -> tuple[str, ...]:
    if not linked:
        return ("alone",)
    content = [j for j in linked if english[j] not in _GRAMMAR]
    found = ["has " + english[j] for j in linked if english[j] in _GRAMMAR]
    if content:
        found += _shape(english[content[-1]])
    first, last = (content or linked)[0], (content or linked)[-1]
    found += _around(token, first, english, owner=owner)
    if "bare" in found and _opens(linked[0], english) and _NO_COMMAND.isdisjoint(english[j] for j in linked):
        found.append("opens bare")
    if _is_called(first, last, english):
        found.append("called")
    if last + 1 < len(english):
        found.append("then " + _kind(english[last + 1]))
    found.append(_place(first, last, english, verbal=verbal - set(linked)))
    return tuple(dict.fromkeys(found))


def _is_called(first: int, last: int, english: list[str]) -> bool:
    """Tell whether words stand alone between marks, without an article, as whoever is called does: `my daughter,`."""
    if not _ends(last + 1, english) or english[last + 2 : last + 3] in (["and"], ["or"]):
        return False
    for j in range(first - 1, max(-2, first - 4), -1):
        if j < 0 or english[j] in _BREAKS:
            return True
        if english[j] in _GRAMMAR and english[j] not in _CALLING:
            return False
    return False


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


def _around(token: int, first: int, english: list[str], *, owner: dict[int, int]) -> list[str]:
    """The words of grammar right before, this word's own or not: `in the`, `of`, `to`."""
    found = []
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
        mine = owner.get(j, token) == token
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


def linked_words(linked: Sequence[int], english: Sequence[str]) -> tuple[str, ...]:
    """Return the base forms of the English words linked to a Latin word."""
    return tuple(base_forms(english[j])[0] for j in linked)


_CLOSED = (".ADP", ".SCONJ", ".CCONJ", ".PRON")
_UNRELATED = 1e-3  # probability of an English word that a lexeme has never been rendered by


def word_odds(lexeme: Lexeme, words: tuple[str, ...]) -> float:
    """Return how much better than an unrelated word the best of some English words renders a lexeme: log odds."""
    if not words:
        return 0.0
    return max(_word_odds(lexeme_key(lexeme), lexeme.gloss, word) for word in words)


@lru_cache(maxsize=200_000)
def _word_odds(key: str, gloss: str, word: str) -> float:
    glossed = word in gloss.replace(";", " ").split()
    if key.endswith(_CLOSED):  # the tables were learned before their homographs (cum, quam, quod) were told apart
        probability = 0.3 if glossed else 0.0
    else:
        _, total, links = translations_of(key)
        probability = (links.get(word, 0.0) + 0.5 * glossed) / (total + 1.0)
    return log(probability + _UNRELATED) - log(_UNRELATED)


@cache
def sign_weights() -> dict[str, dict[str, float]]:
    """Return what each sign is worth, in log-odds, by tag (see `english_tag`) and sign; `<word>` weighs `word_odds`."""
    weights: dict[str, dict[str, float]] = {}
    for tag, sign, weight in read_table("context/english.tsv"):
        weights.setdefault(tag, {})[sign] = float(weight)
    return weights


def reweigh(readings: Weighed, signs: Sequence[str], words: tuple[str, ...]) -> Weighed:
    """Return the readings of a word with probabilities that take the English into account, best first."""
    if len(readings) < 2 or not signs:
        return readings
    weights = sign_weights()
    word_weight = weights["<word>"]["<odds>"]
    logits = []
    for candidate, probability in readings:
        said = weights.get(english_tag(candidate), {})
        logit = log(max(probability, 1e-9)) + sum(said.get(sign, 0.0) for sign in signs)
        logits.append(logit + word_weight * word_odds(candidate.lexeme, words))
    return by_score([candidate for candidate, _ in readings], logits)
