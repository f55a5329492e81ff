"""Why a word has its case or person: one line in plain English, made from what was found in the passage.

Nothing is said that the evidence does not show. Without evidence the reason says what the ending itself says. The
rules named are those of Bennett 1918 (sections beside each).
"""

from __future__ import annotations

from typing import NamedTuple

from latingloss.morphology.lexicon import Lexeme
from latingloss.text.orthography import plain

CASE_NAMES = {
    "Nom": "nominative", "Gen": "genitive", "Dat": "dative", "Acc": "accusative", "Voc": "vocative", "Abl": "ablative",
    "Loc": "locative",
}  # fmt: skip
NUMBERS = {"Sing": "singular", "Plur": "plural"}
_GENDERS = {"Masc": "masculine", "Fem": "feminine", "Neut": "neuter"}
ORDINALS = {"1": "1st", "2": "2nd", "3": "3rd"}
# what the ending says where the passage shows nothing more (Bennett 1918, sections 163-232)
_SENSES = {
    "Nom": "the subject, or what is said of it", "Gen": '"of"', "Dat": '"to" or "for"',
    "Acc": "the object, or where to, or how long", "Voc": "speaking to someone", "Abl": '"by", "with", "from" or "in"',
    "Loc": "place where",
}  # fmt: skip
_GOVERNED = {"dat": "Dat", "gen": "Gen", "abl": "Abl", "acc": "Acc"}
_TIMES = frozenset(("day", "time", "year", "hour", "month", "week", "night", "winter", "summer", "morning", "evening"))
# prepositions with either case (143), and what a preposition says beside its case
_PLACES = {
    ("in", "Abl"): "place where", ("in", "Acc"): "movement into", ("sub", "Abl"): "place under which",
    ("sub", "Acc"): "movement under", ("super", "Acc"): "movement over", ("super", "Abl"): "place over which",
    ("ad", "Acc"): "movement towards",
}  # fmt: skip
# Bennett 1918, sections 96-116; the first that fits is meant: `ntur` stands before `nt`
PERSON_ENDINGS = {
    ("1", "Sing"): ("ō", "m", "ī", "or", "r"), ("2", "Sing"): ("istī", "ris", "re", "s"),
    ("3", "Sing"): ("tur", "t"), ("1", "Plur"): ("mus", "mur"), ("2", "Plur"): ("istis", "tis", "minī"),
    ("3", "Plur"): ("ērunt", "ntur", "nt", "ēre"),
}  # fmt: skip
_PRONOUNS = {
    ("1", "Sing"): "I", ("2", "Sing"): "you", ("3", "Sing"): "he, she or it", ("1", "Plur"): "we",
    ("2", "Plur"): "you", ("3", "Plur"): "they",
}  # fmt: skip
# conjunctions with the subjunctive (282-310)
_CLAUSES = {
    "ut": "purpose or result", "uti": "purpose or result", "ne": "so that not, lest", "cum": "when, since or although",
    "quo": "purpose", "quominus": "hindering", "utinam": "wish", "si": "condition", "nisi": "condition",
}  # fmt: skip


class Evidence(NamedTuple):
    """What the passage shows about one word; every field is text as printed and may be left empty."""

    form: str = ""  # the word itself with vowel lengths, to name its ending
    preposition: str = ""  # that governs it
    verb: str = ""  # that it is subject or object of, by its case
    governs: str = ""  # the case that this verb wants, as the lexicon has it: dat, abl/gen
    agrees_with: str = ""  # the noun it goes with
    antecedent: str = ""  # of a relative: the noun it goes back to
    belongs_to: str = ""  # the noun that a genitive hangs on
    subject: str = ""  # of the verb, if the word is one; of its clause, if it is a noun said of it
    conjunction: str = ""  # that opens its clause
    comparative: str = ""  # that an ablative or genitive is compared with
    infinitive: str = ""  # whose subject an accusative is
    absolute: str = ""  # the other half of an ablative absolute
    apposition: str = ""  # the noun before, that this one names again
    beside: str = ""  # the verb whose unnamed subject a nominative goes with
    english: str = ""  # of the rendering that shows the case, `of the city`


