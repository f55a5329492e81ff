"""What the teacher compares of two readings: case, number, gender, person, kind of word, cases governed."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from latingloss.context.columns import Columns, Ints, Types, Vocabulary
from latingloss.context.tags import tag_of
from latingloss.morphology.ranking import Candidate

CASES = ("", "Nom", "Gen", "Dat", "Acc", "Voc", "Abl", "Loc")
NUMBERS = ("", "Sing", "Plur")
# classes between which agreement is looked for
CLASSES = ("other", "NOUN", "PROPN", "ADJ", "DET", "PRON", "NUM", "PART", "FIN", "INF", "ADP")
_CLASS_ID = {name: i for i, name in enumerate(CLASSES)}
COARSE = (
    "other", *(f"{case}{number}" for case in CASES[1:] for number in NUMBERS), *(
        f"{mood}{person}{number}" for mood in ("Ind", "Sub", "Imp") for person in "123" for number in ("Sing", "Plur")
    ), "Inf", "ADP", "CCONJ", "SCONJ", "ADV", "PART", "INTJ", "NUM", "<edge>",
)  # fmt: skip
_COARSE_ID = {name: i for i, name in enumerate(COARSE)}
EDGE = _COARSE_ID["<edge>"]
_GOVERNED = {"acc": 1 << CASES.index("Acc"), "abl": 1 << CASES.index("Abl"), "gen": 1 << CASES.index("Gen")}
_GENDER_BITS = {"Masc": 1, "Fem": 2, "Neut": 4}


class Traits(NamedTuple):
    """The traits of every row of a batch."""

    tag: Ints
    case: Ints
    number: Ints
    gender: Ints  # bits: 1 masculine, 2 feminine, 4 neuter
    person: Ints
    kind: Ints  # index in CLASSES
    governed: Ints  # of a preposition: bits 1 << index in CASES of the cases it takes
    coarse: Ints  # index in COARSE: what the tag says, part of speech left out


class TraitTable:
    """The traits of all readings of a table of types, found once each."""

    def __init__(self, types: Types) -> None:
        self.tags = Vocabulary(growing=True)
        self._types = types
        self._rows: list[tuple[int, ...]] = []
        self._forms = 0

    def of(self, columns: Columns) -> Traits:
        """Return the traits of a batch's rows."""
        forms, self._forms = range(self._forms, len(self._types.forms)), len(self._types.forms)
        self._rows += [self._traits(reading) for form in forms for reading in self._types.readings(form)]
        picked = np.array(self._rows, np.int32).reshape(-1, len(Traits._fields))[columns.reading]
        return Traits(*(np.ascontiguousarray(picked[:, k]) for k in range(len(Traits._fields))))

    def _traits(self, candidate: Candidate) -> tuple[int, ...]:
        features, upos = candidate.features, candidate.upos
        verbal = features.get("VerbForm", "")
        kind = {"Fin": "FIN", "Inf": "INF", "": upos}.get(verbal, "PART")
        shown = ("Case", "Number") if "Case" in features else ("Mood", "Person", "Number")
        coarse = "".join(features.get(name, "") for name in shown)
        coarse = coarse if coarse in _COARSE_ID else "Inf" if verbal == "Inf" else upos
        gender = sum(_GENDER_BITS[g] for g in features["Gender"].split(",")) if "Gender" in features else 7
        return (
            self.tags.id(tag_of(candidate).tag),
            CASES.index(features.get("Case", "")),
            NUMBERS.index(features.get("Number", "")),
            gender,
            int(features.get("Person", 0)),
            _CLASS_ID.get(kind, 0),
            sum(_GOVERNED.get(g, 0) for g in candidate.lexeme.governs.split("/")) if upos == "ADP" else 0,
            _COARSE_ID.get(coarse, 0),
        )
