"""Builds `data/kin/derivations.tsv`: which word of the lexicon is made from which other.

    python -m latingloss.building.kin_derivations ../shared

Source: the Latin derivations of UniMorph (Batsuren and others 2021, MorphyNet), CC BY-SA 3.0. A pair is kept only if
both words are in the lexicon, neither may be another word, and the spelling bears the derivation out.
"""

from __future__ import annotations

import re
import sys
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

from latingloss.kin.correspondences import stems
from latingloss.morphology.analysis import analyses
from latingloss.morphology.lexicon import Lexeme, find, lexemes
from latingloss.text.orthography import plain, printed

OUT = Path(__file__).parents[1] / "data" / "kin" / "derivations.tsv"
_CLASSES = {"V": "VERB", "N": "NOUN", "ADJ": "ADJ", "ADV": "ADV"}
_EMPTY = {"the", "and", "with", "make", "for", "one", "made", "give", "take", "put"}
_VOWELS = "aeiouy"
_SHORTEST = 3  # letters of a stem; shorter ones begin too many words
_BARE = 3  # length of `-o`, `-a`, `-or`: an ending and no suffix, which words without kinship share (`porta`, `portō`)

Row = tuple[str, str, str, str, str]  # lemma, part of speech, lemma of the base, its part of speech, affix


def entry_of(form: str, upos: str) -> Lexeme | None:
    """Return the one lexeme of a class that a citation form, lemma or infinitive, may be; None if there are several."""
    found = {x.lemma: x for x in find(form) if x.upos == upos}
    if not found and upos == "VERB":
        every = lexemes()
        readings = [a for a in analyses(plain(form)) if a.features.get("VerbForm") == "Inf"]
        found = {every[a.lexeme].lemma: every[a.lexeme] for a in readings}
    return next(iter(found.values())) if len(found) == 1 else None


def bears_out(base: Lexeme, made: Lexeme, affix: str) -> bool:
    """Tell whether the spelling shows that a word is made from a base by an affix.

    Behind a prefix the consonants of the base's stem must stand, for its vowel may be weakened (`faciō`, `efficiō`);
    before a suffix must stand one of its stems.

    >>> faciō, efficiō, facilis = (find(lemma)[0] for lemma in ("faciō", "efficiō", "facilis"))
    >>> bears_out(faciō, efficiō, "ex-"), bears_out(faciō, facilis, "-ilis"), bears_out(facilis, efficiō, "ex-")
    (True, True, False)
    """
    spelled = plain(made.spelled)
    if affix.endswith("-"):
        own, whole = _consonants(plain(base.spelled)), _consonants(spelled)
        return spelled[0] == affix[0] and len(own) > 1 and whole != own and whole.endswith(own)
    return any(len(stem) >= _SHORTEST and spelled.startswith(stem) for stem in stems(base))


def _means_alike(base: Lexeme, made: Lexeme) -> bool:
    """Tell whether the glosses of two words share a word, or the first four letters of one."""
    one, other = ({word[:4] for word in re.findall("[a-z]{3,}", x.gloss.lower())} for x in (base, made))
    return bool((one & other) - _EMPTY)


def _consonants(key: str) -> str:
    return "".join(c for c in key if c not in _VOWELS)


def rows(shared: Path) -> Iterator[Row]:
    """Yield the derivations that hold, a word once, with the longest base that it is made from."""
    found: dict[tuple[str, str], list[tuple[int, Row]]] = defaultdict(list)
    for line in (shared / "checks" / "unimorph-lat-derivations.tsv").read_text(encoding="utf-8").splitlines():
        base_form, form, classes, affix = line.split("\t")
        before, _, after = (_CLASSES.get(c, "") for c in classes.partition(":"))
        base, made = entry_of(base_form, before), entry_of(form, after)
        if base and made and base is not made and bears_out(base, made, affix):
            if affix[0] == "-" and len(affix) <= _BARE and not _means_alike(base, made):
                continue
            row = printed(made.lemma), made.upos, printed(base.lemma), base.upos, plain(affix)
            found[row[:2]].append((len(plain(base.spelled)), row))
    for key in sorted(found):
        yield max(found[key])[1]


def main(shared: Path) -> None:
    """Write the table."""
    lines = ["lemma\tupos\tbase\tbase_upos\taffix", *("\t".join(row) for row in rows(shared))]
    OUT.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
