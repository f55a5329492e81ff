"""What a form is called in plain English: `accusative singular`, `1st person plural perfect passive`."""

from __future__ import annotations

from functools import cache

from latingloss.document import Reading, Word
from latingloss.morphology.lexicon import Lexeme, find
from latingloss.morphology.reasons import CASE_NAMES, NUMBERS, ORDINALS
from latingloss.text.orthography import printed

_MOODS = {"Sub": "subjunctive", "Imp": "imperative"}
_TENSES = {
    ("Pres", ""): "present", ("Past", "Imp"): "imperfect", ("Past", "Perf"): "perfect", ("Past", ""): "perfect",
    ("Pqp", ""): "pluperfect", ("Fut", ""): "future", ("Fut", "Perf"): "future perfect",
}  # fmt: skip
_SHAPES = {"Inf": "infinitive", "Part": "participle", "Ger": "gerund", "Gdv": "gerundive", "Sup": "supine"}
_DEGREES = {"Cmp": "comparative", "Sup": "superlative", "Abs": "superlative"}


def form_name(reading: Word | Reading) -> str:
    """Name the form of a reading; empty if it is the only one. A deponent is not called passive.

    >>> from latingloss import analyze
    >>> form_name(analyze("noctem")[0]), form_name(analyze("sequitur")[0])
    ('accusative singular', '3rd person singular present')
    """
    features = reading.features
    tense = _TENSES.get((features.get("Tense", ""), features.get("Aspect", "")))
    said = (
        f"{ORDINALS[features['Person']]} person" if features.get("Mood") and "Person" in features else "",
        CASE_NAMES.get(features.get("Case", ""), ""),
        NUMBERS.get(features.get("Number", ""), ""),
        tense or _TENSES.get((features.get("Tense", ""), ""), ""),
        _MOODS.get(features.get("Mood", ""), ""),
        "passive" if is_passive(reading) else "",
        _SHAPES.get(features.get("VerbForm", ""), ""),
        _DEGREES.get(features.get("Degree", ""), ""),
    )
    return " ".join(filter(None, said))


def is_passive(reading: Word | Reading) -> bool:
    """Tell whether a reading is passive in form and sense, that is no deponent (Bennett 1918, section 112)."""
    lexeme = lexeme_of(reading.lemma, reading.upos)
    return reading.features.get("Voice") == "Pass" and not (lexeme and lexeme.deponent)


@cache
def lexeme_of(lemma: str, upos: str) -> Lexeme | None:
    """Return the lexeme with a lemma as documents have it, and a part of speech; None if the lexicon has none."""
    return next((x for x in find(lemma) if x.upos == upos and printed(x.lemma) == lemma), None)
