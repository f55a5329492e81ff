"""Reasons against the rules of Bennett, New Latin Grammar (1918).

Section numbers are from memory, not compared with the print; the wording and the example phrases are our own.
"""

from __future__ import annotations

import pytest

from latingloss.morphology.inflection import forms_of
from latingloss.morphology.lexicon import find
from latingloss.morphology.reasons import NO_EVIDENCE, Evidence, reason


def why(lemma: str, evidence: Evidence = NO_EVIDENCE, **features: str) -> str:
    lexeme = find(lemma)[0]
    upos = "VERB" if "VerbForm" in features and lexeme.upos != "AUX" else lexeme.upos
    return reason(upos=upos, features=features, lexeme=lexeme, evidence=evidence)


# section of Bennett 1918, case, evidence, reason
@pytest.mark.parametrize(
    ("case", "evidence", "said"),
    [
        ("Nom", Evidence(verb="venit"), 'nominative: subject of "venit"'),  # 166
        ("Nom", Evidence(verb="est", subject="Roma"), 'nominative: says what "Roma" is'),  # 168
        ("Voc", Evidence(verb="venit"), "vocative: speaking to someone"),  # 171
        ("Acc", Evidence(verb="videt"), 'accusative: object of "videt"'),  # 172
        ("Dat", Evidence(verb="dat"), 'dative: "to" or "for" whom: with "dat"'),  # 187
        ("Dat", Evidence(verb="paret", governs="dat"), 'dative: "paret" takes the dative'),  # 187 II
        ("Abl", Evidence(verb="utitur", governs="abl"), 'ablative: "utitur" takes the ablative'),  # 218, 1
        ("Gen", Evidence(verb="meminit", governs="gen"), 'genitive: "meminit" takes the genitive'),  # 206
        (
            "Gen",
            Evidence(belongs_to="porta", english="of the city"),
            'genitive: belongs to "porta"; English "of the city"',
        ),  # 198
        ("Abl", Evidence(comparative="altior"), 'ablative: compared: "than" with "altior"'),  # 217
        ("Abl", Evidence(absolute="capta"), 'ablative: ablative absolute with "capta"'),  # 227
        ("Acc", Evidence(infinitive="esse"), 'accusative: subject of the infinitive "esse"'),  # 184
        ("Dat", Evidence(apposition="Herodi"), 'dative: names "Herodi" again, in the same case'),  # 169
        ("Nom", Evidence(beside="redierunt"), 'nominative: goes with the subject of "redierunt"'),  # 239
        ("Abl", Evidence(preposition="in"), 'ablative after "in": place where'),  # 143
        ("Acc", Evidence(preposition="in"), 'accusative after "in": movement into'),  # 143
        ("Acc", Evidence(preposition="per"), 'accusative after "per"'),  # 141
        ("Loc", NO_EVIDENCE, "locative: place where"),  # 232
        ("Gen", Evidence(english="of the city"), 'genitive; English "of the city"'),
        ("Gen", NO_EVIDENCE, 'genitive: "of"'),
    ],
)
def test_cases(case: str, evidence: Evidence, said: str) -> None:
    assert why("urbs", evidence, Case=case, Number="Sing") == said


def test_nouns_of_time() -> None:
    """Bennett 1918, 181 how long, 230 when."""
    assert why("annus", Case="Acc", Number="Plur") == "accusative: how long"
    assert why("annus", Case="Abl", Number="Sing") == "ablative: when"
    assert why("annus", Evidence(verb="numerat"), Case="Acc", Number="Plur") == 'accusative: object of "numerat"'


def test_agreement() -> None:
    """Bennett 1918, 234: gender, number and case of the noun; 250: gender and number of the antecedent."""
    bonum = {"Case": "Acc", "Gender": "Masc", "Number": "Sing", "Degree": "Pos"}
    assert (
        why("bonus", Evidence(agrees_with="populum"), **bonum) == 'agrees with "populum": accusative singular masculine'
    )
    quos = {"Case": "Acc", "Gender": "Masc", "Number": "Plur", "PronType": "Rel"}
    relative = why("quī", Evidence(antecedent="homines", verb="videt"), **quos)
    assert relative == 'goes back to "homines"; accusative: object of "videt"'


FIN = {"VerbForm": "Fin", "Mood": "Ind", "Tense": "Pres", "Aspect": "Imp", "Voice": "Act"}


@pytest.mark.parametrize(
    ("features", "evidence", "said"),
    [
        ({"Person": "1", "Number": "Plur"}, Evidence(form="clāmāmus"), '1st person plural: "we", from the ending -mus'),
        (
            {"Person": "3", "Number": "Sing"},
            Evidence(form="clāmat", subject="pater"),
            '3rd person singular: its subject is "pater"',
        ),
        ({"Person": "2", "Number": "Plur", "Mood": "Imp"}, Evidence(form="clāmāte"), "2nd person plural command"),
        (
            {"Person": "1", "Number": "Plur", "Mood": "Sub"},
            NO_EVIDENCE,
            '1st person plural: "we"; subjunctive: "let us"',
        ),  # 274
        (
            {"Person": "3", "Number": "Sing", "Mood": "Sub"},
            Evidence(form="clāmet", conjunction="ut"),
            # 282, 284
            '3rd person singular: "he, she or it", from the ending -t; subjunctive after "ut": purpose or result',
        ),
    ],
)
def test_verbs(features: dict[str, str], evidence: Evidence, said: str) -> None:
    assert why("clāmō", evidence, **(FIN | features)) == said


def test_deponent_and_passive() -> None:
    passive = FIN | {"Voice": "Pass", "Person": "3", "Number": "Sing"}
    assert why("loquor", **passive).endswith("passive ending with active sense (deponent)")  # 112
    assert why("amō", **passive).endswith("passive: it is done to the subject")


def test_no_evidence_is_never_invented() -> None:
    """A reason names a word of the passage only if it was given: no quoted Latin without evidence."""
    for lemma in ("urbs", "bonus", "amō", "loquor", "quī", "sum"):
        lexeme = find(lemma)[0]
        for form, features in forms_of(lexeme):
            upos = "VERB" if "VerbForm" in features else lexeme.upos
            said = reason(upos=upos, features=features, lexeme=lexeme)
            assert f'"{form}"' not in said and "-" not in said.replace("-ing", ""), said
            assert bool(said) or features.get("Degree") == "Pos", (form, features)


def test_words_without_endings_have_no_reason() -> None:
    assert why("et") == ""
    assert why("ex") == "takes the ablative"
