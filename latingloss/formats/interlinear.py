"""Interlinear glossed text by the Leipzig Glossing Rules (Comrie, Haspelmath and Bickel; revised 2015).

Three lines a passage: the Latin, word for word its gloss aligned by spaces (rule 1), the free rendering in
quotation marks. An enclitic is parted by `=` in both lines (rule 2). Forms are not cut into morphemes, so what an
ending says follows a full stop (rule 4), person and number unparted (rule 5).
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Mapping

from latingloss.document import Document, Passage, Token, Word
from latingloss.formats.cells import one_line

# of the list of standard abbreviations (2015, appendix), but for those marked
ABBREVIATIONS = {
    "NOM": "nominative", "GEN": "genitive", "DAT": "dative", "ACC": "accusative", "VOC": "vocative",
    "ABL": "ablative", "LOC": "locative", "SG": "singular", "PL": "plural", "1": "first person",
    "2": "second person", "3": "third person", "M": "masculine", "F": "feminine", "N": "neuter",
    "IND": "indicative", "SBJV": "subjunctive", "IMP": "imperative", "INF": "infinitive", "PTCP": "participle",
    "PRS": "present", "PST": "past", "FUT": "future", "PRF": "perfect", "ACT": "active (not in the appendix)",
    "PASS": "passive", "GER": "gerund (not in the appendix)", "SUP": "supine (not in the appendix)",
    "CMPR": "comparative (not in the appendix)", "SUPL": "superlative (not in the appendix)",
}  # fmt: skip
_NUMBERS = {"Sing": "SG", "Plur": "PL"}
_GENDERS = {"Masc": "M", "Fem": "F", "Neut": "N"}
_MOODS = {"Ind": "IND", "Sub": "SBJV", "Imp": "IMP"}
_VOICES = {"Act": "ACT", "Pass": "PASS"}
_DEGREES = {"Cmp": "CMPR", "Sup": "SUPL", "Abs": "SUPL"}
_VERB_FORMS = {"Inf": "INF", "Part": "PTCP", "Ger": "GER", "Gdv": "PTCP", "Sup": "SUP"}
_TENSES = {
    ("Pres", ""): "PRS", ("Past", "Imp"): "PST", ("Past", "Perf"): "PRF", ("Past", ""): "PST", ("Fut", ""): "FUT",
    ("Pqp", "Perf"): "PST.PRF", ("Pqp", ""): "PST.PRF", ("Fut", "Perf"): "FUT.PRF",
}  # fmt: skip


def write(document: Document) -> str:
    """Write a document as interlinear glossed text, a blank line between passages.

    >>> from latingloss import annotate
    >>> print(write(annotate("Stellae lucent.", "The stars are shining.")))
    Stellae     lucent.
    star.NOM.PL shine.PRS.IND.ACT.3PL
    ‘The stars are shining.’
    <BLANKLINE>
    """
    return "\n".join("\n".join(_passage(document, p)) + "\n" for p in document.passages if p.tokens)


def _passage(document: Document, passage: Passage) -> Iterator[str]:
    columns = list(_columns(passage.tokens))
    widths = [max(_width(latin), _width(gloss)) for latin, gloss in columns]
    for k in (0, 1):
        yield " ".join(c[k] + " " * (w - _width(c[k])) for c, w in zip(columns, widths, strict=True)).rstrip()
    if passage.rendering and document.english is not None:
        free = document.english[passage.rendering[0].start : passage.rendering[-1].end]
        yield f"‘{one_line(free)}’"


def _columns(tokens: tuple[Token, ...]) -> Iterator[tuple[str, str]]:
    """Yield Latin and gloss of each column: what is printed without a space between stands in one."""
    latin, glosses = "", ""
    for i, token in enumerate(tokens):
        if i and token.start > tokens[i - 1].end:
            yield latin, glosses
            latin, glosses = "", ""
        latin += "=".join(one_line(w.form) for w in token.words) if len(token.words) > 1 else one_line(token.text)
        own = "=".join(map(_gloss, token.words)) or (one_line(token.text) if token.kind == "number" else "")
        glosses += ("." if glosses and own else "") + own
    yield latin, glosses


def _gloss(word: Word) -> str:
    """Gloss one word: what its lemma means, then what its form says."""
    sense = word.senses.partition(";")[0].strip() or word.lemma.partition("#")[0]
    return ".".join((".".join(one_line(sense).replace("-", ".").split()), *labels(word.upos, word.features)))


def labels(upos: str, features: Mapping[str, str]) -> tuple[str, ...]:
    """Return the abbreviations for what a form says, in the order of the rules' own examples.

    Gender is shown where it is the form's own, not the noun's. A gerundive is the future passive participle
    (Bennett 1918, section 337.7).

    >>> labels("VERB", {"Mood": "Ind", "Number": "Plur", "Person": "1", "Tense": "Pres", "VerbForm": "Fin"})
    ('PRS', 'IND', '1PL')
    """
    aspect, number = features.get("Aspect", ""), _NUMBERS.get(features.get("Number", ""), "")
    tense = features.get("Tense", "")
    found = [_TENSES.get((tense, aspect)) or _TENSES.get((tense, "")) or ""]
    verbal = features.get("VerbForm", "")
    if verbal == "Gdv":
        found = ["FUT"]
    found.append(_MOODS.get(features.get("Mood", ""), ""))
    if verbal not in ("Ger", "Sup"):
        found.append(_VOICES.get(features.get("Voice", ""), ""))
    found.append(_VERB_FORMS.get(verbal, ""))
    found.append(_DEGREES.get(features.get("Degree", ""), ""))
    if upos not in ("NOUN", "PROPN") and verbal != "Ger":
        found.append("/".join(_GENDERS[g] for g in features.get("Gender", "").split(",") if g in _GENDERS))
    if features.get("Case"):
        found.append(features["Case"].upper())
    person = features.get("Person", "")
    found.append(person + number)
    return tuple(label for label in found if label)


def _width(text: str) -> int:
    return sum(not unicodedata.combining(c) for c in text)
