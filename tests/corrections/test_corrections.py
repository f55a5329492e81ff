"""Corrections: they prevail, help the words around, hold while other lines change, and say what they do not find."""

from importlib.resources import files

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import latingloss
from latingloss import corrections
from latingloss.corrections import Corrections, LineCorrections, WordCorrection
from latingloss.document import Document, Token
from latingloss.engines.builtin import BuiltInEngine
from latingloss.sheets import review

LATIN = "Da nobis, Dómine, noctem quietam,\net mane nos et omnes ad opus excita."
ENGLISH = "Give us, O Lord, a quiet night,\nand in the morning wake us and all for the work of the day."
OTHERS = st.lists(
    st.sampled_from(["Stellae lucent.", "Vesper venit, et nox.", "Da nobis pacem.", "noctem quietam", "XII."]),
    max_size=4,
)


def said(line: str = "Da nobis, Domine", **what: object) -> Corrections:
    return Corrections(passages=(LineCorrections(latin=line, words=(WordCorrection.model_validate(what),)),))


def annotated(given: Corrections | None, latin: str = LATIN, english: str | None = ENGLISH) -> Document:
    return latingloss.annotate(latin, english, corrections=given)


def token(document: Document, text: str, number: int = 1) -> Token:
    return [t for p in document.passages for t in p.tokens if t.text == text][number - 1]


def test_a_reading_left_alone_is_certain():
    word = token(annotated(said(word="quietam", features="Case=Acc", lemma="quietus", upos="ADJ")), "quietam").words[0]
    assert (word.lemma, word.features["Case"], word.confidence, word.alternatives) == ("quiētus", "Acc", 1, ())
    assert word.corrected and not token(annotated(None), "quietam").words[0].corrected


def test_the_words_around_profit():
    """An adjective agrees with its noun in case (Bennett 1918, section 234): only the noun is corrected."""
    latin = "Aqua frigida."
    assert token(annotated(None, latin, None), "frigida").words[0].features["Case"] == "Nom"
    found = annotated(said("Aqua", word="aqua", features="Case=Abl"), latin, None)
    assert token(found, "frigida").words[0].features["Case"] == "Abl"


def test_the_author_is_right_where_no_form_is():
    found = annotated(said(word="noctem", features="Case=Dat|Number=Plur"))
    word = token(found, "noctem").words[0]
    assert (word.lemma, word.features["Case"], word.features["Number"], word.confidence) == ("nox", "Dat", "Plur", 1)
    word = token(annotated(said("Flabrigo", word="Flabrigo", lemma="Flabrīgō"), "Flabrigo canit.", None), "Flabrigo")
    assert word.words[0].lemma == "Flabrīgō" and word.words[0].guessed


def test_what_is_not_known_may_be_anything():
    for lemma, features in (("Flabrīgō", None), (None, "Case=Loc"), ("nox", None)):
        correction = said("Flabrigo", word="flabrigo 1", lemma=lemma, features=features, note="x")
        assert bool(annotated(correction, "Flabrigo canit.", None).unmatched_corrections) == (lemma == "nox")


def test_links_are_the_author_s_and_weigh_on_no_other_word():
    found = annotated(said(word="quietam", english=["night"]))
    passage = found.passages[0]
    words = {t.text: [passage.rendering[j].text for j in passage.english_of(i)] for i, t in enumerate(passage.tokens)}
    assert words["quietam"] == ["night"] and "night" not in words["noctem"]
    bare = annotated(said(word="noctem", english=[])).passages[0]
    assert bare.english_of(5) == () and annotated(None).passages[0].english_of(5) != ()


def test_words_of_the_rendering_stand_together_or_are_numbered():
    line = "et mane nos"
    found = [annotated(said(line, word="opus", english=e)).passages[1] for e in (["the", "work"], ["the 3", "work"])]
    assert [[ENGLISH[p.rendering[j].start :][:8] for j in p.english_of(6)] for p in found] == [
        ["the work", "work of "],
        ["work of ", "the day."],
    ]


def test_what_is_printed_of_a_word():
    what = {"gloss": "the night", "note": "said at Compline", "emphasis": True, "difficulty": 0.93}
    found = token(annotated(said(word="NOCTEM", **what)), "noctem")
    assert found.difficulty is not None
    assert (found.words[0].gloss, found.words[0].note, found.emphasis, found.difficulty.score) == tuple(what.values())
    assert not token(annotated(said(word="quietam", emphasis=False)), "quietam").emphasis


def test_the_second_of_two_and_the_parts_of_one():
    found = annotated(said("et mane", word="et 2", gloss="also"))
    assert [token(found, "et", n).words[0].corrected for n in (1, 2)] == [False, True]
    words = token(annotated(said("Stella", word="que", gloss="too"), "Stella lunaque lucent.", None), "lunaque").words
    assert [word.gloss == "too" for word in words] == [False, True]
    words = token(
        annotated(said("Stella", word="lunaque", gloss="the moon"), "Stella lunaque lucent.", None), "lunaque"
    )
    assert [word.gloss == "the moon" for word in words.words] == [True, False]


def test_everywhere_and_its_line_which_prevails():
    given = Corrections(
        everywhere=(WordCorrection(word="nox", gloss="dark", note="everywhere"),),
        passages=(LineCorrections(latin="Nox venit", words=(WordCorrection(word="nox", gloss="night"),)),),
    )
    found = annotated(given, "Nox venit.\nHaec nox manet.\nNox venit.", None)
    words = [t.words[0] for p in found.passages for t in p.tokens if t.text.lower() == "nox"]
    assert [(w.gloss, w.note) for w in words] == [
        ("night", "everywhere"),
        ("dark", "everywhere"),
        ("night", "everywhere"),
    ]


