"""What the shape of a form adds to its difficulty: how far it is from its lemma, its clusters, its ambiguous ending."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache

from latingloss.morphology.ranking import Candidate, candidates
from latingloss.text.orthography import plain

_CLUSTER = re.compile(r"(?:[bcdfgjklmnpqrstvxz]h?){2,}", re.IGNORECASE)
_TWICE = re.compile(r"(.)\1+")
_CROWDED = 3  # consonants together that are worth a word; two are in every other word, of English too
_SELDOM = 0.01  # a reading less likely than this is not what makes a reader hesitate


def letters_changed(key: str, lemma: str) -> float:
    """Return the share of a plain form's letters that are not its lemma's beginning.

    >>> letters_changed("rosam", "rosa"), letters_changed("tulit", "ferō")
    (0.19999999999999996, 1.0)
    """
    own = plain(lemma.partition("#")[0])
    same = 0
    while same < min(len(key), len(own)) and key[same] == own[same]:
        same += 1
    return 1 - same / max(len(key), 1)


def clusters(form: str) -> tuple[str, ...]:
    """Return the runs of consonants in a form, doubled ones aside; ch, ph, rh, th and qu are one, x is two.

    >>> clusters("mōnstrum"), clusters("temptātiō"), clusters("terra"), clusters("philosophia")
    (('nstr',), ('mpt',), (), ())
    """
    return tuple(run.lower() for run in _CLUSTER.findall(form) if _consonants(run) > 1)


def _consonants(run: str) -> int:
    return len(_TWICE.sub(r"\1", run.lower().replace("h", "").replace("x", "cs")))


def crowding(found: Iterable[str]) -> int:
    """Return how many consonants stand behind another one of their cluster.

    >>> crowding(["nstr"]), crowding(["mpt", "nd"])
    (3, 3)
    """
    return sum(_consonants(run) - 1 for run in found)


def clusters_reason(found: Iterable[str]) -> str:
    """Name the clusters of three consonants and more; nothing if there are none.

    >>> clusters_reason(clusters("monstravit"))
    'hard to say: nstr'
    """
    crowded = [run for run in found if _consonants(run) >= _CROWDED]
    return f"hard to say: {', '.join(crowded)}" if crowded else ""


def ways_to_read(readings: Sequence[Candidate]) -> int:
    """Return in how many ways a form can be read: the cases, numbers and persons of its likelier readings.

    Readings of less than 1 in 100 do not count, and neither does what else they differ in.

    >>> [ways_to_read(candidates(form)) for form in ("noctem", "rosae", "spiritus")]
    [1, 3, 5]
    """
    return len({
        (c.features.get("Case"), c.features.get("Number"), c.features.get("Person"))
        for c in readings
        if c.prior >= _SELDOM
    })  # fmt: skip


@lru_cache(maxsize=100_000)
def ways_of(form: str) -> int:
    """Return in how many ways a form can be read (see `ways_to_read`)."""
    return ways_to_read(candidates(form))
