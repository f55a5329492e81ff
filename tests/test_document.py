"""The models: frozen, bounded, documented, and the same after JSON."""

import json

import pytest
from pydantic import BaseModel, ValidationError

import latingloss
from latingloss import document as models
from latingloss.document import (
    SCHEMA_VERSION,
    Difficulty,
    DifficultyPart,
    Document,
    Form,
    Link,
    Paradigm,
    Passage,
    Reading,
    Token,
    Word,
)

MODELS = [m for m in vars(models).values() if isinstance(m, type) and issubclass(m, models.Record)]
# Universal Dependencies v2: the 17 universal parts of speech
UPOS = set(str.split("ADJ ADP ADV AUX CCONJ DET INTJ NOUN NUM PART PRON PROPN PUNCT SCONJ SYM VERB X"))
# Universal Dependencies v2, universal features and their values, as far as Latin has them; Pqp, Prosp, Con and the
# layered [psor] features are in the guidelines too
FEATURES = {
    "Case": "Nom Gen Dat Acc Voc Abl Loc",
    "Number": "Sing Plur",
    "Gender": "Masc Fem Neut",
    "Person": "1 2 3",
    "Tense": "Pres Past Fut Pqp",
    "Aspect": "Imp Perf Prosp",
    "Mood": "Ind Sub Imp",
    "Voice": "Act Pass",
    "VerbForm": "Fin Inf Part Ger Gdv Sup",
    "Degree": "Pos Cmp Sup Abs Dim",
    "PronType": "Prs Dem Ind Int Rel Tot Neg Rcp Con Emp Exc Art",
    "NumType": "Card Ord Dist Mult Frac Sets",
    "Poss": "Yes",
    "Reflex": "Yes",
    "Polarity": "Pos Neg",
    "Foreign": "Yes",
    "Abbr": "Yes",
    "Number[psor]": "Sing Plur",
    "Person[psor]": "1 2 3",
}


@pytest.fixture(scope="module")
def doc() -> Document:
    return latingloss.annotate("𝔊 Stella populúsque lucet.\nNox venit.", "A star and the people shine.\nNight comes.")


def test_json_gives_the_same_document(doc):
    again = Document.model_validate_json(doc.model_dump_json())
    assert again == doc
    assert json.loads(doc.model_dump_json())["schema_version"] == SCHEMA_VERSION


@pytest.mark.parametrize("model", MODELS)
def test_models_are_frozen_and_take_no_other_field(model: type[BaseModel]):
    assert model.model_config["frozen"] and model.model_config["extra"] == "forbid"


def test_a_field_cannot_be_set(doc):
    with pytest.raises(ValidationError, match="frozen"):
        doc.source = "x"
    with pytest.raises(ValidationError, match="extra"):
        Link(latin=0, english=0, chance=1)


@pytest.mark.parametrize("model", MODELS)
def test_every_field_is_documented(model: type[BaseModel]):
    assert [name for name, field in model.model_fields.items() if not field.description] == []
    assert model.__doc__


@pytest.mark.parametrize("value", [-0.01, 1.01, float("nan"), float("inf")])
def test_probabilities_are_from_0_to_1(value):
    with pytest.raises(ValidationError):
        Link(latin=0, english=0, confidence=value)
    with pytest.raises(ValidationError):
        Difficulty(score=value, parts=())
    with pytest.raises(ValidationError):
        Reading(lemma="rosa", upos="NOUN", form="rosa", probability=value)


def test_offsets_count_code_points(doc):
    stella = doc.passages[0].tokens[1]
    assert (stella.text, stella.start, stella.end) == ("Stella", 2, 8)
    with pytest.raises(ValidationError):
        Token(text="a", start=-1, end=0, kind="word")


def test_reasons_begin_with_the_one_that_makes_it_hardest():
    parts = [("length", 0.2, "long"), ("frequency", -0.3, "common"), ("cognate", 0.4, "no kin"), ("shape", 0.9, "")]
    built = tuple(DifficultyPart(name=n, value=0, effect=e, reason=r) for n, e, r in parts)
    assert Difficulty(score=0.5, parts=built).reasons == ("no kin", "long", "common")


def test_english_of_and_literal():
    def word(form: str, gloss: str) -> Word:
        return Word(form=form, marked_form=form, lemma=form, upos="NOUN", gloss=gloss, confidence=1)

    tokens = (
        Token(text="populusque", start=0, end=10, kind="word", words=(word("populus", "people"), word("que", "and"))),
        Token(text=",", start=10, end=11, kind="punctuation"),
        Token(text="lux", start=12, end=15, kind="word", words=(word("lux", "light"),)),
    )
    links = (Link(latin=0, english=3), Link(latin=0, english=1), Link(latin=2, english=2))
    passage = Passage(start=0, end=15, tokens=tokens, links=links)
    assert passage.english_of(0) == (1, 3) and passage.english_of(1) == ()
    assert passage.literal() == "and people | light"


def test_cells_of_a_paradigm():
    forms = [("rosa", "Nom"), ("rosae", "Gen"), ("rosae", "Dat")]
    cells = tuple(Form(form=f, features={"Case": c, "Number": "Sing"}) for f, c in forms)
    rosa = Paradigm(lemma="rosa", upos="NOUN", gloss="rose", forms=cells)
    assert rosa.all_forms() == ("rosa", "rosae")
    assert rosa.cells(Case="Dat", Number="Sing") == ("rosae",) and rosa.cells(Case="Abl") == ()


FORMS = str.split(
    "rosae bonus melior optime amat amatus amandi amatum esse ego meus hic omnis duo secundus bini semel populus Roma"
    " Davíd non et ut in o amen multum laudantibus cepisse hortatur noli tres quis quisquam alter ipse xyzzyq Qwrtz"
)


@pytest.mark.parametrize("form", FORMS)
def test_tags_and_features_are_those_of_universal_dependencies(form):
    for reading in latingloss.analyze(form):
        assert reading.upos in UPOS
        for name, value in reading.features.items():
            assert set(value.split(",")) <= set(FEATURES[name].split()), (name, value)
