"""Literal glosses: what one Latin form says in English, word for word.

The sense is the author's own English word where the rendering has one, else the first gloss of the lexicon; the
ending then says how it is put: `of the city`, `let us adore`, `about to come`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from latingloss.alignment.literal.nominals import adjective, degree, noun
from latingloss.alignment.literal.pronouns import pronoun
from latingloss.alignment.literal.sense import sense_of
from latingloss.alignment.literal.use import UNKNOWN as UNKNOWN
from latingloss.alignment.literal.use import Place as Place
from latingloss.alignment.literal.use import Use
from latingloss.alignment.literal.verbs import verb
from latingloss.morphology.lexicon import Lexeme

ANYWHERE = Place()


def literal_gloss(
    lexeme: Lexeme,
    *,
    upos: str,
    features: dict[str, str],
    rendering: Sequence[str] = (),
    old_english: bool = False,
    place: Place = ANYWHERE,
) -> str:
    """Return what a Latin form literally says in English; `(?)` if neither lexicon nor rendering tells.

    `rendering` is the English that renders this word, `place` what the passage around does to the gloss, and
    `old_english` gives thou, ye and their verb forms.

    >>> from latingloss.morphology.lexicon import find
    >>> literal_gloss(find("urbs")[0], upos="NOUN", features={"Case": "Gen", "Number": "Sing"})
    'of the city'
    >>> literal_gloss(find("clāmō")[0], upos="VERB", features={"Aspect": "Imp", "Mood": "Ind", "Number": "Plur",
    ...     "Person": "1", "Tense": "Pres", "VerbForm": "Fin", "Voice": "Act"}, rendering=["we", "weep"])
    'we weep'
    """
    said = tuple(re.sub("['’]s?$", "", word) for word in rendering)
    use = Use(lexeme, upos, features, said, tuple(map(str.lower, said)), old_english, place)
    if "VerbForm" in features:
        return verb(use)
    if upos in ("PRON", "DET"):
        return pronoun(use)
    sense = sense_of(use)
    if not sense:
        return UNKNOWN
    if upos in ("NOUN", "PROPN"):
        return noun(use, sense)
    if upos in ("ADJ", "NUM"):
        return adjective(use, sense)
    return degree(use, sense)
