"""What is not a text is refused with a message that says what to do."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss.errors import InputTypeError, LatinglossError, TextError
from latingloss.text.checking import check


@pytest.mark.parametrize("value", [b"lux", bytearray(b"lux"), memoryview(b"lux")])
def test_bytes_are_to_be_decoded(value):
    with pytest.raises(InputTypeError, match=rf"latin: got {type(value).__name__}; decode it"):
        check(value, "latin")


@pytest.mark.parametrize("value", [None, 3, ["lux"], object()])
def test_other_types_are_named(value):
    with pytest.raises(TypeError, match=f"english: got {type(value).__name__}"):
        check(value, "english")


@pytest.mark.parametrize(
    ("value", "message"),
    [("", "empty"), (" \n\t\u00a0", "white space"), ("123 …", "no Latin letter"), ("λόγος", "no Latin letter")],
)
def test_nothing_to_read(value, message):
    with pytest.raises(TextError, match=message):
        check(value, "latin")


def test_too_long_points_to_the_corpus_way():
    with pytest.raises(ValueError, match=r"10,000,000 characters.*5,000,000.*latingloss\.corpus"):
        check("lux rex dux " * 833_333 + "lux ", "latin")
    with pytest.raises(TextError, match="11 characters"):
        check("lux orta es", "latin", most_characters=10)
    assert check("lux orta e", "latin", most_characters=10)


@given(st.one_of(st.text(st.characters()), st.binary(), st.none()))
def test_only_errors_of_the_family(value):
    try:
        assert check(value, "latin") == value
    except LatinglossError as error:
        assert str(error).startswith("latin: ")
