"""Each kind of file gives the rows of the text in it; a bad one is named with its line, and left out if asked."""

from __future__ import annotations

import bz2
import gzip
import json
import lzma
from collections.abc import Callable
from pathlib import Path

import pytest

from latingloss.errors import FormatError, InputTypeError

pl = pytest.importorskip("polars", reason="needs the extra corpus")
pytest.importorskip("pyarrow", reason="needs the extra corpus")

from latingloss import annotate  # noqa: E402
from latingloss.corpus import Table, pieces, score  # noqa: E402
from latingloss.corpus.sources import Corpus  # noqa: E402
from latingloss.formats import conllu, tei  # noqa: E402

TEXT = "Stellae lucent,\npopulusque vigilat;\n\nXII custodes cantant.\nLuna surgit."
COLUMNS = ["work", "passage", "token", "form", "lemma", "case"]


def _rows(*texts: object, columns: list[str] = COLUMNS) -> list[tuple[object, ...]]:
    return [row for frame in score(list(texts)) for row in frame.select(columns).rows()]  # type: ignore[arg-type]


@pytest.mark.parametrize("size", [1 << 17, 40])
@pytest.mark.parametrize(("write", "suffix"), [(conllu.write, ".conllu"), (tei.write, ".xml"), (tei.write, ".tei")])
def test_marked_files_give_the_rows_of_their_text(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, write: Callable[..., str], suffix: str, size: int
) -> None:
    path = tmp_path / f"hymn{suffix}"
    path.write_text(write(annotate(TEXT)), encoding="utf-8")
    monkeypatch.setattr(pieces, "PIECE_CHARACTERS", size)
    assert _rows(path) == _rows(("hymn", TEXT))
    texts = list(Corpus(path))
    assert (len(texts) > 1) == (size == 40)
    if suffix == ".conllu":  # blank lines are kept in MISC, so offsets are those of the text itself
        assert _rows(path, columns=["start", "end"]) == _rows(("hymn", TEXT), columns=["start", "end"])


def test_tokens_of_a_treebank_are_kept(tmp_path: Path) -> None:
    # Universal Dependencies' CoNLL-U: a token of two words has a range; https://universaldependencies.org/format.html
    lines = ["1-2 mecum _ _ _ _ _ _ _ _", "1 me ego PRON _ _ 0 root _ _", "2 cum cum ADP _ _ 1 case _ _"]
    lines += ["3 S.P.Q.R. senatus NOUN _ _ 1 dep _ SpaceAfter=No", "4 . . PUNCT _ _ 1 punct _ _", ""]
    path = tmp_path / "bank.conllu"
    path.write_text("\n".join(line.replace(" ", "\t") for line in lines) + "\n", encoding="utf-8")
    columns = ["token", "form", "start", "end"]
    assert _rows(path, columns=columns) == [(0, "me", 0, 5), (0, "cum", 0, 5), (1, "S.P.Q.R.", 6, 14)]


def test_a_foreign_tei_file_is_read(tmp_path: Path) -> None:
    # TEI P5 guidelines, ch. 6 Verse: l in lg; the header is no text
    body = "<lg><l n='1'>Stellae lucent,</l><l n='2'>populusque vigilat;</l></lg>"
    path = tmp_path / "hymn.xml"
    path.write_text(
        "<TEI xmlns='http://www.tei-c.org/ns/1.0'><teiHeader><fileDesc><titleStmt><title>Hymnus</title></titleStmt>"
        f"</fileDesc></teiHeader><text><body>{body}</body></text></TEI>",
        encoding="utf-8",
    )
    assert _rows(path) == _rows(("hymn", "Stellae lucent,\npopulusque vigilat;"))


def _tables(folder: Path) -> list[Path]:
    rows = [("a", "Stellae lucent."), ("a", "Luna, \nnox."), ("b", None), ("b", "Sol oritur.")]
    frame = pl.DataFrame(rows, schema=["book", "latin"], orient="row")
    frame.write_parquet(folder / "t.parquet")
    frame.write_csv(folder / "t.csv")
    frame.write_csv(folder / "t.tsv", separator="\t")
    frame.write_ndjson(folder / "t.jsonl")
    with gzip.open(folder / "t.ndjson.gz", "wb") as file:
        file.write((folder / "t.jsonl").read_bytes())
    return sorted(folder.iterdir())


def test_tables_give_the_rows_of_their_texts(tmp_path: Path) -> None:
    plain = _rows(("a", "Stellae lucent."), ("a", "Luna, \nnox."), ("b", "Sol oritur."))
    paths = _tables(tmp_path)
    assert len(paths) == 5
    for path in paths:
        assert _rows(Table(path, text="latin", work="book")) == plain, path
        with pytest.raises(FormatError, match=r"no column 'text', only 'book', 'latin'; give Table"):
            _rows(path)
    whole = _rows(Table(tmp_path / "t.csv", text="latin", work=None))
    assert {row[0] for row in whole} == {"t"} and len(whole) == len(plain)


