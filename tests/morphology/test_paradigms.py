"""Inflection against Bennett, New Latin Grammar (1918): his tables, transcribed in ../shared, and single sections."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from latingloss.morphology.inflection import paradigms

CASES = {"nom": "Nom", "gen": "Gen", "dat": "Dat", "acc": "Acc", "voc": "Voc", "abl": "Abl"}
NUMBERS = {"sg": "Sing", "pl": "Plur"}
GENDERS = {"m": ("Masc",), "f": ("Fem",), "n": ("Neut",), "mf": ("Masc", "Fem"), "": ("",)}
TENSES = {
    "present": ("Pres", "Imp"), "imperfect": ("Past", "Imp"), "future": ("Fut", "Imp"),
    "perfect": ("Past", "Perf"), "pluperfect": ("Pqp", "Perf"), "future perfect": ("Fut", "Perf"),
}  # fmt: skip
MOODS = {"indicative": "Ind", "subjunctive": "Sub"}
VOICES = {"act": "Act", "pass": "Pass"}
# vowels that Bennett marks otherwise than the dictionaries (ignis), or the transcription leaves short (sedīle)
SPELLED = (("īgn", "ign"), ("sedil", "sedīl"), ("hīc", "hic"), ("ĕ", "e"), ("j", "i"), ("hūi", "hui"), ("cūi", "cui"))
# slips of the transcription in ../shared, and what the book has: a length lost or put one vowel too far
SLIPS = {
    "amāvīssēmus": "amāvissēmus", "amābāmini": "amābāminī", "amēmini": "amēminī", "amāti sītis": "amātī sītis",
    "amāti sint": "amātī sint", "amāti essent": "amātī essent", "rectī essētis": "rēctī essētis",
    "rectī essent": "rēctī essent", "audirēminī": "audīrēminī",
}  # fmt: skip


def rows(folder: Path, name: str) -> list[list[str]]:
    lines = (folder / "checks" / name).read_text(encoding="utf-8").splitlines()[1:]
    return [line.split("\t") for line in lines]


def respelled(form: str) -> str:
    form = SLIPS.get(form, form).lower()
    for old, new in SPELLED:
        form = form.replace(old, new)
    return form


def cells(lemma: str, **features: str) -> set[str]:
    """Forms of all homographs of a lemma that have these features."""
    return {
        cell.form.lower()
        for paradigm in paradigms(lemma)
        for cell in paradigm.forms
        if all(value in cell.features.get(name, "").split(",") for name, value in features.items())
    }


def missing(printed: str, ours: set[str]) -> list[str]:
    """Forms of a printed cell (`tussīs or -ēs`, `duōs, duo`) that we lack; `-ēs` stands for any form in -ēs."""
    wanted = [form.strip(" ()") for form in re.split(r", | or |; ", respelled(printed))]
    return [f for f in wanted if f not in ours and not (f[0] == "-" and any(o.endswith(f[1:]) for o in ours))]


def test_declensions_agree_with_bennett(shared: Path) -> None:
    wrong = []
    for _, heading, number, gender, case, printed in rows(shared, "bennett_declensions_clean.tsv"):
        features = {"Number": NUMBERS[number], "Case": CASES[case]}
        for one in GENDERS[gender]:
            ours = cells(respelled(heading), **features, **({"Gender": one} if one else {}))
            wrong += [(heading, number, one, case, form, ours) for form in missing(printed, ours)]
    assert not wrong


def test_conjugations_agree_with_bennett(shared: Path) -> None:
    wrong = []
    for _, verb, voice, mood, tense, person, number, printed in rows(shared, "bennett_conjugations_clean.tsv"):
        time, aspect = TENSES[tense]
        features = {"Mood": MOODS[mood], "Tense": time, "Aspect": aspect, "Person": person, "Number": NUMBERS[number]}
        ours = cells(verb, **features, **({} if verb == "sum" else {"Voice": VOICES[voice]}))
        wrong += [(verb, voice, mood, tense, person, number, f, ours) for f in missing(printed, ours)]
    assert not wrong


def test_every_slip_named_is_still_in_the_transcription(shared: Path) -> None:
    assert {row[-1] for row in rows(shared, "bennett_conjugations_clean.tsv")} >= set(SLIPS)


def features_of(tag: str) -> dict[str, str]:
    """Features of `Ind Pres 3 Sing`, `Inf Pass`: each word fits one feature only."""
    values = {
        "Mood": ("Ind", "Sub", "Imp"), "Tense": ("Pres", "Past", "Pqp", "Fut"), "Person": ("1", "2", "3"),
        "Number": ("Sing", "Plur"), "Voice": ("Act", "Pass"), "Degree": ("Pos", "Cmp", "Sup"),
        "VerbForm": ("Inf", "Part", "Ger", "Gdv"), "Case": tuple(CASES.values()), "Gender": ("Masc", "Fem", "Neut"),
    }  # fmt: skip
    return {name: word for word in tag.split() for name, known in values.items() if word in known}


# Bennett (1918), sections and what stands there -> lemma: cell: forms that must be in it
SECTIONS = {
    "20-59, nouns": """
        Aenēās: Acc Sing: aenēān aenēam; Anchīsēs: Voc Sing: anchīsē anchīsa; deus: Nom Plur: dī deī;
        deus: Gen Plur: deōrum deum; deus: Abl Plur: dīs deīs; dea: Dat Plur: deābus; fīlia: Abl Plur: fīliābus;
        familia: Gen Sing: familiās; fīlius: Voc Sing: fīlī; vīrus: Acc Sing: vīrus; pelagus: Acc Sing: pelagus;
        turris: Acc Sing: turrim; ignis: Abl Sing: ignī; animal: Nom Plur: animālia; vīs: Acc Sing: vim;
        vīs: Gen Plur: vīrium; bōs: Gen Plur: boum; Juppiter: Gen Sing: iovis; iter: Gen Sing: itineris;
        senex: Gen Plur: senum; supellex: Abl Sing: supellectile; carō: Gen Sing: carnis; os: Gen Plur: ossium;
        artus: Dat Plur: artubus; domus: Acc Plur: domōs domūs; domus: Abl Sing: domō;
        rēspūblica: Acc Sing: rempūblicam; jūsjūrandum: Gen Sing: iūrisiūrandī
    """,
    "62-77, adjectives and adverbs": """
        sōlus: Gen Sing: sōlīus; alter: Dat Sing: alterī; neuter: Gen Sing: neutrīus;
        ācer: Fem Nom Sing Pos: ācris; fēlīx: Neut Nom Plur Pos: fēlīcia; vetus: Gen Plur Pos: veterum;
        facilis: Masc Nom Sing Sup: facillimus; ācer: Masc Nom Sing Sup: ācerrimus;
        bonus: Masc Nom Sing Cmp: melior; magnus: Masc Nom Sing Sup: maximus;
        magnificus: Masc Nom Sing Cmp: magnificentior; prior: Neut Nom Sing Cmp: prius;
        dēterior: Neut Nom Plur Cmp: dēteriōra; facile: Cmp: facilius; diū: Sup: diūtissimē; bene: Cmp: melius
    """,
    "116, shortened and apocopated forms": """
        amō: Ind Past Plur 3: amāvērunt amārunt amāvēre; dēleō: Inf Past: dēlēsse; nōscō: Sub Pqp 1 Sing: nōssem;
        audiō: Ind Past 2 Sing: audīstī; dīcō: Imp 2 Sing: dīc; faciō: Imp 2 Sing: fac
    """,
    "112-113, deponents": """
        hortor: Ind Pres 1 Sing: hortor; hortor: Imp Pres 2 Sing: hortāre; vereor: Ind Fut 3 Sing: verēbitur;
        sequor: Inf Pres: sequī; sequor: Part Fut Nom Sing Masc: secūtūrus; largior: Sub Past 3 Plur: largīrentur;
        patior: Ind Pres 2 Sing: pateris; patior: Gdv Nom Sing Masc: patiendus
    """,
    "114, semi-deponents": """
        audeō: Ind Pres 1 Sing: audeō; audeō: Ind Past 1 Sing: ausus sum; gaudeō: Ind Past 3 Plur: gāvīsī sunt;
        soleō: Ind Past 1 Sing: solitus sum
    """,
    "124-127, sum, its compounds, dō": """
        possum: Ind Pres 2 Sing: potes; possum: Sub Past 3 Sing: posset; possum: Ind Fut 3 Plur: poterunt;
        prōsum: Ind Pres 3 Sing: prōdest; dō: Ind Pres 1 Plur: damus; dō: Sub Pres 3 Sing: det;
        dō: Imp Pres 2 Sing: dā
    """,
    "128-132, irregular verbs": """
        edō: Ind Pres 3 Sing: edit ēst; edō: Inf Pres Act: edere ēsse; ferō: Ind Pres 2 Sing Act: fers;
        ferō: Ind Pres 3 Sing Pass: fertur; ferō: Imp Pres 2 Sing Act: fer; ferō: Inf Pres Pass: ferrī;
        ferō: Part Past Nom Sing Masc: lātus; afferō: Ind Past 1 Sing Act: attulī; volō: Ind Pres 2 Sing: vīs;
        volō: Ind Pres 2 Plur: vultis; volō: Sub Past 1 Sing: vellem; nōlō: Imp Pres 2 Plur: nōlīte;
        mālō: Ind Pres 2 Sing: māvīs; fīō: Sub Past 3 Sing: fieret; fīō: Inf Pres: fierī;
        fīō: Ind Past 3 Sing: factus est; eō: Ind Pres 3 Plur Act: eunt; eō: Ind Fut 1 Sing Act: ībō;
        eō: Part Pres Gen Sing Act: euntis; eō: Inf Past Act: īsse; redeō: Ind Past 3 Sing Act: rediit
    """,
    "133-138, defective and impersonal verbs": """
        ōdī: Ind Past 1 Sing: ōdī; meminī: Imp 2 Sing: mementō; coepī: Part Past Nom Sing Neut: coeptum;
        inquam: Ind Pres 3 Plur: inquiunt; ajō: Ind Past 3 Sing: aiēbat; for: Ind Pres 3 Sing: fātur;
        queō: Ind Pres 3 Plur: queunt; oportet: Sub Pres 3 Sing: oporteat; licet: Ind Past 3 Sing: licuit;
        miseret: Ind Pres 3 Sing: miseret
    """,
}


@pytest.mark.parametrize("section", SECTIONS)
def test_single_sections_of_bennett(section: str) -> None:
    for entry in " ".join(SECTIONS[section].split()).split("; "):
        lemma, cell, forms = entry.split(": ")
        ours = {word for form in cells(lemma, **features_of(cell)) for word in form.split()}
        assert set(forms.split()) <= ours, (section, entry, ours)


@pytest.mark.parametrize("lemma", ["hortor", "vereor", "sequor", "patior", "largior"])
def test_a_deponent_has_no_active_finite_forms(lemma: str) -> None:
    # Bennett (1918), section 112: passive forms, active meaning; active only participles, gerund, supine
    assert not cells(lemma, VerbForm="Fin", Voice="Act") and not cells(lemma, VerbForm="Inf", Voice="Act", Tense="Pres")
