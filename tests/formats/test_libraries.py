"""Documents of Stanza, spaCy and CLTK: tokens, sentences and offsets are theirs, the rest is as ever.

With the real libraries where they are installed; nothing of theirs is run but what cuts a text. CLTK's objects, of
which only fields are read, are also put together by hand after its documentation (1.5, `Doc` and `Word`).
"""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pydantic import BaseModel

from latingloss import annotate, annotate_tokens
from latingloss.document import Document
from latingloss.errors import InputTypeError, LatinglossError, TextError
from latingloss.formats.libraries import from_cltk, from_spacy, from_stanza
from latingloss.pipeline import Annotator

_TEXT = "  Stellae  lucent,\npopulusque vigilat.\n\nNox (longa) venit 🙂."


def _check(document: Document, source: str) -> None:
    """Nothing but white space lies outside the tokens, and each is the slice at its offsets."""
    assert document.source == source
    at = 0
    for passage in document.passages:
        assert (passage.start, passage.end) == (passage.tokens[0].start, passage.tokens[-1].end)
        for token in passage.tokens:
            assert token.start >= at and not source[at : token.start].strip()
            assert source[token.start : token.end] == token.text
            at = token.end
    assert not source[at:].strip()


def _word(string: str, sentence: int) -> SimpleNamespace:
    return SimpleNamespace(string=string, index_sentence=sentence)


def _cltk(raw: str | None, words: list[SimpleNamespace], normalized: str | None = None) -> SimpleNamespace:
    return SimpleNamespace(raw=raw, normalized_text=normalized, words=words)


@pytest.fixture
def cut() -> Any:
    spacy = pytest.importorskip("spacy", reason="needs spaCy: pip install spacy")
    return spacy.blank("la")


class TestSpacy:
    @pytest.mark.filterwarnings("default")
    def test_tokens_and_offsets_are_kept(self, cut: Any) -> None:
        theirs = cut(_TEXT)
        document = from_spacy(theirs)
        _check(document, _TEXT)
        assert len(document.passages) == 1  # it has no sentences
        kept = [(token.text, token.idx) for token in theirs if not token.is_space]
        assert [(t.text, t.start) for t in document.passages[0].tokens] == kept

    @pytest.mark.filterwarnings("default")
    def test_sentences_are_passages_and_blank_lines_part_stanzas(self, cut: Any) -> None:
        cut.add_pipe("sentencizer")
        document = from_spacy(cut(_TEXT))
        _check(document, _TEXT)
        assert [(p.tokens[0].text, p.stanza) for p in document.passages] == [("Stellae", 0), ("Nox", 1)]
        assert [w.form for w in document.passages[0].tokens[3].words] == ["populus", "que"]

    @pytest.mark.filterwarnings("default")
    @settings(suppress_health_check=[HealthCheck.function_scoped_fixture])  # it keeps nothing of a text
    @given(text=st.text(st.characters(), max_size=30))
    def test_whatever_it_has_cut(self, cut: Any, text: str) -> None:
        try:
            document = from_spacy(cut("lux " + text))
        except LatinglossError:
            assert any("\ud800" <= c <= "\udfff" for c in text)
        except UnicodeEncodeError:
            pass  # spaCy itself has no half characters
        else:
            _check(document, "lux " + text)


class TestStanza:
    @pytest.mark.heavy
    @pytest.mark.filterwarnings("default")
    def test_tokens_sentences_and_offsets_are_kept(self) -> None:
        doc = pytest.importorskip("stanza.models.common.doc", reason='needs Stanza: pip install "latingloss[stanza]"')
        text = "Stellae lucent.\nPopulusque vigilat."
        rows = [
            {"id": (1,), "text": "Stellae", "start_char": 0, "end_char": 7},
            {"id": (2,), "text": "lucent", "start_char": 8, "end_char": 14},
            {"id": (3,), "text": ".", "start_char": 14, "end_char": 15},
        ]
        range_rows = [
            {"id": (1, 2), "text": "Populusque", "start_char": 16, "end_char": 26},
            {"id": (1,), "text": "Populus"},
            {"id": (2,), "text": "que"},
            {"id": (3,), "text": "vigilat", "start_char": 27, "end_char": 34},
            {"id": (4,), "text": ".", "start_char": 34, "end_char": 35},
        ]
        document = from_stanza(doc.Document([rows, range_rows], text=text))
        _check(document, text)
        assert [[t.text for t in p.tokens] for p in document.passages] == [
            ["Stellae", "lucent", "."], ["Populusque", "vigilat", "."],
        ]  # fmt: skip
        assert [w.form for w in document.passages[1].tokens[0].words] == ["Populus", "que"]

    @pytest.mark.heavy
    @pytest.mark.filterwarnings("default")
    def test_a_document_read_from_a_treebank_has_no_text(self) -> None:
        conll = pytest.importorskip("stanza.utils.conll", reason='needs Stanza: pip install "latingloss[stanza]"')
        rows = "1\tNox\t_\t_\t_\t_\t0\troot\t_\t_\n2\tvenit\t_\t_\t_\t_\t1\tdep\t_\t_\n\n"
        document = from_stanza(conll.CoNLL.conll2doc(input_str=rows))
        assert document == annotate_tokens([["Nox", "venit"]])
        document = from_stanza(conll.CoNLL.conll2doc(input_str=rows), english="Night comes")
        assert document.passages == annotate_tokens([["Nox", "venit"]], [["Night", "comes"]]).passages


