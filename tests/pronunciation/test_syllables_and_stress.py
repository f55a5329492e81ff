"""Syllables and stress against Bennett, New Latin Grammar (1918), sections 4-6, and Allen and Greenough (1903)."""

import pytest

from latingloss.errors import TextError
from latingloss.pronunciation import pronounce
from latingloss.pronunciation.stress import ending_table


@pytest.mark.parametrize(
    ("word", "syllables"),
    [
        ("volat", "vo lat"),  # Bennett 4: a single consonant goes with the vowel behind it
        ("gerit", "ge rit"),
        ("mitto", "mit to"),  # doubled consonants are parted
        ("magnus", "mag nus"),
        ("monstrum", "mon strum"),
        ("patrem", "pa trem"),  # a stop with l or r stays together
        ("volucris", "vo lu cris"),
        ("axis", "a xis"),  # common practice of church books
        ("philosophus", "phi lo so phus"),
        ("aequus", "ae quus"),
        ("sublatus", "sub la tus"),  # prefixes are parted from what they are joined to
        ("exaltat", "ex al tat"),
        ("Abraham", "a bra ham"),  # no prefix here
    ],
)
def test_words_are_parted_as_bennett_says(word: str, syllables: str) -> None:
    assert pronounce(word, "classical").syllables == tuple(syllables.split())


@pytest.mark.parametrize(
    ("word", "stressed"),
    [
        ("tegit", 0),  # Bennett 6: two syllables, the first
        ("mōrem", 0),
        ("amāvit", 1),  # three, the second if long by nature
        ("monentis", 1),  # or by position
        ("cōnsulis", 0),  # if short, the third from the end
        ("hominis", 0),
        ("volucris", 0),  # Bennett 5 B: a stop with l or r need not lengthen
        ("thēsaurus", 1),  # a diphthong is long
        ("rēgīna", 1),
    ],
)
@pytest.mark.parametrize("tradition", ["ecclesiastical", "classical"])
def test_the_last_syllable_but_one_decides(word: str, stressed: int, tradition: str) -> None:
    assert pronounce(word, tradition).stress == stressed


def test_a_written_accent_wins() -> None:
    assert pronounce("mulíeris").stress == 1 and pronounce("mulíeris").certain
    assert pronounce("María").stress == 1
    assert pronounce("cǽcus").syllables[pronounce("cǽcus").stress] == "cǽ"
    assert pronounce("fugavérunt").stress == 2


@pytest.mark.parametrize(
    ("word", "stressed", "certain"),
    [
        ("patĭna", 0, True),  # breve: short, so the third from the end
        ("academī̆a", 3, False),  # both marks: long or short, counted as long
        ("regina", 1, False),
    ],
)
def test_a_breve_settles_a_length_and_a_double_mark_does_not(word: str, stressed: int, certain: bool) -> None:
    reading = pronounce(word)
    assert (reading.stress, reading.certain) == (stressed, certain)


def test_an_enclitic_draws_the_stress_only_where_told() -> None:
    """Allen and Greenough, New Latin Grammar (1903), section 12 a: deáque, amaréve, and itaque without an enclitic."""
    assert pronounce("deaque", enclitic="que").stress == 1
    assert pronounce("amāreve", enclitic="ve").stress == 2
    assert pronounce("itaque").stress == 0
    assert pronounce("deusque", enclitic="que").syllables == ("de", "us", "que")


@pytest.mark.parametrize(("word", "enclitic"), [("deus", "que"), ("que", "que")])
def test_an_enclitic_that_is_not_there_is_an_error(word: str, enclitic: str) -> None:
    with pytest.raises(TextError, match="enclitic"):
        pronounce(word, enclitic=enclitic)


@pytest.mark.parametrize(
    ("word", "certain"),
    [
        ("deus", True),  # two syllables
        ("magister", True),  # heavy by position
        ("thesaurus", True),  # heavy by diphthong
        ("dominōrum", True),  # length written
        ("dominus", False),  # length of i not written
        ("dominorum", True),  # the ending settles it
        ("gloria", True),  # a vowel before a vowel is short (Bennett 5, 362)
        ("tenebrae", False),  # a stop with l or r: the length of e decides
        ("theologia", False),  # Greek words may keep a long vowel before a vowel
    ],
)
def test_certain_tells_whether_the_spelling_settles_the_stress(word: str, certain: bool) -> None:
    assert pronounce(word).certain is certain


@pytest.mark.parametrize(
    ("word", "stressed"),
    [
        ("dominorum", "no"),  # dominōrum
        ("diebus", "e"),  # diēbus
        ("hominibus", "mi"),  # hominibus
        ("laudabat", "da"),  # laudābat
        ("amaverunt", "ve"),  # amāvērunt
        ("creatura", "tu"),  # creātūra
        ("virginis", "vir"),  # virginis
        ("corporis", "cor"),  # corporis
        ("sermonem", "mo"),  # sermōnem
        ("veritatis", "ta"),  # vēritātis
        ("divinus", "vi"),  # dīvīnus
        ("dominus", "do"),  # dominus
        ("illius", "li"),  # illīus
    ],
)
def test_without_marks_the_ending_is_looked_up(word: str, stressed: str) -> None:
    """Vowel lengths, in the comments, from Bennett, New Latin Grammar (1918), parts II and IV."""
    reading = pronounce(word)
    assert reading.syllables[reading.stress] == stressed


def test_every_ending_of_the_table_parses_to_letters() -> None:
    table = ending_table()
    assert len(table) > 300
    assert all(ending.isascii() and ending.isalpha() and ending.islower() for ending in table)
