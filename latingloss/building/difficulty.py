"""Measure how the parts of difficulty are spread: `python -m latingloss.building.difficulty ../shared`.

Rewrites the means and deviations in `data/difficulty/weights.tsv`: those over the types of the Clementine Vulgate, each
form once for each lemma that it is read as in its contexts, names and guesses left out. The weights are kept as they
are: a prior set by hand. Needs the extra `corpus`. Run it again when the lexicon, its kin or the parts have changed.
"""

from __future__ import annotations

import sys
from pathlib import Path

import polars

from latingloss.building.sources import verses
from latingloss.corpus.schema import PARTS
from latingloss.corpus.scoring import score
from latingloss.difficulty.score import shipped_weights

OUT = Path(__file__).parents[1] / "data" / "difficulty" / "weights.tsv"


def types(shared: Path) -> polars.DataFrame:
    """Return one row a type of the Vulgate, with the columns of `latingloss.corpus.schema`."""
    words = polars.concat(score(("Vulgate", latin) for latin, _ in verses(shared)))
    words = words.filter(~polars.col("guessed"), polars.col("upos") != "PROPN")
    return words.unique([polars.col("form").str.to_lowercase(), "lemma", "upos"], maintain_order=True)


def main(shared: Path) -> None:
    """Rewrite the table."""
    found = types(shared)
    lines = ["part\tmean\tdeviation\tweight"]
    for part, weight in shipped_weights().items():
        values = found[PARTS[part]].cast(polars.Float64).to_numpy()
        lines.append(f"{part}\t{values.mean():.3f}\t{values.std():.3f}\t{weight.weight:.3f}")
    OUT.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
