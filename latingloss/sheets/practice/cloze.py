"""Fill the gaps, at three levels: the easy words of a text, the middling ones, the hard ones without a list."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

from latingloss.document import Document, Passage
from latingloss.sheets.practice.exercise import Exercise, Part, key_of, too_short, uncapitalized, with_gaps
from latingloss.text.orthography import plain

_LEVELS = ("easy words", "harder words", "the hardest words")
_TASK = "Write the missing words into the gaps."
_FROM_LIST = f"{_TASK} Each word of the list is used once."
_FROM_MEMORY = f"{_TASK} There is no list: say the line aloud and remember."
_FEWEST_GAPS = 3
_MOST_LINES = 8
_WORDS_A_GAP = 4  # a longer line may have a second gap
_FEWEST_WORDS = 3  # of a line

Place = tuple[int, int]  # passage and token, by index


def cloze(document: Document, random: Random) -> tuple[Exercise, ...]:
    """Return three exercises with words left out, the easiest third of the text's words first.

    >>> from latingloss import annotate
    >>> document = annotate("Vesper venit et stellae noctis lucent.\\nLuna surgit, sol occidit, dies abit.")
    >>> [len(exercise.items) for exercise in cloze(document, Random(1))]
    [0, 0, 0]
    """
    places = sorted(_places(document), key=lambda place: (_score(document, place), place))
    thirds = [places[len(places) * k // 3 : len(places) * (k + 1) // 3] for k in range(3)]
    return tuple(_level(document, level, third, random=random) for level, third in enumerate(thirds))


def _places(document: Document) -> Iterator[Place]:
    """Yield the words that can be left out: those that nothing else in the line or its rendering shows."""
    for p, passage in enumerate(document.passages):
        words = [i for i, token in enumerate(passage.tokens) if token.words]
        shown = [key_of(passage.tokens[i].text) for i in words]
        english = {key_of(token.text) for token in passage.rendering}
        if len(words) >= _FEWEST_WORDS:
            yield from ((p, i) for i, key in zip(words, shown, strict=True) if shown.count(key) == 1 > (key in english))


def _score(document: Document, place: Place) -> float:
    hardness = document.passages[place[0]].tokens[place[1]].difficulty
    return hardness.score if hardness else 0.0


def _level(document: Document, level: int, places: list[Place], *, random: Random) -> Exercise:
    title = f"Fill the gaps {level + 1}: {_LEVELS[level]}"
    chosen = _chosen(document.passages, places, random)
    gaps = [(p, i) for p, hidden in chosen.items() for i in hidden]
    if len(gaps) < _FEWEST_GAPS:
        return too_short(title, f"{_FEWEST_GAPS} words of this level in lines of {_FEWEST_WORDS} words or more")
    from_memory = level == len(_LEVELS) - 1
    words = sorted((uncapitalized(document.passages[p], i) for p, i in gaps), key=lambda word: (plain(word), word))
    return Exercise(
        title,
        _FROM_MEMORY if from_memory else _FROM_LIST,
        items=tuple(with_gaps(document, document.passages[p], hidden) for p, hidden in chosen.items()),
        bank=() if from_memory else tuple(Part("latin", word) for word in words),
    )


def _chosen(passages: tuple[Passage, ...], places: list[Place], random: Random) -> dict[int, list[int]]:
    """Choose lines, in the order of the text, and in each at most one gap for every four words, at least one."""
    by_line: dict[int, list[int]] = {}
    for p, i in places:
        by_line.setdefault(p, []).append(i)
    lines = sorted(random.sample(sorted(by_line), min(_MOST_LINES, len(by_line))))
    chosen = {}
    for p in lines:
        most = max(1, sum(1 for token in passages[p].tokens if token.words) // _WORDS_A_GAP)
        chosen[p] = sorted(random.sample(by_line[p], min(most, len(by_line[p]))))
    return chosen
