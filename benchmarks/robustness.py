"""The matrix of bad inputs: input, what happens, and the test that holds it to that."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from benchmarks import bad_files, bad_inputs
from benchmarks.bad_inputs import BadInput
from latingloss.errors import LatinglossError

ROWS = (*bad_inputs.rows(), *bad_files.formats(), *bad_files.files())
TEST = "tests/robustness/test_bad_inputs.py::test_a_bad_input"
_LONGEST = 140  # characters of a message


def matrix() -> Iterator[str]:
    """Yield the lines of a Markdown table, one a bad input, each tried now, and the sum below.

    Raises `AssertionError` if anything of a text is lost, and lets through any error that is not of latingloss.
    """
    yield f"Tests: `{TEST}[name]`\n"
    yield "| input | what happens | name |"
    yield "|---|---|---|"
    for row in ROWS:
        given, said = (text.replace("|", r"\|") for text in (row.given, what_happens(row)))
        yield f"| {given} | {said} | {row.name} |"
    yield f"\n{len(ROWS)} inputs, nothing lost"


def what_happens(row: BadInput) -> str:
    """Try a bad input and say what happens; raise `AssertionError` if it is not what should."""
    with TemporaryDirectory() as folder:
        try:
            said = row.act(Path(folder))
        except LatinglossError as error:
            if row.error is None or not isinstance(error, row.error):
                raise AssertionError(f"{row.name}: {type(error).__name__}: {error}") from error
            return f"{type(error).__name__}: {' '.join(str(error).replace(folder, '').split())[:_LONGEST]}"
    if row.error:
        raise AssertionError(f"{row.name}: no {row.error.__name__}, but {said}")
    return said


if __name__ == "__main__":
    print("\n".join(matrix()))
