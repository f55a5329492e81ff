"""The review list: complete, ranked, and silent about what would print the same."""

from latingloss.document import Document, Link, Passage, Reading, RenderingToken, Token, Word
from latingloss.sheets import review, sheet_html

GENITIVE, DATIVE = {"Case": "Gen", "Number": "Sing"}, {"Case": "Dat", "Number": "Sing"}


def _reading(case: dict[str, str], probability: float) -> Reading:
    return Reading(lemma="lūna", upos="NOUN", features=case, form="lūnae", gloss="moon", probability=probability)


def _token(confidence: float = 1.0, *others: Reading, guessed: bool = False, at: int = 0) -> Token:
    word = Word(
        form="lunae", marked_form="lūnae", lemma="lūna", upos="NOUN", features=GENITIVE, gloss="of the moon",
        confidence=confidence, guessed=guessed, alternatives=others,
    )  # fmt: skip
    return Token(text="lunae", start=at, end=at + 5, kind="word", words=(word,))


def _document(*tokens: Token, english: str | None = None, links: tuple[Link, ...] = ()) -> Document:
    at, rendering = 0, []
    for text in (english or "").split():
        rendering.append(RenderingToken(text=text, start=at, end=at + len(text), kind="word"))
        at += len(text) + 1
    source = " ".join(token.text for token in tokens)
    passage = Passage(start=0, end=len(source), tokens=tokens, rendering=tuple(rendering), links=links)
    return Document(source=source, english=english, passages=(passage,))


def test_the_least_certain_word_comes_first() -> None:
    document = _document(
        _token(0.7, _reading(DATIVE, 0.3)), _token(0.4, _reading(DATIVE, 0.6), at=6), _token(0.99, at=12)
    )
    found = review(document)
    assert [(item.passage, item.token, item.what) for item in found] == [
        (1, 1, "uncertain reading"),
        (1, 0, "uncertain reading"),
    ]
    assert found[0].alternatives == ("dative singular (60%)",)
    assert found[0].risk > found[1].risk


def test_a_reading_of_another_word_names_it() -> None:
    other = Reading(lemma="lūnō", upos="VERB", features={}, form="lūnae", gloss="bend; curve", probability=0.4)
    assert review(_document(_token(0.6, other)))[0].alternatives == ("lūnō “bend”, verb (40%)",)


def test_a_reading_that_would_print_the_same_is_no_doubt() -> None:
    assert review(_document(_token(0.5, _reading({**GENITIVE, "Gender": "Fem"}, 0.5)))) == ()


def test_a_guessed_word_is_riskier_than_one_without_a_link() -> None:
    document = _document(_token(), _token(guessed=True, at=6), english="moonlight", links=(Link(latin=1, english=0),))
    assert [(item.token, item.what) for item in review(document)] == [(1, "not in the lexicon"), (0, "no English word")]


def test_doubts_about_one_word_are_one_item_and_add_up() -> None:
    plain, doubled = (
        review(_document(_token(0.7, _reading(DATIVE, 0.3), guessed=guessed)))[0] for guessed in (False, True)
    )
    assert doubled.risk > max(plain.risk, 0.6)
    assert "certainty" in doubled.why and "from its ending" in doubled.why


def test_a_rendering_without_links_and_a_missing_one_are_told() -> None:
    assert [item.what for item in review(_document(_token(), english="of the moon"))] == ["rendering not tied"]
    assert [item.what for item in review(_document(_token(), english=""))] == ["no rendering"]
    assert review(_document(_token())) == ()


def test_free_english_is_told_but_words_of_grammar_are_not() -> None:
    document = _document(_token(), english="of the silver moon", links=(Link(latin=0, english=3),))
    assert [(item.what, item.text) for item in review(document)] == [("free English", "silver")]


def test_least_risk_is_the_caller_s_choice() -> None:
    document = _document(_token(0.9, _reading(DATIVE, 0.1)))
    assert review(document) == ()
    assert len(review(document, least_risk=0.05)) == 1


def test_the_sheet_shows_the_list() -> None:
    page = sheet_html(_document(_token(0.4, _reading(DATIVE, 0.6))))
    assert "uncertain reading" in page and "dative singular (60%)" in page
    assert "not an approved translation" in page
