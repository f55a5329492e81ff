"""Morphology: features, paradigm tables, lexicon, inflection, analysis, guesses."""

from latingloss.morphology.inflection import inflect, paradigms
from latingloss.morphology.ranking import analyze

__all__ = ["analyze", "inflect", "paradigms"]
