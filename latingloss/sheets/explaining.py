"""One word explained in plain text, for the terminal: what it may be, how it is said, its kin, how hard it is."""

from __future__ import annotations

from collections.abc import Iterator

from latingloss.difficulty.score import difficulty
from latingloss.document import Reading, Relative
from latingloss.errors import LatinglossError
from latingloss.kin import relatives
from latingloss.morphology import analyze
from latingloss.morphology.enclitics import split
from latingloss.morphology.ranking import candidates
from latingloss.pronunciation import pronounce
from latingloss.sheets.wording import dictionary_form, grammar_of

_LIKELY = 0.01
_MOST_RELATIVES = 8


def explain(word: str) -> str:
    """Explain one printed word: its readings out of context, pronunciation, English relatives and difficulty.

    Raises TextError if there is no letter or more than one word.

    >>> print(explain("noctem").splitlines()[0])
    noctem
    """
    word = word.strip()
    readings = analyze(word)
    host, *tails = split(word) or (word,)
    best = analyze(host)[0]
    marked = host if best.guessed else best.form  # with its vowel lengths, which tell the stress
    spoken = marked + "".join(tails) if word.lower().endswith("".join(tails)) else word
    return "\n".join((word, *_spoken(spoken, tails), *_parts(host, tails, readings), ""))


def _spoken(word: str, tails: list[str]) -> Iterator[str]:
    for tradition in ("ecclesiastical", "classical"):
        try:
            said = pronounce(word, tradition, enclitic="".join(tails))
        except LatinglossError:
            if not tails:
                raise
            said = pronounce(word, tradition)  # viden: the tail does not stand in the word as it is
        doubt = "" if said.certain else "   (stress not certain from this spelling)"
        yield f"  {tradition:<15}{said.respelling}   [{said.ipa}]{doubt}"


def _parts(host: str, tails: list[str], readings: tuple[Reading, ...]) -> Iterator[str]:
    if tails:
        yield from ("", f"  {host} with -{', -'.join(tails)}")
        readings = analyze(host)
    shown = [r for r in readings if r.probability >= _LIKELY]
    for lemma, upos in dict.fromkeys((r.lemma, r.upos) for r in shown):
        of_lemma = [r for r in shown if (r.lemma, r.upos) == (lemma, upos)]
        yield from ("", f"  {dictionary_form(lemma, upos)}: {of_lemma[0].gloss or 'not in the lexicon'}")
        yield from (f"    {r.probability:4.0%}  {r.form}  {grammar_of(r)}" for r in of_lemma)
        if found := relatives(lemma)[:_MOST_RELATIVES]:
            yield f"    English kin: {', '.join(map(_kin, found))}"
    best = candidates(host)[0]
    hardness = difficulty(host, best)
    yield from ("", f"  difficulty {hardness.score:.2f} (0 easy, 1 hard): {'; '.join(hardness.reasons)}")


def _kin(relative: Relative) -> str:
    return f"{relative.word} ({relative.kind})" + (f", but {relative.drift}" if relative.drift else "")
