"""How common English words are, as Zipf values."""

from __future__ import annotations

from latingloss.tables import built_once, read_table

UNLISTED = 1.5  # Zipf value of a word rarer than those of the table


@built_once
def _table() -> dict[str, float]:
    found: dict[str, float] = {}
    for zipf, words in read_table("kin/english_zipf.tsv"):
        found.update(dict.fromkeys(words.split(" "), float(zipf)))
    return found


def english_zipf(word: str) -> float:
    """Return how common an English word is: the base-10 logarithm of its uses in 10^9 words of text.

    Above 4 everyone knows a word, below 2.5 few do; a word not in the table counts 1.5. Source: the package
    wordfreq 3.1 (Speer 2022), CC BY-SA 4.0, carried into `data/kin/english_zipf.tsv`.

    >>> english_zipf("water") > english_zipf("aquatic") > english_zipf("no such word")
    True
    """
    return _table().get(word.lower(), UNLISTED)
