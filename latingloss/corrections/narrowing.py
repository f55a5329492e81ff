"""Which readings a correction leaves a word: of those its form can have, or else as the author says."""

from __future__ import annotations

from collections.abc import Sequence

from latingloss.corrections.models import WordCorrection, feature_text
from latingloss.morphology.endings import Features
from latingloss.morphology.inflection import forms_of
from latingloss.morphology.lexicon import Lexeme, find
from latingloss.morphology.ranking import Candidate, candidates, same_kind
from latingloss.text.orthography import plain, printed, without_lengths

# what is left out of a reading that no paradigm has, where the model needs it
_FINITE = {
    "Aspect": "Imp", "Mood": "Ind", "Number": "Sing", "Person": "3", "Tense": "Pres", "VerbForm": "Fin", "Voice": "Act",
}  # fmt: skip
_NONFINITE = {"Aspect": "Imp", "Tense": "Pres", "Voice": "Act"}


def narrows(correction: WordCorrection) -> bool:
    """Tell whether a correction says how the word is to be read."""
    return any(said is not None for said in (correction.lemma, correction.upos, correction.features))


def narrowed(correction: WordCorrection, found: Sequence[Candidate]) -> tuple[Candidate, ...]:
    """Return what a correction leaves of a form's readings; if nothing, readings made as the author says.

    A lemma with its homograph number means that one; lengths written or a lemma spelled just so come first, any
    other of the same letters next. Never empty.

    >>> from latingloss.morphology.ranking import candidates
    >>> genitive = WordCorrection(word="lunae", features={"Case": "Gen"})
    >>> [c.features["Number"] for c in narrowed(genitive, candidates("lunae"))]
    ['Sing']
    """
    lexemes = [c.lexeme for c in found]
    if correction.lemma:
        lexemes = _of_lemma(lexemes, correction.lemma)
        found = [c for c in found if c.lexeme in lexemes] or found
    fitting = _fitting(found, correction) if lexemes else []
    return tuple(_as_spelled(c, correction.lemma) for c in fitting or _made(correction, found, lexemes))


def impossible(correction: WordCorrection, form: str) -> str:
    """Return why a form cannot be read as a correction says, as far as is known; empty if it can.

    What is not in the lexicon may be anything.

    >>> impossible(WordCorrection(word="salva", lemma="amo"), "salva")
    "'salva' is no form of amo"
    >>> impossible(WordCorrection(word="noctem", features={"Case": "Gen"}), "noctem")
    "'noctem' cannot be Case=Gen"
    """
    found = candidates(form)
    if correction.lemma:
        lexemes = _of_lemma([c.lexeme for c in found], correction.lemma)
        if not lexemes and _of_lemma(find(correction.lemma), correction.lemma):
            return f"{form!r} is no form of {correction.lemma}"
        found = tuple(c for c in found if c.lexeme in lexemes)
    if all(c.guessed for c in found) or _fitting(found, correction):
        return ""
    said = filter(None, (correction.upos, feature_text(correction.features or {})))
    return f"{form!r} cannot be {' '.join(said)}"


def _as_spelled(candidate: Candidate, lemma: str | None) -> Candidate:
    """Return a reading with the lemma as the author writes it, if the lexicon does not know better."""
    lexeme = candidate.lexeme
    return candidate._replace(lexeme=lexeme._replace(lemma=lemma)) if lemma and candidate.guessed else candidate


def _of_lemma(lexemes: Sequence[Lexeme], lemma: str) -> list[Lexeme]:
    for key in (str, without_lengths, plain):
        wanted = key(printed(lemma))
        named = [x for x in lexemes if wanted in (key(printed(x.lemma)), key(printed(x.spelled)))]
        if named:
            return named
    return []


def _fitting(pool: Sequence[Candidate], said: WordCorrection) -> list[Candidate]:
    """Return the readings that have all features said, relabelled where only the name of their kind differs."""
    having = [c for c in pool if all(_has(c.features, name, value) for name, value in (said.features or {}).items())]
    same = [c for c in having if said.upos in (None, c.upos)] or [c for c in having if _alike(said.upos, c.upos)]
    return [c._replace(upos=said.upos or c.upos, features=c.features | (said.features or {})) for c in same]


def _has(features: Features, name: str, value: str) -> bool:
    return {*value.split(",")} <= {*features.get(name, "").split(",")}


def _alike(said: str | None, upos: str) -> bool:
    return said is None or same_kind(said, upos)


def _made(said: WordCorrection, found: Sequence[Candidate], lexemes: Sequence[Lexeme]) -> list[Candidate]:
    """Return readings that the form cannot have by itself: from the lemma's paradigm, or from what is said alone."""
    first, guessed = found[0], not lexemes or all(c.guessed for c in found)
    if not lexemes and said.lemma and (known := _of_lemma(find(said.lemma), said.lemma)):
        lexemes, guessed = known, False
    cells = [
        Candidate(x, first.form, "VERB" if "VerbForm" in f and x.upos != "AUX" else x.upos, f, 1.0, guessed)
        for x in dict.fromkeys(lexemes)
        for _, f in forms_of(x)
    ]
    cells = cells or [c._replace(lexeme=_new(said, c), guessed=True) for c in found]
    fitting = _fitting(cells, said)
    if not fitting:
        lexeme, upos = cells[0].lexeme, said.upos or cells[0].upos
        if not _alike(said.upos, lexeme.upos):
            lexeme, guessed = _new(said, cells[0]), True
        fitting = [Candidate(lexeme, first.form, upos, _completed(said.features or {}), 1.0, guessed)]
    likeness = [len(c.features.items() & first.features.items()) for c in fitting]
    nearest = [c for c, like in zip(fitting, likeness, strict=True) if like == max(likeness)]
    return list({(c.lexeme.lemma, *sorted(c.features.items())): c for c in nearest}.values())


def _new(said: WordCorrection, like: Candidate) -> Lexeme:
    return Lexeme(said.lemma or like.lexeme.lemma, said.upos or like.upos, "")


def _completed(features: Features) -> Features:
    form = features.get("VerbForm", "Fin" if "Mood" in features else "")
    return (_FINITE if form == "Fin" else _NONFINITE if form in ("Inf", "Part") else {}) | features
