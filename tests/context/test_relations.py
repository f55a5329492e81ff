"""Relations in sentences of our own, against the rules of Bennett, New Latin Grammar (1918).

Section numbers are from memory, not compared with the print. The readings are given, so that nothing but the search
for relations is tested; a form's reading is picked by its features.
"""

from __future__ import annotations

import gzip
import os
from pathlib import Path

import pytest

from latingloss.context.relations import Partner, Relations, relations
from latingloss.morphology.ranking import Candidate, candidates
from latingloss.text.tokens import tokenize

SHARED = Path(os.environ.get("LATINGLOSS_SHARED", Path(__file__).parents[3] / "shared"))
CASES = {"nom": "Nom", "gen": "Gen", "dat": "Dat", "acc": "Acc", "voc": "Voc", "abl": "Abl"}


def picked(form: str, wanted: str) -> Candidate:
    """The reading of a form that `wanted` names: a case, a part of speech, `sub`, `inf` or `part`."""
    for candidate in candidates(form):
        f = candidate.features
        named = {f.get("Case", ""), candidate.upos, f.get("Mood", ""), f.get("VerbForm", ""), candidate.lexeme.lemma}
        if {CASES.get(w, w) for w in wanted.split("+")} <= named:
            return candidate
    raise AssertionError(f"{form} has no reading {wanted}")


def read(text: str, **wanted: str) -> dict[str, Relations]:
    """Relations by form; `wanted` picks readings where the likeliest is not meant: `rosa="abl"`."""
    tokens = [t.text for t in tokenize(text)]
    chosen = [(picked(t, wanted[t]) if t in wanted else candidates(t)[0],) if t[0].isalpha() else () for t in tokens]
    return {t: r[0] for t, r in zip(tokens, relations(chosen, tokens), strict=True) if r}


def said(partner: Partner | None) -> str:
    return partner.text if partner else ""


def test_subject_and_object() -> None:
    """Bennett 1918, 166 and 172."""
    found = read("Puer, quem videmus, panem magnum portat.", Puer="nom", quem="quī+acc", panem="acc", magnum="acc")
    assert said(found["Puer"].verb) == "portat" == said(found["panem"].verb)
    assert said(found["portat"].subject) == "Puer"
    assert said(found["quem"].verb) == "videmus", "the object of its own clause, not of the verb around it"
    assert said(found["quem"].antecedent) == "Puer"  # 250
    assert said(found["magnum"].agrees_with) == "panem"  # 234


def test_a_clause_has_its_own_object() -> None:
    found = read("Dominus servum vocavit et equum vendidit.", Dominus="nom", servum="acc", equum="acc")
    assert said(found["servum"].verb) == "vocavit"
    assert said(found["equum"].verb) == "vendidit"


def test_predicate_nominative() -> None:
    """Bennett 1918, 168: it agrees with the subject; which of two mere nouns it is, nothing shows."""
    found = read("Hic est filius regis.", Hic="hic+nom", filius="nom", regis="gen")
    assert said(found["est"].subject) == "Hic"
    assert said(found["filius"].subject) == "Hic" and found["filius"].verb is None
    assert said(found["regis"].owner) == "filius"  # 198
    unclear = read("Vita somnium est.", Vita="NOUN+nom", somnium="nom")
    assert unclear["est"].subject is None


def test_prepositions_reach_what_and_joins() -> None:
    """Bennett 1918, 141-143."""
    found = read("In agro et horto equum vidit.", agro="abl", horto="abl", equum="acc")
    assert said(found["agro"].preposition) == said(found["horto"].preposition) == "In"
    assert found["equum"].preposition is None and said(found["equum"].verb) == "vidit"
    found = read("In agrum equum misit.", agrum="acc", equum="acc")
    assert said(found["agrum"].preposition) == "In" and found["equum"].preposition is None


def test_genitive_goes_to_its_neighbour() -> None:
    """Bennett 1918, 195-198; a relative in the genitive belongs to the noun behind it."""
    found = read(
        "Vir, cuius filiam amo, portam urbis claudit.", cuius="quī+gen", filiam="acc", portam="acc", urbis="gen"
    )
    assert said(found["cuius"].owner) == "filiam"
    assert said(found["urbis"].owner) == "portam"


def test_accusative_with_infinitive() -> None:
    """Bennett 1918, 330-331."""
    found = read("Marcus dicit se venisse.", Marcus="nom", se="acc")
    assert said(found["se"].infinitive) == "venisse" and found["se"].verb is None
    assert said(found["venisse"].verb) == "dicit"
    unclear = read("Marcus dicit puerum canem videre.", Marcus="nom", puerum="acc", canem="acc", videre="Inf")
    assert unclear["canem"].verb is None, "subject or object: nothing but the sense shows"
    modal = read("Puer canem videre vult.", Puer="nom", canem="acc", videre="Inf")
    assert said(modal["canem"].verb) == "videre" and said(modal["videre"].verb) == "vult"  # 328


