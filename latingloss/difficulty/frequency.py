"""How common Latin words are, on the Zipf scale (van Heuven et al. 2014): log10 of uses in 10^9 words.

Counted over the Clementine Vulgate and the learn treebanks, about 650,000 words; an unseen word has half a count.
`Frequencies` has them for texts of one kind: church, classical, or those of your own.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping
from functools import cache
from math import log10
from typing import Literal, NamedTuple

from latingloss.errors import TextError
from latingloss.morphology.enclitics import split
from latingloss.morphology.lexicon import Lexeme
from latingloss.morphology.priors import lexeme_count
from latingloss.morphology.ranking import candidates
from latingloss.tables import built_once, read_table
from latingloss.text.checking import check_string
from latingloss.text.orthography import plain
from latingloss.text.tokens import tokenize

_UNSEEN = 0.5
PRIOR_WORDS = 5_000  # words of the shipped counts put to a corpus: of 500 .. 50,000 best from half to half of CIRCSE
LABELLED = 3.0  # how many times a word of a treebank is in the shipped counts; see `building.statistics`


@built_once
def _form_counts() -> dict[str, int]:
    return {form: int(count) for form, count in read_table("statistics/forms.tsv")}


@built_once
def corpus_words() -> int:
    """Return how many running words were counted."""
    return sum(int(count) for _, count in read_table("statistics/forms.tsv"))


def zipf(count: float, total: float) -> float:
    """Return the Zipf value of a count among a total of running words, smoothed by half a count.

    >>> round(zipf(100, 1_000_000), 2)
    5.0
    """
    return log10((count + _UNSEEN) / (total + _UNSEEN) * 1e9)


def form_zipf(form: str) -> float:
    """Return how common a form is as spelled, vowel lengths and u/v aside.

    >>> form_zipf("et") > 7 > form_zipf("sagittam")
    True
    """
    return zipf(_form_counts().get(plain(form), 0), corpus_words())


def lexeme_zipf(lexeme: Lexeme) -> float:
    """Return how common a lexeme is, all its forms together (their readings shared out by expectation)."""
    return zipf(lexeme_count(lexeme) - _UNSEEN, corpus_words())


@cache
def _domain(name: Literal["church", "classical"]) -> tuple[dict[tuple[str, str], float], int]:
    """Return the counts and the number of words of a domain; church is what all counts are without the treebanks'."""
    counts: dict[tuple[str, str], float] = {}
    if name == "church":
        counts = {(lemma, upos): float(count) for lemma, upos, count in read_table("statistics/lexemes.tsv")}
    for lemma, upos, classical, charters in read_table("statistics/domains.tsv"):
        if name == "classical":
            counts[lemma, upos] = float(classical)
        else:
            labelled = LABELLED * (int(classical) + int(charters))
            counts[lemma, upos] = max(0.0, counts.get((lemma, upos), 0.0) - labelled)
    return counts, round(sum(counts.values()))


class Frequencies(NamedTuple):
    """How common lexemes are in texts of one kind: counts by lemma and part of speech, and how many words there were.

    What a small corpus says of rare words is little, so the shipped counts go in as if 5,000 words of them had been
    read besides (a Dirichlet prior); what is in neither has half a count of the shipped ones.

    >>> from latingloss.morphology.lexicon import find
    >>> sea, town = find("mare")[0], find("urbs")[0]
    >>> sailors = Frequencies.counted(["Mare altum est, mare magnum, et navis in mari."])
    >>> sailors.zipf(sea) > lexeme_zipf(sea), sailors.zipf(town) < lexeme_zipf(town) + 0.01
    (True, True)
    """

    counts: Mapping[tuple[str, str], float]
    words: int

    @classmethod
    def church(cls) -> Frequencies:
        """Return the frequencies of church Latin: the Clementine Vulgate, 610,000 words."""
        return cls(*_domain("church"))

    @classmethod
    def classical(cls) -> Frequencies:
        """Return the frequencies of classical Latin, from few words: three tragedies of Seneca, Tacitus' Germania.

        They are the 13,600 words of the treebank UD Latin-CIRCSE (CC BY-SA 4.0) that the lexicon has: enough to tell
        what is common in poetry and history and rare in church, or the other way round, not to rank rare words.

        >>> from latingloss.morphology.lexicon import find
        >>> church, classical = Frequencies.church(), Frequencies.classical()
        >>> [classical.zipf(find(lemma)[0]) > church.zipf(find(lemma)[0]) for lemma in ("thalamus", "discipulus")]
        [True, False]
        """
        return cls(*_domain("classical"))

    @classmethod
    def counted(cls, texts: Iterable[str]) -> Frequencies:
        """Count a corpus, text by text: a form counts for its lexemes by how likely each is without the context.

        Raises `TextError` if there is no word in it, `InputTypeError` if a text is no string.
        """
        forms: Counter[str] = Counter()
        for text in texts:
            check_string(text, "texts")
            forms.update(span.text for span in tokenize(text) if span.kind == "word")
        counts: dict[tuple[str, str], float] = defaultdict(float)
        for form, n in forms.items():
            for part in filter(None, split(form) or (form,)):
                for found in candidates(part):
                    counts[found.lexeme.lemma, found.lexeme.upos] += n * found.prior
        if not counts:
            raise TextError("texts: there is no word in them; give at least one text with Latin words")
        return cls(dict(counts), sum(forms.values()))

    def zipf(self, lexeme: Lexeme) -> float:
        """Return how common a lexeme is in these texts, on the Zipf scale."""
        general = 10 ** lexeme_zipf(lexeme) / 1e9
        own = self.counts.get((lexeme.lemma, lexeme.upos), 0.0)
        return log10((own + PRIOR_WORDS * general) / (self.words + PRIOR_WORDS) * 1e9)


def per_million(value: float) -> str:
    """Say a Zipf value in words.

    >>> per_million(5.0), per_million(2.5)
    ('about 100 in a million words', 'less than 1 in a million words')
    """
    times = 10 ** (value - 3)
    if times < 1:
        return "less than 1 in a million words"
    digits = 10 ** max(0, len(str(int(times))) - 2)
    return f"about {round(times / digits) * digits:,} in a million words"
