"""The words of a passage as the search for relations sees them, and the kinds of words it goes by."""

from __future__ import annotations

from collections.abc import Sequence

from latingloss.morphology.ranking import Candidate
from latingloss.text.orthography import plain

_ALL_GENDERS = frozenset(("Fem", "Masc", "Neut"))
_GENDERS = {
    text: frozenset(text.split(","))
    for text in ("Fem", "Masc", "Neut", "Fem,Masc", "Fem,Neut", "Masc,Neut", "Fem,Masc,Neut")
}
_KINDS = {
    "NOUN": "noun", "PROPN": "noun", "ADJ": "adjective", "NUM": "adjective", "DET": "determiner", "PRON": "pronoun",
    "ADP": "preposition", "SCONJ": "subordinator", "CCONJ": "coordinator",
}  # fmt: skip
_VERBAL = {
    "Fin": "finite",
    "Inf": "infinitive",
    "Part": "participle",
    "Gdv": "participle",
    "Ger": "gerund",
    "Sup": "gerund",
}
# words that stand second in their clause, whatever they are tagged: they join nothing beside them
_SECOND = frozenset(("enim", "autem", "igitur", "nam", "namque", "quidem", "vērō", "ergō", "quoque", "tamen", "etenim"))
_ASKING = frozenset(("cūr", "quāre", "quōmodo", "unde", "quandō", "quotiēns", "quō", "quantum", "quamdiū"))
STRONG = frozenset(".?!;:")


class Word:
    """A word with what its reading says, looked up once."""

    __slots__ = (
        "case", "clause", "features", "genders", "kind", "lemma", "mark", "number", "part", "place", "reading", "text",
        "token",
    )  # fmt: skip

    def __init__(self, place: tuple[int, int], text: str, reading: Candidate) -> None:
        features = reading.features
        get = features.get
        self.token, self.part = place
        self.place = 0  # among the words in order of sense
        self.text = text
        self.reading = reading
        self.features = features
        self.lemma = reading.lexeme.lemma
        self.mark = ""  # punctuation between this word and the one before: "", "," or "."
        self.case = get("Case", "")
        self.number = get("Number", "")
        self.genders = _ALL_GENDERS if self.lemma == "diēs" else _GENDERS.get(get("Gender", ""), _ALL_GENDERS)
        self.clause = 0
        form = get("VerbForm")
        kind = _VERBAL[form] if form else _KINDS.get(reading.upos, "other")
        if kind == "coordinator" and self.lemma in _SECOND:
            kind = "other"
        elif kind == "other" and self.lemma in _ASKING:
            kind = "subordinator"
        self.kind = kind

    def agrees(self, other: Word) -> bool:
        """Tell whether case, number and gender are the same."""
        return self.case == other.case and self.number == other.number and not self.genders.isdisjoint(other.genders)

    @property
    def relative(self) -> bool:
        return self.kind == "pronoun" and self.reading.lexeme.constant.get("PronType") in ("Rel", "Int")


def _cut(text: str, parts: tuple[Candidate, ...]) -> tuple[str, str]:
    """The two words of one token as they are printed: `mē` and `cum` of `mēcum`."""
    letters = len(parts[1].form)
    whole = len(text) > letters and plain(text).endswith(plain(parts[1].form))
    return (text[:-letters], text[-letters:]) if whole else (text, text)


def words_of(chosen: Sequence[tuple[Candidate, ...]], texts: Sequence[str]) -> list[Word]:
    """Return the words of a passage in the order of the sense: the `que` of `populusque` before `populus`."""
    words: list[Word] = []
    mark = "."
    for t, parts in enumerate(chosen):
        if not parts:
            text = texts[t]
            mark = "." if text[:1] in STRONG or mark == "." else "," if text.strip() else mark
            continue
        shown = _cut(texts[t], parts) if len(parts) == 2 else (texts[t],) * len(parts)
        found = [Word((t, p), shown[p], reading) for p, reading in enumerate(parts)]
        if len(found) == 2 and found[1].kind == "coordinator":
            found.reverse()
        found[0].mark = mark
        mark = ""
        words += found
    for i, word in enumerate(words):
        word.place = i
    return words
