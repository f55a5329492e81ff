"""From a chosen reading to the published word: literal gloss and reason, from what was found around it."""

from __future__ import annotations

from collections.abc import Sequence

from latingloss.alignment.literal import literal_gloss
from latingloss.context.relations import Relations
from latingloss.document import Word
from latingloss.engines import Choice
from latingloss.morphology.ranking import Candidate, reading
from latingloss.morphology.reasons import Evidence, reason
from latingloss.text.orthography import plain, printed

LEAST_SHOWN = 0.001  # readings less likely than this are left out of a word's alternatives
_THOU = frozenset(("thou", "thee", "thy", "thine", "ye", "hath", "doth", "art", "shalt", "wilt"))


def old_english(rendering: Sequence[str]) -> bool:
    """Tell whether a rendering says thou: then the glosses do too."""
    return any(word.lower() in _THOU for word in rendering)


def word_of(choice: Choice, *, relations: Relations, rendering: Sequence[str] = (), old: bool = False) -> Word:
    """Return the published word of a choice; `rendering` is the English that is linked to it, in order."""
    (best, confidence), *others = choice.readings
    return Word(
        form=choice.form,
        marked_form=printed(best.form),
        lemma=printed(best.lexeme.lemma),
        upos=best.upos,
        features=best.features,
        gloss=_gloss(best, relations, rendering, old=old),
        senses=best.lexeme.gloss,
        reason=_reason(best, relations, rendering),
        confidence=min(1.0, confidence),
        guessed=best.guessed,
        alternatives=tuple(reading(c, probability=p) for c, p in others if p >= LEAST_SHOWN),
    )


def _gloss(best: Candidate, found: Relations, rendering: Sequence[str], *, old: bool) -> str:
    nominal = best.upos in ("ADJ", "DET") or best.features.get("VerbForm") in ("Part", "Gdv")
    return literal_gloss(
        best.lexeme,
        upos=best.upos,
        features=best.features,
        rendering=rendering,
        old_english=old,
        subject=found.subject is not None,
        preposition=found.preposition is not None,
        conjunction=found.conjunction is not None and plain(found.conjunction.reading.lexeme.lemma) in _WISHED,
        substantive=(found.agrees_with is None and found.auxiliary is None) if nominal else None,
        head=found.auxiliary.reading.lexeme if found.auxiliary else None,
    )


_WISHED = frozenset(("ut", "ne", "cum", "si", "uti", "quominus", "quin", "nisi", "quo"))


def _reason(best: Candidate, found: Relations, rendering: Sequence[str]) -> str:
    evidence = Evidence(
        form=printed(best.form),
        preposition=found.preposition.text if found.preposition else "",
        verb=found.verb.text if found.verb else "",
        governs=found.verb.reading.lexeme.governs if found.verb else "",
        agrees_with=found.agrees_with.text if found.agrees_with else "",
        belongs_to=found.owner.text if found.owner else "",
        subject=found.subject.text if found.subject else "",
        conjunction=found.conjunction.text if found.conjunction else "",
        english=" ".join(rendering) if best.features.get("Case") else "",
    )
    return reason(upos=best.upos, features=best.features, lexeme=best.lexeme, evidence=evidence)
