"""The two lines a passage gives for a learner: word for word, and the Latin in the order of the English."""

from __future__ import annotations

from latingloss.document import Link, Passage, RenderingToken, Token, Word


def word(form: str, gloss: str, upos: str = "NOUN") -> Word:
    return Word(form=form, marked_form=form, lemma=form, upos=upos, gloss=gloss, confidence=1.0)


def passage(latin: list[tuple[Word, ...]], english: str, *links: tuple[int, int]) -> Passage:
    tokens = tuple(
        Token(
            text="".join(w.form for w in words) or ".",
            start=i,
            end=i + 1,
            kind="word" if words else "punctuation",
            words=words,
        )
        for i, words in enumerate(latin)
    )
    rendering = tuple(RenderingToken(text=t, start=i, end=i + 1, kind="word") for i, t in enumerate(english.split(" ")))
    return Passage(
        start=0, end=9, tokens=tokens, rendering=rendering, links=tuple(Link(latin=a, english=b) for a, b in links)
    )


AGNUM, QUAERIT, PASTOR = word("agnum", "lamb"), word("quaerit", "seeks", "VERB"), word("pastor", "shepherd")


def test_literal_keeps_the_latin_order_and_puts_and_first() -> None:
    que = word("que", "and", "CCONJ")
    assert passage([(AGNUM,), (PASTOR, que), (QUAERIT,), ()], "").literal() == "lamb | and shepherd | seeks"


def test_english_order() -> None:
    found = passage(
        [(AGNUM,), (QUAERIT,), (PASTOR,)], "the shepherd seeks a lamb", (0, 4), (0, 3), (1, 2), (2, 0), (2, 1)
    )
    assert found.in_english_order() == "pastor quaerit agnum"


def test_words_without_a_link_stay_beside_their_neighbour() -> None:
    ad, autem = word("ad", "to", "ADP"), word("autem", "but", "CCONJ")
    found = passage([(ad,), (AGNUM,), (autem,), (PASTOR,)], "the shepherd to the lamb", (1, 4), (3, 1))
    assert found.in_english_order() == "pastor ad agnum autem"
    assert (
        passage([(autem,), (AGNUM,), (PASTOR,)], "shepherd lamb", (1, 1), (2, 0)).in_english_order()
        == "pastor autem agnum"
    )


def test_every_word_comes_once_and_without_a_rendering_in_its_own_order() -> None:
    plain = passage([(AGNUM,), (QUAERIT,), (PASTOR,), ()], "")
    assert plain.in_english_order() == "agnum quaerit pastor"
    assert passage([()], "").in_english_order() == "" == passage([()], "").literal()
