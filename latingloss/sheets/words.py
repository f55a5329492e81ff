"""The word list of a booklet: every dictionary form once, with the lines it stands in, its first appearance marked."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from latingloss.sheets.booklet import Booklet
from latingloss.sheets.wording import dictionary_form, kind_of
from latingloss.text.orthography import plain


@dataclass(frozen=True)
class Place:
    """A line of a text, both counted from 1."""

    text: int
    line: int
    several: bool  # texts in the booklet, so that the text must be named

    @property
    def label(self) -> str:
        """The place as printed: `2:4`, or `4` in a booklet of one."""
        return f"{self.text}:{self.line}" if self.several else str(self.line)


@dataclass(frozen=True)
class Entry:
    """A line of the word list; the first of its places is where the word first appears."""

    form: str
    kind: str
    senses: str
    places: tuple[Place, ...]


@dataclass(frozen=True)
class WordGroup:
    """Entries under one heading; an empty heading is not printed."""

    heading: str
    entries: tuple[Entry, ...]

    def _repr_html_(self) -> str:
        """Return the entries as Jupyter shows them."""
        from latingloss.sheets.notebook import words_html

        return words_html(self)


def word_list(booklet: Booklet, order: str) -> tuple[WordGroup, ...]:
    """Return every word of all texts once, by the alphabet, or as each text brings new ones.

    >>> from latingloss import annotate
    >>> from latingloss.sheets import Text
    >>> texts = [Text(annotate("Vesper venit."), title="One"), Text(annotate("Vesper lucet."), title="Two")]
    >>> [(g.heading, [e.form.partition(",")[0] for e in g.entries]) for g in word_list(Booklet(texts), "text")]
    [('New in text 1, One', ['vesper', 'veniō']), ('New in text 2, Two', ['lūceō'])]
    """
    entries = _entries(booklet)
    if order == "alphabet":
        ordered = [entry for _, entry in sorted(entries.items(), key=lambda pair: (plain(pair[0][0]), pair[0]))]
        return (WordGroup("", tuple(ordered)),)
    groups = []
    for number, text in enumerate(booklet.texts, 1):
        new = tuple(entry for entry in entries.values() if entry.places[0].text == number)
        if new:
            heading = ", ".join(filter(None, (f"New in text {number}", text.title.strip())))
            groups.append(WordGroup(heading if len(booklet.texts) > 1 else "", new))
    return tuple(groups)


def _entries(booklet: Booklet) -> dict[tuple[str, str], Entry]:
    """Gather the words by lemma and part of speech, in order of first appearance."""
    several = len(booklet.texts) > 1
    places: dict[tuple[str, str], list[Place]] = {}
    senses: dict[tuple[str, str], str] = {}
    for number, text in enumerate(booklet.texts, 1):
        for line, passage in enumerate(text.document.passages, 1):
            for word in (word for token in passage.tokens for word in token.words):
                key = (word.lemma, word.upos)
                places.setdefault(key, []).append(Place(number, line, several))
                senses.setdefault(key, word.senses or word.gloss)
    return {key: _entry(key, senses[key], found) for key, found in places.items()}


def _entry(key: tuple[str, str], senses: str, places: Iterable[Place]) -> Entry:
    return Entry(dictionary_form(*key), kind_of(key[1]), senses, tuple(dict.fromkeys(places)))
