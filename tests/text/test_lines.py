"""Lines: passages, stanzas, sentences."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss.text.lines import Line, clauses, lines, sentences

ANY = st.text(st.characters(), max_size=80)
PRINT = st.text(st.sampled_from("abM.?!:;,-\u00ad\ufeff\u00a0\r\n\u2028\u2029\f \t1…"), max_size=60)


def cut(text, **options):
    return [text[a:b] for a, b, _ in lines(text, **options)]


@given(st.one_of(ANY, PRINT))
def test_every_visible_character_lies_in_one_line(text):
    found, at, stanza = lines(text), 0, 0
    for line in found:
        assert text[at : line.start].strip() == "" and line.start < line.end
        assert not text[line.start].isspace() and not text[line.end - 1].isspace()
        assert line.stanza in (stanza, stanza + 1)
        at, stanza = line.end, line.stanza
    if found:
        assert text[at:].strip() == ""
        assert found[0].stanza == 0


@given(PRINT)
def test_clauses_keep_every_character(text):
    whole = Line(0, len(text), 0)
    for parts in (sentences(text, whole), clauses(text, whole), clauses(text, whole, commas=True)):
        assert parts[0].start == 0 and parts[-1].end == len(text)
        assert all(text[a.end : b.start].isspace() for a, b in pairwise(parts))


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r", "\u2028"])
def test_line_ends(end):
    text = f"Lux orta est{end}\tiusto,\u00a0{end} \u00a0{end}et rectis{end}"
    assert [(text[a:b], s) for a, b, s in lines(text)] == [("Lux orta est", 0), ("iusto,", 0), ("et rectis", 1)]


def test_a_byte_order_mark_stays_with_the_first_line():
    assert cut("\ufeffLux\norta") == ["\ufeffLux", "orta"]
    assert [s for *_, s in lines("Lux\n\u200b\norta")] == [0, 1]
    assert cut("\ufeff\nLux\norta") == ["\ufeff\nLux", "orta"]


def test_a_broken_word_keeps_two_lines_together():
    assert cut("Lux sancti-\nficata\norta est") == ["Lux sancti-\nficata", "orta est"]
    assert cut("Lux -\northa est\nhodie") == ["Lux -", "ortha est", "hodie"]


# Where sentences end: common practice, no source.
@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Sol occidit. Luna surgit.", ["Sol occidit.", "Luna surgit."]),
        ("sol occidit. luna surgit.", ["sol occidit.", "luna surgit."]),
        ("“Quo vadis?” Nescio!", ["“Quo vadis?”", "Nescio!"]),
        ("O! quam bonus est.", ["O! quam bonus est."]),
        ("Tace... sol occidit.", ["Tace... sol occidit."]),
        ("Venit M. Tullius cum S. Petro. Sedet.", ["Venit M. Tullius cum S. Petro.", "Sedet."]),
        ("Ludovicus XIV. regnat. Vivit.", ["Ludovicus XIV. regnat.", "Vivit."]),
        ("1. Beati mites. 2. Beati iusti.", ["1. Beati mites.", "2. Beati iusti."]),
        ("℣. Ostende nobis. ℟. Et salutare.", ["℣. Ostende nobis.", "℟. Et salutare."]),
        ("St. Martin kept watch. Mr. Hall slept.", ["St. Martin kept watch.", "Mr. Hall slept."]),
        ("Vide vv. 3 et 4. Bene.", ["Vide vv. 3 et 4.", "Bene."]),
    ],
)
def test_prose_is_cut_into_sentences(text, expected):
    assert cut(text) == expected


def test_a_long_sentence_is_cut_at_colons_and_semicolons_only_if_too_long():
    text = "Sol occidit: luna surgit; stellae lucent."
    assert cut(text) == [text]
    assert cut(text, most_words=4) == ["Sol occidit: luna surgit;", "stellae lucent."]
    assert cut(text, most_words=2) == ["Sol occidit:", "luna surgit;", "stellae lucent."]


def test_several_lines_are_not_cut_further():
    assert cut("Sol occidit. Luna surgit.\nDormi.") == ["Sol occidit. Luna surgit.", "Dormi."]
