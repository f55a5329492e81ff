"""How alike an English and a Latin word look: the best alignment of any stem of the one with any of the other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import islice
from typing import NamedTuple

from latingloss.kin.correspondences import english_shapes, letters, stems
from latingloss.kin.letters import Weights, alignment_scores, self_score
from latingloss.morphology.lexicon import Lexeme

_SHAPES = 6  # of the regular English spellings of a lemma, how many are compared
_CUT = 0.03  # likeness lost when an ending is left off the English word
_DOUBT = 4.0  # log-odds a match must overcome, so that two short words are never very near
_REST = 0.25  # likeness lost when the Latin word is only the beginning of a longer English one, as in `satisfaction`
_WORST = -2.0
_ENDINGS = ("ibus", "orum", "arum", "us", "um", "is", "ae", "as", "os", "es", "am", "em", "a", "e", "i", "o")

# a folded spelling, and of each beginning of it that is a spelling too, the length and the score against itself
Scored = tuple[tuple[str, tuple[tuple[int, float], ...]], ...]


class Shapes(NamedTuple):
    """The spellings of a Latin word that an English one is compared with."""

    borrowed: Scored  # stems, and what the lemma regularly becomes in English
    inherited: Scored  # stems alone, scored by the weights of cousins


def lexeme_shapes(lexeme: Lexeme, borrowed: Weights, cousins: Weights) -> Shapes:
    """Return the shapes of a lemma; the weights are those of `letters.weights`."""
    bare = [letters(stem) for stem in stems(lexeme)] or [letters(lexeme.spelled)]
    spelled = [letters(lexeme.spelled), *bare, *map(letters, islice(english_shapes(lexeme), _SHAPES))]
    return Shapes(scored(spelled, borrowed), scored(bare, cousins))


def form_shapes(form: str, borrowed: Weights, cousins: Weights) -> Shapes:
    """Return the shapes of a form that the lexicon does not know: whole, and without a likely ending."""
    key = letters(form)
    spelled = (key, without_ending(key))
    return Shapes(scored(spelled, borrowed), scored(spelled[1:], cousins))


def without_ending(key: str) -> str:
    """Return a folded Latin form without a likely inflectional ending.

    >>> without_ending("precaria"), without_ending("filibus")
    ('precari', 'fil')
    """
    ending = next((e for e in _ENDINGS if key.endswith(e) and len(key) - len(e) > 1), "")
    return key.removesuffix(ending)


def scored(spelled: Iterable[str], table: Weights) -> Scored:
    """Group folded spellings so that those that begin alike are aligned once.

    >>> from latingloss.kin.letters import weights
    >>> [(longest, [n for n, _ in ends]) for longest, ends in scored(["roma", "rom", "urb"], weights())]
    [('urb', [3]), ('roma', [3, 4])]
    """
    groups: list[tuple[str, list[tuple[int, float]]]] = []
    for shape in sorted(filter(None, set(spelled)), reverse=True):
        if not groups or not groups[-1][0].startswith(shape):
            groups.append((shape, []))
        groups[-1][1].insert(0, (len(shape), self_score(shape, table)))
    return tuple((longest, tuple(ends)) for longest, ends in groups)


def likeness(shapes: Scored, english: Sequence[str], table: Weights) -> float:
    """Return the best alignment score as a share of the highest possible one: 1 same, below 0 unlike.

    `english` are folded stems of one English word: the whole word, then beginnings of it.
    """
    if not english:
        return _WORST
    best = _WORST
    ends = [(len(stem), self_score(stem, table), _CUT if i else 0.0) for i, stem in enumerate(english)]
    for shape, cuts in shapes:
        rows = alignment_scores(shape, english[0], table)
        for size, highest in cuts:
            scores = rows[size]
            if size > 3 and (share := max(scores) / (highest + _DOUBT) - _REST) > best:
                best = share
            for length, own, loss in ends:
                share = scores[length] / ((highest if highest > own else own) + _DOUBT) - loss
                if share > best:
                    best = share
    return best