class TestCltk:
    def test_words_are_found_in_the_raw_text(self) -> None:
        words = [*map(_word, ["Stellae", "lucent", ","], [0] * 3), *map(_word, ["Nox", "venit", "."], [1] * 3)]
        document = from_cltk(_cltk("Stellae  lucent,\n\n Nox venit.", words))
        _check(document, "Stellae  lucent,\n\n Nox venit.")
        assert [len(p.tokens) for p in document.passages] == [3, 3]
        assert [p.stanza for p in document.passages] == [0, 1]

    def test_the_normalised_text_is_the_source_if_the_words_are_spelled_so(self) -> None:
        document = from_cltk(_cltk("Jūdex venit", [_word("Iudex", 0), _word("uenit", 0)], "Iudex uenit"))
        _check(document, "Iudex uenit")

    def test_marks_that_it_dropped_are_cut_again(self) -> None:
        document = from_cltk(_cltk("(Lux!) lucet.", [_word("Lux", 0), _word("lucet", 1)]))
        _check(document, "(Lux!) lucet.")
        assert [[t.text for t in p.tokens] for p in document.passages] == [["(", "Lux", "!", ")"], ["lucet", "."]]

    def test_a_rendering_is_set_beside_as_annotate_does(self) -> None:
        latin, english = "Stellae lucent.\nNox venit.", "The stars shine.\nNight comes."
        words = [*map(_word, ["Stellae", "lucent", "."], [0] * 3), *map(_word, ["Nox", "venit", "."], [1] * 3)]
        assert from_cltk(_cltk(latin, words), english=english) == annotate(latin, english)
        one = from_cltk(_cltk(latin, words), english="The stars shine and night comes")
        _check(one, latin)
        assert [(len(p.tokens), len(p.rendering)) for p in one.passages] == [(6, 6)]
        with pytest.raises(TextError, match="english"):
            from_cltk(_cltk(latin, words), english="")

    @pytest.mark.parametrize("words", [["lucet", "Lux"], ["Lux", "tenebrae"], ["lucet"]])
    def test_words_of_another_text_are_refused(self, words: list[str]) -> None:
        with pytest.raises(TextError, match="neither in its raw nor"):
            from_cltk(_cltk("Lux lucet", [_word(word, 0) for word in words]))

    @pytest.mark.heavy
    @pytest.mark.filterwarnings("default")
    def test_the_real_one(self) -> None:
        types = pytest.importorskip("cltk.core.data_types", reason="needs CLTK: pip install cltk")
        words = [types.Word(string="Nox", index_sentence=0), types.Word(string="venit", index_sentence=0)]
        latin = {"language": types.Language(name="Latin")} if issubclass(types.Doc, BaseModel) else {}  # 2.x wants one
        _check(from_cltk(types.Doc(raw="Nox venit.", words=words, **latin)), "Nox venit.")


@pytest.mark.parametrize("convert", [from_stanza, from_spacy, from_cltk])
@pytest.mark.parametrize("given_", [None, "Lux lucet.", annotate("Lux lucet."), 3])
def test_anything_else_is_refused(convert: Any, given_: object) -> None:
    with pytest.raises(InputTypeError, match="document must be a"):
        convert(given_)


@pytest.mark.parametrize("places", [[(4, 9), (0, 3)], [(0, 3), (2, 5)], [(0, 0)], [(0, 99)], [(None, None)], []])
def test_offsets_that_do_not_fit_are_refused(places: list[tuple[Any, Any]]) -> None:
    tokens = [SimpleNamespace(text="x", start_char=a, end_char=b) for a, b in places]
    with pytest.raises(TextError):
        from_stanza(SimpleNamespace(text="Lux lucet", sentences=[SimpleNamespace(tokens=tokens)]))


def test_the_readings_are_those_of_the_annotator_given() -> None:
    words = [_word("Nox", 0), _word("venit", 0)]
    document = from_cltk(_cltk("Nox venit", words), annotator=Annotator(emphasis_share=0))
    assert not any(token.emphasis for token in document.passages[0].tokens)
    assert from_cltk(_cltk("Nox venit", words)) == annotate("Nox venit")
