"""The commands: what they write, and that a mistake gives one line and exit code 2."""

import csv
import io
import subprocess
import sys
from pathlib import Path

import pytest

from latingloss.cli import main, read_text

LATIN = "Sol occidit,\nluna surgit."
ENGLISH = "The sun sets,\nthe moon rises."


@pytest.fixture
def texts(tmp_path: Path) -> tuple[str, str]:
    latin, english = tmp_path / "sol.la.txt", tmp_path / "sol.en.txt"
    latin.write_text(LATIN, encoding="utf-8")
    english.write_text(ENGLISH, encoding="utf-8")
    return str(latin), str(english)


def test_demo_writes_the_sheet_and_says_where(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "page.html"
    assert main(["demo", "--out", str(out), "--paper", "Letter"]) == 0
    assert str(out) in capsys.readouterr().out
    page = out.read_text(encoding="utf-8")
    assert "<h1>A Blessing at Evening</h1>" in page and "size: Letter" in page
    assert page.count('class="passage"') == 14
    assert "Look over before printing" in page


def test_sheet_goes_to_standard_output(texts: tuple[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", *texts, "--title", "Sol & luna"]) == 0
    page = capsys.readouterr().out
    assert page.startswith("<!DOCTYPE html>") and page.rstrip().endswith("</html>")
    assert "<title>Sol &amp; luna</title>" in page
    assert page.count('class="rendering"') == 2


def test_level_sets_how_many_words_are_picked_out(texts: tuple[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    counts = []
    for level in ("few", "many"):
        assert main(["sheet", *texts, "--level", level]) == 0
        counts.append(capsys.readouterr().out.count('class="note"'))
    assert 0 < counts[0] <= counts[1]


def test_explain_tells_readings_kin_and_sound(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "noctem"]) == 0
    said = capsys.readouterr().out
    for part in ("nox, noctis f.: night", "accusative singular", "nocturnal", "NOHK-tehm", "difficulty 0."):
        assert part in said


def test_explain_parts_an_enclitic(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "noctísque"]) == 0
    said = capsys.readouterr().out
    assert "noctís with -que" in said and "genitive singular" in said


def test_score_is_a_table_with_a_row_for_every_word(texts: tuple[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["score", texts[0]]) == 0
    rows = list(csv.DictReader(io.StringIO(capsys.readouterr().out), delimiter="\t"))
    assert [row["word"] for row in rows] == ["Sol", "occidit", "luna", "surgit"]
    assert [row["passage"] for row in rows] == ["1", "1", "2", "2"]
    assert all(0 <= float(row["difficulty"]) <= 1 and row["reasons"] for row in rows)


@pytest.mark.parametrize(
    "data",
    [b"Sol occidit,\nluna", b"\xef\xbb\xbfSol occidit,\nluna", b"Sol occidit,\r\nluna", b"Sol occidit,\rluna"],
    ids=["plain", "byte-order mark", "Windows line ends", "old Mac line ends"],
)
def test_every_way_to_save_a_text_reads_alike(tmp_path: Path, data: bytes) -> None:
    path = tmp_path / "text.txt"
    path.write_bytes(data)
    assert read_text(str(path)) == "Sol occidit,\nluna"


def test_standard_input_is_read(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO("Glória".encode())))
    assert main(["score", "-"]) == 0
    assert "\tGlória\t" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (None, "no such file"),
        (b"lux\nn\xf6x", "line 2, byte 2: not UTF-8"),
        (b"", "empty"),
        ("Ἐν ἀρχῇ".encode(), "no Latin letter"),
    ],
)
def test_a_mistake_is_one_line_and_exit_code_2(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], content: bytes | None, said: str
) -> None:
    path = tmp_path / "text.txt"
    if content is not None:
        path.write_bytes(content)
    assert main(["sheet", str(path)]) == 2
    told = capsys.readouterr()
    assert told.out == "" and said in told.err and told.err.count("\n") == 1


def test_other_mistakes_too(tmp_path: Path, texts: tuple[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", "-", "-"]) == 2
    assert main(["explain", "duo verba"]) == 2
    assert main(["sheet", *texts, "--out", str(tmp_path)]) == 2
    assert len(capsys.readouterr().err.splitlines()) == 3


def test_help_and_version(capsys: pytest.CaptureFixture[str]) -> None:
    for option, said in (("--help", "examples:"), ("--version", "latingloss ")):
        with pytest.raises(SystemExit) as end:
            main([option])
        assert end.value.code == 0
        assert said in capsys.readouterr().out


def test_help_loads_nothing_heavy() -> None:
    script = (
        "import sys\nfrom latingloss.cli import main\ntry: main(['--help'])\nexcept SystemExit: pass\n"
        "sys.exit(any(m in sys.modules for m in ('numpy', 'pydantic', 'jinja2', 'lemminflect')))"
    )
    assert subprocess.run([sys.executable, "-c", script], capture_output=True, check=False).returncode == 0
