"""The matrix of bad inputs: `python -m benchmarks.robustness` prints it, here each row is a test."""

from __future__ import annotations

import pytest

from benchmarks import robustness
from benchmarks.bad_inputs import BadInput, kept
from benchmarks.robustness import ROWS, matrix, what_happens
from latingloss import annotate
from latingloss.document import Link
from latingloss.errors import FormatError, TextError


@pytest.mark.parametrize("row", ROWS, ids=[row.name for row in ROWS])
def test_a_bad_input(row: BadInput) -> None:
    said = what_happens(row)
    assert said.startswith(f"{row.error.__name__}: ") if row.error else said


def test_there_are_at_least_sixty_each_under_its_own_name() -> None:
    assert len({row.name for row in ROWS}) == len({row.given for row in ROWS}) == len(ROWS) >= 60


def test_what_is_lost_is_noticed() -> None:
    document = annotate("Lux | lucet.", "Light shines.")
    assert kept(document).startswith("annotated: 4 tokens in 1 passages")
    (passage,) = document.passages
    for change in (
        {"tokens": passage.tokens[1:]},
        {"tokens": passage.tokens[:-1]},
        {"tokens": (passage.tokens[0].model_copy(update={"start": 1}), *passage.tokens[1:])},
        {"links": (Link(latin=9, english=0),)},
    ):
        with pytest.raises(AssertionError):
            kept(document.model_copy(update={"passages": (passage.model_copy(update=change),)}))


def test_another_outcome_than_the_one_promised_is_noticed() -> None:
    def refuse(_: object) -> str:
        raise TextError("no")

    for row in (
        BadInput("x", "not refused", lambda _: "read", FormatError),
        BadInput("x", "refused", refuse),
        BadInput("x", "refused by another", refuse, FormatError),
    ):
        with pytest.raises(AssertionError):
            what_happens(row)


def test_the_matrix_prints(monkeypatch: pytest.MonkeyPatch) -> None:
    rows = (
        BadInput("bars", "a|b", lambda _: "c|d"),
        BadInput("none", "nothing", lambda _: str(annotate("")), TextError),
    )
    monkeypatch.setattr(robustness, "ROWS", rows)
    lines = list(matrix())
    assert lines[3:5] == [
        "| a\\|b | c\\|d | bars |",
        "| nothing | TextError: latin: the text is empty; give at least one word | none |",
    ]
    assert lines[-1] == "\n2 inputs, nothing lost"
