"""The key to the endings that occur in the texts at hand, and in these only: a page for a complete beginner.

An ending is found by the tables that inflect the word; words without one (et, in, pāx) and pronouns, which go
their own way, are not in the key. What each case says is Bennett 1918, sections 163-232, in the plainest words.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from latingloss.document import Document, Token, Word
from latingloss.morphology.endings import endings
from latingloss.morphology.lexicon import find
from latingloss.morphology.naming import is_passive
from latingloss.morphology.reasons import CASE_NAMES, NUMBERS, ORDINALS, PERSON_ENDINGS
from latingloss.sheets.wording import parts_of
from latingloss.text.orthography import plain, printed

_MOST_EXAMPLES = 2  # of each ending: the key is to fit on one page
_COMPARED = ("Case", "Number", "Person", "Mood", "Tense", "Aspect", "Voice", "VerbForm", "Degree")
_CASES = {
    "Nom": "who or what does it, or is it", "Voc": "speaking to someone", "Acc": "whom or what it is done to; where to",
    "Gen": "“of”: whose, or of what", "Dat": "“to” or “for” someone", "Abl": "“by”, “with”, “from” or “in”",
    "Loc": "the place where",
}  # fmt: skip
_PERSONS = {
    ("1", "Sing"): "“I”", ("2", "Sing"): "“you” (one)", ("3", "Sing"): "“he”, “she” or “it”", ("1", "Plur"): "“we”",
    ("2", "Plur"): "“you” (several)", ("3", "Plur"): "“they”",
}  # fmt: skip
_SHAPES = {
    ("Imp", "Sing"): "a command to one", ("Imp", "Plur"): "a command to several", ("Inf", ""): "“to” do it",
    ("Part", "Pres"): "“…ing”: doing it", ("Part", "Past"): "“…ed”: to whom it was done",
    ("Part", "Fut"): "about to do it",
    ("Ger", ""): "the “doing” of it", ("Gdv", ""): "what is to be done", ("Cmp", ""): "“more”", ("Sup", ""): "“most”",
}  # fmt: skip
_SHAPE_NAMES = {
    "Imp": "imperative", "Inf": "infinitive", "Part": "participle", "Ger": "gerund", "Gdv": "gerundive",
    "Cmp": "comparative", "Sup": "superlative",
}  # fmt: skip
_TENSE_NAMES = {"Pres": "present", "Past": "perfect", "Fut": "future"}
# what of a table's ending tells the shape; the vowel before it only names the verb's kind
_SHAPE_SIGN = re.compile(r"(?:re|i?sse|r?ī|te|n[std]\w*)$")
_HEADINGS = ("Nouns and adjectives: what part they play", "Verbs: who does it", "Other forms")


@dataclass(frozen=True)
class Example:
    """A word of the texts, cut before its ending, with what it says there."""

    stem: str
    ending: str
    gloss: str


@dataclass(frozen=True)
class EndingExamples:
    """An ending, with vowel lengths, and words of the texts that have it."""

    ending: str
    examples: tuple[Example, ...]


@dataclass(frozen=True)
class EndingRow:
    """What some endings tell: `name` is the trade's, `tells` the beginner's."""

    name: str
    tells: str
    endings: tuple[EndingExamples, ...]


@dataclass(frozen=True)
class EndingGroup:
    """The rows under one heading."""

    heading: str
    rows: tuple[EndingRow, ...]


@dataclass(frozen=True, order=True)
class Row:
    """Where an ending belongs; ordered as printed."""

    group: int
    rank: tuple[int, ...]
    name: str
    tells: str


def endings_key(documents: Sequence[Document]) -> tuple[EndingGroup, ...]:
    """Return the key to the endings that occur in some texts, by case, by person, and the other forms.

    >>> from latingloss import annotate
    >>> for group in endings_key([annotate("Stellae noctis lucent.")]):
    ...     print([(row.name, [found.ending for found in row.endings]) for row in group.rows])
    [('nominative plural', ['ae']), ('genitive singular', ['is'])]
    [('3rd person plural', ['nt'])]
    """
    rows: dict[Row, dict[str, dict[str, Example]]] = defaultdict(lambda: defaultdict(dict))
    for token in (t for document in documents for passage in document.passages for t in passage.tokens if t.words):
        word = token.words[0]
        row = row_of(word)
        if row and (sign := ending_of(word)):
            rows[row][sign].setdefault(word.lemma, example_of(token, sign))
    return tuple(
        EndingGroup(heading, tuple(_printed_row(row, rows[row]) for row in sorted(rows) if row.group == group))
        for group, heading in enumerate(_HEADINGS)
        if any(row.group == group for row in rows)
    )


def ending_of(word: Word) -> str:
    """Return the ending of a word that goes by a table, with vowel lengths; empty for any other.

    >>> from latingloss import annotate
    >>> [ending_of(token.words[0]) for token in annotate("Stellis lucemus.").passages[0].tokens if token.words]
    ['īs', 'mus']
    """
    for stem, text, features in _cells(word):
        if features.get("VerbForm") == "Fin" and features.get("Mood") != "Imp":
            signs = PERSON_ENDINGS[features["Person"], features["Number"]]
            return printed(next((sign for sign in signs if text.endswith(sign)), text))
        if features.get("VerbForm") == "Part" and features.get("Tense") == "Past":
            return printed(stem[-1:] + text)  # the stem's own t or s is the sign: rēct-us
        found = _SHAPE_SIGN.search(text) if "VerbForm" in features else None
        return printed(found[0] if found else text)
    return ""


def _cells(word: Word) -> Iterator[tuple[str, str, dict[str, str]]]:
    """Yield the cells of the tables that give this form with these features."""
    form = plain(word.marked_form)
    for lexeme in find(word.lemma):
        for stem, table in lexeme.stems:
            for text, features, _ in endings(table):
                alike = all(features[k] == word.features.get(k) for k in _COMPARED if k in features)
                if text and alike and plain(stem + text) == form:
                    yield stem, text, features


def row_of(word: Word) -> Row | None:
    """Return where a word's ending belongs; None for a word that has none."""
    features = word.features
    number, case, form = features.get("Number", ""), features.get("Case", ""), features.get("VerbForm", "")
    shape = {"Part": features.get("Tense", "")}.get(form, "")
    key = ("Imp", number) if features.get("Mood") == "Imp" else (form or features.get("Degree", ""), shape)
    if key in _SHAPES and (form or case):
        name = _SHAPE_NAMES.get(key[0], "")
        if key[0] in ("Part", "Inf"):
            name = " ".join(filter(None, (_TENSE_NAMES.get(features.get("Tense", "")), name)))
        return Row(2, (list(_SHAPES).index(key),), name, _SHAPES[key])
    if form == "Fin" and (person := (features.get("Person", ""), number)) in _PERSONS:
        passive = is_passive(word)
        tells = _PERSONS[person] + (": it is done to the subject" if passive else "")
        name = f"{ORDINALS[person[0]]} person {NUMBERS[number]}" + (" passive" if passive else "")
        return Row(1, (passive, list(_PERSONS).index(person)), name, tells)
    if case in _CASES and number in NUMBERS and word.upos != "PRON":
        return Row(
            0, (list(_CASES).index(case), number == "Plur"), f"{CASE_NAMES[case]} {NUMBERS[number]}", _CASES[case]
        )
    return None


def example_of(token: Token, sign: str) -> Example:
    """Cut a word as printed where its ending begins; a ligature counts as the two letters it stands for.

    >>> from latingloss import annotate
    >>> example_of(annotate("Stellæ lucent.").passages[0].tokens[0], "ae").stem
    'Stell'
    """
    text = parts_of(token)[0]
    cut = next((k for k in range(len(text), -1, -1) if plain(text[k:]) == plain(sign)), len(text))
    return Example(text[:cut], text[cut:], token.words[0].gloss)


def _printed_row(row: Row, found: dict[str, dict[str, Example]]) -> EndingRow:
    kinds = (EndingExamples(sign, tuple(words.values())[:_MOST_EXAMPLES]) for sign, words in sorted(found.items()))
    return EndingRow(row.name, row.tells, tuple(kinds))
