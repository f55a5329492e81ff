"""What corrections set after the readings are chosen: links, and what is printed of a word."""

from __future__ import annotations

from collections.abc import Sequence

from latingloss.corrections.matching import OfLine, Placed
from latingloss.document import Difficulty, Link, Token


def with_links(links: Sequence[Link], placed: OfLine) -> tuple[Link, ...]:
    """Return links with those that the author gives in place of what was found for these words, either way.

    >>> with_links([Link(latin=0, english=1)], {})
    (Link(latin=0, english=1, confidence=1.0),)
    """
    given = {
        token: {j for one in here for j in one.english or ()}
        for token, here in placed.items()
        if any(one.english is not None for one in here)
    }
    taken = set().union(*given.values())
    kept = [link for link in links if link.latin not in given and link.english not in taken]
    own = [Link(latin=token, english=j) for token, here in given.items() for j in here]
    return tuple(sorted([*kept, *own], key=lambda link: (link.latin, link.english)))


def with_words(token: Token, here: Sequence[Placed]) -> Token:
    """Return a token with gloss, note and difficulty as the author gives them."""
    words, difficulty = list(token.words), token.difficulty
    for one in here:
        said = {"gloss": one.correction.gloss, "note": one.correction.note}
        update = {name: value for name, value in said.items() if value is not None}
        if one.word < len(words):
            words[one.word] = words[one.word].model_copy(update={**update, "corrected": True})
        if one.correction.difficulty is not None:
            difficulty = Difficulty(score=one.correction.difficulty, parts=())
    return token.model_copy(update={"words": tuple(words), "difficulty": difficulty})


def with_emphasis(token: Token, here: Sequence[Placed]) -> Token:
    """Return a token picked out, or not, as the author says."""
    for one in here:
        if one.correction.emphasis is not None:
            token = token.model_copy(update={"emphasis": one.correction.emphasis})
    return token
