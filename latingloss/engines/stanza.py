"""Stanza as engine: its tagger votes, the analyser says what there is to vote for.

Stanza (Qi et al. 2020) gives one tag and one lemma a word. Here each of the analyser's readings is weighed by how
well it agrees with them, so that what comes out is always a reading the form can have.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import log
from os import PathLike
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING, Any, NamedTuple

from latingloss.engines import Choice, TokenChoices
from latingloss.engines.builtin import word_parts
from latingloss.errors import MissingExtraError, OptionError
from latingloss.morphology.ranking import Candidate, Weighed, by_score, candidates, same_kind
from latingloss.text.orthography import plain

if TYPE_CHECKING:
    from stanza import Pipeline

_FILES = ("pos.pt", "pretrain.pt", "lemma.pt")
_BATCH_SENTENCES = 500
# Log-odds that a vote counts for, by feature: round numbers set by hand, not fitted. A tagger right four times in
# five among six cases is worth about 3; among two numbers, nine times in ten, about 2.5.
_VOTES = {
    "Case": 3.0, "Number": 2.5, "Person": 2.5, "Mood": 1.5, "VerbForm": 1.5, "Tense": 1.0, "Aspect": 1.0,
    "Gender": 1.0, "Voice": 0.5, "Degree": 0.5,
}  # fmt: skip
_LEMMA_VOTE, _UPOS_VOTE = 1.5, 1.0
_SAME_LEMMA = {"sui": "se"}


class Tagged(NamedTuple):
    """What the tagger says of one word."""

    lemma: str
    upos: str
    features: dict[str, str]


class StanzaEngine:
    """Chooses readings by the votes of a local Stanza model; nothing is ever downloaded.

    `model_dir` is a folder with `pos.pt`, `pretrain.pt` and `lemma.pt`, trained on lower-case text in u/i spelling
    without diacritics. One engine may be shared by threads; they take turns. Raises `OptionError` if the folder
    lacks a file, `MissingExtraError` if Stanza is not installed.
    """

    name = "stanza"

    def __init__(self, *, model_dir: str | PathLike[str], use_gpu: bool = False) -> None:
        self._tagger = _load(Path(model_dir), use_gpu=use_gpu)
        self._lock = Lock()

    def read(self, sentences: Sequence[Sequence[str]]) -> list[list[TokenChoices]]:
        """Return for every token of every sentence its words with their readings."""
        parts = [[word_parts(token) for token in sentence] for sentence in sentences]
        tagged = self.tag([[form for token in sentence for form in token] for sentence in parts])
        out = []
        for sentence, tags in zip(parts, tagged, strict=True):
            votes = iter(tags)
            out.append(
                [tuple(Choice(form, weigh(candidates(form), next(votes))) for form in token) for token in sentence]
            )
        return out

    def tag(self, sentences: Sequence[Sequence[str]]) -> Iterator[list[Tagged]]:
        """Yield for each sentence of words what Stanza alone says of every word."""
        for first in range(0, len(sentences), _BATCH_SENTENCES):
            batch = sentences[first : first + _BATCH_SENTENCES]
            words = [[_as_trained(form) for form in sentence] for sentence in batch if sentence]
            with self._lock:
                found = iter(self._tagger(words).sentences if words else ())
            for sentence in batch:
                yield [_tagged(word) for word in next(found).words] if sentence else []


def weigh(readings: Sequence[Candidate], vote: Tagged) -> Weighed:
    """Return the readings with probabilities that sum to 1, best first: their priors, times the vote for each."""
    return by_score(readings, [log(max(c.prior, 1e-9)) + _agreement(c, vote) for c in readings])


def _agreement(candidate: Candidate, vote: Tagged) -> float:
    score = 0.0
    for name, worth in _VOTES.items():
        own, wanted = candidate.features.get(name), vote.features.get(name)
        if own is None and wanted is None:
            continue
        agrees = own is not None and wanted is not None and not {*own.split(",")}.isdisjoint(wanted.split(","))
        if agrees:
            score += worth
        elif name in ("Case", "Number", "Person") and wanted is None:
            score -= worth  # the vote says that the word has no such feature
    if same_kind(vote.upos, candidate.upos):
        score += _UPOS_VOTE
    lemma = plain(candidate.lexeme.spelled)
    return score + _LEMMA_VOTE * (lemma == _SAME_LEMMA.get(vote.lemma, vote.lemma))


def _as_trained(form: str) -> str:
    """Spell a form as in the model's training text; white space inside would part it into two words."""
    return "".join(plain(form).split()) or "x"


def _tagged(word: Any) -> Tagged:
    features = dict(pair.split("=", 1) for pair in (word.feats or "").split("|") if "=" in pair)
    return Tagged(plain(word.lemma or word.text), word.upos or "X", features)


def _load(folder: Path, *, use_gpu: bool) -> Pipeline:
    missing = [name for name in _FILES if not (folder / name).is_file()]
    if missing:
        raise OptionError(
            f"model_dir={str(folder)!r}: no {', '.join(missing)} there; give the folder of a Stanza model with "
            f"{', '.join(_FILES)}"
        )
    try:
        import stanza
    except ImportError as error:
        raise MissingExtraError('StanzaEngine needs Stanza: pip install "latingloss[stanza]"') from error
    return stanza.Pipeline(
        "la",
        dir=str(folder),
        processors="tokenize,pos,lemma",
        tokenize_pretokenized=True,
        download_method=None,
        allow_unknown_language=True,
        pos_model_path=str(folder / "pos.pt"),
        pos_pretrain_path=str(folder / "pretrain.pt"),
        pos_forward_charlm_path=None,
        lemma_model_path=str(folder / "lemma.pt"),
        lemma_forward_charlm_path=None,
        use_gpu=use_gpu,
        logging_level="ERROR",
        verbose=False,
    )
