"""Inflection against Bennett, New Latin Grammar (1918): his tables, as transcribed in ../shared, and single sections."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import latingloss
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
SPELLED = (("īgn", "ign"), ("sedil", "sedīl"), ("hīc", "hic"))
SLIPS: set[tuple[str, str]] = set()


def rows(folder: Path, name: str) -> list[list[str]]:
    lines = (folder / "checks" / name).read_text(encoding="utf-8").splitlines()[1:]
    return [line.split("\t") for line in lines]


def respelled(form: str) -> str:
    form = form.lower()
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
