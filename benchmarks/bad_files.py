"""Bad files: what cannot be read, each refused by an error that says why, with a bound on what it may cost."""

from __future__ import annotations

import gzip
import lzma
from collections.abc import Callable, Iterator
from io import BytesIO
from pathlib import Path

import pyarrow
import pyarrow.parquet

from benchmarks.bad_inputs import BadInput, kept
from latingloss import corpus, corrections
from latingloss.corpus import Table
from latingloss.errors import FormatError
from latingloss.formats import conllu, pharaoh, schema, tables, tei, webannotation

_TEI = '<TEI xmlns="http://www.tei-c.org/ns/1.0"><text><body>{}</body></text></TEI>'
_LINKED = (
    '<div type="source"><l xml:id="l0"><w xml:id="a">lux</w></l><l xml:id="l1"><w>nox</w></l></div>'
    '<div type="rendering"><l corresp="#l1"><w xml:id="b">night</w></l><link target="#a #b"/></div>'
)


def _refused(text: str, read: Callable[[str], object]) -> Callable[[Path], str]:
    return lambda _: f"read: {read(text)!r:.40}"


def formats() -> Iterator[BadInput]:
    """Yield what readers of formats refuse."""
    deep = "<p>" * 100_000 + "</p>" * 100_000
    entity = '<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]><x>&a;</x>'
    laughs = "".join(f'<!ENTITY a{i} "{f"&a{i - 1};" * 10}">' for i in range(1, 10))
    laughs = f'<!DOCTYPE x [<!ENTITY a0 "x">{laughs}]><x>&a9;</x>'
    aliases = "a: &a [x, x]\nb: &b [*a, *a]\neverywhere: [*b]"
    tag = "!!python/object/apply:os.system [ls]"
    rows: dict[str, tuple[str, str, Callable[[str], object]]] = {
        "tei-laughs": ("TEI: entities that grow to a billion", laughs, tei.read),
        "tei-external": ("TEI: an entity from a file", entity, tei.read),
        "tei-nul": ("TEI: NUL", _TEI.format("<l>lu\x00x</l>"), tei.read),
        "tei-surrogate": ("TEI: half a character", _TEI.format("<l>lu\ud800x</l>"), tei.read),
        "tei-cut": ("TEI: cut off", _TEI.format("<l><w>lux")[:70], tei.read),
        "tei-deep": ("TEI: 100,000 elements in each other", _TEI.format(deep), tei.read),
        "tei-link": ("TEI: a link to a word of another line", _TEI.format(_LINKED), tei.read),
        "json-deep": ("JSON: 100,000 lists in each other", "[" * 100_000, schema.read),
        "json-other": ("JSON: of something else", '{"lux": 1}', schema.read),
        "json-nan": ("JSON: a probability that is no number", '{"source": "x", "passages": NaN}', schema.read),
        "conllu-columns": ("CoNLL-U: too few columns", "1\tlux\n", conllu.read),
        "conllu-numbers": ("CoNLL-U: a number of 5,000 digits", "9" * 5000 + "\tlux" + "\t_" * 8, conllu.read),
        "conllu-range": ("CoNLL-U: a range of a billion words", "1-999999999\tlux" + "\t_" * 8, conllu.read),
        "conllu-nul": ("CoNLL-U: NUL for an ID", "\x00\tlux" + "\t_" * 8, conllu.read),
        "table-ragged": ("CSV: too few cells", "passage,token\r\n1,1\r\n", tables.read),
        "table-quote": ("CSV: a quotation mark that is never closed", 'a,b\r\n"lux\r\n' * 3, tables.read),
        "pharaoh": ("Pharaoh links: words for numbers", "lux-light", pharaoh.read),
        "annotation": ("Web Annotation: no collection", '{"first": []}', lambda text: webannotation.read(text, "lux")),
        "yaml-tag": ("corrections: a tag that makes an object", tag, corrections.read),
        "yaml-laughs": ("corrections: aliases that grow", aliases, corrections.read),
        "yaml-deep": ("corrections: 10,000 lists in each other", "[" * 10_000, corrections.read),
        "yaml-huge": ("corrections: two million characters", "# " + "x" * 2_000_000, corrections.read),
        "yaml-braces": ("corrections: braces in a word", "everywhere: [{word: '{', lemma: x}]", corrections.read),
        "yaml-twice": ("corrections: a key twice", "everywhere: []\neverywhere: []", corrections.read),
        "yaml-control": ("corrections: control characters", "everywhere: \x01\x02", corrections.read),
    }  # fmt: skip
    for name, (given, text, read) in rows.items():
        yield BadInput(f"format-{name}", given, _refused(text, read), FormatError)
    escapes = "1\tlux" + "\t_" * 7 + "\t" r"Source=\U00110000\ud800"
    yield BadInput("format-conllu-escape", "CoNLL-U: escapes of no character", lambda _: kept(conllu.read(escapes)))


def _parquet() -> bytes:
    out = BytesIO()
    pyarrow.parquet.write_table(pyarrow.table({"work": ["a"], "text": ["lux"], "other": [1]}), out)
    return out.getvalue()


def files() -> Iterator[BadInput]:
    """Yield files that a corpus cannot have."""

    def row(name: str, given: str, data: bytes, *, most: int = 1 << 16) -> BadInput:
        def act(folder: Path) -> str:
            (folder / name).write_bytes(data)
            texts = Table(folder / name) if name.endswith((".csv", ".jsonl", ".parquet")) else folder / name
            return f"{sum(map(len, corpus.score([texts], most_bytes=most))):,} rows"

        return BadInput(f"file-{name}", f"corpus: {given}", act, FormatError)

    bomb = b"lux lucet\n" * 400_000
    yield row("bomb.txt.gz", "a gzip file that unpacks to 4 MB, 64 KB allowed", gzip.compress(bomb))
    yield row("bomb.txt.xz", "an xz file that does", lzma.compress(bomb, preset=0))
    yield row("cut.txt.gz", "a gzip file cut off", gzip.compress(b"lux lucet " * 999)[:40])
    yield row("no.txt.gz", "a gzip file that is none", b"lux lucet")
    yield row("latin1.txt", "a file in Latin-1", "glória".encode("latin-1"))
    yield row("utf16.txt", "a file in UTF-16", "glória".encode("utf-16"))
    yield row("texts.zip", "a zip file", b"PK\x03\x04")
    yield row("texts.parquet", "a Parquet file that is none", b"PAR1PAR1")
    yield row("name.parquet", "a Parquet file with a name that is not UTF-8", _parquet().replace(b"other", b"oth\xf7r"))
    yield row("texts.csv", "a CSV file without the column", b"a,b\n1,2\n")
    yield row("texts.jsonl", "JSON Lines with a list", b"[1]\n")
    yield BadInput(
        "file-missing",
        "corpus: a file that is not there",
        lambda f: str(next(corpus.score([f / "x.txt"]))),
        FormatError,
    )
