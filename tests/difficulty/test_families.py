"""Families of a text: the ending that changed, what it says, and lemmas of one root."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from latingloss import annotate, inflect
from latingloss.difficulty.families import families
from latingloss.text.orthography import plain


def forms_of(text, lemma):
    found = [m for family in families(annotate(text)) for m in family.members if m.lemma == lemma]
    return {(shown.form, shown.ending, shown.why) for member in found for shown in member.forms}


# Bennett, New Latin Grammar (1918): rēx 29, stella 20 (porta), videō 103 and 118, ācer 69
@pytest.mark.parametrize(
    ("text", "lemma", "shown"),
    [
        (
            "Rex venit. Regem vident.",
            "rēx",
            {("rēx", "", "nominative singular"), ("rēgem", "em", "accusative singular")},
        ),
        (
            "Stella lucet. Lucem stellarum vident.",
            "stēlla",
            {("stēlla", "a", "nominative singular"), ("stēllārum", "ārum", "genitive plural")},
        ),
        (
            "Videt regem. Vidit reginam.",
            "videō",
            {("videt", "et", "3rd person singular present"), ("vīdit", "it", "3rd person singular perfect")},
        ),
    ],
)
def test_the_ending_that_changed_and_why(text, lemma, shown):
    assert shown <= forms_of(text, lemma)


def test_deponents_are_not_called_passive():
    assert all("passive" not in why for _, _, why in forms_of("Sequor regem. Sequitur regina.", "sequor"))


def test_lemmas_of_one_root_stand_together():
    """Allen and Greenough, New Latin Grammar (1903), 238 (-tās) and 267 (con-, re-)."""
    found = families(annotate("Fidelis est; fidelitatem amat. Reducit eum et conducit."))
    by_root = {family.root: [member.lemma for member in family.members] for family in found}
    assert by_root["fidēs"] == ["fidēlis", "fidēlitās"]
    assert by_root["dūcō"] == ["redūcō", "condūcō"]
    member = next(m for family in found for m in family.members if m.lemma == "fidēlitās")
    assert member.made == "fidēlitās < fidēlis < fidēs (-tas, -ilis)"


@pytest.mark.parametrize(
    "text", ["Porta patet; portat onus.", "Populus cadit; populi currunt.", "Os aperit; ossa videt."]
)
def test_words_that_only_look_alike_do_not(text):
    assert all(len(family.members) == 1 for family in families(annotate(text)))


def test_one_form_makes_no_family_and_function_words_none():
    assert families(annotate("Vesper venit.")) == ()
    assert families(annotate("Et is et eius et eum.")) == ()


LEMMAS = ["rēx", "stēlla", "dominus", "videō", "audiō", "fortis", "manus", "diēs", "sequor", "corpus"]


@settings(max_examples=40)
@given(st.sampled_from(LEMMAS), st.data())
def test_a_form_is_a_stem_and_its_ending(lemma, data):
    forms = [f for f in inflect(lemma).all_forms() if " " not in f]
    text = " ".join(data.draw(st.lists(st.sampled_from(forms), min_size=2, max_size=5)))
    for family in families(annotate(text)):
        assert sum(len(member.forms) for member in family.members) > 1
        for member in family.members:
            for shown in member.forms:
                assert shown.form.endswith(shown.ending)
                assert plain(shown.form) in plain(text)
                assert shown.passages == tuple(sorted(set(shown.passages)))
