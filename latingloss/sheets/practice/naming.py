"""Name the ending: a word in its line with its ending marked, and what the ending tells to be written down."""

from __future__ import annotations

from dataclasses import replace
from random import Random

from latingloss.document import Document
from latingloss.sheets.endings import Row, ending_of, example_of, row_of
from latingloss.sheets.practice.exercise import Exercise, Item, Part, too_short, with_gaps

_TITLE = "Name the ending"
_TASK = "What is the marked ending called? Each name of the list is used once."
_FEWEST, _MOST = 3, 8
_SURE = 0.8  # a key must not teach what the program itself doubts

_Place = tuple[int, int]


def name_endings(document: Document, random: Random) -> tuple[Exercise, ...]:
    """Return one exercise of three to eight words, each with an ending of another name.

    >>> from latingloss import annotate
    >>> (made,) = name_endings(annotate("Stellarum lux manet, Domine, et cantamus."), Random(1))
    >>> [item.answers[0].text for item in made.items][0]
    'genitive plural: “of”: whose, or of what'
    """
    places: dict[Row, list[_Place]] = {}
    for p, passage in enumerate(document.passages):
        for i, token in enumerate(passage.tokens):
            sure = len(token.words) == 1 and not token.words[0].guessed and token.words[0].confidence >= _SURE
            row = row_of(token.words[0]) if sure else None
            if row and _cut(document, (p, i)):
                places.setdefault(row, []).append((p, i))
    if len(places) < _FEWEST:
        return (too_short(_TITLE, f"{_FEWEST} words with different endings"),)
    rows = random.sample(sorted(places), min(_MOST, len(places)))
    chosen = sorted((random.choice(places[row]), row) for row in rows)
    items = tuple(_item(document, place, row) for place, row in chosen)
    return (Exercise(_TITLE, _TASK, items=items, bank=tuple(Part("english", row.name) for row in sorted(rows))),)


def _cut(document: Document, place: _Place) -> tuple[str, str] | None:
    """Return a word cut before its ending; None if its letters do not show one."""
    token = document.passages[place[0]].tokens[place[1]]
    found = example_of(token, sign) if (sign := ending_of(token.words[0])) else None
    return (found.stem, found.ending) if found and found.ending and found.stem + found.ending == token.text else None


def _item(document: Document, place: _Place, row: Row) -> Item:
    line = with_gaps(document, document.passages[place[0]], [place[1]], hint=False)
    cut = _cut(document, place)
    assert cut is not None  # it was chosen because it can be cut
    word = (Part("latin", cut[0]), Part("sign", cut[1]))
    parts = [part for known in line.parts for part in (word if known.kind == "word" else (known,)) if part.text]
    return replace(line, parts=tuple(parts), answers=(Part("english", f"{row.name}: {row.tells}"),), ruled=True)
