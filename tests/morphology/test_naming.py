"""Names of forms: the trade's, and no deponent called passive."""

import pytest

import latingloss
from latingloss.morphology.naming import form_name, is_passive
from latingloss.sheets.endings import endings_key


@pytest.mark.parametrize(
    ("form", "name"),
    [
        ("amāvissēmus", "1st person plural pluperfect subjunctive"),  # Bennett 1918, section 101
        ("amātur", "3rd person singular present passive"),  # section 102
        ("sequitur", "3rd person singular present"),  # deponents: passive in form, active in meaning, section 112
        ("rēgibus", "dative plural"),  # section 32
    ],
)
def test_a_form_has_its_name(form: str, name: str) -> None:
    assert name in [form_name(reading) for reading in latingloss.analyze(form)]


def test_no_reading_of_a_deponent_is_passive() -> None:
    """Bennett, New Latin Grammar (1918), section 112."""
    assert not any(is_passive(reading) for reading in latingloss.analyze("sequitur"))


def test_the_key_to_the_endings_tells_a_deponent_from_a_passive() -> None:
    said = {
        row.name: row.tells
        for group in endings_key([latingloss.annotate("Pastor sequitur. Agnus amatur.")])
        for row in group.rows
        if "person" in row.name
    }
    assert said["3rd person singular"] == "“he”, “she” or “it”"
    assert said["3rd person singular passive"].endswith("it is done to the subject")
