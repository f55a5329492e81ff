"""What the chooser sees of a reading: its own tag, and the sign that it gives to its neighbours.

The tag says what the form is; the sign adds the word where the word itself governs: a preposition, a
conjunction, a pronoun, a common verb.
"""

from __future__ import annotations

from typing import NamedTuple

from latingloss.morphology.ranking import Candidate
from latingloss.text.orthography import plain

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
_COMMON_VERBS = frozenset(
    "sum dico facio do possum habeo uenio uideo uolo eo fero accipio capio mitto pono audio scio fio loquor"
    " uoco inuenio debeo dono credo seruo timeo quaero peto iubeo rogo respondeo nolo coepi oportet licet"
    " placeo noceo parco misereor obliuiscor memini utor fruor impleo".split()
)


class Signs(NamedTuple):
    """The attributes of one reading, as the chooser's columns hold them."""

    tag: str
    sign: str
    case: int
    number: int
    gender: int  # bits: 1 masculine, 2 feminine, 4 neuter
    person: int
    kind: int  # index in CLASSES
    governed: int  # of a preposition: bits 1 << index in CASES of the cases it takes
    coarse: int  # index in COARSE: what the tag says, part of speech left out


def _verb_tag(features: dict[str, str]) -> str:
    form = features["VerbForm"]
    if form == "Fin":
        tense = features["Tense"] + ("P" if features["Aspect"] == "Perf" else "")
        return f"V{features['Mood']}{tense}{features['Voice'][0]} {features['Person']}{features['Number']}"
    if form == "Inf":
        return f"Inf{features['Tense']}{features['Voice']}"
    kind = form if form != "Part" else "Part" + features.get("Aspect", "")
    return f"{kind} {features.get('Case', '')}{features.get('Number', '')}"


def signs(candidate: Candidate) -> Signs:
    """Return the attributes of a reading."""
    features, upos = candidate.features, candidate.upos
    lemma = plain(candidate.lexeme.spelled)
    verbal = features.get("VerbForm", "")
    cased = features.get("Case", "") + features.get("Number", "")
    if verbal:
        tag = _verb_tag(features)
        finite = f"V{features['Mood']} {features['Person']}{features['Number']}" if verbal == "Fin" else tag
        governed = lemma if lemma in _COMMON_VERBS else candidate.lexeme.governs
        sign = f"{finite} {governed}" if verbal in ("Fin", "Inf") else tag
    else:
        degree = features.get("Degree", "")
        tag = f"{upos} {cased}" + ("" if degree in ("", "Pos") else degree)
        if lemma == "se":
            tag += " reflexive"  # its number is the subject's
        sign = tag
        if upos in ("ADP", "CCONJ", "SCONJ", "PART", "INTJ", "ADV", "PRON", "DET", "AUX"):
            sign = f"{lemma} {tag}"
    kind = {"Fin": "FIN", "Inf": "INF", "": upos}.get(verbal, "PART")
    coarse = cased or features.get("Mood", "") + features.get("Person", "") + features.get("Number", "")
    coarse = coarse if coarse in _COARSE_ID else "Inf" if verbal == "Inf" else upos
    gender = sum(_GENDER_BITS[g] for g in features["Gender"].split(",")) if "Gender" in features else 7
    return Signs(
        tag,
        sign,
        CASES.index(features.get("Case", "")),
        NUMBERS.index(features.get("Number", "")),
        gender,
        int(features.get("Person", 0)),
        _CLASS_ID.get(kind, 0),
        sum(_GOVERNED.get(g, 0) for g in candidate.lexeme.governs.split("/")) if upos == "ADP" else 0,
        _COARSE_ID.get(coarse, 0),
    )


def english_tag(candidate: Candidate) -> str:
    """Return what of a reading English can show: case and number by kind of word, or the verb's tag."""
    features, upos = candidate.features, candidate.upos
    cased = features.get("Case", "") + features.get("Number", "")
    if "VerbForm" in features:
        return _verb_tag(features)
    return {"NOUN": "noun ", "PROPN": "noun ", "PRON": "pronoun ", "DET": "pronoun "}.get(upos, upos + " ") + cased
