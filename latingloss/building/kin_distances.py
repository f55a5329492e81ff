"""Writes into the table of English relatives how far each is from its lemma, so that nobody need work it out again.

    python -m latingloss.building.kin_distances

Run it after `latingloss.building.kin`, whose tables the distance goes by. Words that few readers know are left out.
"""

from __future__ import annotations

from pathlib import Path

from latingloss.kin import cognate_distance, english_zipf
from latingloss.kin.relations import KNOWN_ZIPF
from latingloss.tables import read_table

TABLE = Path(__file__).parents[1] / "data" / "kin" / "relatives.tsv"


def main() -> None:
    """Write the last column of the table."""
    lines = ["lemma\tupos\tword\tkind\tchain\talike\tdistance"]
    for lemma, upos, word, *told in read_table("kin/relatives.tsv"):
        known = english_zipf(word) >= KNOWN_ZIPF
        distance = f"{cognate_distance(lemma.partition('#')[0], word):.4f}" if known else ""
        lines.append("\t".join((lemma, upos, word, *told[:3], distance)))
    TABLE.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
