"""Which Latin word is made from which: what grammars say, and that the table has no circles."""

import pytest

from latingloss.kin.derivations import derivation, root
from latingloss.morphology.lexicon import lexemes
from latingloss.tables import read_table
from latingloss.text.orthography import printed


# Allen and Greenough, New Latin Grammar (1903), 234-267: each suffix and prefix with an example of theirs
@pytest.mark.parametrize(
    ("made", "upos", "base"),
    [
        ("fidēlitās", "NOUN", "fidēs"), ("glōriōsus", "ADJ", "glōria"), ("rēgālis", "ADJ", "rēx"),
        ("iūstitia", "NOUN", "iūstus"), ("candidus", "ADJ", "candeō"), ("efficiō", "VERB", "faciō"),
        ("redūcō", "VERB", "dūcō"), ("clāmor", "NOUN", "clāmō"),
    ],
)  # fmt: skip
def test_words_of_one_root(made, upos, base):
    assert base in {step.base[0] for step in derivation((made, upos))}


def test_every_chain_ends_at_its_root():
    rows = read_table("kin/derivations.tsv")
    entries = {(printed(x.lemma), x.upos) for x in lexemes()}
    for lemma, upos, base, base_upos, affix in rows:
        assert {(lemma, upos), (base, base_upos)} <= entries
        assert affix.startswith("-") or affix.endswith("-")
        chain = derivation((lemma, upos))
        passed = [(lemma, upos), *(step.base for step in chain)]
        assert len(passed) == len(set(passed)), passed
        assert root((lemma, upos)) == passed[-1]
    assert len(rows) > 2000


@pytest.mark.parametrize(("one", "other"), [("porta", "portō"), ("ōs", "os"), ("mālum", "malum"), ("levis", "lēvis")])
def test_words_that_only_look_alike_have_no_common_root(one, other):
    roots = [{root((printed(x.lemma), x.upos)) for x in lexemes() if x.spelled == word} for word in (one, other)]
    assert not roots[0] & roots[1]
