"""Single-word facts: pronunciation, cognates, paradigms, relatives."""

from __future__ import annotations

from collections.abc import Iterator

import latingloss
from benchmarks.figures import Figure
from benchmarks.sources import Sources, tool
from latingloss.morphology.lexicon import lexemes

_TRADITIONS = (("ecclesiastical", "eccl", "<= 1"), ("classical", "clas", "<= 2"))


def words(sources: Sources) -> Iterator[Figure]:
    """Yield what `score_words.py` says."""
    module = tool(sources, "words")
    for tradition, short, aim in _TRADITIONS:
        found = module.pronunciation(sources.check(f"wikipron-lat-{short}-broad-sample.tsv"), tradition)
        note = f"{found['words']:,} headwords"
        yield Figure(f"words: {tradition}, phone error rate", found["phone_error_rate"], "%", aim, note)
        yield Figure(f"words: {tradition}, whole words right", found["whole_words"], "%")
    found = module.cognates(sources.check("cognet-lat-eng-sample.tsv"))
    note = f"area under the curve times 100, {found['pairs']} pairs; string similarity gives 84"
    yield Figure("words: cognate distance, AUC", round(100 * found["auc"], 2), "%", ">= 93", note)
    for part in ("declensions", "conjugations"):
        found = module.paradigms(sources.check(f"bennett_{part}_clean.tsv"))
        slips = [pair for pair in found["first"] if pair[1].startswith("-")]  # an ending left without its word
        missing = [pair for pair in found["first"] if pair not in slips]
        note = f"of {found['cells']:,} cells; transcription's slips left out: {_listed(slips)}"
        note += f"; missing: {_listed(missing)}" if missing else ""
        yield Figure(f"words: Bennett's {part}, forms missing", found["missing"] - len(slips), "forms", "<= 0", note)


def _listed(pairs: list[tuple[str, str]]) -> str:
    return ", ".join(f"{form} ({head})" for head, form in pairs) or "none"


def relatives(sources: Sources) -> Iterator[Figure]:
    """Yield how many lemmas of the lexicon have an English relative."""
    lemmas = sorted({lexeme.lemma for lexeme in lexemes()})
    if sources.quick:
        lemmas = lemmas[::20]
    with_one = sum(bool(latingloss.relatives(lemma)) for lemma in lemmas)
    yield Figure("relatives: lemmas with one", with_one, "lemmas", "" if sources.quick else ">= 4000")
    note = f"of {len(lemmas):,} lemmas; homographs count apart"
    yield Figure("relatives: share of lemmas with one", round(100 * with_one / len(lemmas), 1), "%", note=note)