def test_ablatives() -> None:
    """Bennett 1918, 227 ablative absolute; 217 comparison; 218, 1 with ūtor."""
    found = read("Urbe capta milites redierunt.", Urbe="abl", capta="Part+abl", milites="nom")
    assert said(found["Urbe"].absolute) == "capta" and said(found["capta"].absolute) == "Urbe"
    found = read("Turris altior monte est.", Turris="nom", altior="nom", monte="abl")
    assert said(found["monte"].comparative) == "altior"
    found = read("Miles gladio utitur.", Miles="nom", gladio="abl")
    assert said(found["gladio"].verb) == "utitur"


def test_apposition() -> None:
    """Bennett 1918, 169."""
    found = read("Herodi regi librum dedit.", Herodi="dat", regi="dat", librum="acc")
    assert said(found["regi"].apposition) == "Herodi"
    assert said(found["Herodi"].verb) == "dedit"


def test_compound_tenses_and_conjunctions() -> None:
    found = read("Cum epistula scripta esset, discessit.", Cum="SCONJ", epistula="nom", scripta="Part+nom")
    assert said(found["esset"].auxiliary) == "scripta" and said(found["scripta"].auxiliary) == "esset"
    assert said(found["esset"].conjunction) == "Cum"
    present = read("Erat dormiens.", dormiens="Part")
    assert present["Erat"].auxiliary is None, "only the perfect participle makes a tense with sum"


def test_reflexives_and_vocatives() -> None:
    found = read("Agricolae agros suos amant.", Agricolae="nom", agros="acc", suos="acc")
    assert said(found["suos"].reflexive) == "amant"
    assert read("O Domine, veni.", Domine="voc")["Domine"].called
    assert not read("Veni, Domine.", Domine="voc")["Domine"].called


def test_empty_and_punctuation_only() -> None:
    assert relations([], []) == []
    assert relations([(), ()], [".", "!"]) == [(), ()]


def test_every_word_gets_relations_and_no_partner_is_itself() -> None:
    """On sentences of the learn treebanks, whatever readings come first."""
    path = SHARED / "treebanks" / "learn" / "circse-train.conllu.gz"
    if not path.exists():
        pytest.skip("the treebanks are not here")
    sentence: list[str] = []
    seen = 0
    with gzip.open(path, "rt", encoding="utf-8") as lines:
        for line in lines:
            cells = line.split("\t")
            if len(cells) == 10 and cells[0].isdigit() and cells[1].isalpha():
                sentence.append(cells[1])
            elif sentence and line == "\n":
                chosen = [(candidates(form)[0],) for form in sentence]
                for reading, (found,) in zip(chosen, relations(chosen, sentence), strict=True):
                    partners = [p for p in found if isinstance(p, Partner)]
                    assert all(p.reading is not reading[0] or sentence.count(p.text) > 1 for p in partners)
                    assert found.owner is None or reading[0].features["Case"] == "Gen"
                seen += 1
                sentence = []
            if seen == 60:
                return


def test_small_words_that_a_clause_decides() -> None:
    """Quod behind a verb of saying: that; quam behind a comparative: than (Bennett 1918, 217); ut alone: as."""
    assert read("Scio quod venit.", quod="SCONJ", Scio="Ind")["quod"].means == "that"
    assert read("Discessit quod timuit.", quod="SCONJ")["quod"].means == ""
    assert read("Turris altior quam mons est.", altior="nom", quam="ADV")["quam"].means == "than"
    assert read("Currunt ut cervi.", ut="SCONJ", cervi="nom")["ut"].means == "as"
    assert read("Currunt ut cervum videant.", ut="SCONJ")["ut"].means == ""


def test_a_phrase_ends_with_its_noun() -> None:
    """What stands for a noun ends the phrase as a noun does: the accusative behind it is the verb's object."""
    found = read("Propter hoc legem dabit.", hoc="acc", legem="acc")
    assert said(found["hoc"].preposition) == "Propter"
    assert found["legem"].preposition is None and said(found["legem"].verb) == "dabit"


def test_father_and_son_are_not_one() -> None:
    """Two genitives side by side: a title names the same person (169), a word of kinship another (198)."""
    found = read("Liber Annae filiae Marci est.", Annae="gen", filiae="gen", Marci="gen")
    assert said(found["filiae"].apposition) == "Annae"
    assert said(found["Marci"].owner) == "filiae" and found["Marci"].apposition is None
