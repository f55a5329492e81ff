"""The samples of readings in ../shared, church and classical: phone error rate as ../shared/tools counts it.

Source: WikiPron (Lee and others, 2020), Latin headwords of Wiktionary, every fifth one.
"""

import unicodedata
from collections import defaultdict
from pathlib import Path

import pytest

from latingloss.pronunciation import pronounce

CHECKS = Path(__file__).resolve().parents[3] / "shared" / "checks"
DROPPED = frozenset("ˈˌ. ː\u0361\u032f\u033d/[]-")


def phones(ipa: str) -> str:
    return "".join(sign for sign in unicodedata.normalize("NFD", ipa) if sign not in DROPPED)


def edits(got: str, wanted: str) -> int:
    row = list(range(len(wanted) + 1))
    for i, x in enumerate(got, 1):
        diagonal, row[0] = row[0], i
        for j, y in enumerate(wanted, 1):
            diagonal, row[j] = row[j], min(row[j] + 1, row[j - 1] + 1, diagonal + (x != y))
    return row[-1]


@pytest.mark.parametrize(
    ("tradition", "file", "limit"),
    [
        ("ecclesiastical", "wikipron-lat-eccl-broad-sample.tsv", 0.005),
        ("classical", "wikipron-lat-clas-broad-sample.tsv", 0.005),
    ],
)
def test_the_phone_error_rate_stays_under_the_limit(tradition: str, file: str, limit: float) -> None:
    if not (CHECKS / file).exists():
        pytest.skip(f"needs ../shared/checks/{file}, which a user does not have")
    readings: dict[str, list[str]] = defaultdict(list)
    for line in (CHECKS / file).read_text(encoding="utf-8").splitlines():
        word, ipa = line.split("\t")
        if " " not in word and "-" not in word:
            readings[word].append(phones(ipa))
    wrong = total = 0
    for word, wanted in readings.items():
        got = phones(pronounce(word, tradition).ipa)
        best = min(wanted, key=lambda reading: edits(got, reading))
        wrong += edits(got, best)
        total += len(best)
    assert len(readings) > 5000
    assert wrong / total <= limit
