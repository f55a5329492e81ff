"""Readings of forms outside the lexicon: as derived from a word in it, from their ending, from simplemma's lemmas.

A guess is a lexeme made up for the form: a stem and a regular table; only a derived one has a gloss. How likely it
is, its signs say: its kind, how common its ending, whether simplemma gives its lemma. What each sign is worth was
fitted on rare words (`latingloss.building.guesses`), and so was how often none of the guesses is right; that
probability is shared out over the readings that say nothing of case: a name, an undeclined noun, a foreign word (X).
"""

from __future__ import annotations

from collections import defaultdict
from functools import lru_cache
from math import exp, log
from typing import TYPE_CHECKING, NamedTuple

from latingloss.morphology.derivation import derived
from latingloss.morphology.endings import Features, Table, endings
from latingloss.morphology.lexicon import Lexeme
from latingloss.morphology.priors import cell_count, cell_name
from latingloss.tables import built_once, read_table
from latingloss.text.orthography import LONGEST_WORD, plain, printed

if TYPE_CHECKING:
    from simplemma import Lemmatizer

Signs = dict[str, float]
_MOST = 24  # guesses kept for a form, undeclined ones apart
_LONGEST_ENDING = 11  # letters
_SHORTEST_STEM = 2
# kinds of word that are open: table, what stands between stem and ending, ending of the lemma
_OPEN = (
    (Table("1", "NOUN", "Fem"), "", "a"), (Table("2us", "NOUN", "Masc"), "", "us"),
    (Table("2um", "NOUN", "Neut"), "", "um"), (Table("2ium", "NOUN", "Neut"), "", "ium"),
    (Table("12", "ADJ", "Pos"), "", "us"),
    (Table("3adj", "ADJ", "Pos"), "", "is"),
    (Table("1", "VERB"), "", "ō"), (Table("perf", "VERB"), "āv", "ō"), (Table("sup", "VERB"), "āt", "ō"),
    (Table("3", "VERB"), "", "ō"), (Table("2", "VERB"), "", "eō"), (Table("perf", "VERB"), "u", "eō"),
    (Table("4", "VERB"), "", "iō"), (Table("perf", "VERB"), "īv", "iō"), (Table("sup", "VERB"), "īt", "iō"),
    (Table("1", "VERB", "dep"), "", "or"), (Table("sup", "VERB"), "āt", "or"), (Table("3", "VERB", "dep"), "", "or"),
    (Table("3", "NOUN", "Fem"), "iōn", "iō"), (Table("3", "NOUN", "Fem"), "tāt", "tās"),
    (Table("3", "NOUN", "Fem"), "tūdin", "tūdō"), (Table("3", "NOUN", "Neut"), "min", "men"),
    (Table("3", "NOUN", "Masc"), "tōr", "tor"), (Table("3", "NOUN", "Masc"), "sōr", "sor"),
    (Table("3", "NOUN", "Fem"), "trīc", "trīx"), (Table("3", "NOUN", "Masc"), "ōn", "ō"),
)  # fmt: skip
_WHOLE = ("PROPN", "NOUN", "X")  # what a form may be that takes no ending; X stands for none of the guesses
# how the probability that none is right is shared out over _WHOLE, without a capital and with it; a judgement
_NONE_SHARES = {False: (0.1, 0.3, 0.6), True: (0.65, 0.1, 0.25)}


class Guess(NamedTuple):
    """A guessed reading with the signs that speak for it and how much of each there is."""

    lexeme: Lexeme
    form: str
    upos: str
    features: Features
    signs: Signs


class _Cell(NamedTuple):
    table: Table
    before: str
    lemma: str
    text: str  # what follows the stem, with vowel lengths
    features: Features
    signs: Signs


