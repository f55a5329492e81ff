"""The CLTK engine: CLTK's own classes and processes, tagged by the small real model that the Stanza engine reads."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from latingloss import Annotator
from latingloss.engines.cltk import CltkEngine
from latingloss.engines.stanza import StanzaEngine
from latingloss.errors import InputTypeError, MissingExtraError, OptionError, TextError
from latingloss.formats.libraries import from_cltk

_TEXT = "Stellae lucent , noctem XII populusque vigilat .\nVox clamantis in deserto"
_SENTENCES = [["Stellae", "lucent", "noctem", "populusque", "vigilat"], ["Vox", "clamantis", "in", "deserto"]]


@pytest.fixture(scope="module")
def stanza(shared: Path) -> StanzaEngine:
    pytest.importorskip("cltk.dependency.stanza_wrapper", reason="needs CLTK 1.5, for Python 3.11: pip install cltk")
    return StanzaEngine(model_dir=shared / "models" / "stanza-la")


@pytest.fixture
def processes(stanza: StanzaEngine, monkeypatch: pytest.MonkeyPatch) -> Iterator[Any]:
    """CLTK's processes, with the local model where CLTK keeps the one that it has downloaded."""
    from cltk.dependency import processes
    from cltk.dependency.stanza_wrapper import StanzaWrapper

    class Local:
        def parse(self, text: str) -> Any:
            return stanza._tagger([line.split() for line in text.lower().replace("v", "u").split("\n")])

    monkeypatch.setitem(StanzaWrapper.nlps, "lat", Local())
    yield processes


def _doc(processes: Any) -> Any:
    from cltk.core.data_types import Doc

    return processes.LatinStanzaProcess("lat").run(Doc(raw=_TEXT))


@pytest.mark.heavy
@pytest.mark.filterwarnings("default")
class TestWithCltk:
    def test_a_document_votes_as_the_tagger_that_tagged_it(self, processes: Any, stanza: StanzaEngine) -> None:
        document = _doc(processes)
        for ours, theirs in zip(CltkEngine(document).read(_SENTENCES), stanza.read(_SENTENCES), strict=True):
            for token, other in zip(ours, theirs, strict=True):
                assert [c.form for c in token] == [c.form for c in other]
                assert token[0].readings[0][0] == other[0].readings[0][0]
                assert dict(_odds(token[0])) == pytest.approx(dict(_odds(other[0])))

    def test_its_tags_decide(self, processes: Any) -> None:
        from cltk.morphology.morphosyntax import MorphosyntacticFeatureBundle, from_ud

        document = _doc(processes)
        for case in ("Gen", "Dat"):
            document.words[0].features = MorphosyntacticFeatureBundle(from_ud("Case", case), from_ud("Number", "Sing"))
            best = CltkEngine(document).read(_SENTENCES)[0][0][0].readings[0][0]
            assert (best.features["Case"], best.features["Number"]) == (case, "Sing")

    def test_its_document_becomes_ours_with_its_tags(self, processes: Any) -> None:
        document = _doc(processes)
        document.raw = document.raw.lower().replace("v", "u")  # as the model has it
        ours = from_cltk(document, annotator=Annotator(CltkEngine(document)))
        assert ours.engine == "cltk" and [len(p.tokens) for p in ours.passages] == [8, 4]
        assert ours.passages[0].tokens[5].words[1].lemma == "que"

    def test_its_pipeline_runs_where_the_model_is(self, processes: Any) -> None:
        document = _doc(processes)
        assert CltkEngine().read(_SENTENCES) == CltkEngine(_without(document, "XII")).read(_SENTENCES)
        assert CltkEngine().read([]) == []

    def test_a_missing_model_is_not_downloaded_but_named(
        self, stanza: StanzaEngine, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.setenv("HOME", str(tmp_path))
        with pytest.raises(OptionError, match=r"stanza\.download\('la'"):
            CltkEngine()

    def test_another_text_is_refused(self, processes: Any) -> None:
        engine = CltkEngine(_doc(processes))
        with pytest.raises(TextError, match="of another text"):
            engine.read([["Arma", "virumque", "cano"]])

    def test_what_has_no_tags_is_refused(self, stanza: StanzaEngine) -> None:
        from cltk.core.data_types import Doc, Word

        for given, error in (("lux", InputTypeError), (Doc(raw="lux", words=[Word(string="lux")]), OptionError)):
            with pytest.raises(error):
                CltkEngine(given)


@pytest.mark.heavy
@pytest.mark.filterwarnings("default")
class TestWithCltk2:
    """Its `Doc` and `Word`, put together as its StanzaProcess does; 2.x wants Python 3.13."""

    def test_its_tags_decide(self) -> None:
        document = self._doc([("Stellae", "stella", "NOUN", "Case=Dat|Number=Sing"), ("lucent", "luceo", "VERB", "")])
        ours = from_cltk(document, annotator=Annotator(CltkEngine(document)))
        best = ours.passages[0].tokens[0].words[0]
        assert (best.lemma, best.features["Case"], best.features["Number"]) == ("stēlla", "Dat", "Sing")

    def test_its_pipeline_is_not_run(self) -> None:
        self._doc([])
        with pytest.raises(OptionError, match="give a document"):
            CltkEngine()

    @staticmethod
    def _doc(rows: list[tuple[str, str, str, str]]) -> Any:
        needs = "needs CLTK 2, for Python 3.13: pip install cltk"
        convert = pytest.importorskip("cltk.morphosyntax.normalization", reason=needs).convert_pos_features_to_ud
        from cltk.core.data_types import Doc, Language, Word
        from cltk.morphosyntax.ud_pos import UDPartOfSpeechTag

        words = [
            Word(
                string=form, lemma=lemma, upos=UDPartOfSpeechTag(tag=upos), index_sentence=0,
                features=convert(feats_raw=features) if features else None,
            )
            for form, lemma, upos, features in rows
        ]  # fmt: skip
        return Doc(language=Language(name="Latin"), raw=" ".join(row[0] for row in rows), words=words)


def _odds(choice: Any) -> list[tuple[str, float]]:
    return [(str(candidate), odds) for candidate, odds in choice.readings]


def _without(document: Any, word: str) -> Any:
    document.words = [own for own in document.words if own.string != word.lower()]
    return document


def test_without_the_extra_the_command_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "cltk", None)
    with pytest.raises(MissingExtraError, match=r'pip install "latingloss\[cltk\]"'):
        CltkEngine()