@pytest.mark.parametrize(
    ("given", "told"),
    [
        (said("Pater", word="noster", note="x"), "passage 'Pater': no line begins so"),
        (said(word="diem", note="x"), "passage 'Da nobis, Domine', word 'diem': not in the line"),
        (said("et", word="et 3", note="x"), "passage 'et', word 'et 3': it is in the line only 2 times"),
        (said(word="noctem", english=["darkness"]), "'darkness' is not in the rendering"),
        (
            said(word="noctem", features="Case=Gen"),
            "'noctem' cannot be Case=Gen, as far as latingloss knows; it is read as you say",
        ),
        (
            said(word="noctem", lemma="amo"),
            "'noctem' is no form of amo, as far as latingloss knows; it is read as you say",
        ),
        (Corrections(everywhere=(WordCorrection(word="lux", note="x"),)), "everywhere, word 'lux': not in the text"),
    ],
)
def test_what_is_not_found_is_named(given, told):
    (found,) = annotated(given).unmatched_corrections
    assert found.endswith(told)


def test_a_beginning_that_two_lines_share_is_named():
    found = annotated(said("Da nobis", word="nobis", note="x"), "Da nobis pacem.\nDa nobis noctem.", None)
    assert found.unmatched_corrections == ("passage 'Da nobis': lines 1, 2 begin so; give more of its words",)
    assert not any(t.words[0].corrected for p in found.passages for t in p.tokens if t.words)


@settings(max_examples=25)
@given(OTHERS, OTHERS)
def test_corrections_hold_while_other_lines_change(before, after):
    line = "Da nobis, Domine, noctem quietam."
    given = said("Da nobis Domine", word="quietam", features="Case=Acc", gloss="x", note="y")
    alone, among = (
        annotated(given, "\n".join(lines), None) for lines in ([line], [*before, "Sol lucet.", line, "Pax.", *after])
    )
    assert among.unmatched_corrections == ()
    assert token(among, "Domine").words and [t for p in among.passages for t in p.tokens if t.words and t.words[0].note]
    (corrected,) = [t.words for p in among.passages for t in p.tokens if t.words and t.words[0].corrected]
    assert corrected == token(alone, "quietam").words
    assert annotated(given, among.source, None) == among


FEATURES = st.dictionaries(
    st.sampled_from(["Case", "Number", "Gender", "Person", "Mood", "Tense", "VerbForm", "Voice", "Degree"]),
    st.sampled_from(
        str.split("Nom Gen Abl Loc Sing Plur Masc Fem,Neut 1 3 Ind Sub Imp Pres Past Fut Fin Inf Part Ger Act Pass Cmp")
    ),
    min_size=1,
)  # fmt: skip


@given(
    st.sampled_from(str.split("Da nobis Domine noctem quietam")), FEATURES,
    st.sampled_from([None, "VERB", "NOUN", "X", "ADP", "PRON"]), st.sampled_from([None, "sum", "levo#2", "zzz", "in"]),
)  # fmt: skip
def test_whatever_may_be_said_is_honoured(word, features, upos, lemma):
    try:
        given = said(word=word, features=features, upos=upos, lemma=lemma)
    except ValueError:  # a value that this feature has not
        return
    found = next(t for t in annotated(given).passages[0].tokens if t.words and t.words[0].corrected).words[0]
    assert all(set(value.split(",")) & set(found.features[name].split(",")) for name, value in features.items())
    assert upos in (None, found.upos)


class LatinOnly:
    """An engine of a third party: one method."""

    name = "other"

    def read(self, sentences):
        return BuiltInEngine().read(sentences)


def test_an_engine_that_knows_nothing_of_corrections_is_corrected_too():
    given = said(word="quietam", features="Case=Abl")
    found = latingloss.Annotator(LatinOnly()).annotate(LATIN, ENGLISH, corrections=given)
    assert token(found, "quietam").words[0].features["Case"] == "Abl"


def test_only_corrections_are_taken():
    with pytest.raises(latingloss.LatinglossError, match=r"corrections\.read"):
        latingloss.annotate(LATIN, corrections="passages: []")  # type: ignore[arg-type]


def test_pasting_what_the_review_offers_chooses_it():
    demo = files("latingloss") / "data" / "demo"
    latin, english = ((demo / f"evening.{part}.txt").read_text(encoding="utf-8") for part in ("la", "en"))
    items = [item for item in review(annotated(None, latin, english), least_risk=0.03) if item.token is not None]
    assert len([item for item in items if item.alternatives]) >= 5
    for item in items:
        given = corrections.read("passages:\n" + item.correction)
        wanted = given.passages[0].words[0]
        found = annotated(given, latin, english)
        assert item.token is not None and found.unmatched_corrections == ()
        word = next(w for w in found.passages[item.passage - 1].tokens[item.token].words if w.corrected)
        assert (word.lemma, word.upos) == (wanted.lemma, wanted.upos)
        assert {n: v for n, v in word.features.items() if n != "Gender"} == {
            n: v for n, v in (wanted.features or {}).items() if n != "Gender"
        }
        assert (item.passage, item.token) not in [(i.passage, i.token) for i in review(found)]
    together = corrections.read("passages:\n" + "".join(item.correction for item in items))
    assert annotated(together, latin, english).unmatched_corrections == ()
