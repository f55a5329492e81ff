"""One word, many spellings: the same pronunciation. Usage of church books and print: common practice, no source."""

import unicodedata

import pytest

from latingloss.errors import InputTypeError, OptionError, TextError
from latingloss.pronunciation import build_up, pronounce


@pytest.mark.parametrize(
    "spellings",
    [
        "Jēsus Iēsus IĒSVS",
        "juvenis iuvenis iuuenis IVVENIS",
        "vīvus uīuus VĪVVS",
        "servus seruus SERVVS",
        "inveniō inueniō",
        "adjuvat adiuvat adiuuat",
        "injūria iniūria",
        "adjiciō adiciō",
        "quoniam QVONIAM",
        "tuae TVAE",
        "fīliī fīlij",
        "cǣlum cælum caelum caélum",
        "cœpit coepit",
        "maior major MAIOR",
    ],
)
@pytest.mark.parametrize("tradition", ["ecclesiastical", "classical"])
def test_spellings_of_one_word_sound_alike(spellings: str, tradition: str) -> None:
    heard = {pronounce(spelling, tradition).ipa.replace("ː", "") for spelling in spellings.split()}
    assert len(heard) == 1, heard


@pytest.mark.parametrize("word", ["abiit", "obiērunt", "etiam", "tenuia", "suus", "fuit", "voluit", "duo"])
def test_vowels_that_look_like_consonants_stay_vowels(word: str) -> None:
    assert not {"j", "w"} & set(pronounce(word).ipa)


@pytest.mark.parametrize(
    ("word", "syllables"),
    [
        ("poëta", "po ë ta"),
        ("āër", "a ër"),
        ("Israël", "is ra ël"),
        ("Michael", "mi cha el"),
        ("coercet", "co er cet"),
        ("aēneus", "a e ne us"),
        ("Nicolaus", "ni co la us"),
    ],
)
def test_two_vowels_that_are_no_diphthong(word: str, syllables: str) -> None:
    assert pronounce(word).syllables == tuple(syllables.split())


def test_composed_and_decomposed_input_are_one() -> None:
    for word in ("glória", "cǽcus", "aënēus", "ǖ"):
        one, two = (pronounce(unicodedata.normalize(form, word)) for form in ("NFC", "NFD"))
        assert one.model_copy(update={"word": ""}) == two.model_copy(update={"word": ""})


def test_letters_of_other_alphabets_are_kept_and_make_it_uncertain() -> None:
    reading = pronounce("straßa")
    assert (reading.ipa, reading.respelling, reading.certain) == ("ˈstra.ßa", "STRAH-ssah", False)
    assert pronounce("Ἀmen").syllables == ("ἀmen",)


@pytest.mark.parametrize("word", ["", "  ", "123", "—", "\u0304"])
def test_text_without_a_letter_is_an_error(word: str) -> None:
    with pytest.raises(TextError, match="no letter"):
        pronounce(word)


def test_several_words_are_an_error() -> None:
    with pytest.raises(TextError, match="one at a time"):
        pronounce("ora et labora")


def test_an_unknown_tradition_is_an_error_that_names_both() -> None:
    with pytest.raises(OptionError, match=r"'ecclesiastical' or 'classical'"):
        build_up("ora", "italian")


def test_a_word_that_is_no_string_is_an_error() -> None:
    with pytest.raises(InputTypeError, match="bytes"):
        pronounce(b"ora")  # type: ignore[arg-type]
