"""Options that are not allowed are told at once, with what is."""

import pytest

from latingloss.errors import OptionError
from latingloss.sheets import SheetOptions


@pytest.mark.parametrize(
    ("option", "value", "allowed"),
    [
        ("paper", "A3", "'A4', 'Letter' or 'A5'"),
        ("size", "huge", "'normal', 'children' or 'large'"),
        ("arrangement", "circle", "'interlinear' or 'lines'"),
        ("word_order", "size", "'alphabet' or 'text'"),
        ("columns", (), "'latin'"),
        ("columns", "latin", "tuple"),
        ("columns", ("latin", "greek"), "'rendering'"),
        ("columns", ("latin", "latin"), "each once"),
        ("tradition", "welsh", "'ecclesiastical' or 'classical'"),
        ("parts", ("notes", "index"), "'review'"),
        ("parts", "notes", "tuple"),
        ("exercises", ("juggling",), "'recitation'"),
        ("variant", "one", "whole number"),
        ("length", 0, "more than 0"),
        ("length", "1:30", "seconds"),
        ("marks", (2.0, 1.0), "later than the one before"),
        ("marks", (-1.0,), "from 0 on"),
    ],
)
def test_a_wrong_option_is_named_with_what_is_allowed(option: str, value: object, allowed: str) -> None:
    with pytest.raises(OptionError, match=option) as error:
        SheetOptions(**{option: value})  # type: ignore[arg-type]
    assert allowed in str(error.value)
