"""The text of corrections: read as it is written, and what is wrong with it told by line and column."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss import corrections
from latingloss.corrections import Corrections, LineCorrections, WordCorrection
from latingloss.errors import FormatError

TEXT = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)
LATIN = st.one_of(
    st.sampled_from(["noctem", "no", "null", "et 2", "yes: #", "ó", "~a", "\ta\u2028b"]), TEXT.map("a".__add__)
)
WORDS = st.builds(
    WordCorrection,
    word=LATIN,
    lemma=st.none() | LATIN,
    upos=st.sampled_from([None, "NOUN", "ADV"]),
    features=st.sampled_from([None, {}, {"Case": "Acc", "Number[psor]": "Sing"}, {"Gender": "Fem,Masc"}]),
    gloss=st.none() | TEXT,
    english=st.none() | st.lists(TEXT.map("b".__add__), max_size=3).map(tuple),
    emphasis=st.none() | st.booleans(),
    difficulty=st.none() | st.floats(0, 1),
    note=TEXT,
)
LISTS = st.lists(WORDS, max_size=3, unique_by=lambda w: corrections.models.named(w.word)).map(tuple)
LINES = st.builds(LineCorrections, latin=LATIN, words=LISTS.filter(len))


@given(st.builds(Corrections, everywhere=LISTS, passages=st.lists(LINES, max_size=3).map(tuple)))
def test_what_is_written_reads_back_equal(made):
    assert corrections.read(corrections.write(made)) == made


@given(st.builds(Corrections, everywhere=LISTS, passages=st.lists(LINES, max_size=2).map(tuple)))
def test_json_is_read_too(made):
    """YAML 1.2 (2009), section 1.3: every JSON file is a YAML file; but YAML has no bare control characters."""
    text = made.model_dump_json(indent=1)
    if all(c.isprintable() or c == "\n" for c in text):
        assert corrections.read(text) == made


HEAD = "everywhere:\n  - word: noctem\n"


@pytest.mark.parametrize(
    ("text", "place", "told"),
    [
        ("passages: [", (1, 12), "not YAML"),
        ("a: 1\n\tb: 2", (2, 1), "not YAML"),
        ("a\x00b", (1, 2), "U+0000"),
        (HEAD + "    lema: nox", (3, 5), "no key 'lema'; the keys are word, lemma"),
        ("passages:\n  - latin: Pax\n    line: 1\n    words: [{word: Pax, note: x}]", (3, 5), "keys are latin, words"),
        ("words: []", (1, 1), "the keys are everywhere, passages"),
        (HEAD + "    features: Case=Genitive", (3, 15), "Case has no value 'Genitive'; it has Nom, Gen"),
        (HEAD + "    features: Kasus=Gen", (3, 15), "no feature 'Kasus'"),
        (HEAD + "    features: Case=Nom,Acc", (3, 15), "no value 'Nom,Acc'"),
        (HEAD + "    features: Case", (3, 15), "Name=Value"),
        (HEAD + "    upos: Noun", (3, 11), "no part of speech 'Noun'"),
        (HEAD + "    difficulty: 2", (3, 17), "a number from 0 to 1"),
        (HEAD + "    difficulty: nan", (3, 17), "a number from 0 to 1"),
        (HEAD + "    emphasis: perhaps", (3, 15), "true or false"),
        (HEAD + "    english: night", (3, 14), "'english' is a list"),
        (HEAD + "    english: [the, ' ']", (3, 20), "an empty word"),
        (HEAD + "    gloss: [the]", (3, 12), "'gloss' is text"),
        (HEAD, (2, 5), "nothing is said of 'noctem'"),
        ("everywhere:\n  - word: ''\n    note: x", (2, 11), "has no letter"),
        ("everywhere:\n  - note: x", (2, 5), "no 'word' here"),
        (HEAD + "    note: x\n  - {word: Nóctem, note: y}", (4, 12), "'Nóctem' comes twice"),
        (HEAD + "    note: x\n    note: y", (4, 5), "'note' comes twice"),
        ("passages:\n  - latin: Pax\n    words: []", (3, 12), "an empty list"),
        ("Pax", (1, 1), "keys with values"),
        ("? [a]\n: b", (1, 3), "as key"),
        ("a: 1\n---\nb: 2", (2, 1), "a second document"),
        ("everywhere: &a [*a]", (1, 13), "an anchor"),
        ("!!python/object/apply:os.getcwd []", (1, 1), "a tag"),
        ("everywhere: " + "[" * 100_000, (1, 19), "levels"),
        (" " * 1_000_001, None, "1,000,000"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_told_with_its_place(text, place, told):
    with pytest.raises(FormatError) as error:
        corrections.read(text, name="vespers.yaml")
    where = f"vespers.yaml, line {place[0]}, column {place[1]}: " if place else "vespers.yaml: "
    assert str(error.value).startswith(where) and told in str(error.value)


def test_all_mistakes_are_told_together():
    """Those alone: that a list has no item that is right is not one more."""
    text = "passages: [{latin: lux, words: [\n{word: lux, lema: lux, upos: Noun},\n{word: nox, difficulty: 2}]}]\n"
    with pytest.raises(FormatError) as error:
        corrections.read(text, name="x")
    assert [line.split(":")[0] for line in str(error.value).splitlines()] == [
        "x, line 2, column 13", "x, line 2, column 30", "x, line 3, column 25",
    ]  # fmt: skip


@pytest.mark.parametrize("entry", ["  - {word: lux, lema: lux}\n", "  - {word: !!str lux, note: x}\n", "  - *a\n"])
def test_ten_mistakes_are_told_and_how_many_more(entry):
    with pytest.raises(FormatError) as error:
        corrections.read("everywhere:\n" + entry * 12)
    told = str(error.value).splitlines()
    assert [line.split(",")[1] for line in told[:-1]] == [f" line {number}" for number in range(2, 12)]
    assert told[-1] == "corrections: 2 more mistakes"


@pytest.mark.parametrize("text", ["", "# nothing yet", "passages: []", "everywhere: []"])
def test_nothing_said(text):
    assert corrections.read(text) == Corrections()


@given(st.text(st.sampled_from("abw:-[]{}&*!|>'\"%@`?#, \n\tword")))
def test_any_text_is_read_or_refused_by_our_own_error(text):
    try:
        assert isinstance(corrections.read(text), Corrections)
    except FormatError as error:
        assert "line " in str(error)
