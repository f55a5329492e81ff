"""Tokens: nothing lost, offsets right, and what the print of Latin throws up."""

import re
import time
import unicodedata

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from latingloss import analyze
from latingloss.text.tokens import INVISIBLE, is_numeral, tokenize, tokenize_english, word_text

ANY = st.text(st.characters(), max_size=80)  # all of Unicode, lone surrogates too
PRINT = st.text(st.sampled_from("aVRIXMiv.é\u0301ǣ℣†*-–'’\u00ad\ufeff\r\n\u2028 \t12…/"), max_size=40)


def kinds(text):
    return [(t.text, t.kind) for t in tokenize(text)]


@pytest.mark.parametrize("cut", [tokenize, tokenize_english])
@given(text=st.one_of(ANY, PRINT), offset=st.integers(0, 9))
@example(text="a\u00ad\nb-\r\nc ﬁ \ud800\x00", offset=3)
def test_only_white_space_is_left_out(cut, text, offset):
    at = 0
    for token in cut(text, offset=offset):
        start, end = token.start - offset, token.end - offset
        assert text[at:start].strip() == "" and start < end
        assert text[start:end] == token.text
        assert token.kind in ("word", "number", "punctuation", "sign")
        at = end
    assert text[at:].strip() == ""


@given(st.text(st.sampled_from("aēéǽœÿ bc'’-\n"), max_size=40))
def test_composed_and_decomposed_text_have_the_same_words(text):
    composed, decomposed = (
        [word_text(t.text) for t in tokenize(unicodedata.normalize(form, text))] for form in ("NFC", "NFD")
    )
    assert [unicodedata.normalize("NFC", w) for w in decomposed] == composed


@pytest.mark.parametrize(
    "word", ["glória", "cǽcus", "cœlum", "rŏsā", "ÆTERNA", "Ïesu", "o’er", "dictu's", "glo\u00adria"]
)
@pytest.mark.parametrize("form", ["NFC", "NFD"])
def test_a_word_is_one_token(word, form):
    word = unicodedata.normalize(form, word)
    assert kinds(word) == [(word, "word")]


def test_a_zero_width_space_parts_words():
    """Unicode Standard Annex #14 (Line Breaking), section 5.1, class ZW: it gives a break opportunity, as a space."""
    spans = tokenize("lux\u200bvenit et \u200bnox XII\u200bannos")
    assert [(t.text, t.start) for t in spans if t.kind == "word"] == [
        ("lux", 0), ("venit", 4), ("et", 10), ("nox", 14), ("annos", 22),
    ]  # fmt: skip
    assert [t.start for t in spans if t.text == "\u200b"] == [3, 13, 21]
    assert [t.text for t in spans if t.kind == "number"] == ["XII"]


@pytest.mark.parametrize("unseen", ["\u00ad", "\u200c", "\u200d", "\u2060", "\ufeff"])
def test_what_does_not_part_words_is_not_read(unseen):
    """The same, classes BA (soft hyphen), CM (U+200C), ZWJ and WJ; their look-up is as without them."""
    (token,) = tokenize(f"stel{unseen}lae")
    assert (token.text, token.kind, word_text(token.text)) == (f"stel{unseen}lae", "word", "stellae")
    assert [r.lemma for r in analyze(token.text)] == [r.lemma for r in analyze("stellae")]


@pytest.mark.parametrize(
    "broken", ["sancti-\nficatur", "sancti-\r\n   ficatur", "sancti\u00ad\nficatur", "sancti‐\u2028ficatur"]
)
def test_a_hyphen_at_the_end_of_a_line_joins_the_halves(broken):
    (token,) = tokenize(broken)
    assert token.text == broken
    assert word_text(token.text) == "sanctificatur"


def test_a_hyphen_elsewhere_or_before_a_blank_line_does_not_join():
    assert len(tokenize("Maria - mater")) == 3
    assert len(tokenize("sancti-\n\nficatur")) == 3
    assert len(tokenize("bene-dico")) == 3


