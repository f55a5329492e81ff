"""The commands: what they write, and that a mistake gives one line and exit code 2."""

import csv
import io
import subprocess
import sys
from pathlib import Path

import pytest
import webvtt

from latingloss.cli import main, read_text

LATIN = "Sol occidit,\nluna surgit."
ENGLISH = "The sun sets,\nthe moon rises."


@pytest.fixture
def texts(tmp_path: Path) -> tuple[str, str]:
    latin, english = tmp_path / "sol.la.txt", tmp_path / "sol.en.txt"
    latin.write_text(LATIN, encoding="utf-8")
    english.write_text(ENGLISH, encoding="utf-8")
    return str(latin), str(english)


def test_demo_writes_the_booklet_and_says_where(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "page.html"
    assert main(["demo", "--out", str(out), "--paper", "Letter"]) == 0
    assert str(out) in capsys.readouterr().out
    page = out.read_text(encoding="utf-8")
    assert "<h1>Two Prayers of a Parish Choir</h1>" in page and "size: Letter" in page
    assert page.count('class="passage"') == 6 + 14
    assert "Look over before printing" in page


def test_demo_without_a_name_writes_every_format(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["demo"]) == 0
    starts = {path.name: path.read_bytes()[:4] for path in tmp_path.iterdir()}
    assert starts == {
        "choir.html": b"<!DO", "choir.pdf": b"%PDF", "choir.docx": b"PK\x03\x04", "choir.vtt": b"WEBV",
    }  # fmt: skip


def test_practice_pages_are_printed_if_wanted(texts: tuple[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    with open(texts[0], "a", encoding="utf-8") as latin, open(texts[1], "a", encoding="utf-8") as english:
        latin.write("\nStellae clarae lucent in caelo.")
        english.write("\nThe bright stars shine in the sky.")
    pages = []
    for wanted in ((), ("--practice", "all"), ("--practice", "all", "--variant", "2"), ("--practice", "order")):
        assert main(["sheet", *texts, *wanted]) == 0
        pages.append(capsys.readouterr().out)
    assert "<h2 id=" in pages[0] and "Answers" not in pages[0]
    assert "Answers" in pages[1] and pages[1] != pages[2]
    assert "Put the line back in order" in pages[3] and "Recite" not in pages[3]
    assert main(["sheet", *texts, "--practice", "juggling"]) == 2
    assert "'recitation'" in capsys.readouterr().err


def test_captions_last_as_long_as_the_recording(
    texts: tuple[str, str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out, marks = tmp_path / "sol.vtt", tmp_path / "marks.txt"
    assert main(["sheet", *texts, "--length", "0:20", "--out", str(out)]) == 0
    assert [cue.end for cue in webvtt.read(str(out))] == ["00:00:10.000", "00:00:20.000"]
    marks.write_text("0:01 Sol\n# a breath\n0:05.5 luna\n", encoding="utf-8")
    assert main(["sheet", *texts, "--marks", str(marks), "--length", "9", "--out", str(out)]) == 0
    times = [(cue.start, cue.end) for cue in webvtt.read(str(out))]
    assert times == [("00:00:01.000", "00:00:05.500"), ("00:00:05.500", "00:00:09.000")]
    marks.write_text("0:01\nlater luna\n", encoding="utf-8")
    capsys.readouterr()
    assert main(["sheet", *texts, "--marks", str(marks), "--out", str(out)]) == 2
    assert main(["sheet", *texts, "--length", "long", "--out", str(out)]) == 2
    told = capsys.readouterr().err.splitlines()
    assert "marks.txt, line 2: 'later' is no time" in told[0] and "'long' is no time" in told[1]


def test_a_booklet_file_binds_several_texts(texts: tuple[str, str], tmp_path: Path) -> None:
    plan = tmp_path / "songs.yaml"
    plan.write_text(
        "title: Songs\ntexts:\n- {latin: sol.la.txt, english: sol.en.txt, title: Sun}\n- {latin: sol.la.txt}\n",
        encoding="utf-8",
    )
    out = tmp_path / "songs.md"
    assert main(["sheet", str(plan), "--out", str(out), "--columns", "rendering,latin", "--lines"]) == 0
    page = out.read_text(encoding="utf-8")
    assert page.startswith("# Songs\n\n## Sun\n") and "## Text 2" in page
    assert "| English | Latin |" in page


def test_corrections_are_heard_and_what_fits_nothing_is_told(
    texts: tuple[str, str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "sol.yaml"
    path.write_text(
        "passages:\n- latin: Sol occidit\n  words:\n  - {word: Sol, gloss: the great light, emphasis: true, "
        "note: Hear it}\n"
        "- latin: Nox venit\n  words: [{word: Nox, gloss: dark}]\n",
        encoding="utf-8",
    )
    assert main(["sheet", *texts, "--corrections", str(path)]) == 0
    told = capsys.readouterr()
    assert "the great light" in told.out and "Hear it" in told.out
    assert told.err.count("\n") == 1 and "Nox venit" in told.err


@pytest.mark.parametrize(
    ("content", "said"),
    [
        ("texts: [{latin: sol.la.txt", "line 1"),
        ("title: Songs", "no texts"),
        ("texts: [{english: sol.en.txt}]", "text 1: no 'latin:'"),
        ("texts: [{latin: sol.la.txt, colour: red}]", "no key 'colour'"),
        ("texts: [{latin: sol.la.txt, title: 3}]", "title must be text"),
        ("texts: [{latin: none.txt}]", "no such file"),
    ],
)
def test_a_wrong_booklet_file_is_told(
    tmp_path: Path, texts: tuple[str, str], capsys: pytest.CaptureFixture[str], content: str, said: str
) -> None:
    plan = tmp_path / "songs.yaml"
    plan.write_text(content, encoding="utf-8")
    assert main(["sheet", str(plan)]) == 2
    told = capsys.readouterr()
    assert said in told.err and told.err.count("\n") == 1


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
