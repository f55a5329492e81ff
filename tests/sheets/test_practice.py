"""Exercises: the key solves them, nothing on the page gives a gap away, and they come again the same.

Texts are drawn from words of a school vocabulary, so that every kind of line turns up.
"""

import re
from collections import Counter
from collections.abc import Iterable
from io import BytesIO
from itertools import pairwise

import pytest
from docx import Document as read_docx
from hypothesis import given, settings
from hypothesis import strategies as st

import latingloss
from latingloss.document import Document
from latingloss.errors import OptionError
from latingloss.sheets import Booklet, SheetOptions, Text, exercises, sheet_docx, sheet_html, sheet_markdown, sheet_pdf
from latingloss.sheets.options import EXERCISES
from latingloss.sheets.practice import Exercise, Item
from latingloss.text.orthography import plain

WORDS = (
    "stella stellæ noctis noctísque lux pax pacem venit véniunt cantat in ad et non semper magna puer pueros terra "
    "Roma campánæ silvam lucet manus hódie vox"
).split()
LINES = st.lists(st.lists(st.sampled_from(WORDS), min_size=1, max_size=9), min_size=1, max_size=6)
LATIN = (
    "Vesper venit, et stellæ noctis lucent.\nSub tecto parvo pater fíliam vocat.\nMater panem et lac portat,\n"
    "dum luna super silvam surgit."
)
ENGLISH = (
    "Evening comes, and the stars of the night shine.\nUnder a small roof a father calls his daughter.\n"
    "The mother brings bread and milk,\nwhile the moon rises over the wood."
)
DOCUMENT = latingloss.annotate(LATIN, ENGLISH)


@st.composite
def documents(draw: st.DrawFn) -> Document:
    lines = [" ".join(words) + draw(st.sampled_from(("", ".", ",", "!"))) for words in draw(LINES)]
    english = draw(st.sampled_from((None, "\n".join("The star in Roma shines." for _ in lines))))
    return latingloss.annotate("\n".join(line[:1].upper() + line[1:] for line in lines), english)


def _made(document: Document, kind: str, variant: int = 1) -> list[Exercise]:
    return [exercise for exercise in exercises(document, [kind], variant=variant) if exercise.items]


def _lines(document: Document) -> list[str]:
    return [" ".join(document.source[passage.start : passage.end].split()) for passage in document.passages]


def _solved(item: Item) -> str:
    """Write an item's answers into its gaps."""
    answers = iter(item.answers)
    return "".join(part.text if part.text else next(answers).text for part in item.parts)


def _words(texts: Iterable[str]) -> list[str]:
    return [plain(word) for text in texts for word in re.findall(r"\w+", text)]


@given(documents(), st.integers(0, 3))
@settings(max_examples=30, deadline=None)
def test_filled_gaps_give_the_line(document: Document, variant: int) -> None:
    lines = _lines(document)
    for exercise in (*_made(document, "cloze", variant), *_made(document, "recitation", variant)):
        assert all(_solved(item) in lines for item in exercise.items)


@given(documents(), st.integers(0, 3))
@settings(max_examples=30, deadline=None)
def test_no_gap_is_given_away_by_its_line(document: Document, variant: int) -> None:
    for exercise in _made(document, "cloze", variant):
        for item in exercise.items:
            shown = _words([part.text for part in item.parts] + [item.hint])
            assert item.answers and shown and not set(shown) & set(_words(part.text for part in item.answers))


@given(documents(), st.integers(0, 3))
@settings(max_examples=30, deadline=None)
def test_no_gap_is_given_away_by_its_place_in_the_list(document: Document, variant: int) -> None:
    for exercise in _made(document, "cloze", variant):
        answers = [part.text for item in exercise.items for part in item.answers]
        listed = [part.text for part in exercise.bank]
        if listed:
            assert Counter(text.lower() for text in listed) == Counter(text.lower() for text in answers)
            assert listed == sorted(listed, key=plain)


