"""Word families of a text: one lemma in several forms, and lemmas of one root, with what changed and why."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from latingloss.document import Document, Word
from latingloss.kin.derivations import Entry, derivation, root
from latingloss.morphology.naming import form_name, lexeme_of
from latingloss.text.orthography import plain

_TAUGHT = frozenset(("NOUN", "VERB", "ADJ", "ADV", "NUM", "PROPN"))
_GENDERS = {"Masc": "masculine", "Fem": "feminine", "Neut": "neuter"}


class Shown(NamedTuple):
    """One form of a lemma as the text has it."""

    form: str  # with vowel lengths
    ending: str  # what stands behind the stem; empty if the form is a stem by itself, as `pater` is
    why: str  # what the ending says: `accusative singular`
    passages: tuple[int, ...]  # where it stands, in order


class Member(NamedTuple):
    """A lemma of a family and its forms in the text, in the order in which they come."""

    lemma: str
    upos: str
    gloss: str
    forms: tuple[Shown, ...]
    made: str  # how it comes from the root, `fidēlis < fidēs (-ilis)`; empty for the root itself


class Family(NamedTuple):
    """Words of one root; `root` is a lemma, which need not stand in the text."""

    root: str
    members: tuple[Member, ...]


def why(word: Word) -> str:
    """Say in plain words what the form of a word tells: its case and number, person, tense and the like.

    >>> from latingloss import annotate
    >>> [why(w) for t in annotate("Stellae lucent.").passages[0].tokens for w in t.words]
    ['nominative plural', '3rd person plural present']
    """
    gender = _GENDERS.get(word.features.get("Gender", ""), "") if word.upos == "ADJ" else ""
    return " ".join(filter(None, (form_name(word), gender)))


def _ending(form: str, entry: Entry) -> str:
    """Return what stands behind the longest stem of a lexeme with which a form begins."""
    key, lexeme = plain(form), lexeme_of(*entry)
    stems = [plain(stem) for stem, _ in lexeme.stems] if lexeme else []
    return form[max((len(stem) for stem in stems if key.startswith(stem)), default=len(form)) :]


def families(document: Document) -> tuple[Family, ...]:
    """Return the families of a text that have two forms or more in it, in the order in which they first come.

    Only nouns, names, verbs, adjectives, adverbs and numerals count, and no guessed lemma. Lemmas are put together
    only where the lexicon has the one as made from the other (`kin.derivations`), never for looking alike.

    >>> from latingloss import annotate
    >>> for family in families(annotate("Laus sit stellis. Laudem dat stella; laudatio fidelis.")):
    ...     print([(m.lemma, [(s.form, s.ending, s.why) for s in m.forms]) for m in family.members])
    [('laus', [('laus', '', 'nominative singular'), ('laudem', 'em', 'accusative singular')])]
    [('stēlla', [('stēllīs', 'īs', 'dative plural'), ('stēlla', 'a', 'nominative singular')])]
    """
    met: dict[Entry, list[tuple[int, Word]]] = {}
    for i, passage in enumerate(document.passages):
        for token in passage.tokens:
            for word in token.words:
                if word.upos in _TAUGHT and not word.guessed:
                    met.setdefault((word.lemma, word.upos), []).append((i, word))
    by_root: dict[Entry, list[Entry]] = {}
    for entry in met:
        by_root.setdefault(root(entry), []).append(entry)
    found = (Family(head[0], tuple(_member(e, met[e]) for e in entries)) for head, entries in by_root.items())
    return tuple(family for family in found if sum(len(member.forms) for member in family.members) > 1)


def _member(entry: Entry, met: list[tuple[int, Word]]) -> Member:
    chain = derivation(entry)
    made = ""
    if chain:
        words = (entry, *(step.base for step in chain))
        made = " < ".join(lemma.partition("#")[0] for lemma, _ in words)
        made = f"{made} ({', '.join(step.affix for step in chain)})"
    return Member(*entry, met[0][1].senses, tuple(_shown(entry, met)), made)


def _shown(entry: Entry, met: list[tuple[int, Word]]) -> Iterator[Shown]:
    forms: dict[tuple[str, str], list[int]] = {}
    for i, word in met:
        form = word.marked_form if word.upos == "PROPN" else word.marked_form.lower()
        forms.setdefault((form, why(word)), []).append(i)
    for (form, said), passages in forms.items():
        yield Shown(form, _ending(form, entry), said, tuple(dict.fromkeys(passages)))
