"""A word where it stands: what its gloss is made from, and the small words of English around it."""

from __future__ import annotations

from typing import NamedTuple

from latingloss.morphology.lexicon import Lexeme

UNKNOWN = "(?)"  # no gloss and no rendering: said openly, so that the author fills it in

# English that only puts a word into its place; the rest of a rendering is its content
FUNCTION = frozenset(
    """the a an of to by with from in on at unto for into than i we you ye thou thee he she it they him her them us me
    my thy thine your his its their our mine am is are was were be been being art wast have has had hath hast hadst
    having do does did doth dost didst will shall would should may might wouldst shouldst mightest let wilt shalt mayest
    o oh about who which whom that one ones thing things those can could must ought there not and himself herself
    itself themselves""".split()  # noqa: SIM905
)
OWNERS = frozenset(("his", "her", "its", "their"))


class Use(NamedTuple):
    """A word where it stands."""

    lexeme: Lexeme
    upos: str
    features: dict[str, str]
    said: tuple[str, ...]  # the rendering
    low: tuple[str, ...]  # the same in lower case
    old: bool
    subject: bool
    preposition: bool
    conjunction: bool
    substantive: bool | None
    head: Lexeme | None

    @property
    def plural(self) -> bool:
        return self.features.get("Number") == "Plur"

    @property
    def neuter(self) -> bool:
        return self.features.get("Gender") == "Neut"
