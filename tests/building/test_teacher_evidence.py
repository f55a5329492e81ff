"""Evidence: pairs of readings at a distance, found as one would by hand, and how they agree."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from latingloss.building.teacher.evidence import FAR, LEVELS, VERBS, Evidence
from latingloss.building.teacher.traits import CASES, CLASSES, TraitTable
from latingloss.context.columns import Numbering, Types, lay_out

FORMS = str.split("vesper venit et stella prima lucet rosae templum gratia xyzzyq duo")


def found_in(batch):
    types = Types(Numbering.growing())
    columns = lay_out([[types.id(form) for form in sentence] for sentence in batch], types)
    return columns, Evidence.of(columns, TraitTable(types).of(columns))


@settings(max_examples=25)
@given(st.lists(st.lists(st.sampled_from(FORMS), max_size=5), max_size=4), st.sampled_from(FAR))
def test_pairs_are_those_of_words_at_the_distance_in_the_same_sentence(batch, distance):
    columns, evidence = found_in(batch)
    rows_of = [range(s, s + n) for s, n in zip(columns.start.tolist(), columns.readings.tolist(), strict=True)]
    expected, alone = set(), set()
    for word, rows in enumerate(rows_of):
        other = word + distance
        if 0 <= other < len(rows_of) and columns.sentence[other] == columns.sentence[word]:
            expected |= {(a, b) for a in rows for b in rows_of[other]}
        else:
            alone |= set(rows)
    pairs, edge = evidence.pairs[distance], evidence.edges[distance]
    found = list(zip(pairs.row.tolist(), pairs.other.tolist(), strict=True))
    assert len(found) == len(set(found)) and set(found) == expected
    assert sorted(edge.tolist()) == sorted(alone)
    assert pairs.agreement.min(initial=0) >= 0
    assert pairs.agreement.max(initial=0) < len(CLASSES) ** 2 * LEVELS


@settings(max_examples=25)
@given(st.lists(st.lists(st.sampled_from(FORMS), max_size=8), max_size=4), st.sampled_from(VERBS))
def test_the_nearest_verb_on_a_side_is_the_one_that_a_walk_finds(batch, side):
    columns, evidence = found_in(batch)
    forms = [(s, form) for s, sentence in enumerate(batch) for form in sentence]
    expected = set()
    for word, (sentence, _) in enumerate(forms):
        way = range(word + 1, len(forms)) if side == "verb after" else range(word - 1, -1, -1)
        verb = next((i for i in way if forms[i] in ((sentence, "venit"), (sentence, "lucet"))), None)
        if verb is not None:
            expected.add((word, verb))
    pairs, edge = evidence.pairs[side], evidence.edges[side]
    found = set(zip(columns.word[pairs.row].tolist(), columns.word[pairs.other].tolist(), strict=True))
    assert found == expected
    assert {word for word, _ in found}.isdisjoint(columns.word[edge].tolist())


def levels(first, second, distance=1):
    """The highest level at which a reading of the first word agrees with one of the second, and all levels met."""
    _, evidence = found_in([[first, second]])
    case, pairs = evidence.traits.case, evidence.pairs[distance]
    return {
        (CASES[case[a]], CASES[case[b]]): int(level) % LEVELS
        for a, b, level in zip(pairs.row, pairs.other, pairs.agreement, strict=True)
    }


# An adjective agrees with its noun in gender, number and case: Bennett, New Latin Grammar (1918), 234.
@pytest.mark.parametrize(
    ("noun", "adjective", "cases", "level"),
    [
        ("urbem", "magnam", ("Acc", "Acc"), 3),
        ("urbem", "magnum", ("Acc", "Acc"), 2),  # another gender
        ("urbem", "magnas", ("Acc", "Acc"), 1),  # another number
        ("urbem", "magna", ("Acc", "Nom"), 0),  # another case
    ],
)
def test_agreement_of_noun_and_adjective(noun, adjective, cases, level):
    assert levels(noun, adjective)[cases] == level


# The verb agrees with its subject in number and person: Bennett (1918), 254.
@pytest.mark.parametrize(
    ("subject", "verb", "level"), [("puellam", "cantat", 0), ("puellae", "cantant", 3), ("puellae", "cantat", 1)]
)
def test_agreement_of_subject_and_verb(subject, verb, level):
    found = levels(subject, verb)
    assert max(v for (case, _), v in found.items() if case in ("Nom", "Acc")) == level


def test_agreement_is_mutual():
    forward, back = levels("urbem", "magnam"), levels("urbem", "magnam", -1)
    assert forward == {(a, b): level for (b, a), level in back.items()}
