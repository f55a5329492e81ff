"""Every form that `inflect` gives is found by `analyze` with that reading: no table but the other's is the source.

Compound tenses are left out: `analyze` takes one word.
"""

from __future__ import annotations

import pytest

from latingloss import analyze, inflect, paradigms
from latingloss.document import Form, Paradigm
from latingloss.morphology.lexicon import lexemes


def _lemmas(step: int) -> list[str]:
    return sorted({lexeme.lemma.partition("#")[0] for lexeme in lexemes()})[::step]


def _found(paradigm: Paradigm, cell: Form) -> bool:
    return any(
        (reading.lemma, reading.upos) == (paradigm.lemma, paradigm.upos)
        and all(
            {*value.split(",")} <= {*reading.features.get(name, "").split(",")} for name, value in cell.features.items()
        )
        for reading in analyze(cell.form)
    )


def _missing(step: int) -> list[str]:
    return [
        f"{paradigm.lemma}: {cell.form} {cell.features}"
        for lemma in _lemmas(step)
        for paradigm in paradigms(lemma)
        for cell in paradigm.forms
        if " " not in cell.form and not _found(paradigm, cell)
    ]


def test_of_every_fiftieth_lemma_all_cells() -> None:
    assert len(_lemmas(50)) > 300
    assert _missing(50) == []


@pytest.mark.heavy
def test_of_all_lemmas_all_cells() -> None:
    assert _missing(1) == []


def test_a_form_of_another_word_is_not_found() -> None:
    paradigm = inflect("rosa")
    assert _found(paradigm, Form(form="rosārum", features={"Case": "Gen"}))
    assert not _found(paradigm, Form(form="noctis", features={"Case": "Gen"}))
    assert not _found(paradigm, Form(form="rosārum", features={"Case": "Dat"}))
