"""What the Latin says of itself that links depend on: which preposition governs a word, which verb has an auxiliary."""

from __future__ import annotations

from collections.abc import Sequence

from latingloss.alignment.units import Unit

_FORMS_OF_SUM = "sum.VERB"

_OTHERS = frozenset(["is.PRON", "ille.PRON", "iste.PRON", "ipse.PRON", "hic.PRON"])
_PRONOUNS = {
    "i": frozenset({"ego.PRON"}),
    "we": frozenset({"nos.PRON"}),
    "you": frozenset({"tu.PRON", "uos.PRON"}),
    "he": _OTHERS,
    "she": _OTHERS,
    "it": _OTHERS,
    "they": _OTHERS,
}
_BEFORE = 4  # units between a subject pronoun and its verb at most


def own_subject(units: Sequence[Unit], verb: int, pronoun: str) -> int | None:
    """Return the Latin pronoun before a verb that an English subject pronoun renders, if the Latin has one."""
    lexemes = _PRONOUNS.get(pronoun, frozenset())
    for i in range(verb - 1, max(-1, verb - _BEFORE - 2), -1):
        unit = units[i]
        if unit.is_kind("verb", odds=0.9):
            return None
        nominative = (r.odds for r in unit.readings if r.lexeme in lexemes and r.features.get("Case") == "Nom")
        if sum(nominative) > 0.3:
            return i
    return None


def governors(units: Sequence[Unit]) -> dict[int, int]:
    """Return for each unit in the phrase of a preposition the preposition's index: `in magna urbe` both -> in."""
    governed: dict[int, int] = {}
    for i, unit in enumerate(units):
        if not unit.is_kind("adp"):
            continue
        for k in range(i + 1, min(len(units), i + 5)):
            other = units[k]
            if other.is_kind("conj", "verb", odds=0.9):
                break
            genitive = other.has_case("Gen")
            if genitive < 0.9:
                governed.setdefault(k, i)
            if (other.is_kind("noun", odds=0.5) and genitive < 0.9) or (
                other.is_kind("pron", odds=0.5) and genitive < 0.5
            ):
                break
    return governed


def auxiliaries(units: Sequence[Unit]) -> dict[int, int]:
    """Return for each participle of a periphrastic verb the index of its form of `sum`: `natum est`."""
    paired: dict[int, int] = {}
    for i, unit in enumerate(units):
        if not any(r.lexeme == _FORMS_OF_SUM and r.features.get("VerbForm") in ("Fin", "Inf") for r in unit.readings):
            continue
        for k in (i - 1, i + 1, i - 2, i + 2, i - 3):
            if 0 <= k < len(units) and k not in paired and _is_periphrastic(units[k]):
                paired[k] = i
                break
    return paired


def _is_periphrastic(unit: Unit) -> bool:
    fitting = (
        r.features.get("VerbForm") == "Part"
        and r.features.get("Aspect") in ("Perf", "Prosp")
        and r.features.get("Case") in ("Nom", "Acc")
        for r in unit.readings
    )
    return unit.is_kind("part", odds=0.3) and any(fitting)
