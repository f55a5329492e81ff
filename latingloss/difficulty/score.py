"""How hard a word is for an English-speaking beginner: a sum of standardised parts, mapped to 0..1.

No published study says which Latin words English-speaking beginners find hard. The weights in
`data/difficulty/weights.tsv` are therefore a prior, set after effects known for other second languages: on the
British Council's Knowledge-based Vocabulary Lists (English words; Spanish and German speakers) difficulty goes
with log frequency (r = -.375, -.374), letters (.334, .347) and likeness to the first language (-.236, -.355);
see also Brysbaert, Mandera and Keuleers (2018) on frequency. The weights of shape, clusters and readings are guesses,
the last two small: letters tell most of a cluster, and the words around it say how a form is to be read. Means and
deviations are measured over the types of the Vulgate (`building.difficulty`). Weights of your own, such as
`fitting.fit_weights` learns from ratings, are passed as an object.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache, lru_cache
from math import exp
from typing import NamedTuple

from latingloss.difficulty.frequency import lexeme_zipf, per_million
from latingloss.difficulty.shape import clusters, clusters_reason, crowding, letters_changed, ways_of
from latingloss.document import Difficulty, DifficultyPart, Relative
from latingloss.errors import OptionError
from latingloss.kin import cognate_distance, english_zipf
from latingloss.kin.relations import KNOWN_ZIPF, Relation, described, ranked
from latingloss.morphology.lexicon import Lexeme
from latingloss.morphology.ranking import Candidate
from latingloss.pronunciation import syllable_count
from latingloss.tables import read_table
from latingloss.text.orthography import plain

SPREAD = 1.6  # steepness of the map from the weighted sum to 0..1
_MOST_KNOWN = 6  # relatives looked at


class Weight(NamedTuple):
    """How one part is standardised and weighed."""

    mean: float
    deviation: float
    weight: float

    def effect(self, value: float) -> float:
        """Return what a value of this part adds to the weighted sum."""
        return self.weight * (value - self.mean) / self.deviation


@cache
def shipped_weights() -> dict[str, Weight]:
    """Return the documented prior weights by part."""
    return {part: Weight(*map(float, numbers)) for part, *numbers in read_table("difficulty/weights.tsv")}


def checked_weights(weights: Mapping[str, Weight] | None) -> Mapping[str, Weight]:
    """Return weights that were given, the shipped ones for None; raise `OptionError` if a part has none."""
    if weights is None:
        return shipped_weights()
    if missing := [part for part in shipped_weights() if part not in weights]:
        raise OptionError(f"weights lack {', '.join(missing)}; give one for each part, of weight 0 to leave it out")
    return weights


@lru_cache(maxsize=20_000)
def known_relatives(lexeme: Lexeme) -> tuple[tuple[float, Relative], ...]:
    """Return a lexeme's English relatives that a reader knows, with their distances, the nearest first."""
    return tuple((distance, described(lexeme, relation)) for distance, relation in _known_relations(lexeme))


def _known_relations(lexeme: Lexeme) -> list[tuple[float, Relation]]:
    known = [r for r in ranked(lexeme) if english_zipf(r.word) >= KNOWN_ZIPF][:_MOST_KNOWN]
    return sorted(((_distance(lexeme, r), r) for r in known), key=lambda pair: pair[0])


def _distance(lexeme: Lexeme, relation: Relation) -> float:
    return cognate_distance(lexeme.spelled, relation.word) if relation.distance is None else relation.distance


@lru_cache(maxsize=50_000)
def nearest_english(lexeme: Lexeme) -> tuple[float, str]:
    """Return the least distance of an English word that recalls a lexeme, and that word; 1.0 and nothing if none does.

    That is the nearest relative that a reader knows; a name is recalled by the English name that is its gloss.

    >>> from latingloss.morphology.lexicon import find
    >>> [nearest_english(find(lemma)[0])[1] for lemma in ("vīnum", "Jōsēph", "uxor")]
    ['wine', 'Joseph', '']
    """
    name = lexeme.gloss.partition(";")[0]
    if lexeme.upos == "PROPN" and name and " " not in name:
        return cognate_distance(lexeme.spelled, name), name
    known = _known_relations(lexeme)
    return (known[0][0], known[0][1].word) if known else (1.0, "")


def frequency_reason(value: float) -> str:
    """Say in words how common a word of a Zipf value is.

    >>> frequency_reason(4.5)
    'uncommon: about 32 in a million words'
    """
    kind = "very common" if value >= 6 else "common" if value >= 5.2 else "uncommon" if value >= 4.2 else "rare"
    return f"{kind}: {per_million(value)}"


def _cognate_reason(distance: float, nearest: str) -> str:
    if not nearest:
        return "no English relative that a reader knows"
    if nearest[0].isupper():
        return f"in English “{nearest}”"
    near = "looks like" if distance < 0.35 else "is kin to" if distance < 0.7 else "is only distantly like"
    return f"{near} English “{nearest}”"


def difficulty(form: str, candidate: Candidate) -> Difficulty:
    """Score one form in one reading, its parts told in words.

    Parts: frequency (Zipf value of the lexeme), length (letters), cognate (distance from the nearest English word),
    shape (share of letters changed), clusters (consonants behind another), readings (ways to read the form); see
    `shape`. The score is 1 / (1 + exp(-1.6 s)), s the sum of the parts' effects by the shipped weights; 0.5 is an
    average form of the Vulgate. For weights or frequencies of your own, or for someone who knows some words, see
    `Reader`.
    """
    runs, ways = clusters(candidate.form), ways_of(form)
    return _scored(plain(form), candidate.lexeme, syllables=syllable_count(candidate.form), runs=runs, ways=ways)


def reweighed(found: Difficulty, weights: Mapping[str, Weight]) -> Difficulty:
    """Return a score by other weights, given by the names of the parts."""
    effects = (round(weights[part.name].effect(part.value), 3) for part in found.parts)
    return scored(tuple(p.model_copy(update={"effect": e}) for p, e in zip(found.parts, effects, strict=True)))


def scored(parts: tuple[DifficultyPart, ...]) -> Difficulty:
    """Add up the effects of parts and map the sum to a score.

    >>> scored(()).score
    0.5
    """
    total = sum(part.effect for part in parts)
    return Difficulty(score=round(1 / (1 + exp(-SPREAD * total)), 4), parts=parts)


@lru_cache(maxsize=100_000)
def _scored(key: str, lexeme: Lexeme, *, syllables: int, runs: tuple[str, ...], ways: int) -> Difficulty:
    lemma, common = lexeme.lemma, lexeme_zipf(lexeme)
    weights = shipped_weights()
    distance, nearest = nearest_english(lexeme)
    letters, changed = len(key), letters_changed(key, lemma)
    values = (
        ("frequency", common, frequency_reason(common)),
        ("length", float(letters), f"{letters} letters, {syllables} syllable{'s' if syllables > 1 else ''}"),
        ("cognate", distance, _cognate_reason(distance, nearest)),
        ("shape", changed, f"far from its dictionary form {lemma.partition('#')[0]}" if changed > 0.5 else ""),
        ("clusters", float(crowding(runs)), clusters_reason(runs)),
        ("readings", float(ways), f"can be read in {ways} ways" if ways > 1 else ""),
    )
    parts = tuple(
        DifficultyPart(name=name, value=round(value, 3), effect=round(weights[name].effect(value), 3), reason=reason)
        for name, value, reason in values
    )
    return scored(parts)
