"""Which words are picked out: the hardest first, each once, never function words."""

from math import ceil

from hypothesis import given
from hypothesis import strategies as st

from latingloss.difficulty.emphasis import emphasized
from latingloss.document import Difficulty, Token, Word

UPOS = ("NOUN", "VERB", "ADJ", "ADV", "NUM", "PROPN", "ADP", "CCONJ", "PRON", "DET", "AUX", "SCONJ", "PART", "INTJ")
# open classes of Universal Dependencies v2, and numerals
TAUGHT = set(UPOS[:6])


def token(lemma: str, upos: str, score: float) -> Token:
    word = Word(form=lemma, marked_form=lemma, lemma=lemma, upos=upos, gloss="", confidence=1)
    return Token(text=lemma, start=0, end=1, kind="word", words=(word,), difficulty=Difficulty(score=score, parts=()))


MARK = Token(text=",", start=0, end=1, kind="punctuation")
words = st.builds(token, st.sampled_from("abcdefgh"), st.sampled_from(UPOS), st.floats(0, 1))
passages = st.lists(st.one_of(words, st.just(MARK)), max_size=12)


@given(passages, st.floats(0, 1))
def test_within_the_share_and_only_words_that_are_taught(tokens, share):
    found = emphasized(tokens, set(), share=share)
    assert len(found) <= ceil(share * sum(bool(t.words) for t in tokens))
    assert {tokens[i].words[0].upos for i in found} <= TAUGHT
    assert len({tokens[i].words[0].lemma for i in found}) == len(found)


@given(passages, st.floats(0, 1))
def test_nothing_harder_is_passed_over(tokens, share):
    found = emphasized(tokens, set(), share=share)
    if not found:
        return
    least = min(tokens[i].difficulty.score for i in found)
    lemmas = {tokens[i].words[0].lemma for i in found}
    for t in tokens:
        if t.words and t.words[0].upos in TAUGHT and t.difficulty.score > least:
            assert t.words[0].lemma in lemmas


@given(passages, st.floats(0.01, 1))
def test_what_was_picked_out_before_is_not_again(tokens, share):
    seen: set[tuple[str, str]] = set()
    first = emphasized(tokens, seen, share=share)
    picked = {tokens[i].words[0].lemma for i in first}
    assert {lemma for lemma, _ in seen} == picked
    again = emphasized(tokens, seen, share=share)
    assert not {tokens[i].words[0].lemma for i in again} & picked


def test_a_lemma_comes_again_with_another_form():
    seen = {("rosa", "rosae")}
    assert emphasized([token("rosa", "NOUN", 0.9)], seen, share=1) == {0}
    assert seen == {("rosa", "rosae"), ("rosa", "rosa")}


def test_at_least_one_where_there_is_one_to_teach():
    assert emphasized([token("rosa", "NOUN", 0.01)], set(), share=0.01) == {0}
    assert emphasized([token("et", "CCONJ", 0.9)], set(), share=1) == frozenset()
    assert emphasized([], set(), share=1) == frozenset()


def test_easy_words_are_left_alone_beside_a_harder_one():
    tokens = [token("a", "NOUN", 0.2), token("b", "NOUN", 0.9), token("c", "NOUN", 0.3)]
    assert emphasized(tokens, set(), share=1) == {1}