NO_EVIDENCE = Evidence()


def reason(*, upos: str, features: dict[str, str], lexeme: Lexeme, evidence: Evidence = NO_EVIDENCE) -> str:
    """Return in one line why a word has its case or person; empty for a word without endings.

    >>> from latingloss.morphology.lexicon import find
    >>> urbs, features = find("urbs")[0], {"Case": "Gen", "Number": "Sing"}
    >>> reason(upos="NOUN", features=features, lexeme=urbs, evidence=Evidence(belongs_to="porta",
    ...        english="of the city"))
    'genitive: belongs to "porta"; English "of the city"'
    >>> reason(upos="NOUN", features=features, lexeme=urbs)
    'genitive: "of"'
    """
    form = features.get("VerbForm")
    if form == "Fin":
        parts = [_person(features, evidence), _mood(features, evidence)]
        parts.append(_voice(features, lexeme))
    elif form in ("Inf", "Sup", "Ger"):
        parts = [
            _nonfinite(form, features, lexeme, evidence=evidence),
            _voice(features, lexeme) if form == "Inf" else "",
        ]
    elif upos == "ADP":
        parts = [_takes(lexeme)]
    elif "Case" not in features:
        parts = [_degree(features)]
    elif evidence.agrees_with:
        parts = [_agreement(features, evidence), _degree(features), _verbal(features)]
    else:
        parts = [
            f'goes back to "{evidence.antecedent}"' if evidence.antecedent else "",  # Bennett 1918, section 250
            _case(features, lexeme, evidence),
            _degree(features),
            _verbal(features),
        ]
    said = f'English "{evidence.english}"' if evidence.english and any(parts) else ""
    return "; ".join(filter(None, (*parts, said)))


def _case(features: dict[str, str], lexeme: Lexeme, evidence: Evidence) -> str:
    case = features["Case"]
    name = CASE_NAMES.get(case, case)
    if evidence.preposition:
        place = _PLACES.get((plain(evidence.preposition), case), "")
        return f'{name} after "{evidence.preposition}"' + (f": {place}" if place else "")
    shown = _shown(case, evidence)
    if not shown and case in ("Acc", "Abl") and _is_time(lexeme):
        shown = "how long" if case == "Acc" else "when"
    if not shown and evidence.english:
        return name  # the rendering says it; the English follows
    return f"{name}: {shown or _SENSES.get(case, 'see the table')}"


def _is_time(lexeme: Lexeme) -> bool:
    """Tell whether a noun says when or how long by itself (Bennett 1918, sections 181, 230)."""
    return lexeme.upos == "NOUN" and lexeme.gloss.split("; ")[0] in _TIMES


def _shown(case: str, evidence: Evidence) -> str:
    """What the passage shows about a noun without a preposition."""
    if evidence.apposition:
        return f'names "{evidence.apposition}" again, in the same case'
    if evidence.absolute:
        return f'ablative absolute with "{evidence.absolute}"'
    if evidence.infinitive:
        return f'subject of the infinitive "{evidence.infinitive}"'
    if evidence.beside:
        return f'goes with the subject of "{evidence.beside}"'
    if case in ("Abl", "Gen") and evidence.comparative:
        return f'compared: "than" with "{evidence.comparative}"'
    if case == "Gen" and evidence.belongs_to:
        return f'belongs to "{evidence.belongs_to}"'
    if case == "Nom" and evidence.subject:
        return f'says what "{evidence.subject}" is'
    if not evidence.verb or case == "Voc":
        return ""
    if case == "Nom":
        return f'subject of "{evidence.verb}"'
    if case in (_GOVERNED.get(g) for g in evidence.governs.split("/")) and case != "Acc":
        return f'"{evidence.verb}" takes the {CASE_NAMES[case]}'
    if case == "Acc":
        return f'object of "{evidence.verb}"'
    return {
        "Dat": f'"to" or "for" whom: with "{evidence.verb}"',
        "Abl": f'how, with what or when: with "{evidence.verb}"',
    }.get(case, "")


