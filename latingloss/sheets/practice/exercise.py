"""What an exercise is, before any format sets it: lines with gaps, something to choose from, and the answers."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from latingloss.document import Document, Passage
from latingloss.sheets.wording import rendering_of
from latingloss.text.orthography import plain
from latingloss.text.tokens import word_text

GAPS = ("word", "letter")


@dataclass(frozen=True)
class Part:
    """A run of an item: text of kind "latin", "sign" (Latin to look at) or "english", or a gap, which has no text.

    Gaps are for a "word" or a "letter"; those of one kind are equally wide, so that none tells its answer by its width.
    """

    kind: str
    text: str = ""


@dataclass(frozen=True)
class Item:
    """One line to work on; `answers` go into its gaps in order, or, if it is `ruled`, on a line under it.

    `hint` is English to go by.
    """

    parts: tuple[Part, ...]
    answers: tuple[Part, ...]
    hint: str = ""
    ruled: bool = False


@dataclass(frozen=True)
class Exercise:
    """A task with its items; without items `task` says why there are none.

    `bank` is there to choose from; it stands `beside` the items if it has as many entries. If it is not `keyed` the
    text itself is its key.
    """

    title: str
    task: str
    items: tuple[Item, ...] = ()
    bank: tuple[Part, ...] = ()
    beside: bool = False
    keyed: bool = True


def too_short(title: str, needs: str) -> Exercise:
    """Return an exercise that says what the text lacks for it.

    >>> too_short("Match", "four words").task
    'This text is too short for it: it needs four words.'
    """
    return Exercise(title, f"This text is too short for it: it needs {needs}.")


def with_gaps(document: Document, passage: Passage, hidden: Collection[int], *, hint: bool = True) -> Item:
    """Return a passage with a gap for each of its tokens in `hidden`, given by index.

    >>> from latingloss import annotate
    >>> document = annotate("Vesper venit.")
    >>> with_gaps(document, document.passages[0], [1]).parts
    (Part(kind='latin', text='Vesper '), Part(kind='word', text=''), Part(kind='latin', text='.'))
    """
    parts, answers, at = [], [], passage.start
    for i in sorted(hidden):
        token = passage.tokens[i]
        parts += [Part("latin", document.source[at : token.start]), Part("word")]
        answers.append(Part("latin", word_text(token.text)))
        at = token.end
    parts.append(Part("latin", document.source[at : passage.end]))
    shown = tuple(Part(p.kind, _on_one_line(p.text)) for p in parts if p.text or p.kind in GAPS)
    return Item(shown, tuple(answers), rendering_of(document, passage) if hint else "")


def uncapitalized(passage: Passage, index: int) -> str:
    """Return a word as it stands within a line: the first is lower case unless it is a name, to give no place away.

    >>> from latingloss import annotate
    >>> uncapitalized(annotate("Vesper venit.").passages[0], 0)
    'vesper'
    """
    token = passage.tokens[index]
    text = word_text(token.text)
    first = index == next(i for i, t in enumerate(passage.tokens) if t.words)
    return text.lower() if first and token.words[0].upos != "PROPN" else text


def key_of(text: str) -> str:
    """Return a word without accents, lengths and capitals, to tell whether two are the same for the eye.

    >>> key_of("Dómine") == key_of("domine")
    True
    """
    return plain(word_text(text))


def _on_one_line(text: str) -> str:
    joined = " ".join(text.split())
    return f"{' ' * text[:1].isspace()}{joined}{' ' * (text[-1:].isspace() and bool(joined))}"
