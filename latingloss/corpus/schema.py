"""The schema: the columns of scored words, each with what it holds, kept in the files as field metadata."""

from __future__ import annotations

from latingloss.corpus.extra import pa

# column -> Universal Dependencies feature
FEATURES = {
    "case": "Case", "number": "Number", "person": "Person", "gender": "Gender", "degree": "Degree",
    "verb_form": "VerbForm", "mood": "Mood", "tense": "Tense", "aspect": "Aspect", "voice": "Voice",
    "pron_type": "PronType", "num_type": "NumType", "poss": "Poss", "reflex": "Reflex",
    "number_psor": "Number[psor]", "person_psor": "Person[psor]",
}  # fmt: skip
# part of the difficulty score -> the column that has its value
PARTS = {
    "frequency": "zipf", "length": "letters", "cognate": "cognate_distance", "shape": "changed", "clusters": "clusters",
    "readings": "readings",
}  # fmt: skip
_NUMBERS = ("person", "person_psor")

_FIELDS = (
    ("work", pa.string(), "name given to the text, or the file's"),
    ("passage", pa.int32(), "number in the work, from 0: a line, or a sentence of a text on one line"),
    ("token", pa.int32(), "number in the passage, from 0, marks and numerals counted"),
    ("start", pa.int64(), "offset in the text, in characters"),
    ("end", pa.int64(), "offset behind the last character; an enclitic has its token's offsets"),
    ("form", pa.string(), "the word as printed"),
    ("lemma", pa.string(), "dictionary form with vowel lengths; homographs carry #1, #2"),
    ("upos", pa.string(), "part of speech, a Universal Dependencies tag"),
    *(
        (column, pa.int8() if column in _NUMBERS else pa.string(), f"value of the UD feature {name}; null if none")
        for column, name in FEATURES.items()
    ),
    ("confidence", pa.float32(), "probability of the reading in its context"),
    ("zipf", pa.float32(), "how common the lemma is: log10 of uses in 10^9 words"),
    ("letters", pa.int16(), "of the form"),
    ("syllables", pa.int16(), "of the form"),
    (
        "cognate_distance",
        pa.float32(),
        "from the nearest English relative: 0 same .. 1 nothing in common, or none known",
    ),
    (
        "relative",
        pa.string(),
        "the nearest English relative that a reader knows, of a name the English name; null if none",
    ),
    ("changed", pa.float32(), "share of the form's letters that are not the lemma's beginning"),
    ("clusters", pa.int16(), "consonants of the form that stand behind another, doubled ones aside"),
    ("readings", pa.int16(), "ways to read the form: cases, numbers and persons of its likelier readings"),
    ("difficulty", pa.float32(), "0 easy .. 1 hard"),
    ("guessed", pa.bool_(), "true if the lemma is not in the lexicon"),
)
SCHEMA = pa.schema([pa.field(name, kind, metadata={"description": text}) for name, kind, text in _FIELDS])
