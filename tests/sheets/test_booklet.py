"""Several texts bound: one cumulative word list, one key to the endings that occur and to no others.

Endings and what they tell: Bennett 1918, sections 20-53 (nouns), 96-117 (persons), 163-232 (cases).
"""

import pytest

import latingloss
from latingloss import corrections
from latingloss.errors import InputTypeError, OptionError
from latingloss.sheets import Booklet, SheetOptions, Text, review, sheet_html, sheet_markdown
from latingloss.sheets.endings import EndingRow, endings_key
from latingloss.sheets.words import word_list

FIRST = latingloss.annotate("Stella lucet.\nVesper venit.", "A star shines.\nEvening comes.")
SECOND = latingloss.annotate("Vesper stellas vocat.", "Evening calls the stars.")
BOTH = Booklet([Text(FIRST, title="Light"), Text(SECOND, title="Call")], title="Evening songs")


def test_a_word_of_two_texts_is_listed_once_with_its_first_place_first() -> None:
    entries = {entry.form.partition(",")[0]: entry for group in word_list(BOTH, "alphabet") for entry in group.entries}
    assert list(entries) == ["lūceō", "stēlla", "veniō", "vesper", "vocō"]
    assert [place.label for place in entries["stēlla"].places] == ["1:1", "2:1"]
    page = sheet_html(BOTH)
    assert "<b>1:1</b>, 2:1" in page and "<b>1:2</b>, 2:1" in page


def test_sorted_by_text_every_word_stands_where_it_is_new() -> None:
    groups = word_list(BOTH, "text")
    assert [group.heading for group in groups] == ["New in text 1, Light", "New in text 2, Call"]
    assert [entry.form.partition(",")[0] for entry in groups[1].entries] == ["vocō"]
    assert "New in text 2, Call" in sheet_html(BOTH, SheetOptions(word_order="text"))


def test_a_booklet_of_one_names_lines_only() -> None:
    (group,) = word_list(Booklet([Text(FIRST)]), "text")
    assert group.heading == "" and {place.label for entry in group.entries for place in entry.places} == {"1", "2"}


def _rows(latin: str, english: str | None = None) -> dict[str, EndingRow]:
    return {row.name: row for group in endings_key([latingloss.annotate(latin, english)]) for row in group.rows}


@pytest.mark.parametrize(
    ("latin", "name", "ending"),
    [
        ("Stellarum lux manet.", "genitive plural", "ārum"),  # Bennett 20
        ("Dominus venit.", "nominative singular", "us"),  # 23
        ("In manibus tenemus.", "ablative plural", "ibus"),  # 48
        ("Cantamus.", "1st person plural", "mus"),  # 96
        ("Laudantur.", "3rd person plural passive", "ntur"),  # 102
        ("Cantaverunt.", "3rd person plural", "ērunt"),  # 100
        ("Audite vocem.", "imperative", "te"),  # 112
        ("Cantare volumus.", "present infinitive", "re"),  # 95
    ],
)
def test_an_ending_is_told_as_the_grammar_has_it(latin: str, name: str, ending: str) -> None:
    assert ending in [found.ending for found in _rows(latin)[name].endings]


def test_only_endings_that_occur_are_in_the_key() -> None:
    rows = _rows("Stellæ lucent.", "The stars shine.")
    assert list(rows) == ["nominative plural", "3rd person plural"]
    (found,) = rows["nominative plural"].endings
    example = found.examples[0]
    assert (found.ending, example.stem, example.ending, example.gloss) == ("ae", "Stell", "æ", "stars")


def test_words_without_an_ending_of_a_table_are_not_in_the_key() -> None:
    assert _rows("Et nos cum.") == {}


def test_a_booklet_needs_texts_and_a_text_a_document() -> None:
    with pytest.raises(OptionError, match="at least one"):
        Booklet([])
    with pytest.raises(InputTypeError, match=r"latingloss\.annotate"):
        Text("Vesper venit.")  # type: ignore[arg-type]
    with pytest.raises(InputTypeError, match=r"sheets\.Text"):
        Booklet([FIRST])  # type: ignore[list-item]
    with pytest.raises(InputTypeError, match="title"):
        Text(FIRST, title=None)  # type: ignore[arg-type]


def test_every_text_has_title_introduction_and_source() -> None:
    text = Text(FIRST, title="Light", introduction="For the choir.", source="Invented; CC BY-SA 4.0")
    page = sheet_markdown(Booklet([text, text], title="Both"))
    for part in ("## Light", "For the choir.", "*Invented; CC BY-SA 4.0*"):
        assert page.count(part) == 2
    assert "not an approved translation" in page


def test_the_review_page_has_the_lines_to_paste() -> None:
    document = latingloss.annotate("Stella lucet nocte, Flabrigo.")
    item = next(item for item in review(document) if item.text == "Flabrigo")
    assert "word: Flabrigo" in item.correction
    assert f"<pre>{item.correction}</pre>" in sheet_html(document)


def test_what_the_author_remarks_stands_in_the_note() -> None:
    known = corrections.read("everywhere: [{word: lucet, emphasis: true, note: The lamp by the door does so}]")
    page = sheet_html(latingloss.annotate("Stella lucet.", corrections=known))
    assert "<dt>remark</dt> <dd>The lamp by the door does so</dd>" in page
