"""Captions, read back by a parser of the standard (webvtt-py; W3C, WebVTT)."""

from html import unescape
from itertools import pairwise

import pytest
import webvtt
from hypothesis import given, settings
from hypothesis import strategies as st

import latingloss
from latingloss.errors import FormatError, OptionError
from latingloss.sheets import Booklet, SheetOptions, Text, sheet_vtt
from latingloss.sheets.captions import read_marks, seconds
from latingloss.sheets.cues import LINE_WIDTH, cues, on_screen

DOCUMENT = latingloss.annotate(
    "Stella lucet.\nVesper venit, et canimus.", "A star shines.\nEvening comes, and we sing."
)


def _cues(made: str) -> list[webvtt.Caption]:
    return list(webvtt.from_string(made))


def _seconds(stamp: str) -> float:
    hours, minutes, rest = stamp.split(":")
    return int(hours) * 3600 + int(minutes) * 60 + float(rest)


@given(
    st.lists(st.sampled_from(("Pax.", "Stella lucet.", "Laudamus et canimus.", "III & <IV>")), min_size=1, max_size=9),
    st.floats(5, 1e5),
)
@settings(max_examples=50, deadline=None)
def test_cues_follow_each_other_and_fill_the_recording(lines: list[str], length: float) -> None:
    cues = _cues(sheet_vtt(latingloss.annotate("Lux\n" + "\n".join(lines)), SheetOptions(length=length)))
    assert len(cues) == len(lines) + 1
    assert all(_seconds(cue.start) < _seconds(cue.end) for cue in cues)
    assert all(before.end == after.start for before, after in pairwise(cues))
    assert cues[0].start == "00:00:00.000" and abs(_seconds(cues[-1].end) - length) <= 0.0005


def test_time_is_shared_out_by_syllables() -> None:
    """Bennett 1918, section 4: stel-la lu-cet; ves-per ve-nit et ca-ni-mus: 4 and 8."""
    cues = _cues(sheet_vtt(DOCUMENT, SheetOptions(length=24)))
    assert [_seconds(cue.end) for cue in cues] == [8, 24]


def test_marks_say_where_lines_begin() -> None:
    cues = _cues(sheet_vtt(DOCUMENT, SheetOptions(marks=(1.5, 4))))
    assert [(cue.start, cue.end) for cue in cues] == [
        ("00:00:01.500", "00:00:04.000"), ("00:00:04.000", "00:00:06.667"),
    ]  # fmt: skip
    assert _cues(sheet_vtt(DOCUMENT, SheetOptions(marks=(1.5, 4), length=9)))[-1].end == "00:00:09.000"
    assert _cues(sheet_vtt(DOCUMENT, SheetOptions(marks=(1.5, 4, 3600), length=4000)))[-1].end == "01:00:00.000"


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (SheetOptions(marks=(1,)), "1 marks for 2 lines"),
        (SheetOptions(marks=(1, 2, 3, 4)), "4 marks for 2 lines"),
        (SheetOptions(marks=(1, 8), length=5), "not within the length"),
        (SheetOptions(length=0.01), "line 1 has 0.003 s for 4 syllables"),
        (SheetOptions(marks=(1, 1.0001)), "line 1 has 0.000 s"),
    ],
)
def test_times_that_do_not_fit_are_told(options: SheetOptions, said: str) -> None:
    with pytest.raises(OptionError, match=said):
        sheet_vtt(DOCUMENT, options)


def test_latin_stands_over_rendering_or_gloss() -> None:
    assert [cue.text for cue in _cues(sheet_vtt(DOCUMENT))] == [
        "Stella lucet.\nA star shines.", "Vesper venit, et canimus.\nEvening comes, and we sing.",
    ]  # fmt: skip
    literal = _cues(sheet_vtt(DOCUMENT, SheetOptions(columns=("latin", "literal"))))
    assert literal[0].text == "Stella lucet.\nstar | shines"
    assert "<lang la>Stella lucet.</lang>" in sheet_vtt(DOCUMENT)


