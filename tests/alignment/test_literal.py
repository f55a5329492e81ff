"""Literal glosses against the English that grammars print beside the paradigms.

Bennett, New Latin Grammar (1918), gives the English of the tenses of sum (section 100), amō (101, 102) and the
deponents (113); Allen and Greenough, New Latin Grammar (1903), that of participles (488-500), gerund and gerundive
(500-507) and supine (508-510). Senses and section numbers are from memory, not compared with the print. Wording that
is ours, no grammar's: `you` for thou, `will` and `would` for shall and should, `(he)` for he, she or it, the
exclamation mark of commands, `may I love` as the one sense of the lone subjunctive, and all of what a rendering, a
clause or `substantive` changes.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from latingloss.alignment.literal import UNKNOWN, Place, literal_gloss
from latingloss.morphology.inflection import forms_of
from latingloss.morphology.lexicon import Lexeme, find, lexemes
from latingloss.text.orthography import plain


def gloss(lemma: str, form: str, *, rendering: str = "", head: str = "", **more: object) -> str:
    """The literal gloss of a form of a lemma; names in capitals pick the reading, others are passed on."""
    wanted = {name: value for name, value in more.items() if name[:1].isupper()}
    passed = {name: value for name, value in more.items() if name not in wanted}
    for lexeme, features in readings(lemma, form, adjective=bool(more.get("substantive"))):
        if all(features.get(k) == v for k, v in wanted.items()):
            upos = "VERB" if "VerbForm" in features and lexeme.upos != "AUX" else lexeme.upos
            old = bool(passed.pop("old_english", False))
            place = Place(head=find(head)[0] if head else None, **passed)  # type: ignore[arg-type]
            return literal_gloss(
                lexeme, upos=upos, features=features, rendering=rendering.split(), old_english=old, place=place
            )
    raise AssertionError(f"{lemma} has no {form} with {wanted}")


def readings(lemma: str, form: str, *, adjective: bool) -> list[tuple[Lexeme, dict[str, str]]]:
    """Every reading of a form in the homographs of a lemma, conjunctions and (if `adjective`) nouns left out."""
    found = [
        x for x in find(lemma) if not (adjective and x.upos == "NOUN") and (x.upos != "SCONJ" or len(find(lemma)) == 1)
    ]
    return [(x, f) for x in found for cell, f in forms_of(x) if plain(cell) == plain(form)]


# Bennett 1918, section 101, active
@pytest.mark.parametrize(
    ("form", "english"),
    [
        ("amō", "I love"),
        ("amās", "you love"),
        ("amāmus", "we love"),
        ("amātis", "you love"),
        ("amant", "(they) love"),
        ("amābam", "I was loving"),
        ("amābāmus", "we were loving"),
        ("amābō", "I will love"),
        ("amāvī", "I loved"),
        ("amāvimus", "we loved"),
        ("amāveram", "I had loved"),
        ("amāverō", "I will have loved"),
        ("amem", "may I love"),
        ("amēmus", "let us love"),
        ("amet", "may (he) love"),
        ("amārem", "I would love"),
        ("amāvissem", "I would have loved"),
        ("amā", "love!"),
        ("amāte", "love!"),
        ("amātōte", "you shall love"),
        ("amantō", "(they) shall love"),
        ("amāre", "to love"),
        ("amāvisse", "to have loved"),
    ],
)
def test_active_of_amo(form: str, english: str) -> None:
    voice = (
        {"Voice": "Act"} if form in ("amāre", "amātis") else {"VerbForm": "Fin"} if form in ("amāte", "amantō") else {}
    )
    assert gloss("amō", form, **voice) == english


# Bennett 1918, section 102, passive
@pytest.mark.parametrize(
    ("form", "english"),
    [
        ("amor", "I am loved"),
        ("amātur", "(he) is loved"),
        ("amāmur", "we are loved"),
        ("amābar", "I was being loved"),
        ("amābātur", "(he) was being loved"),
        ("amābor", "I will be loved"),
        ("amer", "may I be loved"),
        ("amēmur", "let us be loved"),
        ("amārer", "I would be loved"),
        ("amārī", "to be loved"),
    ],
)
def test_passive_of_amo(form: str, english: str) -> None:
    assert gloss("amō", form) == english


# Bennett 1918, section 102: amātus sum, I have been loved or was loved; amātus eram, I had been loved; and so on
@pytest.mark.parametrize(
    ("form", "english"),
    [
        ("sum", "I was"),
        ("eram", "I had been"),
        ("erō", "I will have been"),
        ("sim", "may I have been"),
        ("essem", "I would have been"),
        ("esse", "to have been"),
    ],
)
def test_compound_passive(form: str, english: str) -> None:
    assert gloss("sum", form, head="amō") == english
    assert gloss("amō", "amātus", head="sum") == "loved"


# Bennett 1918, section 113: hortātus sum, I (have) urged; hortātus, having urged; hortandus, to be urged
def test_deponents() -> None:
    assert gloss("loquor", "loquitur") == "(he) speaks"
    assert gloss("loquor", "loquimur") == "we speak"
    assert gloss("loquor", "locūtus") == "having spoken"
    assert [gloss("sum", f, head="loquor") for f in ("est", "erat", "erit", "esse")] == [
        "(he) has",
        "(he) had",
        "(he) will have",
        "to have",
    ]
    assert gloss("loquor", "locūtus", head="sum") == "spoken"
    assert gloss("loquor", "loquendus") == "to be spoken"
    assert gloss("mentior", "mentītur") == "(he) tells lies"


# Bennett 1918, section 100
@pytest.mark.parametrize(
    ("form", "english"),
    [
        ("sum", "I am"),
        ("est", "(he) is"),
        ("sumus", "we are"),
        ("erat", "(he) was"),
        ("erimus", "we will be"),
        ("fuit", "(he) was"),
        ("fuerat", "(he) had been"),
        ("sit", "may (he) be"),
        ("sīmus", "let us be"),
        ("esse", "to be"),
        ("fuisse", "to have been"),
        ("futūrus", "about to be"),
    ],
)
def test_sum(form: str, english: str) -> None:
    assert gloss("sum", form) == english


# Allen and Greenough 1903: participles 488-500, gerund 501-507, supine 508-510
@pytest.mark.parametrize(
    ("lemma", "form", "wanted", "english"),
    [
        ("amō", "amāns", {}, "loving"),
        ("amō", "amātus", {}, "loved"),
        ("veniō", "ventūrus", {}, "about to come"),
        ("dīmittō", "dīmittendum", {"VerbForm": "Gdv"}, "to be sent away"),
        ("amō", "amandī", {"VerbForm": "Ger"}, "of loving"),
        ("amō", "amandō", {"VerbForm": "Ger", "Case": "Abl"}, "by loving"),
        ("amō", "amandum", {"VerbForm": "Ger", "preposition": True}, "loving"),
        ("amō", "amātum", {"VerbForm": "Sup"}, "to love"),
        ("capiō", "captīs", {"Case": "Abl"}, "having been taken"),
        ("gaudeō", "gāvīsus", {}, "having rejoiced"),
        ("nāscor", "nātus", {}, "having been born"),
        ("possum", "potest", {}, "(he) is able"),
        ("possum", "poterat", {}, "(he) was able"),
        ("meminī", "meminit", {}, "(he) remembers"),
        ("coepī", "coepit", {}, "(he) began"),
        ("coepī", "coeperat", {}, "(he) had begun"),
        ("fīō", "fierī", {}, "to become"),
        ("oportet", "oportuit", {}, "it was necessary"),
        ("nōlō", "nōlīte", {}, "do not"),
        ("licet", "licēre", {}, "to be allowed"),
    ],
)
def test_other_verb_forms(lemma: str, form: str, wanted: dict[str, object], english: str) -> None:
    if lemma == "dīmittō":
        assert gloss(lemma, form, rendering="to be sent away", **wanted) == english
    assert gloss(lemma, form, **wanted) == english


def test_a_negative_sense_takes_do() -> None:
    assert gloss("nesciō", "nescit") == "(he) does not know"
    assert gloss("nesciō", "nesciēbat") == "(he) did not know"
    assert gloss("nesciō", "nesciet") == "(he) will not know"
    assert gloss("nesciō", "nescīre", VerbForm="Inf") == "not to know"


def test_clause_decides_pronoun_and_auxiliary() -> None:
    assert gloss("amō", "amat", subject=True) == "loves"
    assert gloss("amō", "amābātur", subject=True) == "was being loved"
    assert gloss("amō", "amet", subject=True) == "may love"
    assert gloss("amō", "amēmus", conjunction=True) == "we may love"
    assert gloss("amō", "amāret", conjunction=True, subject=True) == "might love"
    assert gloss("amō", "amat", rendering="she loves") == "she loves"
    assert gloss("sum", "sint", rendering="let them be") == "let them be"
    assert gloss("amō", "amāvit", rendering="he has loved") == "he has loved"
    assert gloss("amō", "amāvisset", rendering="he had loved", conjunction=True) == "he had loved"


def test_the_author_s_word_is_preferred_and_inflected_literally() -> None:
    assert gloss("clāmō", "clāmāmus", rendering="we weep") == "we weep"
    assert gloss("clāmō", "clāmāmus", rendering="we cry") == "we cry"
    assert gloss("adōrō", "adōrēmus", rendering="let us adore") == "let us adore"
    assert gloss("urbs", "urbēs", rendering="the towns") == "towns"
    assert gloss("urbs", "urbis", rendering="of a town") == "of a town"
    assert gloss("homō", "hominibus", rendering="to men", Case="Dat") == "to men"
    assert gloss("faciō", "fēcit", rendering="he did") == "he did"
    assert gloss("possum", "potest", rendering="he can") == "he can"
    assert gloss("clāmō", "clāmāmus", rendering="holiness") == "we shout"  # no verb: the lexicon's gloss stands


@pytest.mark.parametrize(
    ("lemma", "form", "more", "english"),
    [
        ("fīlius", "fīliī", {"Case": "Gen"}, "of the son"),
        ("fīlius", "fīliī", {"Case": "Nom"}, "sons"),
        ("dominus", "domine", {}, "O Lord"),
        ("urbs", "urbe", {"preposition": True}, "city"),
        ("rēx", "rēge", {"Case": "Abl"}, "by the king"),
        ("gladius", "gladiō", {"Case": "Abl"}, "with the sword"),
        ("diēs", "diē", {"Case": "Abl"}, "on the day"),
        ("pāx", "pācis", {}, "of peace"),
        ("Marīa", "Marīae", {"Case": "Gen"}, "of Mary"),
        ("Rōma", "Rōmae", {"Case": "Loc"}, "at Rome"),
        ("Rōma", "Rōmā", {"Case": "Abl"}, "from Rome"),
        ("domus", "domī", {"Case": "Loc"}, "at home"),
        ("sānctus", "sānctōrum", {"substantive": True}, "of the holy"),
        ("sānctus", "sānctī", {"substantive": True, "Case": "Nom"}, "holy ones"),
        ("bonus", "bona", {"substantive": True, "Case": "Acc", "Number": "Plur"}, "good things"),
        ("timeō", "timentibus", {"substantive": True, "Case": "Dat"}, "to those fearing"),
        ("altus", "altior", {}, "higher"),
        ("potēns", "potentior", {}, "more powerful"),
        ("altus", "altissimus", {}, "highest"),
        ("ego", "mihi", {}, "to me"),
        ("nōs", "nostrī", {}, "of us"),
        ("quī", "cujus", {}, "whose"),
        ("quī", "quem", {}, "whom"),
        ("quī", "cui", {}, "to whom"),
        ("hic", "hōrum", {}, "of these"),
        ("is", "ejus", {}, "of him"),
        ("is", "eōs", {}, "them"),
        ("omnis", "omnia", {"substantive": True, "Case": "Acc"}, "all things"),
    ],
)
def test_nominals(lemma: str, form: str, more: dict[str, object], english: str) -> None:
    """The cases of Bennett 1918: 171 vocative, 194 genitive, 216-231 ablative, 232 locative; the words are ours."""
    assert gloss(lemma, form, **more) == english


def test_old_english() -> None:
    """The forms of the Authorised Version (1611), from memory."""
    assert gloss("amō", "amās", old_english=True) == "thou lovest"
    assert gloss("amō", "amat", old_english=True, subject=True) == "loveth"
    assert gloss("amō", "amātis", old_english=True, VerbForm="Fin") == "ye love"
    assert gloss("amō", "amābis", old_english=True, rendering="thou shalt love") == "thou shalt love"
    assert gloss("tū", "tibi", old_english=True) == "to thee"
    assert gloss("tuus", "tuī", old_english=True, Case="Gen") == "thy"


def test_little_words() -> None:
    assert gloss("que", "que") == "and"
    assert gloss("in", "in", rendering="into") == "into"
    assert gloss("ut", "ut", rendering="so that") == "so that"
    assert gloss("potius", "potius", Degree="Cmp") == "rather"


def test_what_nobody_glossed_is_said_to_be_unknown_unless_rendered() -> None:
    guess, features = Lexeme("glorpus", "NOUN", ""), {"Case": "Gen", "Number": "Sing"}
    assert literal_gloss(guess, upos="NOUN", features=features) == UNKNOWN
    assert literal_gloss(guess, upos="NOUN", features=features, rendering=["of", "the", "kettle"]) == "of the kettle"


def test_every_form_of_the_lexicon_has_a_clean_gloss() -> None:
    """One form in forty of all: never empty, no doubled blank, no doubled small word, no `None`."""
    wrong = []
    for lexeme in lexemes()[::40]:
        for form, features in forms_of(lexeme):
            upos = "VERB" if "VerbForm" in features and lexeme.upos != "AUX" else lexeme.upos
            for substantive in (None, True):
                text = literal_gloss(lexeme, upos=upos, features=features, place=Place(substantive=substantive))
                words = text.split(" ")
                doubled = any(a == b and a in ("to", "of", "be", "the", "by") for a, b in pairwise(words))
                if not text or "" in words or doubled or "None" in words or text == UNKNOWN:
                    wrong.append((form, text))
    assert not wrong, wrong[:20]


def test_capitals_of_god() -> None:
    """The church sense has the capital where God is addressed or the Latin is written with one (common practice)."""
    assert gloss("dominus", "domine") == "O Lord"
    assert gloss("dominus", "dominum") == "master"
    assert gloss("dominus", "dominum", capital=True) == "Lord"
    assert gloss("dominus", "domine", rendering="O lord") == "O lord"
    assert gloss("fīlius", "fīliī", Case="Gen") == "of the son"
    assert gloss("rēx", "rēx", rendering="O King", Case="Voc") == "O King"
    assert gloss("dominus", "domine", called=True) == "Lord"


def test_passive_of_a_phrase_with_its_own_object() -> None:
    """`They preach the gospel` has no passive of persons in English but `they have the gospel preached`."""
    assert gloss("ēvangelizō", "ēvangelizantur", Mood="Ind") == "(they) have the gospel preached"
    assert gloss("vāstō", "vāstātur") == "(he) is laid waste"
    assert gloss("dīmittō", "dīmittitur", Tense="Pres").startswith("(he) is sent")


def test_subjunctive_of_fact() -> None:
    """Cum with the subjunctive, indirect questions: Bennett 1918, 288 and 300."""
    assert gloss("amō", "amāret", fact=True, subject=True) == "was loving"
    assert gloss("amō", "amāvisset", fact=True) == "(he) had loved"
    assert gloss("amō", "amet", fact=True, rendering="he may love") == "he may love"


def test_what_the_passage_shows() -> None:
    assert gloss("sum", "est", head="faciō", gender="Neut") == "(it) was"
    assert gloss("mōns", "monte", compared=True) == "than the mountain"  # Bennett 1918, 217
    assert gloss("amō", "amāre", Voice="Act", VerbForm="Inf", bare=True) == "love"
    assert gloss("suus", "suōs", substantive=False, owners=True) == "their own"
    assert gloss("sē", "sē", Case="Acc", owners=True) == "themselves"


def test_peoples_as_nouns() -> None:
    assert gloss("Rōmānus", "Rōmānī", substantive=True, Case="Nom") == "Romans"
    assert gloss("Jūdaeus", "Jūdaeōrum", substantive=True, rendering="of the Jews") == "of the Jews"


def test_several_of_a_certain_kind_are_some() -> None:
    assert gloss("quīdam", "quīdam", Number="Plur") == "some"
    assert gloss("quīdam", "quīdam", Number="Sing", substantive=False) == "a certain"
    assert gloss("alter", "alter", substantive=True, Case="Nom", rendering="one of two").count("one") == 1


def test_guessed_names_are_given_by_themselves() -> None:
    name = Lexeme("Melchīna", "PROPN", "")
    features = {"Case": "Gen", "Number": "Sing"}
    assert literal_gloss(name, upos="PROPN", features=features) == "of Melchina"
    assert literal_gloss(name, upos="PROPN", features=features, rendering=["of", "Milcah"]) == "of Milcah"


def test_small_words_take_no_scraps_of_the_rendering() -> None:
    """The rendering counts where it has the whole of a gloss; else the lexicon's first gloss stands (our rule)."""
    assert gloss("inde", "inde", rendering="from") == "from there"
    assert gloss("inde", "inde", rendering="then") == "then"
    assert gloss("proptereā", "proptereā", rendering="because this") == "therefore"
    assert gloss("proptereā", "proptereā", rendering="because of this") == "because of this"
    assert [gloss("et", "et", rendering=r) for r in ("nor", "though", "even", "also")] == ["and", "and", "even", "also"]
    assert gloss("quod", "quod", rendering="how", means="that") == "that"