@pytest.mark.parametrize(("suffix", "pack"), [(".gz", gzip.compress), (".bz2", bz2.compress), (".xz", lzma.compress)])
def test_compressed_files(tmp_path: Path, suffix: str, pack: Callable[[bytes], bytes]) -> None:
    path = tmp_path / f"hymn.txt{suffix}"
    path.write_bytes(pack(("\ufeff" + TEXT).encode()))
    assert _rows(path) == _rows(("hymn", TEXT))
    with pytest.raises(FormatError, match=r"line 3: more than 39 bytes; cut the file, or raise most_bytes"):
        list(Corpus(path, most_bytes=39))
    path.write_bytes(pack(TEXT.encode())[:-9])
    with pytest.raises(FormatError, match=r"hymn\.txt.*: cannot be read"):
        _rows(path)


def test_a_line_without_end_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "bomb.txt.gz"
    path.write_bytes(gzip.compress(b"a" * (1 << 25)))
    with pytest.raises(FormatError, match=r"line 1: longer than 16,777,216 bytes"):
        list(Corpus(path))


def test_folders_and_patterns(tmp_path: Path) -> None:
    for name in ("b/two.txt", "a/one.txt", "a/skipped.pdf", ".hidden/x.txt", "three.txt"):
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text("Lux lucet.", encoding="utf-8")
    assert [piece.work for piece in Corpus(tmp_path)] == ["a/one", "b/two", "three"]
    assert [piece.work for piece in Corpus(tmp_path / "*" / "*.txt")] == ["a/one", "b/two"]
    assert [piece.work for piece in Corpus([tmp_path / "three.txt", ("x", "Nox.")])] == ["three", "x"]
    corpus = Corpus([tmp_path, ("x", "Nox.")])
    assert list(corpus) and corpus.read == corpus.bytes == 3 * len("Lux lucet.") + len("Nox.")
    for none in (tmp_path / "*.xml", tmp_path / "none.txt"):
        with pytest.raises(FormatError, match=r"no (such )?file"):
            list(Corpus(none))


_BAD = {
    "old.txt": (b"Lux\nlux " + "æterna".encode("latin-1"), r"old\.txt, line 2: byte 5 is not UTF-8"),
    "cut.gz": (b"Lux", "cut.gz: cannot be read: Not a gzipped file"),
    "pack.zip": (b"PK", r"pack\.zip: \.zip is not unpacked here"),
    "bank.conllu": (b"# text = Lux\n1\tLux\n", r"bank\.conllu: CoNLL-U, line 2: 2 columns"),
    "wild.xml": (b"<TEI xmlns='http://www.tei-c.org/ns/1.0'>\n<text>", r"wild\.xml: TEI, line 2, column"),
    "own.xml": (b"<!DOCTYPE TEI><TEI/>", "document type declaration"),
    "a.csv": (b"work,text\nx,Lux\ny\n", r"a\.csv, line 3: 1 cells where the header has 2"),
    "a.jsonl": (b'{"work": "x", "text": "Lux"}\n{"work": "x", "text": 3}\n', r"a\.jsonl, line 2: column 'text' has 3"),
    "b.jsonl": (b'{"work": "x", "text": "Lux"}\nLux\n', r"b\.jsonl, line 2: not JSON"),
    "c.jsonl": (b"[3]\n", r"c\.jsonl, line 1: not a JSON object"),
    "a.parquet": (b"PAR1", r"a\.parquet: cannot be read as Parquet"),
}


@pytest.mark.parametrize("name", _BAD)
def test_a_bad_file_is_named_with_its_line_and_left_out_if_asked(tmp_path: Path, name: str) -> None:
    data, message = _BAD[name]
    path = tmp_path / name
    path.write_bytes(data)
    with pytest.raises(FormatError, match=message):
        list(Corpus([path]))
    errors: list[FormatError] = []
    works = [piece.work for piece in Corpus([("x", "Nox."), path, ("y", "Sol.")], on_bad_file=errors.append)]
    assert works == ["x", "y"] and len(errors) == 1  # nothing of it, not even its good lines


def test_the_line_of_an_error_counts_from_the_head_of_the_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "bank.conllu"
    path.write_text(conllu.write(annotate(TEXT)) + "1\tLux\n", encoding="utf-8")
    monkeypatch.setattr(pieces, "PIECE_CHARACTERS", 10)
    with pytest.raises(FormatError, match=rf"line {path.read_text(encoding='utf-8').count(chr(10))}: 2 columns"):
        list(Corpus(path))


def test_what_is_no_text_is_refused() -> None:
    with pytest.raises(InputTypeError, match="a text is a pair"):
        next(score(["Lux lucet."]))  # type: ignore[list-item]


def test_a_cell_may_hold_a_whole_work(tmp_path: Path) -> None:
    text = "Lux lucet.\n" * 20_000  # longer than the csv module takes by itself
    (tmp_path / "a.csv").write_text(f'work,text\nx,"{text}"\n', encoding="utf-8")
    (tmp_path / "a.jsonl").write_text(json.dumps({"work": "x", "text": text}), encoding="utf-8")
    assert list(Corpus(tmp_path / "a.csv")) == list(Corpus(tmp_path / "a.jsonl"))