@given(documents(), st.integers(0, 3))
@settings(max_examples=30, deadline=None)
def test_each_round_leaves_out_more_and_keeps_no_word_that_is_gone(document: Document, variant: int) -> None:
    gone = []
    for exercise in _made(document, "recitation", variant):
        answers = [plain(part.text) for item in exercise.items for part in item.answers]
        shown = _words(part.text for item in exercise.items for part in item.parts)
        assert not set(shown) & set(answers)
        gone.append(answers)
    assert all(set(fewer) <= set(more) for fewer, more in pairwise(gone))
    if gone:
        assert len(gone) == 4 and not _words(part.text for item in exercise.items for part in item.parts)


def test_the_hardest_words_leave_last() -> None:
    first, *_ = _made(DOCUMENT, "recitation")
    gone = {plain(part.text) for item in first.items for part in item.answers}
    tokens = [token for passage in DOCUMENT.passages for token in passage.tokens if token.difficulty]
    scores = [(plain(t.text) in gone, t.difficulty.score) for t in tokens if t.difficulty]
    assert max(score for out, score in scores if out) <= min(score for out, score in scores if not out)


def test_levels_of_cloze_rise_in_difficulty() -> None:
    score = {t.text: t.difficulty.score for p in DOCUMENT.passages for t in p.tokens if t.difficulty}
    levels = [[score[part.text] for i in made.items for part in i.answers] for made in _made(DOCUMENT, "cloze")]
    assert len(levels) == 3
    assert all(max(easier) <= min(harder) for easier, harder in pairwise(levels))


@given(documents(), st.integers(0, 3))
@settings(max_examples=30, deadline=None)
def test_a_shuffled_line_has_the_words_of_its_answer_in_another_order(document: Document, variant: int) -> None:
    lines = _lines(document)
    for exercise in _made(document, "order", variant):
        for item in exercise.items:
            shown, line = item.parts[0].text.split(" / "), "".join(part.text for part in item.answers)
            assert line in lines
            assert sorted(map(plain, shown)) == sorted(_words([line])) and _words(shown) != _words([line])


@given(documents(), st.integers(0, 3))
@settings(max_examples=30, deadline=None)
def test_every_meaning_is_of_one_word_of_the_list_only(document: Document, variant: int) -> None:
    for exercise in _made(document, "match", variant):
        meanings = dict(part.text.split("\u2002") for part in exercise.bank)
        assert len(meanings) == len(exercise.items) >= 4
        assert {item.answers[0].text for item in exercise.items} == set(meanings)
        for item in exercise.items:
            known = {reading.gloss for reading in latingloss.analyze(item.parts[0].text)}
            fitting = [k for k, meaning in meanings.items() if any(gloss.startswith(meaning) for gloss in known)]
            assert item.answers[0].text in fitting


@given(documents(), st.integers(0, 3))
@settings(max_examples=30, deadline=None)
def test_the_marked_ending_has_the_name_of_its_answer(document: Document, variant: int) -> None:
    for exercise in _made(document, "endings", variant):
        names = [item.answers[0].text.partition(":")[0] for item in exercise.items]
        assert sorted(names) == sorted(part.text for part in exercise.bank) and len(set(names)) == len(names)
        for item, name in zip(exercise.items, names, strict=True):
            assert [part.kind for part in item.parts].count("sign") == 1
            assert not set(name.split()) & set(_words([part.text for part in item.parts]))


@pytest.mark.parametrize(
    ("latin", "ending", "name"),
    [
        ("Stellarum lux manet, Domine, et cantamus.", "arum", "genitive plural"),  # Bennett 1918, section 20
        ("Stellarum lux manet, Domine, et cantamus.", "e", "vocative singular"),  # 23
        ("Stellarum lux manet, Domine, et cantamus.", "mus", "1st person plural"),  # 96
    ],
)
def test_an_ending_is_named_as_the_grammar_names_it(latin: str, ending: str, name: str) -> None:
    (made,) = _made(latingloss.annotate(latin), "endings")
    found = {
        part.text: i.answers[0].text.partition(":")[0] for i in made.items for part in i.parts if part.kind == "sign"
    }
    assert found[ending] == name


