"""latingloss: read, align and score Latin for beginners.

The public names are resolved on first use, so that importing the package loads no data and no heavy library.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

__version__ = "0.1.0"

_HOME = {
    "annotate": "pipeline",
    "annotate_tokens": "pipeline",
    "Annotator": "pipeline",
    "align": "alignment",
    "analyze": "morphology",
    "paradigms": "morphology",
    "inflect": "morphology",
    "relatives": "kin",
    "cognate_distance": "kin",
    "pronounce": "pronunciation",
    "Reader": "difficulty.reader",
    "course": "difficulty.course",
    "families": "difficulty.families",
    "fit_weights": "difficulty.fitting",
    "Frequencies": "difficulty.frequency",
    "Corrections": "corrections",
    "Document": "document",
    "Passage": "document",
    "Token": "document",
    "Word": "document",
    "Reading": "document",
    "Link": "document",
    "Paradigm": "document",
    "Pronunciation": "document",
    "LatinglossError": "errors",
}
__all__ = [*_HOME, "__version__"]

if TYPE_CHECKING:
    from latingloss.alignment import align as align
    from latingloss.corrections import Corrections as Corrections
    from latingloss.difficulty.course import course as course
    from latingloss.difficulty.families import families as families
    from latingloss.difficulty.fitting import fit_weights as fit_weights
    from latingloss.difficulty.frequency import Frequencies as Frequencies
    from latingloss.difficulty.reader import Reader as Reader
    from latingloss.document import Document as Document
    from latingloss.document import Link as Link
    from latingloss.document import Paradigm as Paradigm
    from latingloss.document import Passage as Passage
    from latingloss.document import Pronunciation as Pronunciation
    from latingloss.document import Reading as Reading
    from latingloss.document import Token as Token
    from latingloss.document import Word as Word
    from latingloss.errors import LatinglossError as LatinglossError
    from latingloss.kin import cognate_distance as cognate_distance
    from latingloss.kin import relatives as relatives
    from latingloss.morphology import analyze as analyze
    from latingloss.morphology import inflect as inflect
    from latingloss.morphology import paradigms as paradigms
    from latingloss.pipeline import Annotator as Annotator
    from latingloss.pipeline import annotate as annotate
    from latingloss.pipeline import annotate_tokens as annotate_tokens
    from latingloss.pronunciation import pronounce as pronounce


def __getattr__(name: str) -> Any:
    if name not in _HOME:
        raise AttributeError(f"module 'latingloss' has no attribute {name!r}")
    value = getattr(import_module(f"latingloss.{_HOME[name]}"), name)
    globals()[name] = value
    return value


def __dir__() -> list[str]:
    return sorted({*globals(), *_HOME})
