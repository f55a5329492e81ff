"""What holds for any word: shape of the result, and no error but ours."""

import unicodedata

from hypothesis import given
from hypothesis import strategies as st

from latingloss.errors import LatinglossError
from latingloss.pronunciation import build_up, pronounce

TRADITIONS = st.sampled_from(["ecclesiastical", "classical"])
LATIN_WORDS = st.text("abcdefghijklmnopqrstuvwxyzæœāēīōūȳăĕĭŏŭáéíóúýǽëïöüABEIMOVXÆ", min_size=1, max_size=14)
# Signs such as ˈ and ʼ are letters to Unicode (class Lm) but not to a reader.
ANY_TEXT_WITH_A_LETTER = st.text(max_size=12).filter(
    lambda text: any(unicodedata.category(character) in ("Lu", "Ll", "Lt", "Lo") for character in text)
)


def without_length_marks(word: str) -> str:
    decomposed = unicodedata.normalize("NFD", word.lower())
    return unicodedata.normalize("NFC", decomposed.replace("\u0304", "").replace("\u0306", ""))


@given(LATIN_WORDS, TRADITIONS)
def test_syllables_join_to_the_spelling_without_length_marks(word: str, tradition: str) -> None:
    reading = pronounce(word, tradition)
    assert "".join(reading.syllables) == without_length_marks(word)


@given(LATIN_WORDS, TRADITIONS)
def test_ipa_syllables_and_respelling_count_alike(word: str, tradition: str) -> None:
    reading = pronounce(word, tradition)
    count = len(reading.syllables)
    assert reading.ipa.count("ˈ") == 1
    assert len(reading.ipa.replace("ˈ", ".").strip(".").split(".")) == count
    assert len(reading.respelling.split("-")) == count
    assert reading.respelling.split("-")[reading.stress].isupper()
    assert len(build_up(word, tradition)) == count and build_up(word, tradition)[-1] == reading.respelling


@given(LATIN_WORDS, TRADITIONS)
def test_every_syllable_of_several_has_one_vowel_sound(word: str, tradition: str) -> None:
    reading = pronounce(word, tradition)
    syllables = reading.ipa.replace("ˈ", ".").strip(".").split(".")
    plain = [syllable.replace("e̯", "").replace("u̯", "").replace("i̯", "") for syllable in syllables]
    vowels = {sum(map(syllable.count, "aeiouy")) for syllable in plain}
    assert len(syllables) == 1 or vowels == {1}


@given(ANY_TEXT_WITH_A_LETTER, TRADITIONS)
def test_any_text_with_a_letter_is_read_or_refused_by_an_error_of_ours(text: str, tradition: str) -> None:
    try:
        reading = pronounce(text, tradition)
    except LatinglossError:
        assert len(text.split()) > 1
        return
    assert 0 <= reading.stress < len(reading.syllables)
    assert reading.ipa.strip("ˈ.") and reading.respelling.isascii() and all(reading.syllables)


@given(ANY_TEXT_WITH_A_LETTER.filter(lambda text: len(text.split()) == 1), TRADITIONS)
def test_composed_and_decomposed_text_give_one_reading(text: str, tradition: str) -> None:
    one, two = (unicodedata.normalize(form, text) for form in ("NFC", "NFD"))
    first, second = (pronounce(word, tradition).model_dump(exclude={"word"}) for word in (one, two))
    assert first == second