@given(documents())
@settings(max_examples=20, deadline=None)
def test_the_same_seed_gives_the_same_page_whatever_else_is_on_it(document: Document) -> None:
    assert exercises(document, variant=7) == exercises(document, variant=7)
    assert exercises(document, ["order"], variant=7) == tuple(
        made for made in exercises(document, variant=7) if made.title.startswith("Put")
    )


def test_another_seed_gives_another_page() -> None:
    assert len({exercises(DOCUMENT, variant=variant) for variant in range(5)}) == 5


@pytest.mark.parametrize("kind", EXERCISES)
def test_a_text_too_short_is_told(kind: str) -> None:
    made = exercises(latingloss.annotate("Venit."), [kind])
    assert made and all(not e.items and e.task.startswith("This text is too short for it: it needs") for e in made)


def test_an_unknown_kind_is_told() -> None:
    with pytest.raises(OptionError, match="'juggling': choose any of 'match'"):
        exercises(DOCUMENT, ["juggling"])


def test_a_guessed_word_is_not_asked_for() -> None:
    document = latingloss.annotate("Flabrigorum lux manet, Domine, et cantamus.")
    (made,) = _made(document, "endings")
    assert not any("".join(part.text for part in item.parts[:2]) == "Flabrigorum" for item in made.items)
    assert not any("labrig" in item.parts[0].text for exercise in _made(document, "match") for item in exercise.items)


EVIL = '#panic("x") $y$ <b>&amp;</b> `c` *s*'


def _booklet() -> Booklet:
    return Booklet([Text(DOCUMENT, title=EVIL), Text(latingloss.annotate("Venit."), title="Short")], title="Both")


def test_every_format_prints_every_exercise_with_its_answers() -> None:
    options = SheetOptions(parts=(), exercises=EXERCISES)
    docx = read_docx(BytesIO(sheet_docx(_booklet(), options))).element.body
    texts = {
        "html": re.sub(r"<[^>]+>", "", sheet_html(_booklet(), options)),
        "docx": "".join(part.text or "" for part in docx.iter() if part.tag.endswith("}t")),
        "markdown": sheet_markdown(_booklet(), options).replace("\\", ""),
    }
    for text in texts.values():
        assert text.count("This text is too short for it") == 7  # cloze has three levels
        for made in exercises(DOCUMENT):
            assert text.count(made.title) == 1 + (made.keyed and 1) + (not made.title.startswith("Recite"))
        order = _made(DOCUMENT, "order")[0].items[0]
        assert order.parts[0].text in text and order.answers[0].text in text.partition("Answers")[2]


def test_no_answer_stands_before_the_answers() -> None:
    page = sheet_markdown(_booklet(), SheetOptions(columns=("space",), parts=(), exercises=("endings",)))
    before, _, after = page.partition("## Answers")
    for item in _made(DOCUMENT, "endings")[0].items:
        assert item.answers[0].text not in before and item.answers[0].text in after


def test_a_pdf_of_exercises_is_accessible_and_the_same_every_time() -> None:
    """PDF/UA-1 (ISO 14289-1): Typst refuses to write one that breaks its rules."""
    import json

    from latingloss.sheets import pdf

    options = SheetOptions(exercises=EXERCISES)
    assert sheet_pdf(_booklet(), options) == sheet_pdf(_booklet(), options)
    data = json.dumps(pdf.data_of(_booklet(), options))
    made = pdf._compiler().compile(pdf._source(), format="pdf", sys_inputs={"sheet": data}, pdf_standards=["ua-1"])
    assert isinstance(made, bytes) and b"pdfuaid" in made


def test_no_practice_page_unless_it_is_wanted() -> None:
    assert "Answers" not in sheet_html(DOCUMENT) and "Answers" in sheet_html(
        DOCUMENT, SheetOptions(exercises=("order",))
    )
