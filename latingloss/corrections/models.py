"""The models of corrections: what may be said of a word, and which words are meant."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Annotated, NamedTuple

from pydantic import AfterValidator, BeforeValidator, Field, PlainSerializer, field_validator, model_validator
from pydantic_core import PydanticCustomError

from latingloss.document import Probability, Record
from latingloss.text.orthography import plain
from latingloss.text.tokens import word_text

_UPOS = tuple(
    "ADJ ADP ADV AUX CCONJ DET INTJ NOUN NUM PART PRON PROPN PUNCT SCONJ SYM VERB X".split()
)  # Universal Dependencies v2
# the features of Universal Dependencies v2 that Latin words have, with their values
_VALUES = {
    "Case": "Nom Gen Dat Acc Voc Abl Loc", "Number": "Sing Plur", "Gender": "Masc Fem Neut", "Person": "1 2 3",
    "Tense": "Pres Past Fut Pqp", "Aspect": "Imp Perf Prosp", "Mood": "Ind Sub Imp", "Voice": "Act Pass",
    "VerbForm": "Fin Inf Part Ger Gdv Sup", "Degree": "Pos Cmp Sup Abs Dim",
    "PronType": "Prs Dem Ind Int Rel Tot Neg Rcp Con Emp Exc Art", "NumType": "Card Ord Dist Mult Frac Sets",
    "Poss": "Yes", "Reflex": "Yes", "Polarity": "Pos Neg", "Foreign": "Yes", "Abbr": "Yes",
    "Number[psor]": "Sing Plur", "Person[psor]": "1 2 3",
}  # fmt: skip
_NUMBERED = re.compile(r"(.*\S)\s+([1-9]\d{0,5})", re.DOTALL)
_LETTERS = re.compile(r"[^\W\d_]+")


class Named(NamedTuple):
    """A word as a correction names it."""

    key: str  # plain
    number: int | None  # which of those in the line; None if not said


def named(word: str) -> Named:
    """Return what a correction's word says: `et 2` is the second `et`.

    >>> named("Ét 2"), named("noctem")
    (Named(key='et', number=2), Named(key='noctem', number=None))
    """
    match = _NUMBERED.fullmatch(word)
    return Named(plain(word_text(match[1])), int(match[2])) if match else Named(plain(word_text(word)), None)


def line_key(text: str) -> tuple[str, ...]:
    """Return the words by which a line is known, however it is printed.

    >>> line_key("Da nobis, Dómine,") == line_key("da nobis Domine")
    True
    """
    return tuple(_LETTERS.findall(plain(word_text(text))))


def feature_text(features: dict[str, str]) -> str:
    """Return features as CoNLL-U writes them.

    >>> feature_text({"Number": "Sing", "Case": "Acc"})
    'Case=Acc|Number=Sing'
    """
    return "|".join(f"{name}={value}" for name, value in sorted(features.items(), key=lambda pair: pair[0].lower()))


def _split_features(value: object) -> object:
    if not isinstance(value, str):
        return value
    pairs = [pair.split("=") for pair in value.replace(" ", "").split("|") if pair]
    if not all(len(pair) == 2 for pair in pairs):
        raise PydanticCustomError("features", "features are Name=Value, parted by |, as Case=Acc|Number=Sing")
    if len({name for name, _ in pairs}) < len(pairs):
        raise PydanticCustomError("features", "a feature is given twice")
    return dict(pairs)


def _known_features(features: dict[str, str]) -> dict[str, str]:
    for name, value in features.items():
        if name not in _VALUES:
            raise PydanticCustomError("features", f"no feature {name!r}; there are {', '.join(_VALUES)}")
        allowed = _VALUES[name].split()
        if not {*(value.split(",") if name == "Gender" else [value])} <= {*allowed}:
            raise PydanticCustomError("features", f"{name} has no value {value!r}; it has {', '.join(allowed)}")
    return features


def _with_letter(text: str) -> str:
    if not line_key(text):
        raise PydanticCustomError("empty", f"{text!r} has no letter; give the Latin as printed")
    return text


def _known_upos(upos: str) -> str:
    if upos not in _UPOS:
        raise PydanticCustomError("upos", f"no part of speech {upos!r}; there are {', '.join(_UPOS)}")
    return upos


def _whole_words(words: tuple[str, ...]) -> tuple[str, ...]:
    for at, word in enumerate(words):
        if not word.strip():
            raise PydanticCustomError("empty", "an empty word; give the rendering's words as printed", {"at": (at,)})
    return words


Latin = Annotated[str, AfterValidator(_with_letter)]
Features = Annotated[
    dict[str, str],
    BeforeValidator(_split_features),
    AfterValidator(_known_features),
    PlainSerializer(feature_text),
]


class WordCorrection(Record):
    """What is said of one word; None is not said. All but `word` may be left out, but not all of them."""

    word: Latin = Field(description="as printed, or one part of a word with enclitic; `et 2` is the line's second")
    lemma: Latin | None = Field(default=None, description="dictionary form; lengths and homograph number if you like")
    upos: Annotated[str, AfterValidator(_known_upos)] | None = Field(
        default=None, description="part of speech, a Universal Dependencies tag"
    )
    features: Features | None = Field(default=None, description="UD features, `Case=Acc|Number=Sing`, some or all")
    gloss: str | None = Field(default=None, description="literal sense of this form in English")
    english: Annotated[tuple[str, ...], AfterValidator(_whole_words)] | None = Field(
        default=None, description="words of the rendering that render the printed word; `the 2` is the line's second"
    )
    emphasis: bool | None = Field(default=None, description="whether the printed word is picked out on the page")
    difficulty: Probability | None = Field(default=None, description="of the printed word: 0 easy .. 1 hard")
    note: str | None = Field(default=None, description="what the author adds")

    @model_validator(mode="after")
    def _says_something(self) -> WordCorrection:
        if not self.model_dump(exclude={"word"}, exclude_none=True):
            allowed = ", ".join(name for name in WordCorrection.model_fields if name != "word")
            raise PydanticCustomError("nothing", f"nothing is said of {self.word!r}; give some of {allowed}")
        return self


class LineCorrections(Record):
    """The corrections of one line."""

    latin: Latin = Field(description="the line's words, or its beginning so long as no other line begins so")
    words: tuple[WordCorrection, ...] = Field(min_length=1, description="what is said of its words")

    @field_validator("words")
    @classmethod
    def _once(cls, words: tuple[WordCorrection, ...]) -> tuple[WordCorrection, ...]:
        return _each_once(words)


class Corrections(Record):
    """What an author corrects in a text; `latingloss.corrections` tells how it is written."""

    everywhere: tuple[WordCorrection, ...] = Field(default=(), description="said of words wherever they stand")
    passages: tuple[LineCorrections, ...] = Field(default=(), description="said of words in their line, which prevails")

    @field_validator("everywhere")
    @classmethod
    def _once(cls, words: tuple[WordCorrection, ...]) -> tuple[WordCorrection, ...]:
        return _each_once(words)


def _each_once(words: Iterable[WordCorrection]) -> tuple[WordCorrection, ...]:
    words, seen = tuple(words), set[Named]()
    for at, correction in enumerate(words):
        if (name := named(correction.word)) in seen:
            said = f"{correction.word!r} comes twice; write it once, or number the second: {name.key} 2"
            raise PydanticCustomError("twice", said, {"at": (at, "word")})
        seen.add(name)
    return words
