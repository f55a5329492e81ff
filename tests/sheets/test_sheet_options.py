"""Options that are not allowed are told at once, with what is."""

import pytest

from latingloss.errors import OptionError
from latingloss.sheets import SheetOptions


@pytest.mark.parametrize(
    ("option", "value", "allowed"),
    [
        ("paper", "A5", "'A4' or 'Letter'"),
        ("size", "huge", "'normal' or 'large'"),
        ("tradition", "welsh", "'ecclesiastical' or 'classical'"),
        ("parts", ("literal", "index"), "'review'"),
        ("parts", "literal", "tuple"),
        ("title", " ", "title is empty"),
        ("title", None, "string"),
    ],
)
def test_a_wrong_option_is_named_with_what_is_allowed(option: str, value: object, allowed: str) -> None:
    with pytest.raises(OptionError, match=option) as error:
        SheetOptions(**{option: value})  # type: ignore[arg-type]
    assert allowed in str(error.value)
