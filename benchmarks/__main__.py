"""`python -m benchmarks` prints every figure; `gate` compares accuracy with the baseline; `sample` prints entries."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from pathlib import Path
from time import perf_counter

from benchmarks import (
    ablation,
    accuracy,
    balance,
    calibration,
    coverage,
    domains,
    guesses,
    lemmas,
    misses,
    sample,
    words,
)
from benchmarks.cold import cold
from benchmarks.figures import Figure, as_json, markdown
from benchmarks.gate import read_baseline, regressions, write_baseline
from benchmarks.others import others
from benchmarks.robustness import matrix
from benchmarks.scaling import plot, scaling
from benchmarks.setting import setting
from benchmarks.sources import Sources
from benchmarks.speed import speed

_GATED = (accuracy.treebanks, accuracy.alignment, words.words, coverage.coverage)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; return the exit code: 1 for a regression found by the gate, else 0."""
    options = _parser().parse_args(arguments)
    if options.command == "sample":
        drawn = sample.relatives if options.what == "relatives" else sample.words
        print("\n".join(drawn(options.number)))
        return 0
    if options.command == "robustness":
        print("\n".join(matrix()))
        return 0
    if not options.shared.is_dir():
        raise SystemExit(f"{options.shared} is no folder; give the folder of checks and corpora with --shared")
    return _gate(options) if options.command == "gate" else _figures(options)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m benchmarks", description=__doc__)
    parser.add_argument("command", nargs="?", choices=("figures", "gate", "sample", "robustness"), default="figures")
    parser.add_argument("--shared", type=Path, default=Path("../shared"), help="folder of checks and corpora")
    parser.add_argument("--out", type=Path, help="figures: file for the Markdown table; the JSON goes beside it")
    parser.add_argument("--quick", action="store_true", help="figures: a part of every set, in about a minute")
    parser.add_argument("--update", action="store_true", help="gate: make what is measured the new baseline")
    parser.add_argument("--what", choices=("words", "relatives"), default="words", help="sample: of which table")
    parser.add_argument("--number", type=int, default=1, help="sample: another number gives other entries")
    return parser


def _figures(options: argparse.Namespace) -> int:
    sources, where = Sources(options.shared.resolve(), options.quick), setting()
    if options.quick:
        where["scope"] = "quick: a part of every set; not for quoting"
    figures = list(_measured(_families(sources)))
    figures += _measured((partial(others, sources, figures),))
    page = markdown(figures, where)
    print(page)
    if options.out:
        options.out.write_text(page, encoding="utf-8")
        plot(figures, options.out.with_suffix(".svg"))
        options.out.with_suffix(".json").write_text(as_json(figures, where), encoding="utf-8")
    return 0


def _families(sources: Sources) -> tuple[Callable[[], Iterator[Figure]], ...]:
    return (
        partial(cold, sources),
        *(partial(family, sources) for family in _GATED),
        partial(misses.figures, sources, "proiel-dev"),
        partial(misses.figures, sources, "perseus-train"),
        *(partial(lemmas.figures, sources, name) for name in ("proiel-dev", "perseus-train", "ittb-dev")),
        partial(calibration.figures, sources),
        partial(ablation.ablation, sources),
        partial(guesses.figures, sources),
        partial(words.relatives, sources),
        partial(domains.figures, sources),
        partial(balance.figures, sources),
        partial(speed, sources),
        partial(scaling, sources),
    )


def _measured(families: Sequence[Callable[[], Iterator[Figure]]]) -> Iterator[Figure]:
    """Yield the figures of all families, saying on standard error how far the run is."""
    start = perf_counter()
    for family in families:
        for figure in family():
            print(f"{perf_counter() - start:6.1f} s  {figure.name}", file=sys.stderr)
            yield figure


def _gate(options: argparse.Namespace) -> int:
    sources = Sources(options.shared.resolve())
    figures = list(_measured([partial(family, sources) for family in _GATED]))
    if options.update:
        write_baseline(figures)
        return 0
    worse = regressions(figures, read_baseline())
    print("\n".join(worse) or f"no figure of {len(figures)} is behind the baseline by more than 0.3 points")
    return 1 if worse else 0


if __name__ == "__main__":
    sys.exit(main())