# Roman numerals as number: common practice, no source.
@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("Psalmus XII canitur.", ["XII"]),
        ("anno MCMXIV natus est", ["MCMXIV"]),
        ("V. Dominus regnat", ["V"]),
        ("iv. Dominus regnat", ["iv"]),
        ("magna vi.", []),
        ("M. Tullius et D. Brutus", []),
        ("DIC MI DI BONI", []),
        ("VI ET ARMIS", []),
        ("ANNO XVI REGNI", ["XVI"]),
        ("Dic mihi DIC", []),
        ("Ego I te", []),
        ("XII", ["XII"]),
        ("12 Beati 3. mites 1:4", ["12", "3", "1", "4"]),
        ("x² ½ Ⅻ", ["²", "½", "Ⅻ"]),
    ],
)
def test_numbers(text, numbers):
    assert [t.text for t in tokenize(text) if t.kind == "number"] == numbers


def test_well_formed_numerals_are_those_that_arithmetic_writes():
    pairs = [(1000, "M"), (900, "CM"), (500, "D"), (400, "CD"), (100, "C"), (90, "XC")]
    pairs += [(50, "L"), (40, "XL"), (10, "X"), (9, "IX"), (5, "V"), (4, "IV"), (1, "I")]

    def written(n):
        out = ""
        for value, letters in pairs:
            out, n = out + letters * (n // value), n % value
        return out

    assert all(is_numeral(written(n)) for n in range(1, 4000))
    assert not any(map(is_numeral, ("", "IIX", "VV", "IC", "DIC", "VIX", "LL")))


# Signs of psalm pointing and of versicle and response: common practice, no source.
@pytest.mark.parametrize("sign", [*"*†‡℣℟✠&", "V/", "R/", "R\u0338"])
def test_signs(sign):
    text = f"Deus {sign} meus"
    assert kinds(text)[1:-1] == [(sign, "sign")]


def test_versicle_and_response_in_plain_letters():
    found = kinds("V. Ostende nobis.\nR. Et salutare.")
    assert ("V", "sign") in found and ("R", "sign") in found
    assert ("R", "word") in kinds("R. Bentley scripsit.")


@pytest.mark.parametrize("control", ["\x00", "\x07", "\x1b", "\x7f", "\ufeff", "\u200b"])
def test_control_characters_are_kept_as_signs(control):
    assert (control, "sign") in kinds(f"lux {control} orta")


@pytest.mark.parametrize("mark", [*".,;:!?…«»“”‘’\"'()[]—–-", "...", "--"])
def test_punctuation(mark):
    assert kinds(f"lux {mark} orta")[1] == (mark, "punctuation")


@given(st.text(st.characters(exclude_categories=["M", "Cs"], exclude_characters="_’"), max_size=60))
def test_english_splits_as_the_scorers_do(text):
    plain = re.compile(r"[^\W\d_]+(?:'[^\W\d_]+)?|\d+|[^\w\s]")  # of shared/tools/score_treebank.py
    # characters that are alphanumeric but neither letter nor digit are letters there, as they are here
    assert [t.text for t in tokenize_english(text)] == plain.findall(text)


def test_english_apostrophes():
    words = [t.text for t in tokenize_english("Don’t o'er God's disciples' ‘way’")]
    assert words == ["Don’t", "o'er", "God's", "disciples", "'", "‘", "way", "’"]


@given(PRINT)
def test_word_text_has_nothing_unseen(text):
    for token in tokenize(text):
        if token.kind == "word":
            assert not set(word_text(token.text)) & {*INVISIBLE, *"-\r\n\u2028"}


@pytest.mark.parametrize(
    "line", ["Surge, illuminare, quia venit lumen tuum: ", "VI DIC MI ", "a-\n", "a\u00ad", "'a", "V. R. "]
)
def test_a_million_characters_are_cut_in_linear_time(line):
    text = line * (1_000_000 // len(line))
    start = time.process_time()
    tokenize(text)
    assert time.process_time() - start < 10  # about 0.5 s on an idle core; a quadratic scan takes minutes
