"""What the chooser sees of a reading: its own ending, and the sign that it gives to its neighbours.

The ending says what the form is; the sign adds the word where the word itself governs: a preposition, a
conjunction, a pronoun, a common verb.
"""

from __future__ import annotations

from typing import NamedTuple

from latingloss.morphology.ranking import Candidate
from latingloss.text.orthography import plain

_COMMON_VERBS = frozenset(
    "sum dico facio do possum habeo uenio uideo uolo eo fero accipio capio mitto pono audio scio fio loquor"
    " uoco inuenio debeo dono credo seruo timeo quaero peto iubeo rogo respondeo nolo coepi oportet licet"
    " placeo noceo parco misereor obliuiscor memini utor fruor impleo".split()
)


class Tag(NamedTuple):
    """A reading by name, as its neighbours see it."""

    tag: str  # part of speech, case, number; person, mood, tense and voice of a verb
    sign: str  # the tag, with the word where it governs
    gender: str  # as UD writes it; empty where there is none

    @property
    def ending(self) -> str:
        """The tag with the gender, which tells which words agree."""
        return f"{self.tag}|{self.gender}"


def _verb_tag(features: dict[str, str]) -> str:
    form = features["VerbForm"]
    if form == "Fin":
        tense = features["Tense"] + ("P" if features["Aspect"] == "Perf" else "")
        return f"V{features['Mood']}{tense}{features['Voice'][0]} {features['Person']}{features['Number']}"
    if form == "Inf":
        return f"Inf{features['Tense']}{features['Voice']}"
    kind = form if form != "Part" else "Part" + features.get("Aspect", "")
    return f"{kind} {features.get('Case', '')}{features.get('Number', '')}"


def tag_of(candidate: Candidate) -> Tag:
    """Return the tag of a reading."""
    features, upos = candidate.features, candidate.upos
    lemma = plain(candidate.lexeme.spelled)
    verbal = features.get("VerbForm", "")
    if verbal:
        tag = _verb_tag(features)
        finite = f"V{features['Mood']} {features['Person']}{features['Number']}" if verbal == "Fin" else tag
        governed = lemma if lemma in _COMMON_VERBS else candidate.lexeme.governs
        sign = f"{finite} {governed}" if verbal in ("Fin", "Inf") else tag
    else:
        degree = features.get("Degree", "")
        tag = f"{upos} {features.get('Case', '')}{features.get('Number', '')}" + (
            "" if degree in ("", "Pos") else degree
        )
        if lemma == "se":
            tag += " reflexive"  # its number is the subject's
        sign = tag
        if upos in ("ADP", "CCONJ", "SCONJ", "PART", "INTJ", "ADV", "PRON", "DET", "AUX"):
            sign = f"{lemma} {tag}"
    return Tag(tag, sign, features.get("Gender", ""))


def english_tag(candidate: Candidate) -> str:
    """Return what of a reading English can show: case and number by kind of word, or the verb's tag."""
    features, upos = candidate.features, candidate.upos
    cased = features.get("Case", "") + features.get("Number", "")
    if "VerbForm" in features:
        return _verb_tag(features)
    return {"NOUN": "noun ", "PROPN": "noun ", "PRON": "pronoun ", "DET": "pronoun "}.get(upos, upos + " ") + cased
