"""The models: what annotation returns, from the whole document down to one reading of one word.

All are frozen pydantic v2 models, so `Document.model_validate_json(doc.model_dump_json()) == doc`. Feature
names and values are those of Universal Dependencies v2. Offsets count characters (code points) from 0, the end
excluded, in the string that was given.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

SCHEMA_VERSION = "1.1"

Kinship = Literal["borrowed", "through French", "family", "shared root"]
Probability = Annotated[float, Field(ge=0.0, le=1.0)]


class Record(BaseModel):
    """Common behaviour of the models: frozen, and no field that is not documented."""

    model_config = ConfigDict(frozen=True, extra="forbid")


class Reading(Record):
    """One way to read a form: `rosae` as genitive singular of `rosa`."""

    lemma: str = Field(description="dictionary form with vowel lengths, `rosa`; homographs carry #1, #2")
    upos: str = Field(description="part of speech, a Universal Dependencies tag")
    features: dict[str, str] = Field(default_factory=dict, description="UD features, {'Case': 'Gen', ...}")
    form: str = Field(description="the form with vowel lengths, as this reading spells it")
    gloss: str = Field(default="", description="short English glosses of the lemma, commonest first, joined by '; '")
    probability: Probability = Field(description="of this reading among all of the form; those of a form sum to 1")
    guessed: bool = Field(default=False, description="True if the lemma is not in the lexicon")


class Word(Record):
    """What is parsed: the whole token, or the host or the enclitic in it."""

    form: str = Field(description="as written, `populum` or `que`")
    marked_form: str = Field(description="with vowel lengths, as the chosen reading spells it")
    lemma: str = Field(description="dictionary form with vowel lengths; homographs carry #1, #2")
    upos: str = Field(description="part of speech, a Universal Dependencies tag")
    features: dict[str, str] = Field(default_factory=dict, description="UD features, {'Case': 'Gen', ...}")
    gloss: str = Field(description="literal sense of this form in English, `of the people`")
    senses: str = Field(default="", description="glosses of the lemma, commonest first, joined by '; '")
    reason: str = Field(default="", description="why this case or person, in plain English")
    confidence: Probability = Field(description="probability of the chosen reading")
    guessed: bool = Field(default=False, description="True if the lemma is not in the lexicon")
    alternatives: tuple[Reading, ...] = Field(default=(), description="other readings of at least 0.001, best first")
    note: str = Field(default="", description="what the author of the corrections adds to this word")
    corrected: bool = Field(default=False, description="True if the corrections say anything of this word")


class DifficultyPart(Record):
    """One part of a difficulty score."""

    name: Literal["frequency", "length", "cognate", "shape", "clusters", "readings"] = Field(
        description="what was measured"
    )
    value: float = Field(
        description="as measured: Zipf value (raised for a word the reader has met), letters, cognate distance 0..1, "
        "letters changed 0..1, consonants behind another, ways to read the form"
    )
    effect: float = Field(description="what it adds to the score before mapping to 0..1; above 0 is harder")
    reason: str = Field(description="in plain English, `rare: about 3 in a million words`")


class Difficulty(Record):
    """How hard a word is for an English-speaking beginner."""

    score: Probability = Field(description="0 easy .. 1 hard")
    parts: tuple[DifficultyPart, ...] = Field(description="what the score is made of")

    def _repr_html_(self) -> str:
        """Return the parts as Jupyter shows them."""
        from latingloss.sheets.notebook import difficulty_html

        return difficulty_html(self)

    @property
    def reasons(self) -> tuple[str, ...]:
        """The reasons in plain English, those that make it hardest first."""
        return tuple(part.reason for part in sorted(self.parts, key=lambda p: -p.effect) if part.reason)


class Relative(Record):
    """An English word that comes from a Latin word or shares its origin."""

    word: str = Field(description="the English word")
    kind: Kinship = Field(
        description="borrowed: taken from the Latin word; through French: came from it by way of French; family: "
        "comes from a relative of the Latin word; shared root: native English, of the same Indo-European root"
    )
    chain: str = Field(default="", description="its way, `māter > māternālis > maternal`; empty if not recorded")
    zipf: float = Field(description="how common the English word is: log10 of uses in 10^9 words")
    drift: str = Field(default="", description="a warning if the English word has drifted in meaning, else empty")


class Token(Record):
    """What is printed: a word with its enclitics, a number, a mark or a sign."""

    text: str = Field(description="as printed; source[start:end] == text")
    start: int = Field(ge=0, description="offset of the first character in the source")
    end: int = Field(ge=0, description="offset behind the last character in the source")
    kind: Literal["word", "number", "punctuation", "sign"] = Field(description="what is printed")
    words: tuple[Word, ...] = Field(default=(), description="host, then enclitic; empty unless kind is word")
    difficulty: Difficulty | None = Field(default=None, description="of the host word; None for punctuation")
    emphasis: bool = Field(default=False, description="True if worth picking out on the page")
    relatives: tuple[Relative, ...] = Field(default=(), description="English relatives, best known first")


class RenderingToken(Record):
    """A word or mark of the English rendering."""

    text: str = Field(description="as printed; english[start:end] == text")
    start: int = Field(ge=0, description="offset of the first character in the rendering")
    end: int = Field(ge=0, description="offset behind the last character in the rendering")
    kind: Literal["word", "number", "punctuation", "sign"] = Field(description="what is printed")


class Link(Record):
    """A Latin token and an English token that renders it."""

    latin: int = Field(ge=0, description="index in Passage.tokens")
    english: int = Field(ge=0, description="index in Passage.rendering")
    confidence: Probability = Field(default=1.0, description="probability that the link is right")


class Passage(Record):
    """A line or verse with its rendering."""

    start: int = Field(ge=0, description="offset in the source")
    end: int = Field(ge=0, description="offset behind the last character in the source")
    stanza: int = Field(default=0, ge=0, description="counts from 0; blank lines separate stanzas")
    tokens: tuple[Token, ...] = Field(description="in the Latin's order; only white space lies between them")
    rendering: tuple[RenderingToken, ...] = Field(default=(), description="tokens of the English rendering")
    links: tuple[Link, ...] = Field(default=(), description="which English token renders which Latin token")

    def _repr_html_(self) -> str:
        """Return the passage as Jupyter shows it."""
        from latingloss.sheets.notebook import passage_html

        return passage_html(self)

    def english_of(self, latin: int) -> tuple[int, ...]:
        """Return the indices of the English tokens linked to a Latin token, in English order."""
        return tuple(sorted(link.english for link in self.links if link.latin == latin))

    def literal(self) -> str:
        """Return the word-for-word line: each word's gloss in the Latin's own order, `and` before the word with -que.

        >>> from latingloss import annotate
        >>> annotate("Stellae lucent.").passages[0].literal()
        'stars | shine'
        """
        return " | ".join(" ".join(w.gloss for w in reversed(t.words)) for t in self.tokens if t.words)

    def in_english_order(self) -> str:
        """Return the Latin words in the order of the rendering, for a learner whom the Latin's order confuses.

        A word that nothing renders stays beside the word before it in the Latin, a preposition or the first word
        beside the word after it. Without a rendering the order is the Latin's own.

        >>> from latingloss import annotate
        >>> annotate("Agnum quaerit pastor.", "The shepherd seeks the lamb.").passages[0].in_english_order()
        'pastor quaerit Agnum'
        """
        places: dict[int, list[int]] = {}
        for link in self.links:
            places.setdefault(link.latin, []).append(link.english)
        groups: list[tuple[float, list[str]]] = []
        waiting: list[str] = []
        for i, token in enumerate(self.tokens):
            if not token.words:
                continue
            if i in places:
                groups.append((sum(places[i]) / len(places[i]), [*waiting, token.text]))
                waiting = []
            elif waiting or not groups or token.words[0].upos == "ADP":
                waiting.append(token.text)
            else:
                groups[-1][1].append(token.text)
        if waiting:
            groups.append((float("inf"), waiting))
        return " ".join(text for _, texts in sorted(groups, key=lambda group: group[0]) for text in texts)


class Document(Record):
    """A Latin text with its annotation, and with its English rendering if one was given."""

    schema_version: str = Field(default=SCHEMA_VERSION, description="of these models, as in the JSON Schema")
    source: str = Field(description="the Latin as given; source[token.start:token.end] == token.text")
    english: str | None = Field(default=None, description="the rendering as given")
    engine: str = Field(default="built-in", description="name of the engine that chose the readings")
    passages: tuple[Passage, ...] = Field(description="in the order of the source")
    unmatched_corrections: tuple[str, ...] = Field(
        default=(),
        description="corrections whose passage, word or English was not found, or whose word has no such form (it is "
        "read so all the same), in plain English",
    )

    def _repr_html_(self) -> str:
        """Return the text as Jupyter shows it."""
        from latingloss.sheets.notebook import document_html

        return document_html(self)


class Pronunciation(Record):
    """How one word sounds."""

    word: str = Field(description="as given")
    tradition: Literal["ecclesiastical", "classical"] = Field(description="church Latin or restored classical")
    ipa: str = Field(description="with stress, syllable and length marks: ˈɡrat.t͡si.a")
    syllables: tuple[str, ...] = Field(description="of the spelling, lower case, without length marks")
    stress: int = Field(ge=0, description="index of the stressed syllable, from 0")
    respelling: str = Field(description="for an English reader, stressed syllable in capitals: GRAH-tsee-ah")
    certain: bool = Field(description="False if the stress depends on a vowel length that was not written")


class Form(Record):
    """One cell of a paradigm."""

    form: str = Field(description="with vowel lengths")
    features: dict[str, str] = Field(description="UD features of the cell")


class Paradigm(Record):
    """Every form of one lemma."""

    lemma: str = Field(description="dictionary form with vowel lengths")
    upos: str = Field(description="part of speech, a Universal Dependencies tag")
    gloss: str = Field(description="short English glosses, joined by '; '")
    forms: tuple[Form, ...] = Field(description="every cell, compound tenses included")

    def _repr_html_(self) -> str:
        """Return the paradigm as Jupyter shows it."""
        from latingloss.sheets.notebook import paradigm_html

        return paradigm_html(self)

    def all_forms(self) -> tuple[str, ...]:
        """Return every distinct form, in the paradigm's order."""
        return tuple(dict.fromkeys(cell.form for cell in self.forms))

    def cells(self, **features: str) -> tuple[str, ...]:
        """Return the forms whose features include those given: `cells(Case="Gen", Number="Plur")`."""
        return tuple(c.form for c in self.forms if all(c.features.get(k) == v for k, v in features.items()))
