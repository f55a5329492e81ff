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
    itself themselves""".split()
)
OWNERS = frozenset(("his", "her", "its", "their"))


class Place(NamedTuple):
    """What the passage around a word does to its gloss."""

    subject: bool = False  # its clause has a nominative subject, so a verb needs no pronoun
    preposition: bool = False  # one governs it, so a noun stays bare
    conjunction: bool = False  # one of purpose or result (ut, nē) governs the subjunctive: may, might
    fact: bool = False  # its clause tells a plain fact in the subjunctive: cum venīret, quid fēcerit
    substantive: bool | None = None  # an adjective, participle or determiner stands without or with a noun
    head: Lexeme | None = None  # the other half of a compound tense: sum for a participle, its verb for sum
    gender: str = ""  # of that other half, which shows whether a verb's subject is he, she or it
    owners: bool = False  # a reflexive goes back to several: their own, themselves
    capital: bool = False  # written with a capital that no sentence wants
    thing: bool = False  # a relative goes back to a thing: which, not who
    called: bool = False  # a vocative behind O or another vocative: no second O
    compared: bool = False  # an ablative behind a comparative: than
    means: str = ""  # what a word says in its clause, where it may say several things: that, as, than, give
    bare: bool = False  # an infinitive after `do not`, `can`, `must`: no `to`


class Use(NamedTuple):
    """A word where it stands."""

    lexeme: Lexeme
    upos: str
    features: dict[str, str]
    said: tuple[str, ...]  # the rendering
    low: tuple[str, ...]  # the same in lower case
    old: bool  # the rendering says thou
    place: Place

    @property
    def plural(self) -> bool:
        return self.features.get("Number") == "Plur"

    @property
    def neuter(self) -> bool:
        return self.features.get("Gender") == "Neut"
