"""CLTK as engine: the tags of its documents vote, the analyser says what there is to vote for.

CLTK (Johnson et al. 2021) tags Latin by Stanza or spaCy, one tag and one lemma a word, so that its votes count as
Stanza's do.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from pathlib import Path
from threading import Lock
from typing import Any

from latingloss.engines import Choice, TokenChoices, by_prior
from latingloss.engines.builtin import word_parts
from latingloss.engines.stanza import Tagged, weigh
from latingloss.errors import InputTypeError, MissingExtraError, OptionError, TextError
from latingloss.morphology.ranking import candidates
from latingloss.text.orthography import plain
from latingloss.text.tokens import word_text

_AHEAD = 8  # of CLTK's words are looked at for the next of ours: numbers and marks stand between


class CltkEngine:
    """Chooses readings by the tags of CLTK: of a document that there is, or of its pipeline.

    `document` is a tagged CLTK `Doc` (1.5 or 2.x); the engine then reads the text that it was made of, or a part from
    its beginning. Without it every text goes through the normalisation and Stanza of CLTK 1.5; nothing is ever
    downloaded.
    Words that CLTK has cut otherwise are read without a vote. One engine may be shared by threads; they take turns.
    Raises `InputTypeError` for another document, `OptionError` if it has no tags or the model is not there,
    `MissingExtraError` if CLTK is not installed.
    """

    name = "cltk"

    def __init__(self, document: Any = None) -> None:
        _need_cltk()
        self._lock = Lock()
        self._pipeline = _pipeline() if document is None else None
        self._tags = () if document is None else _tags(document)

    def read(self, sentences: Sequence[Sequence[str]]) -> list[list[TokenChoices]]:
        """Return for every token of every sentence its words with their readings.

        Raises `TextError` if less than half of the words are those of the document.
        """
        tags = self._tags if self._pipeline is None else self._tagged(sentences)
        found, out = _Walk(tags), []
        for sentence in sentences:
            out.append([found.read(token) for token in sentence])
        if found.met * 2 < sum(map(len, sentences)):
            raise TextError("the CLTK document is of another text; give the text that it was made of")
        return out

    def _tagged(self, sentences: Sequence[Sequence[str]]) -> Sequence[tuple[str, Tagged]]:
        text = "\n".join(" ".join(word_text(token) for token in sentence) for sentence in sentences)
        with self._lock:
            return _tags(self._pipeline.analyze(text)) if text.strip() else ()  # type: ignore[union-attr]


class _Walk:
    """A walk through the tagged words, side by side with one through ours."""

    def __init__(self, tags: Sequence[tuple[str, Tagged]]) -> None:
        self._tags, self._at, self.met = tags, 0, 0

    def read(self, token: str) -> TokenChoices:
        """Return the words of the next token, each weighed by the tag of the same word."""
        parts = word_parts(token)
        host = self._next({_key(token), _key(parts[0])}, _AHEAD)
        self.met += host is not None
        votes = [host, *(self._next({_key(part)}, 1) if host else None for part in parts[1:])]
        return tuple(_choice(part, vote) for part, vote in zip(parts, votes, strict=True))

    def _next(self, keys: set[str], ahead: int) -> Tagged | None:
        for place in range(self._at, min(self._at + ahead, len(self._tags))):
            if self._tags[place][0] in keys:
                self._at = place + 1
                return self._tags[place][1]
        return None


def _choice(form: str, vote: Tagged | None) -> Choice:
    readings = candidates(form)
    return Choice(form, by_prior(readings) if vote is None else weigh(readings, vote))


def _key(word: str) -> str:
    return "".join(filter(str.isalpha, plain(word_text(word))))


def _tags(document: Any) -> Sequence[tuple[str, Tagged]]:
    """Return the words of a CLTK document in order, each with its tag."""
    words = getattr(document, "words", None)
    if not isinstance(words, list) or not all(hasattr(word, "string") and hasattr(word, "upos") for word in words):
        raise InputTypeError(f"document must be a cltk Doc with words, not {type(document).__name__}")
    if not any(word.upos for word in words):
        raise OptionError("the CLTK document has no tags; run a pipeline with LatinStanzaProcess or LatinSpacyProcess")
    return [(_key(word.string), Tagged(_key(word.lemma or ""), _upos(word), _features(word))) for word in words]


def _upos(word: Any) -> str:
    return getattr(word.upos, "tag", word.upos) or "X"  # CLTK 2 has an object, 1.5 a text


def _features(word: Any) -> dict[str, str]:
    """Return CLTK's features by their names in Universal Dependencies."""
    found = word.features.features if word.features else []
    if isinstance(found, list):  # CLTK 2
        return {feature.key: feature.value for feature in found}
    names = _ud_names()
    values = (value for given in found.values() if isinstance(given, list) for value in given)
    return dict(names[_member(value)] for value in values if _member(value) in names)


@cache
def _ud_names() -> dict[tuple[str, str], tuple[str, str]]:
    from cltk.morphology.morphosyntax import FORM_UD_MAP

    return {_member(own): (name, value) for name, values in FORM_UD_MAP.items() for value, own in values.items()}


def _member(value: Any) -> tuple[str, str]:
    return type(value).__name__, getattr(value, "name", "")  # CLTK's values themselves cannot be keys


def _need_cltk() -> None:
    try:
        import cltk  # noqa: F401
    except ImportError as error:
        raise MissingExtraError('CltkEngine needs CLTK: pip install "latingloss[cltk]"') from error


def _pipeline() -> Any:
    """Return CLTK's pipeline as far as tags; raise `OptionError` where it would download a model."""
    try:
        from cltk import NLP
        from cltk.alphabet.processes import LatinNormalizeProcess
        from cltk.core.data_types import Pipeline
        from cltk.dependency.processes import LatinStanzaProcess
        from cltk.dependency.stanza_wrapper import StanzaWrapper
        from cltk.languages.utils import get_lang
        from stanza.resources.prepare_resources import default_treebanks
    except ImportError as error:
        raise OptionError("only the pipeline of CLTK 1.5 is run here; give a document of another CLTK's") from error

    model = Path.home() / "stanza_resources" / "la" / "tokenize" / f"{default_treebanks['la']}.pt"
    if "lat" not in StanzaWrapper.nlps and not model.is_file():
        raise OptionError(
            f"CLTK's Latin model is not at {model}; fetch it by python -c \"import stanza; stanza.download('la', "
            f"package='{default_treebanks['la']}')\", or give a document"
        )
    processes = [LatinNormalizeProcess, LatinStanzaProcess]
    return NLP("lat", custom_pipeline=Pipeline("tags", processes, get_lang("lat")), suppress_banner=True)
