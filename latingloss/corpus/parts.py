"""Parts: a corpus cut into parts, each scored into a Parquet file of its own.

A part's file holds a digest of its texts and of this version of latingloss, and it gets its name when it is whole. So
the same part may be scored twice without harm, and a run that was stopped goes on where it was.
"""

from __future__ import annotations

import os
import platform
from collections.abc import Iterator
from functools import cache
from hashlib import blake2b
from importlib.resources import files
from pathlib import Path
from typing import NamedTuple

from latingloss import __version__
from latingloss.corpus.extra import pa
from latingloss.corpus.pieces import Piece
from latingloss.corpus.schema import SCHEMA
from latingloss.corpus.scoring import score_pieces
from latingloss.corpus.sources import Corpus

PART_CHARACTERS = 1 << 19  # about 80,000 words
_DIGEST = b"latingloss part"


class Part(NamedTuple):
    """Some pieces that are scored into one file."""

    number: int
    pieces: tuple[Piece, ...]
    read: int  # how much of the corpus was read when it was cut
    context: bool = True  # whether readings are chosen in context

    @property
    def name(self) -> str:
        """The name of its file; files sort in the order of the texts."""
        return f"part-{self.number:06}.parquet"

    def digest(self) -> bytes:
        """Return a digest of all that its rows depend on."""
        digest = blake2b(_edition(), digest_size=16, key=b"" if self.context else b"alone")
        for work, text, *rest in self.pieces:
            digest.update(f"{len(work)} {len(text)} {rest}{work}{text}".encode(errors="surrogatepass"))
        return digest.hexdigest().encode()


@cache
def _edition() -> bytes:
    """Return what tells this version of the program and its data."""
    manifest = (files("latingloss") / "data" / "manifest.tsv").read_bytes()
    return b"%s\n%s\n%s" % (__version__.encode(), str(SCHEMA).encode(), manifest)


def parts(corpus: Corpus, characters: int, *, context: bool = True) -> Iterator[Part]:
    """Cut a corpus into parts of at least so many characters, whole pieces each; one empty part if it has none."""
    number, held, length = 0, list[Piece](), 0
    for piece in corpus:
        held.append(piece)
        length += len(piece.text)
        if length >= characters:
            yield Part(number, tuple(held), corpus.read, context)
            number, held, length = number + 1, [], 0
    if held or not number:
        yield Part(number, tuple(held), corpus.read, context)


def write_part(part: Part, folder: Path) -> int:
    """Score a part into its file in a folder; return the number of words."""
    from pyarrow.parquet import ParquetWriter

    unfinished = folder / f"{part.name}.{platform.node()}.{os.getpid()}.unfinished"
    schema = SCHEMA.with_metadata({_DIGEST: part.digest()})
    table = pa.Table.from_batches(list(score_pieces(part.pieces, context=part.context)), SCHEMA)
    try:
        with ParquetWriter(unfinished, schema, compression="zstd") as writer:
            writer.write_table(table.replace_schema_metadata(schema.metadata))
        unfinished.replace(folder / part.name)
    finally:
        unfinished.unlink(missing_ok=True)
    return int(table.num_rows)


def is_written(part: Part, folder: Path) -> bool:
    """Tell whether the part's file is there, whole, and scored from these texts by this version."""
    from pyarrow.parquet import read_schema

    try:
        metadata = read_schema(folder / part.name).metadata or {}
    except (OSError, pa.ArrowException):
        return False
    return bool(metadata.get(_DIGEST) == part.digest())


def remove_others(folder: Path, count: int) -> None:
    """Remove parts of an earlier corpus, numbered from `count` on, and what killed workers left."""
    names = {f"part-{number:06}.parquet" for number in range(count)}
    for path in folder.glob("part-*.parquet*"):
        if path.name not in names:
            path.unlink(missing_ok=True)
