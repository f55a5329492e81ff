"""What is said of a word picked out: how it sounds, its literal sense, its ending, why it is hard, its kin."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from latingloss.document import Passage, Token
from latingloss.sheets.wording import dictionary_form, respelling_of

_QUOTED = re.compile(r'"([^"]*)"')
_ENDING = re.compile(r"(?<![^\s“(])-(?=\w)")
_MOST_RELATIVES = 3  # of each label
_KIN = {
    "gave English": ("borrowed", "through French"),
    "same family": ("family",),
    "shares a root with": ("shared root",),
}
LOOK_UP = "look up"


@dataclass(frozen=True)
class Fact:
    """One thing said of a word."""

    label: str
    text: str

    @property
    def latin(self) -> bool:
        """True if what is said is Latin."""
        return self.label == LOOK_UP


@dataclass(frozen=True)
class Note:
    """All that is said of one word; `number` ties it to the line."""

    number: int
    text: str
    spoken: str
    facts: tuple[Fact, ...]


def note(passage: Passage, index: int, *, number: int, tradition: str) -> Note:
    """Make the note on the token at `index` of a passage.

    >>> from latingloss import annotate
    >>> made = note(annotate("Stellae lucent.").passages[0], 0, number=1, tradition="ecclesiastical")
    >>> made.text, made.facts[0]
    ('Stellae', Fact(label='literally', text='stars'))
    """
    token = passage.tokens[index]
    return Note(number, token.text, respelling_of(token, tradition), tuple(_facts(passage, index)))


def _facts(passage: Passage, index: int) -> Iterator[Fact]:
    token = passage.tokens[index]
    if literal := " ".join(filter(None, (word.gloss for word in reversed(token.words)))):
        yield Fact("literally", literal)
    yield from (Fact("ending", typeset(word.reason)) for word in token.words if word.reason)
    yield from (Fact("remark", word.note) for word in token.words if word.note)
    if passage.rendering and not passage.english_of(index):
        yield Fact("in the English", "no word of its own")
    parts = token.difficulty.parts if token.difficulty else ()
    harder = sorted((part for part in parts if part.effect > 0 and part.reason), key=lambda part: -part.effect)
    if harder:
        yield Fact("hard because", "; ".join(part.reason for part in harder))
    yield from _kin(token)
    yield Fact(LOOK_UP, dictionary_form(token.words[0].lemma, token.words[0].upos))


def _kin(token: Token) -> Iterator[Fact]:
    """Yield the English relatives under their label; a word that has drifted in meaning says so."""
    for label, kinds in _KIN.items():
        found = [r for r in token.relatives if r.kind in kinds][:_MOST_RELATIVES]
        if found:
            yield Fact(label, ", ".join(f"{r.word} ({r.drift})" if r.drift else r.word for r in found))


def typeset(text: str) -> str:
    """Curl the quotes, and keep an ending with its hyphen: `-mus` does not break over two lines.

    >>> typeset('"we", from the ending -mus')
    '“we”, from the ending -\\u2060mus'
    """
    return _ENDING.sub("-\u2060", _QUOTED.sub(r"“\1”", text))
