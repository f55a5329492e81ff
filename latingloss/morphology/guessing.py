"""Readings of forms outside the lexicon: as derived from a word in it, from their ending, from simplemma's lemmas.

A guess is a lexeme made up for the form: a stem and a regular table; only a derived one has a gloss. How
likely each kind of word is for an ending is a judgement, not yet counted.
"""

from __future__ import annotations

from collections import defaultdict
from functools import lru_cache
from typing import TYPE_CHECKING

from latingloss.morphology.derivation import Derived, derived
from latingloss.morphology.endings import Features, Table, endings
from latingloss.morphology.lexicon import Lexeme
from latingloss.morphology.priors import cell_count, cell_name
from latingloss.tables import built_once
from latingloss.text.orthography import LONGEST_WORD, plain, printed

if TYPE_CHECKING:
    from simplemma import Lemmatizer

_MOST = 24  # guesses kept for a form
# kinds of word that are open: table, part of speech, ending of the lemma, share among new words
_OPEN = (
    (Table("1", "NOUN", "Fem"), "NOUN", "a", 0.14), (Table("2us", "NOUN", "Masc"), "NOUN", "us", 0.14),
    (Table("2um", "NOUN", "Neut"), "NOUN", "um", 0.08), (Table("2ium", "NOUN", "Neut"), "NOUN", "ium", 0.04),
    (Table("12", "ADJ", "Pos"), "ADJ", "us", 0.18), (Table("3adj", "ADJ", "Pos"), "ADJ", "is", 0.06),
    (Table("1", "VERB"), "VERB", "ō", 0.10), (Table("3", "VERB"), "VERB", "ō", 0.05),
    (Table("4", "VERB"), "VERB", "iō", 0.02), (Table("2", "VERB"), "VERB", "eō", 0.02),
    (Table("1", "VERB", "dep"), "VERB", "or", 0.02),
)  # fmt: skip
# oblique stems of the third declension and what the nominative has for them
_THIRD = (
    ("iōn", "iō"), ("tāt", "tās"), ("tūdin", "tūdō"), ("min", "men"), ("tōr", "tor"), ("sōr", "sor"),
    ("trīc", "trīx"), ("ōn", "ō"),
)  # fmt: skip
_PERFECT = (("āv", "ō", "1"), ("āt", "ō", "1"))


# what a form may be that takes no ending: part of speech and share beside the inflected guesses; a judgement
_CAPITALIZED = (("PROPN", 0.6), ("X", 0.2), ("NOUN", 0.1))
_UNCAPITALIZED = (("X", 0.05), ("NOUN", 0.03), ("PROPN", 0.01))


# how often a form that may be derived from a word in the lexicon is: rare words of the learn treebanks (lemmas met at
# most twice), 557 of 780 without a capital, 8 of 28 with one
_DERIVED = {False: 0.7, True: 0.3}


@built_once
def _endings_by_form() -> dict[str, list[tuple[Table, str, str, float, Features, str]]]:
    found: dict[str, list[tuple[Table, str, str, float, Features, str]]] = defaultdict(list)
    for table, upos, lemma_ending, share in _OPEN:
        for text, features, _ in endings(table):
            found[plain(text)].append((table, upos, lemma_ending, share, features, text))
    for oblique, nominative in _THIRD:
        neuter, feminine = oblique == "min", oblique in ("iōn", "tāt", "tūdin", "trīc")
        table = Table("3", "NOUN", "Neut" if neuter else "Fem" if feminine else "Masc")
        for text, features, _ in endings(table):
            found[plain(oblique + text)].append((table, "NOUN", nominative, 0.05, features, oblique + text))
        for _, features, _ in endings(table._replace(whole=True)):
            found[plain(nominative)].append((table, "NOUN", nominative, 0.05, features, nominative))
    for suffix, lemma_ending, conjugation in _PERFECT:
        table = Table("perf" if suffix == "āv" else "sup", "VERB")
        for text, features, _ in endings(table):
            row = (Table(conjugation, "VERB"), "VERB", lemma_ending, 0.08, features, suffix + text)
            found[plain(suffix + text)].append(row)
    return found


@built_once
def _lemmatizer() -> Lemmatizer:
    """Return simplemma's lemmatizer; its list read where it lies, in less time and a fifth of the memory."""
    from simplemma import Lemmatizer
    from simplemma.strategies import DefaultStrategy

    return Lemmatizer(lemmatization_strategy=DefaultStrategy(low_memory=True))


@lru_cache(maxsize=50_000)
def guesses(form: str) -> tuple[tuple[Lexeme, str, str, Features, float], ...]:
    """Return guessed readings of a form: made-up lexeme, marked form, part of speech, features, weight.

    Never empty: a form whose ending says nothing may be a name, a foreign word (X) or an undeclined noun.
    """
    key = plain(form)
    capital = form[:1].isupper()
    listed = plain(_lemmatizer().lemmatize(form, lang="la")) if key.isalpha() and len(key) <= LONGEST_WORD else key
    found = []
    for cut in range(max(1, len(key) - 11), len(key)):
        for table, upos, lemma_ending, share, features, text in _endings_by_form().get(key[cut:], ()):
            if cut < 2:
                continue
            stem = form[:cut] if len(form) == len(key) else key[:cut]
            lemma = stem.lower() + lemma_ending
            upos = "PROPN" if capital and upos == "NOUN" else upos
            lemma = lemma.capitalize() if upos == "PROPN" else lemma
            kind = "VERB" if upos == "VERB" else "NOUN" if upos == "PROPN" else upos
            odds = share * cell_count(cell_name(kind, features)) / cell_count(kind) * 2 ** (len(text) / 2)
            if plain(lemma) == listed and listed != key:
                odds *= 30
            if capital and upos != "PROPN":
                odds *= 0.3
            found.append((Lexeme(printed(lemma), upos, "", ((stem, table),)), stem + text, upos, features, odds))
    found = sorted(found, key=lambda g: -g[4])[:_MOST]
    total = sum(g[4] for g in found) or 1.0
    whole = _CAPITALIZED if capital else _UNCAPITALIZED
    for upos, share in whole:
        lemma = form if upos == "PROPN" else form.lower()
        found.append((Lexeme(lemma, upos, ""), form, upos, {}, total * share))
    return (*_derived_beside(form, sum(g[4] for g in found)), *found)


def _derived_beside(form: str, others: float) -> list[Derived]:
    """Return the form's derived readings, weighed against what the other guesses weigh together."""
    made = derived(form)[:_MOST]
    share = _DERIVED[form[:1].isupper()]
    scale = others * share / (1 - share) / (sum(d.weight for d in made) or 1.0)
    return [d._replace(weight=d.weight * scale) for d in made]