@given(st.text(alphabet="ab<>&-; \n\x01\r\t\u2028", min_size=1), st.text(alphabet="ab<>&-; \x01", min_size=1))
@settings(max_examples=100, deadline=None)
def test_nothing_of_a_text_is_markup(latin: str, english: str) -> None:
    """WebVTT, on cue text: `-->`, < and & may not stand in the text of a cue."""
    document = latingloss.annotate(f"lux {latin}", f"light {english}")
    made = sheet_vtt(document)
    bodies = [line for line in made.splitlines() if "lux" in line or "light" in line]
    assert made.count("-->") == len(_cues(made)) == len(document.passages)
    assert all(set(line.replace("<lang la>", "").replace("</lang>", "")).isdisjoint("<>\x01") for line in bodies)
    for cue, passage in zip(_cues(made), document.passages, strict=True):
        source = document.source[passage.start : passage.end].replace("\x01", "")
        shown = unescape(cue.raw_text.replace("<lang la>", "").replace("</lang>", ""))
        assert "".join(shown.split()).startswith("".join(source.split()))


@given(st.lists(st.sampled_from(("lux", "noctis,", "siléntium", "et", "in", "terra;")), min_size=1, max_size=40))
@settings(max_examples=50, deadline=None)
def test_a_long_line_is_cut_to_fit_the_screen_and_nothing_of_it_is_lost(words: list[str]) -> None:
    document = latingloss.annotate_tokens(
        [[token for word in words for token in word.replace(",", " ,").split()]], [words]
    )
    found = [cue for passage in document.passages for cue in cues(document, passage, rendering=True)]
    shown = _cues(sheet_vtt(document))
    assert all(len(line) <= LINE_WIDTH for cue in shown for line in cue.text.splitlines())
    assert all(len(on_screen(text)) <= 2 for cue in found for text in (cue.latin, cue.under))
    assert " ".join(cue.latin for cue in found) == document.source
    assert " ".join(cue.under for cue in found if cue.under) == document.english
    assert [" ".join(cue.text.splitlines()) for cue in shown] == [" ".join((cue.latin, cue.under)) for cue in found]


def test_a_verse_is_cut_where_latin_and_english_pause() -> None:
    latin = (
        "Stellæ, quas manus tua creávit, super tecta nostra lúceant, "
        "et campánæ, cum vesper advénerit, pacem pópulo tuo núntient."
    )
    english = (
        "May the stars that your hand has made shine over our roofs, "
        "and may the bells ring out peace to your people when evening comes."
    )
    texts = [cue.text.replace("\n", " ") for cue in _cues(sheet_vtt(latingloss.annotate(latin, english)))]
    first, second = latin.partition(" et ")[0], english.partition(" and ")[0]
    assert len(texts) == 2 and texts[0] == f"{first} {second}"


def test_the_cues_of_a_line_share_its_time() -> None:
    """Every half has as many syllables: la-ti-ni-ta-tis, eight times each."""
    document = latingloss.annotate(", ".join([" ".join(["latinitatis"] * 8)] * 2))
    shown = _cues(sheet_vtt(document, SheetOptions(length=8, columns=("latin",))))
    halves = [_seconds(cue.end) for cue in shown if abs(_seconds(cue.end) - 4) < 0.001]
    assert halves and shown[0].identifier == "1.1"


def test_a_booklet_is_one_recording() -> None:
    cues = _cues(sheet_vtt(Booklet([Text(DOCUMENT), Text(DOCUMENT)])))
    assert [cue.identifier for cue in cues] == ["1:1", "1:2", "2:1", "2:2"]


@pytest.mark.parametrize("time", ["", "1:2:3:4", "1:75", "one", "-1", "1:60", "1:00:60", "nan"])
def test_what_is_no_time_is_told(time: str) -> None:
    with pytest.raises(FormatError, match="1:30"):
        seconds(time)


@pytest.mark.parametrize(("time", "expected"), [("90", 90), ("1:30", 90), ("01:30.25", 90.25), ("1:00:01", 3601)])
def test_times_are_read(time: str, expected: float) -> None:
    assert seconds(time) == expected


def test_marks_are_read_with_their_line() -> None:
    assert read_marks("\n0:01 lux\n  # pause\n 2.5\tnox\n", name="m") == (1, 2.5)
    with pytest.raises(FormatError, match="m, line 3: 'lux'"):
        read_marks("0:01\n\nlux 0:02", name="m")