def _agreement(features: dict[str, str], evidence: Evidence) -> str:
    """An adjective has case, number and gender of its noun (Bennett 1918, section 234)."""
    genders = features.get("Gender", "").split(",")
    named = [
        CASE_NAMES.get(features["Case"], ""), NUMBERS.get(features.get("Number", ""), ""),
        _GENDERS.get(genders[0], "") if len(genders) == 1 else "",
    ]  # fmt: skip
    return f'agrees with "{evidence.agrees_with}": {" ".join(filter(None, named))}'


def _verbal(features: dict[str, str]) -> str:
    form = features.get("VerbForm")
    if form == "Gdv":
        return "gerundive: what is to be done"
    return "participle: a verb used as an adjective" if form == "Part" else ""


def _degree(features: dict[str, str]) -> str:
    return {"Cmp": 'comparative: "more"', "Sup": 'superlative: "most"'}.get(features.get("Degree", ""), "")


def _takes(lexeme: Lexeme) -> str:
    cases = [CASE_NAMES[_GOVERNED[c]] for c in lexeme.governs.split("/") if c in _GOVERNED]
    return f"takes the {' or the '.join(cases)}" if cases else ""


def _person(features: dict[str, str], evidence: Evidence) -> str:
    """Person and number, with the subject or the ending that shows them."""
    person, number = features.get("Person", ""), features.get("Number", "")
    if (person, number) not in _PRONOUNS:
        return ""
    name = f"{ORDINALS[person]} person {NUMBERS[number]}"
    if features.get("Mood") == "Imp":
        return f"{name} command"
    if evidence.subject:
        return f'{name}: its subject is "{evidence.subject}"'
    ending = next((e for e in PERSON_ENDINGS[person, number] if evidence.form.endswith(e)), "")
    said = f'"{_PRONOUNS[person, number]}"'
    return f"{name}: {said}, from the ending -{ending}" if ending else f"{name}: {said}"


def _mood(features: dict[str, str], evidence: Evidence) -> str:
    """The subjunctive, after its conjunction or on its own (Bennett 1918, sections 272-310)."""
    if features.get("Mood") != "Sub":
        return ""
    if evidence.conjunction:
        clause = _CLAUSES.get(plain(evidence.conjunction), "")
        return f'subjunctive after "{evidence.conjunction}"' + (f": {clause}" if clause else "")
    hortatory = features.get("Person") == "1" and features.get("Number") == "Plur" and features.get("Tense") == "Pres"
    return 'subjunctive: "let us"' if hortatory else "subjunctive: not a plain fact, but wish, command or possibility"


def _voice(features: dict[str, str], lexeme: Lexeme) -> str:
    if features.get("Voice") != "Pass":
        return ""
    return "passive ending with active sense (deponent)" if lexeme.deponent else "passive: it is done to the subject"


def _nonfinite(form: str, features: dict[str, str], lexeme: Lexeme, *, evidence: Evidence) -> str:
    """Infinitive, gerund and supine (Bennett 1918, sections 326-340)."""
    if form == "Inf":
        return "infinitive" + (f' with "{evidence.verb}"' if evidence.verb else ': "to"')
    if form == "Sup":
        purpose = features.get("Case") == "Acc"
        with_verb = f' with "{evidence.verb}"' if evidence.verb else ""
        return f"supine{with_verb}: {'purpose' if purpose else 'in what respect'}"
    return f"gerund, the verb as a noun; {_case(features, lexeme, evidence)}" if "Case" in features else "gerund"
