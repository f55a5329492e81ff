"""Fuzzing: one reader of files fed with what atheris makes up, guided by which of its code that reaches.

`pip install atheris`, then `python -m benchmarks.fuzz conllu --seconds 600`. It ends with a finding at the first error
that is not of latingloss, at five seconds on one input, or at 1 GB of memory; the input is left in the folder named.
JSON is changed as a tree (a value put in another's place), since random bytes are hardly ever JSON.
"""

from __future__ import annotations

import argparse
import contextlib
import gzip
import json
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, NamedTuple

_LIMITS = ("-timeout=5", "-rss_limit_mb=1024", "-max_len=16384")
_LATIN, _ENGLISH = "Vesper venit,\net stellae noctis lucent.", "Evening comes,\nand the stars of the night shine."
_CORRECTIONS = (
    "everywhere: [{word: Vesper, lemma: vesper}]\npassages:\n- latin: Vesper\n  words:\n"
    "  - {word: venit, features: Person=3, english: [comes], emphasis: true, difficulty: 0.5, note: ''}\n"
)
_VALUES = ("null", "true", "-1", "0", "1", "0.5", "1e400", "9" * 30, '""', '"0"', "[]", "{}", "[[]]", '{"": null}')


class Reader(NamedTuple):
    """What is fed, and a file that it reads, from which others are made."""

    read: Callable[[bytes], object]
    example: bytes


def readers(folder: Path) -> dict[str, Reader]:
    """Return the readers by name; those of corpora read files in `folder`."""
    import latingloss
    from latingloss import corrections
    from latingloss.formats import cells, conllu, pharaoh, schema, tables, tei, webannotation
    from latingloss.text import pairing

    document = latingloss.annotate(_LATIN, _ENGLISH)
    trees = {
        "json": _tree(schema.read, schema.write(document)),
        "webannotation": _tree(lambda text: webannotation.read(text, _LATIN), webannotation.write(document)),
    }
    texts = {
        "cells": _text(lambda text: (cells.unescaped(text), cells.escaped(text), cells.one_line(text)), r"a\sb\u0304"),
        "conllu": _text(conllu.read, conllu.write(document)),
        "corrections": _text(corrections.read, _CORRECTIONS),
        "json.bytes": _text(schema.read, schema.write(latingloss.annotate("XII"))),
        "pairing": _text(lambda text: pairing.pair_texts(*text.partition("\0")[::2]), f"{_LATIN}\0{_ENGLISH}"),
        "pharaoh": _text(pharaoh.read, pharaoh.write(document)),
        "tables": _text(tables.read, tables.write(document)),
        "tei": _text(tei.read, tei.write(document)),
    }
    files = dict(_files()) | {f".{name}": texts[name].example for name in ("conllu", "tei")}
    return trees | texts | {f"corpus{end}": _corpus(folder / f"x{end}", example) for end, example in files.items()}


def _text(read: Callable[[str], object], example: str) -> Reader:
    return Reader(lambda data: read(data.decode("utf-8", "surrogateescape")), example.encode())


def _tree(read: Callable[[str], object], example: str) -> Reader:
    import atheris

    def changed(data: bytes) -> object:
        chosen = atheris.FuzzedDataProvider(data)
        tree = json.loads(example)
        for _ in range(chosen.ConsumeIntInRange(1, 4)):
            tree = _replaced(tree, chosen)
        return read(json.dumps(tree))

    return Reader(changed, bytes(range(64)))


def _replaced(tree: Any, chosen: Any) -> Any:
    """Return a tree with one value, some way down, replaced by another."""
    if not tree or not isinstance(tree, list | dict) or chosen.ConsumeIntInRange(0, 7) == 0:
        value = chosen.ConsumeIntInRange(0, len(_VALUES))
        return json.loads(_VALUES[value]) if value < len(_VALUES) else chosen.ConsumeUnicode(8)
    keys = list(tree) if isinstance(tree, dict) else range(len(tree))
    key = keys[chosen.ConsumeIntInRange(0, len(keys) - 1)]
    tree[key] = _replaced(tree[key], chosen)
    return tree


def _files() -> Iterator[tuple[str, bytes]]:
    """Yield files of corpora by their suffix."""
    import polars

    yield from ((".txt", _LATIN.encode()), (".txt.gz", gzip.compress(_LATIN.encode())))
    yield from ((".csv", f'work,text\na,"{_LATIN}"\n'.encode()), (".jsonl", b'{"work": "a", "text": "Lux lucet."}\n'))
    with TemporaryDirectory() as folder:
        polars.DataFrame({"work": ["a"], "text": [_LATIN]}).write_parquet(Path(folder) / "x")
        yield ".parquet", (Path(folder) / "x").read_bytes()


def _corpus(path: Path, example: bytes) -> Reader:
    from latingloss.corpus.sources import Corpus

    def read(data: bytes) -> None:
        path.write_bytes(data)
        for _ in Corpus(path, most_bytes=1 << 24):
            pass

    return Reader(read, example)


def main() -> None:
    """Feed the reader named on the command line."""
    parser = argparse.ArgumentParser(prog="python -m benchmarks.fuzz", description=__doc__)
    parser.add_argument("reader", help="such as conllu, or corpus.csv; any other word lists them")
    parser.add_argument("--seconds", type=int, default=600)
    parser.add_argument("--findings", type=Path, default=Path("findings"), help="folder for inputs that break it")
    options = parser.parse_args()
    import atheris

    with TemporaryDirectory() as scratch:
        with atheris.instrument_imports(include=["latingloss", "yaml"]):
            from latingloss.errors import LatinglossError

            found = readers(Path(scratch))
        if options.reader not in found:
            parser.error(f"no reader {options.reader!r}; there are {', '.join(found)}")
        reader = found[options.reader]
        options.findings.mkdir(exist_ok=True)
        inputs = Path(scratch) / "inputs"
        inputs.mkdir()
        (inputs / "example").write_bytes(reader.example)

        def feed(data: bytes) -> None:
            with contextlib.suppress(LatinglossError):
                reader.read(data)

        prefix = f"-artifact_prefix={options.findings}/{options.reader}-"
        atheris.Setup([sys.argv[0], *_LIMITS, f"-max_total_time={options.seconds}", prefix, str(inputs)], feed)
        atheris.Fuzz()


if __name__ == "__main__":
    main()
