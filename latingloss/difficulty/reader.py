"""A particular reader: how hard a word is for someone who has already met it, or words of its family.

A word that a reader has met is scored as if it were as common as the commonest words; one met with another ending,
or known by a word of the same root, as somewhat commoner than it is. So the part `frequency` says for this reader
what it says for all others: how often the word was met. How much each is worth is a judgement, not a measurement.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import NamedTuple

from latingloss.difficulty.frequency import Frequencies
from latingloss.difficulty.score import (
    Weight,
    checked_weights,
    difficulty,
    frequency_reason,
    reweighed,
    scored,
    shipped_weights,
)
from latingloss.document import Difficulty, Document
from latingloss.errors import InputTypeError
from latingloss.kin.derivations import Entry, root
from latingloss.morphology.lexicon import find
from latingloss.morphology.ranking import Candidate, candidates
from latingloss.text.orthography import plain, printed
from latingloss.text.tokens import tokenize

_SAME_FORM, _SAME_WORD = 7.5, 6.7  # Zipf values that a word counts as: those of `et` and of `dīcō`
_SAME_ROOT = 0.6  # Zipf units that a word of the same root is worth
_MOST = 6.2  # Zipf value above which a word of the same root teaches nothing more


class Met(NamedTuple):
    """A word that a reader has met: its form, and the name of the text, if it has one."""

    form: str
    lemma: str
    text: str


class Reader:
    """Someone who knows some words: scores words for them. Frozen: to learn more gives a new reader.

    `known` are words, lemmas or forms, or texts already learned: strings, read word by word without their context, or
    documents that `latingloss.annotate` returned. `weights` are those that `fit_weights` learned from ratings, the
    shipped ones if None; `frequencies` those of the texts that this reader reads, such as `Frequencies.classical()`,
    all that were counted if None. Raises `InputTypeError` for anything else, `OptionError`
    if a part of the score has no weight.

    >>> from latingloss.morphology.ranking import candidates
    >>> form = candidates("noctem")[0]
    >>> for reader in (Reader(), Reader(known=["nox"]), Reader(known=["noctem"])):
    ...     print(reader.difficulty("noctem", form).parts[0].reason)
    common: about 650 in a million words
    you met nox: the same word with another ending
    you know noctem
    """

    def __init__(
        self,
        known: Iterable[str | Document] = (),
        *,
        weights: Mapping[str, Weight] | None = None,
        frequencies: Frequencies | None = None,
    ) -> None:
        if isinstance(known, str | Document):
            raise InputTypeError("known must be a list of words, texts or documents; put the one in a list")
        self._weights = checked_weights(weights)
        self._frequencies = frequencies
        self._lemmas: dict[Entry, dict[str, Met]] = {}
        self._roots: dict[Entry, Met] = {}
        for text in known:
            self._learn(text, "")

    def learned(self, text: str | Document, *, name: str = "") -> Reader:
        """Return a reader who knows the words of one text more; `name` is said in the reasons.

        >>> reader = Reader(["lux"]).learned("Vesper venit.", name="Evening")
        >>> reader.knows("lūx"), reader.knows("vesper"), reader.knows("nox")
        (True, True, False)
        """
        other = Reader(weights=self._weights, frequencies=self._frequencies)
        other._lemmas = {entry: dict(forms) for entry, forms in self._lemmas.items()}
        other._roots = dict(self._roots)
        other._learn(text, name)
        return other

    def _learn(self, text: str | Document, name: str) -> None:
        for entry, form in words_of(text):
            met = Met(form, entry[0].partition("#")[0], name)
            self._lemmas.setdefault(entry, {}).setdefault(plain(form), met)
            self._roots.setdefault(root(entry), met)

    def knows(self, lemma: str, upos: str | None = None) -> bool:
        """Tell whether a lemma, in any of its forms, was met; `upos` narrows."""
        return any(self.has_met((printed(x.lemma), x.upos)) for x in find(lemma) if upos in (None, x.upos))

    def has_met(self, entry: Entry) -> bool:
        """Tell whether a lemma, given as documents have it, with its part of speech, was met in any form."""
        return entry in self._lemmas

    def difficulty(self, form: str, candidate: Candidate) -> Difficulty:
        """Score one form in one reading for this reader; see `score.difficulty`."""
        found, lexeme = difficulty(form, candidate), candidate.lexeme
        if self._frequencies:
            zipf = round(self._frequencies.zipf(lexeme), 3)
            first = found.parts[0].model_copy(update={"value": zipf, "reason": frequency_reason(zipf)})
            found = found.model_copy(update={"parts": (first, *found.parts[1:])})
        if self._frequencies or self._weights is not shipped_weights():
            found = reweighed(found, self._weights)
        return self._if_met((printed(lexeme.lemma), lexeme.upos), form, found) if self._lemmas else found

    def familiar(self, entry: Entry, form: str, found: Difficulty) -> Difficulty:
        """Return what a beginner's score of a word becomes for this reader; what is known never makes it higher."""
        if self._weights is not shipped_weights():
            found = reweighed(found, self._weights)
        return self._if_met(entry, form, found)

    def _if_met(self, entry: Entry, form: str, found: Difficulty) -> Difficulty:
        part = found.parts[0]
        zipf, reason = self._familiar(entry, plain(form), part.value)
        if not reason:
            return found
        effect = min(part.effect, round(self._weights["frequency"].effect(zipf), 3))
        met = part.model_copy(update={"value": round(zipf, 3), "effect": effect, "reason": reason})
        return scored((met, *found.parts[1:]))

    def _familiar(self, entry: Entry, key: str, common: float) -> tuple[float, str]:
        """Return the Zipf value that a word counts as and why; no reason if the reader has met nothing like it."""
        if forms := self._lemmas.get(entry):
            if met := forms.get(key):
                return max(common, _SAME_FORM), f"you know {met.form}{_where(met)}"
            met = next(iter(forms.values()))
            return max(common, _SAME_WORD), f"you met {met.form}{_where(met)}: the same word with another ending"
        if met := self._roots.get(root(entry)):
            zipf = max(common, min(common + _SAME_ROOT, _MOST))
            return zipf, f"you know {met.lemma}{_where(met)}, of the same root"
        return common, ""


def _where(met: Met) -> str:
    return f" in {met.text}" if met.text else ""


def words_of(text: str | Document) -> Iterator[tuple[Entry, str]]:
    """Yield (lemma, part of speech) and form of every word of a text or document, names and guesses too.

    A string is read word by word, each as it most often is; raises `InputTypeError` if it is no text.

    >>> [entry for entry, form in words_of("Stellae lucent.")]
    [('stēlla', 'NOUN'), ('lūceō', 'VERB')]
    """
    if isinstance(text, Document):
        for passage in text.passages:
            for token in passage.tokens:
                yield from (((word.lemma, word.upos), word.form) for word in token.words)
        return
    if not isinstance(text, str):
        raise InputTypeError(f"known must hold words, texts or documents, not {type(text).__name__}")
    if "#" in text:  # a homograph told apart, `liber#2`
        yield from (((printed(x.lemma), x.upos), x.spelled) for x in find(text)[:1])
        return
    for span in tokenize(text):
        if span.kind == "word":
            best = candidates(span.text)[0]
            yield (printed(best.lexeme.lemma), best.lexeme.upos), span.text
