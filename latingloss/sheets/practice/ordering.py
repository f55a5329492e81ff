"""Put the line back in order: its words shuffled, with the English to go by."""

from __future__ import annotations

from random import Random

from latingloss.document import Document, Passage
from latingloss.sheets.practice.exercise import Exercise, Item, Part, key_of, too_short, uncapitalized, with_gaps
from latingloss.sheets.wording import rendering_of

_TITLE = "Put the line back in order"
_TASK = "Write the words in the order of the text. Latin order is not English order: say the line as you learnt it."
_FEWEST, _MOST = 4, 12  # words of a line; more cannot be held in mind
_MOST_LINES = 5


def order(document: Document, random: Random) -> tuple[Exercise, ...]:
    """Return one exercise of up to five lines, each shuffled so that it is not as it was.

    >>> from latingloss import annotate
    >>> (made,) = order(annotate("Stellae noctis clarae lucent."), Random(1))
    >>> sorted(made.items[0].parts[0].text.split(" / ")), made.items[0].answers[0].text
    (['clarae', 'lucent', 'noctis', 'stellae'], 'Stellae noctis clarae lucent.')
    """
    fit = [passage for passage in document.passages if _fits(passage)]
    if not fit:
        return (too_short(_TITLE, f"a line of {_FEWEST} to {_MOST} words"),)
    chosen = sorted(random.sample(range(len(fit)), min(_MOST_LINES, len(fit))))
    return (Exercise(_TITLE, _TASK, items=tuple(_item(document, fit[k], random) for k in chosen)),)


def _words(passage: Passage) -> list[str]:
    return [uncapitalized(passage, i) for i, token in enumerate(passage.tokens) if token.words]


def _fits(passage: Passage) -> bool:
    words = _words(passage)
    return _FEWEST <= len(words) <= _MOST and len({key_of(word) for word in words}) > 1


def _item(document: Document, passage: Passage, random: Random) -> Item:
    words = _words(passage)
    shuffled = words[:]
    while [key_of(word) for word in shuffled] == [key_of(word) for word in words]:
        random.shuffle(shuffled)
    line = with_gaps(document, passage, ()).parts
    shown = (Part("latin", " / ".join(shuffled)),)
    return Item(shown, line, rendering_of(document, passage), ruled=True)
