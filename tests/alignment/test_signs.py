"""Signs in the English: who is called, what is a command, what has a preposition; and what they bring about."""

from __future__ import annotations

import pytest

from latingloss import annotate
from latingloss.alignment.signs import english_signs
from latingloss.text.tokens import tokenize


def signs(english: str, word: str, *, verb: str = "") -> tuple[str, ...]:
    """The signs of a Latin word linked to one English word, beside another that is linked to a verb."""
    words = english.split()
    linked = [[words.index(w)] for w in (word, verb) if w]
    return english_signs(linked, words, verbs=[False, True][: len(linked)])[0]


# who is called stands apart and has no article: Quirk, Greenbaum, Leech and Svartvik (1985), section 10.53
@pytest.mark.parametrize("word", ["My", "dear", "daughter"])
def test_all_words_for_one_who_is_called_are(word: str) -> None:
    assert "called" in signs("My dear daughter , listen .", word, verb="listen")


@pytest.mark.parametrize(
    ("english", "word"),
    [
        ("Sun and moon , shine .", "Sun"),
        ("Sun and moon , shine .", "moon"),
        ("Shine , O sun .", "sun"),
        ("Shine , all you stars .", "stars"),
        ("Sun of justice , shine .", "Sun"),
    ],
)
def test_several_may_be_called(english: str, word: str) -> None:
    assert "called" in signs(english, word, verb=next(w for w in english.split() if w.lower() == "shine"))


@pytest.mark.parametrize(
    ("english", "word"),
    [
        ("They bring bread , wine , and oil .", "wine"),  # a list
        ("They bring bread , wine , and oil .", "oil"),
        ("In winter , they bring bread .", "winter"),
        ("The farmers , they bring bread .", "farmers"),
        ("Farmers bring bread .", "Farmers"),
        ("Sons of farmers , they bring bread .", "farmers"),
    ],
)
def test_others_are_not(english: str, word: str) -> None:
    assert "called" not in signs(english, word, verb="bring")


def test_a_command_may_be_joined_to_another() -> None:
    # two imperatives joined by `and`: Quirk and others (1985), section 11.30
    assert "opens bare" in signs("Rise and come .", "come", verb="Rise")
    assert "opens bare" in signs("Help us and free us .", "free", verb="Help")
    for english, verb in (("They rise and come .", "rise"), ("Sun and moon .", ""), ("I go , and come .", "go")):
        assert "opens bare" not in signs(english, english.split()[-2], verb=verb)


@pytest.mark.parametrize(
    ("english", "word", "bare"),
    [
        ("We praise the great king .", "king", True),
        ("We praise with a great voice .", "voice", False),
        ("He came with bread and wine .", "wine", False),
        ("Of the city we sing .", "city", False),
    ],
)
def test_a_preposition_may_stand_before_what_goes_with_a_word(english: str, word: str, bare: bool) -> None:
    found = signs(english, word, verb=next(v for v in ("praise", "came", "sing") if v in english.split()))
    assert ("without preposition" in found) == bare


def test_the_future_has_a_word_for_it() -> None:
    assert "without will" in signs("Why do you hunt me ?", "hunt")
    assert "without will" not in signs("They will hunt and fish .", "fish", verb="hunt")


# Bennett, New Latin Grammar (1918), sections 171 (vocative), 281 (imperative), 185 (accusative of extent: quid, why)
@pytest.mark.parametrize(
    ("latin", "english", "word", "shown"),
    [
        ("Cane et salta, puella.", "Sing and dance, girl.", "salta", {"Mood": "Imp"}),
        ("Adiuva nos et libera nos.", "Help us and free us.", "libera", {"Mood": "Imp"}),
        ("Filia mea, canta.", "My daughter, sing.", "mea", {"Case": "Voc"}),
        ("Quid fles, nauta benigne?", "Why do you weep, kind sailor?", "benigne", {"Case": "Voc"}),
        ("Quid fles, nauta?", "Why do you weep, sailor?", "Quid", {"Case": "Acc"}),
        ("Sol et luna, laudate regem.", "Sun and moon, praise the king.", "luna", {"Case": "Voc"}),
        ("Quid me sequeris?", "Why do you follow me?", "sequeris", {"Tense": "Pres"}),
    ],
)
def test_the_signs_decide_what_the_latin_leaves_open(
    latin: str, english: str, word: str, shown: dict[str, str]
) -> None:
    place = [t.text for t in tokenize(latin)].index(word)
    features = annotate(latin, english).passages[0].tokens[place].words[0].features
    assert shown.items() <= features.items()