def test_the_rendering_must_be_the_right_kind_of_word() -> None:
    assert gloss("agō", "agimus", rendering="we thanks") == "we do"
    assert (
        gloss("grātia", "grātiās", rendering="give", Number="Plur", Case="Acc") == "thanks"
    )  # Bennett 1918, 61: several are thanks
    assert gloss("altus", "altō", rendering="above", substantive=True, Case="Dat") == "to the high one"
    assert gloss("urbs", "urbem", rendering="peaceful village") == "city"  # which of the two is not known
    assert gloss("Decapolis", "Decapolis", rendering="of the Ten", Case="Nom") == "Decapolis"
    assert gloss("nōlō", "nōluērunt", rendering="they not willing") == "they were unwilling"
    assert gloss("possum", "poteris", rendering="you cannot") == "you will be able"


def test_plurals_are_english() -> None:
    assert gloss("multus", "multī", rendering="many", substantive=True, Case="Nom") == "many"
    assert gloss("multus", "multīs", substantive=True, Case="Dat") == "to many"
    assert gloss("multus", "multa", substantive=True, Case="Acc", Number="Plur") == "many things"
    assert gloss("alius", "alia", substantive=True, Case="Acc", Number="Plur") == "other things"
    assert gloss("altus", "altiōrēs", rendering="elders", substantive=True, Case="Acc") == "higher ones"


