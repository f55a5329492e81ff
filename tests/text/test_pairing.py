"""Pairing of lines, after Gale and Church (1993), Computational Linguistics 19(1)."""

import gzip
import random
import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss.text.pairing import pair, pair_texts

VULGATE = Path(__file__).parents[3] / "shared/corpora/vulgate-cpdv.tsv.gz"
LINES = st.lists(st.text("ab ", max_size=50), max_size=9)


@given(LINES, LINES)
def test_pairs_cover_both_sides_in_order(latin, english):
    beads = pair(latin, english)
    for side, count in ((0, len(latin)), (1, len(english))):
        assert [i for bead in beads for i in bead[side]] == list(range(count))
    assert all(a or b for a, b in beads)


@given(st.lists(st.text("ab", min_size=20, max_size=60), max_size=9))
def test_equal_counts_of_like_lengths_pair_line_for_line(latin):
    assert pair(latin, latin) == [(range(i, i + 1), range(i, i + 1)) for i in range(len(latin))]


def lines_of(*lengths):
    return ["x" * n for n in lengths]


@pytest.mark.parametrize(
    ("latin", "english", "shape"),
    [
        ((40, 80, 60), (50, 100, 75), [(1, 1), (1, 1), (1, 1)]),
        ((40, 80, 60), (50, 45, 55, 75), [(1, 1), (1, 2), (1, 1)]),
        ((40, 30, 50, 60), (50, 100, 75), [(1, 1), (2, 1), (1, 1)]),
        ((100, 60, 60, 120), (125, 148, 150), [(1, 1), (2, 1), (1, 1)]),
        ((100, 150, 190, 60, 120, 90, 140), (125, 185, 75, 150, 112, 172), [(1, 1)] * 2 + [(1, 0)] + [(1, 1)] * 4),
        ((90,), (20, 40, 50), [(1, 3)]),
        ((), (20, 40), [(0, 1), (0, 1)]),
        ((200, 210), (60, 65, 60, 62, 64, 63, 66, 62), [(1, 4), (1, 4)]),
    ],
)
def test_shapes(latin, english, shape):
    assert [(len(a), len(b)) for a, b in pair(lines_of(*latin), lines_of(*english))] == shape


def test_stanzas_hold_lines_apart():
    latin, english = lines_of(30, 30, 30), lines_of(38, 36, 37, 37)
    beads = pair(latin, english, stanzas=([0, 0, 1], [0, 0, 1, 1]))
    assert beads == [(range(1), range(1)), (range(1, 2), range(1, 2)), (range(2, 3), range(2, 4))]


def test_words_known_outweigh_lengths():
    latin, english = lines_of(50, 50, 50, 50), lines_of(60, 60, 60)
    for left_alone in range(4):
        others = [i for i in range(4) if i != left_alone]
        beads = pair(latin, english, lexical=lambda i, j, o=others: 9.0 if o[j] == i else -9.0)
        assert (range(left_alone, left_alone + 1), range(0)) in [(a, range(len(b))) for a, b in beads]


@pytest.mark.parametrize(
    ("latin", "english", "expected"),
    [
        (
            "Sol occidit,\nluna surgit,\nstellae lucent,\nvigilamus.",
            "The sun sets, the moon rises; the stars shine, we keep watch.",
            ["The sun sets,", "the moon rises;", "the stars shine,", "we keep watch."],
        ),
        ("Sol occidit. Luna surgit.", "The sun sets.\nThe moon rises.", ["The sun sets.", "The moon rises."]),
        (
            "Sol occidit, luna surgit, stellae lucent.",
            "The sun sets,\nthe moon rises,\nthe stars shine.",
            ["The sun sets,", "the moon rises,", "the stars shine."],
        ),
        ("Sol occidit\nluna surgit", "The sun sets / the moon rises", ["The sun sets", "/ the moon rises"]),
    ],
)
def test_one_line_against_several(latin, english, expected):
    pairs = pair_texts(latin, english)
    got = [english[b.start : b.end].replace(" /", "") if b else None for _, b in pairs]
    assert [g.strip("/ ") for g in got] == [e.strip("/ ") for e in expected]


def halves(text):
    cuts = [m.end() for m in re.finditer(r"[,;:.]\s", text)]
    if not cuts:
        return [text]
    at = min(cuts, key=lambda cut: abs(cut - len(text) // 2))
    return [text[:at].strip(), text[at:].strip()]


def damaged(verses, chance):
    """Merge or split three verses in ten on one side; return both sides and the true groups."""
    latin, english, groups, i = [], [], [], 0
    while i < len(verses):
        (row, column), what = verses[i], chance.random()
        rows, columns = [row], [column]
        if what < 0.2 and i + 1 < len(verses):
            i += 1
            both = verses[i]
            rows, columns = (
                ([row, both[0]], [f"{column} {both[1]}"]) if what < 0.1 else ([f"{row} {both[0]}"], [column, both[1]])
            )
        elif 0.2 <= what < 0.25:
            columns = halves(column)
        elif 0.25 <= what < 0.3:
            rows = halves(row)
        groups.append((range(len(latin), len(latin) + len(rows)), range(len(english), len(english) + len(columns))))
        latin, english, i = latin + rows, english + columns, i + 1
    return latin, english, groups


@pytest.mark.skipif(not VULGATE.exists(), reason="needs ../shared/corpora")
@pytest.mark.parametrize("verses_a_text", [12, 40, 400])
def test_verses_of_the_vulgate_find_their_renderings(verses_a_text):
    with gzip.open(VULGATE, "rt", encoding="utf8") as file:
        verses = [tuple(line.rstrip("\n").split("\t")[3:5]) for line in file]
    chance, found, total = random.Random(1993), 0, 0
    for _ in range(4000 // verses_a_text):
        at = chance.randrange(len(verses) - verses_a_text)
        latin, english, groups = damaged(verses[at : at + verses_a_text], chance)
        got = set(pair(latin, english))
        found, total = found + sum(group in got for group in groups), total + len(groups)
    print(f"\n{verses_a_text} verses a text: {found} of {total} groups found, {found / total:.1%}")
    assert found / total >= 0.95
