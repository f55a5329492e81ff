"""What a word becomes for someone who has met it: never harder, the nearer the easier, and a course so ordered."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from latingloss import annotate
from latingloss.difficulty.course import course, lesson
from latingloss.difficulty.frequency import Frequencies
from latingloss.difficulty.reader import Reader
from latingloss.difficulty.score import Weight, difficulty, shipped_weights
from latingloss.errors import InputTypeError, OptionError
from latingloss.morphology.lexicon import lexemes
from latingloss.morphology.ranking import candidates
from latingloss.text.orthography import without_lengths

FORMS = [without_lengths(x.spelled) for x in lexemes()[::150]]
FORMS += str.split("noctem noctis laudem laudibus laudatio efficio fecit tulit fidelitas et non xyzzyq dominusque")
some_forms = st.lists(st.sampled_from(FORMS), max_size=6)
DOCUMENTS = {
    "hymn": annotate("Stella lucet et luna lucet."),
    "psalm": annotate("Stellae lucent; tenebrae fugiunt."),
    "charter": annotate("Praedecessorum nostrorum immunitates confirmamus."),
}


def score(reader, form):
    return reader.difficulty(form, candidates(form)[0]).score


@settings(max_examples=60)
@given(some_forms, some_forms, st.sampled_from(FORMS))
def test_a_score_never_rises_by_learning(known, more, form):
    before = Reader(known)
    after = before.learned(" ".join(more))
    assert score(after, form) <= score(before, form) <= score(Reader(), form)


@settings(max_examples=30)
@given(some_forms, st.sampled_from(FORMS), st.floats(-1, 1))
def test_nor_by_weights_that_count_common_words_hard(known, form, weight):
    weights = shipped_weights() | {"frequency": Weight(5.0, 1.0, weight)}
    assert score(Reader(known, weights=weights), form) <= score(Reader(weights=weights), form)


def test_a_reader_who_knows_nothing_scores_like_a_beginner():
    for form in FORMS:
        assert Reader().difficulty(form, candidates(form)[0]) == difficulty(form, candidates(form)[0])


def test_the_nearer_a_known_word_the_easier():
    readers = [Reader(), Reader(["fidelis"]), Reader(["fidelitas"]), Reader(["fidelitatem"])]
    scores = [score(reader, "fidelitatem") for reader in readers]
    assert scores == sorted(scores, reverse=True) and len(set(scores)) == 4
    reasons = [r.difficulty("fidelitatem", candidates("fidelitatem")[0]).parts[0].reason for r in readers[1:]]
    assert reasons == [
        "you know fidēlis, of the same root",
        "you met fidelitas: the same word with another ending",
        "you know fidelitatem",
    ]


def test_learning_gives_a_new_reader_and_names_the_text():
    reader = Reader()
    after = reader.learned(DOCUMENTS["hymn"], name="the hymn")
    assert not reader.knows("stella") and after.knows("stella") and after.knows("stēlla", "NOUN")
    assert not after.knows("stella", "VERB")
    found = after.difficulty("stellam", candidates("stellam")[0])
    assert found.parts[0].reason == "you met Stella in the hymn: the same word with another ending"


def test_homographs_are_told_apart():
    """By vowel lengths, or by number; a reader of books is no reader of free men."""
    assert Reader(["līber"]).has_met(("līber", "ADJ")) and not Reader(["līber"]).has_met(("liber", "NOUN"))
    numbered = next(x.lemma for x in lexemes() if x.lemma.endswith("#2"))
    known = Reader([numbered])
    assert known.knows(numbered) and not known.knows(numbered.replace("#2", "#1"))


@pytest.mark.parametrize("known", ["nox", DOCUMENTS["hymn"], [1], [b"nox"]])
def test_what_is_no_list_of_texts_is_refused(known):
    with pytest.raises(InputTypeError, match="known must"):
        Reader(known)


def test_weights_that_lack_a_part_are_refused():
    lacking = {part: weight for part, weight in shipped_weights().items() if part != "clusters"}
    with pytest.raises(OptionError, match="lack clusters"):
        Reader(weights=lacking)


def test_own_frequencies_count():
    sailors = Frequencies.counted(["Navis in mari est. Nautae navem in mare ducunt."] * 50)
    reader = Reader(frequencies=sailors)
    assert score(reader, "nautae") < score(Reader(), "nautae")
    assert score(reader, "sacerdotes") >= score(Reader(), "sacerdotes")
    part = reader.difficulty("nautae", candidates("nautae")[0]).parts[0]
    assert part.effect == pytest.approx(shipped_weights()["frequency"].effect(part.value), abs=2e-3)


def test_a_course_has_every_text_once_and_new_words_only_once():
    order = course(DOCUMENTS)
    assert sorted(text.name for text in order) == sorted(DOCUMENTS)
    new = [lemma for text in order for lemma in text.new]
    assert len(new) == len(set(new))
    every = {w.lemma for d in DOCUMENTS.values() for p in d.passages for t in p.tokens for w in t.words}
    assert set(new) == every
    assert order == course(DOCUMENTS)


def test_each_step_of_a_course_is_the_easiest_then():
    reader, left = Reader(["tenebrae"]), dict(DOCUMENTS)
    for step in course(DOCUMENTS, reader):
        found = {name: lesson(name, document, reader) for name, document in left.items()}
        assert step == found[step.name]
        assert step.difficulty <= min(text.difficulty for text in found.values()) + 1e-9
        reader = reader.learned(left.pop(step.name), name=step.name)


def test_what_was_learned_makes_the_next_text_easier():
    alone = lesson("psalm", DOCUMENTS["psalm"], Reader())
    after = lesson("psalm", DOCUMENTS["psalm"], Reader([DOCUMENTS["hymn"]]))
    assert after.difficulty < alone.difficulty and len(after.new) < len(alone.new)


def test_an_empty_course_and_no_course():
    assert course({}) == ()
    with pytest.raises(InputTypeError):
        course([DOCUMENTS["hymn"]])