@built_once
def _cells() -> dict[str, list[_Cell]]:
    """The cells of the open kinds by the plain letters that follow the stem."""
    found: dict[str, list[_Cell]] = defaultdict(list)
    for table, before, lemma in _OPEN:
        kind = " ".join(filter(None, (table.base, table.upos, table.mark, before, lemma)))
        cells = [(before + text, features) for text, features, _ in endings(table)]
        if (table.base, table.upos) == ("3", "NOUN"):
            cells += [(lemma, features) for _, features, _ in endings(table._replace(whole=True))]
        for text, features in cells:
            common = log(cell_count(cell_name(table.upos, features)) / cell_count(table.upos))
            signs = {kind: 1.0, "cell": common, "letters": len(text)}
            found[plain(text)].append(_Cell(table, before, lemma, text, features, signs))
    return dict(found)


@built_once
def _lemmatizer() -> Lemmatizer:
    """Return simplemma's lemmatizer; its list read where it lies, in less time and a fifth of the memory."""
    from simplemma import Lemmatizer
    from simplemma.strategies import DefaultStrategy

    return Lemmatizer(lemmatization_strategy=DefaultStrategy(low_memory=True))


def possible(form: str) -> list[Guess]:
    """Return every guess for a form; the last is that none of the others is right."""
    key, capital = plain(form), form[:1].isupper()
    found = [Guess(*d[:4], {"derived": 1.0, "derived cell": log(d.weight)}) for d in derived(form)]
    for cut in range(max(_SHORTEST_STEM, len(key) - _LONGEST_ENDING), len(key)):
        stem = form[:cut] if len(form) == len(key) else key[:cut]
        for table, before, ending, text, features, signs in _cells().get(key[cut:], ()):
            name = capital and table.upos == "NOUN"
            lemma = printed(stem.capitalize() if name else stem.lower()) + ending
            lexeme = Lexeme(lemma, "PROPN" if name else table.upos, "", ((stem + before, table),))
            found.append(Guess(lexeme, stem + text, lexeme.upos, features, signs))
    if key.isalpha() and len(key) <= LONGEST_WORD:
        listed = plain(_lemmatizer().lemmatize(form, lang="la"))
        alike = (listed != key and plain(g.lexeme.spelled) == listed for g in found)
        found = [g._replace(signs=g.signs | {"listed": 1.0}) if a else g for g, a in zip(found, alike, strict=True)]
    for upos in _WHOLE:
        lexeme = Lexeme(form if upos == "PROPN" else form.lower(), upos, "")
        found.append(Guess(lexeme, form, upos, {}, {f"whole {upos}": 1.0}))
    return found


@built_once
def _worths() -> tuple[dict[str, float], dict[str, float]]:
    """What each sign is worth, in a form without a capital and in one with it."""
    rows = read_table("statistics/guesses.tsv")
    return {sign: float(small) for sign, small, _ in rows}, {sign: float(capital) for sign, _, capital in rows}


@lru_cache(maxsize=4096)
def guesses(form: str) -> tuple[tuple[Lexeme, str, str, Features, float], ...]:
    """Return guessed readings of a form: made-up lexeme, marked form, part of speech, features, weight.

    Never empty: a form whose ending says nothing may be a name, a foreign word (X) or an undeclined noun.

    >>> [(lexeme.lemma, upos) for lexeme, _, upos, *_ in guesses("blorpavimus")[:1]]
    [('blorpō', 'VERB')]
    """
    worth = _worths()[form[:1].isupper()]
    found = [(*g[:4], exp(sum(worth[sign] * much for sign, much in g.signs.items()))) for g in possible(form)]
    declined, whole, none = found[: -len(_WHOLE)], found[-len(_WHOLE) :], found[-1][4]
    shares = _NONE_SHARES[form[:1].isupper()]
    undeclined = [(*g[:4], none * s + (g[4] if g[2] != "X" else 0.0)) for g, s in zip(whole, shares, strict=True)]
    return (*sorted(declined, key=lambda g: -g[4])[:_MOST], *undeclined)