def test_prohibitions() -> None:
    """Nē with the second person forbids (Bennett 1918, 276); behind it may stand a fear or purpose (282, 296)."""
    assert gloss("dēserō", "dēserās", rendering="do forsake", conjunction=True) == "forsake!"
    assert gloss("dēserō", "dēserās", rendering="Forsake", conjunction=True) == "forsake!"
    assert gloss("faciō", "fēceris", rendering="do", conjunction=True, Mood="Sub") == "do!"
    assert gloss("dēserō", "dēserās", rendering="forsake", conjunction=True) == "you may forsake"  # ut as well as nē
    assert gloss("dēserō", "dēserās", rendering="you forsake", conjunction=True) == "you forsake"
    assert gloss("dēserō", "dēserās", rendering="to forsake", conjunction=True) == "you may forsake"
    said = ("not", "do not", "that not", "lest", "that", "")
    assert [gloss("nē", "nē", rendering=r) for r in said] == ["not", "do not", "that not", "lest", "lest", "that not"]


def test_wishes_keep_be_and_may() -> None:
    assert gloss("adsum", "adsīs", rendering="Near") == "may you be near"
    assert gloss("adsum", "adest", rendering="is near") == "(he) is near"
    assert gloss("petō", "petāmus", rendering="ask for", conjunction=True) == "we may ask for"
    assert gloss("petō", "petāmus", rendering="to ask for", conjunction=True) == "we may ask for"
