"""Which English words render which Latin word."""

from __future__ import annotations

from collections.abc import Sequence

from latingloss.alignment.attachment import attach
from latingloss.alignment.confidence import confidence
from latingloss.alignment.evidence import Pair, believe, read_pair
from latingloss.alignment.translations import renderings
from latingloss.document import Link
from latingloss.errors import TextError
from latingloss.morphology.ranking import Candidate
from latingloss.text.checking import check_tokens

__all__ = ["align"]

_CONTENT = 0.3  # belief from which a content word is linked
_GRAMMAR = 0.5
_LEANING = 0.03  # the same for words and units that would else be left over
_GRAMMAR_LEANING = 0.15


def align(
    latin_tokens: Sequence[str],
    english_tokens: Sequence[str],
    *,
    readings: Sequence[Sequence[Candidate]] | None = None,
) -> tuple[Link, ...]:
    """Link each Latin token to the English tokens that render it, in the order of the Latin.

    Tokens are as printed; punctuation is never linked, and a word without a counterpart has no link. `readings`
    gives for each Latin token the readings to believe (of the host, where there is an enclitic); without it all
    readings count by their priors. `Link.confidence` is the probability that the link is right. Raises
    `InputTypeError` for anything but sequences of `str`, `TextError` if `readings` has another length.

    >>> [(k.latin, k.english) for k in align(["Laudate", "Dominum"], ["Praise", "the", "Lord"])]
    [(0, 0), (1, 1), (1, 2)]
    """
    check_tokens(latin_tokens, "latin_tokens")
    check_tokens(english_tokens, "english_tokens")
    if readings is not None and len(readings) != len(latin_tokens):
        raise TextError(f"readings has {len(readings)} items, latin_tokens {len(latin_tokens)}; give one to each token")
    pair = read_pair(latin_tokens, english_tokens, readings=readings)
    if not pair.units or not pair.words:
        return ()
    believe(pair)
    _decide(pair)
    attach(pair)
    found: dict[tuple[int, int], float] = {}
    for j, units in enumerate(pair.links):
        for i in units:
            place = pair.latin[i], pair.english[j]
            found[place] = max(found.get(place, 0.0), confidence(pair, j, i))
    return tuple(Link(latin=i, english=j, confidence=found[i, j]) for i, j in sorted(found))


def _decide(pair: Pair) -> None:
    best = pair.belief.argmax(1).tolist()
    for j, i in enumerate(best):
        least = _GRAMMAR if pair.is_function(j) else _CONTENT
        pair.links.append({i} if pair.belief[j, i] > least else set())
    _share_out(pair)
    _fill_gaps(pair)
    _drop_guesses(pair)


def _share_out(pair: Pair) -> None:
    """Let no two equal words render one conjunction: the less believed goes to a free one of the same kind, or none."""
    for i, unit in enumerate(pair.units):
        if not unit.is_kind("conj", odds=0.6):
            continue
        rivals = sorted((-float(pair.belief[j, i]), j) for j, units in enumerate(pair.links) if i in units)
        for _, j in rivals[1:]:
            if pair.words[j] != pair.words[rivals[0][1]]:
                continue
            taken = set().union(*pair.links)
            free = (k for k, u in enumerate(pair.units) if k not in taken and u.is_kind("conj", odds=0.6))
            best = max(((float(pair.belief[j, k]), k) for k in free), default=(0.0, -1))
            pair.links[j] = {best[1]} if best[0] > _LEANING else set()


def _fill_gaps(pair: Pair) -> None:
    """Link words left over to Latin words of their sort left over, where the models lean to it at least a little."""
    _match(pair, ("noun", "verb", "adj", "part"), [j for j in _left_over(pair) if not pair.is_function(j)])
    _match(pair, ("conj", "adp", "adv"), [j for j in _left_over(pair) if pair.is_function(j)])


def _left_over(pair: Pair) -> list[int]:
    return [j for j, units in enumerate(pair.links) if not units]


def _match(pair: Pair, kinds: tuple[str, ...], words: list[int]) -> None:
    """Link words to free units of some kinds, each once, the most believed first."""
    content = "noun" in kinds
    taken = {i for j, units in enumerate(pair.links) if not (content and pair.is_function(j)) for i in units}
    free = [i for i, unit in enumerate(pair.units) if i not in taken and unit.is_kind(*kinds)]
    for leaning, j, i in sorted((-float(pair.belief[j, i]), j, i) for j in words for i in free):
        if -leaning < (_LEANING if content else _GRAMMAR_LEANING):
            break
        if not pair.links[j] and i not in taken:
            pair.links[j] = {i}
            taken.add(i)


def _drop_guesses(pair: Pair) -> None:
    """Unlink content words never met as renderings where they outnumber those met: the rendering is too free."""
    content = [(j, i) for j, units in enumerate(pair.links) if not pair.is_function(j) for i in units]
    guesses = [(j, i) for j, i in content if pair.words[j] not in renderings(pair.units[i])[0]]
    if 2 * len(guesses) > len(content):
        for j, i in guesses:
            pair.links[j].discard(i)
