"""The same rows whatever the workers and the size of parts; a stopped run goes on, and no row is lost or doubled."""

from __future__ import annotations

import os
import signal
from pathlib import Path

import pytest

from latingloss.errors import InputTypeError, OptionError

pl = pytest.importorskip("polars", reason="needs the extra corpus")
pytest.importorskip("pyarrow", reason="needs the extra corpus")

from latingloss.corpus import running, score, summarize, write_parts  # noqa: E402
from latingloss.corpus.progress import Progress, show  # noqa: E402

VERSES = ["Stellae lucent,", "populusque vigilat;", "XII custodes cantant.", "Nox abit, sol oritur.", "Quis venit?"]
TEXTS = [(f"work {i // 3}", "\n".join(VERSES[i % 4 :] + VERSES[:i])) for i in range(24)]


def _rows(folder: Path) -> list[tuple[object, ...]]:
    return pl.read_parquet(folder / "*.parquet").rows()


@pytest.fixture(scope="module")
def rows() -> list[tuple[object, ...]]:
    return pl.concat(score(TEXTS)).rows()


@pytest.mark.parametrize(("workers", "size"), [(1, 1 << 19), (1, 1), (1, 300), (2, 200)])
def test_rows_do_not_depend_on_workers_or_parts(
    tmp_path: Path, rows: list[tuple[object, ...]], workers: int, size: int
) -> None:
    told: list[Progress] = []
    done = write_parts(TEXTS, tmp_path, workers=workers, part_characters=size, progress=told.append)
    assert _rows(tmp_path) == rows
    assert done.words == len(rows) == told[-1].words
    assert done.parts == len(told) == len(list(tmp_path.iterdir()))
    assert told[-1].share == 1 and [t.share for t in told] == sorted(t.share or 0 for t in told)
    assert summarize(tmp_path).equals(summarize(pl.concat(score(TEXTS))))


def test_parts_scored_without_context_are_scored_anew_with_it(tmp_path: Path, rows: list[tuple[object, ...]]) -> None:
    alone = write_parts(TEXTS, tmp_path, context=False)
    assert _rows(tmp_path) == pl.concat(score(TEXTS, context=False)).rows() != rows
    done = write_parts(TEXTS, tmp_path)
    assert (done.found, done.words) == (0, alone.words) and _rows(tmp_path) == rows


def test_a_stopped_run_goes_on(tmp_path: Path, rows: list[tuple[object, ...]]) -> None:
    def stop(progress: Progress) -> None:
        if (progress.share or 0) > 0.5:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt) as stopped:
        write_parts(TEXTS, tmp_path, part_characters=200, progress=stop)
    assert "the same call goes on from there" in stopped.value.__notes__[0]
    written = {path: path.stat().st_mtime_ns for path in tmp_path.iterdir()}
    assert written and all(pl.read_parquet(path).height for path in written)
    told: list[Progress] = []
    done = write_parts(TEXTS, tmp_path, part_characters=200, progress=told.append)
    assert _rows(tmp_path) == rows
    assert done.found == len(written) and done.words < len(rows)
    assert all(path.stat().st_mtime_ns == time for path, time in written.items())
    assert told[0].found == pytest.approx(done.found / done.parts, abs=0.2) and told[-1].share == 1


def test_changed_texts_and_broken_files_are_done_again(tmp_path: Path) -> None:
    write_parts(TEXTS, tmp_path, part_characters=200)
    first, second = sorted(tmp_path.iterdir())[:2]
    second.write_bytes(second.read_bytes()[:-20])
    (tmp_path / f"{first.name}.host.1.unfinished").write_bytes(b"")
    (tmp_path / "notes.txt").write_text("mine")
    texts = [("work 0", TEXTS[0][1].replace("Stellae", "Lunae")), *TEXTS[1:12]]
    done = write_parts(texts, tmp_path, part_characters=200)
    assert _rows(tmp_path) == pl.concat(score(texts)).rows()
    assert done.found == done.parts - 3  # the first, the broken one and the last, which is shorter now
    assert len(list(tmp_path.iterdir())) == done.parts + 1 and (tmp_path / "notes.txt").read_text() == "mine"


def test_bad_files_are_counted(tmp_path: Path) -> None:
    (tmp_path / "in").mkdir()
    (tmp_path / "in" / "good.txt").write_text("Lux lucet.", encoding="utf-8")
    (tmp_path / "in" / "old.txt").write_bytes(b"Lux \xe6terna")
    done = write_parts(tmp_path / "in", tmp_path / "out", on_bad_file=lambda error: None)
    assert done.words == 2 and len(done.bad_files) == 1
    assert "1 bad file left out:\n" in str(done) and "old.txt, line 1: byte 5 is not UTF-8" in str(done)


def test_no_texts_give_an_empty_table(tmp_path: Path) -> None:
    assert write_parts([], tmp_path).words == 0
    assert _rows(tmp_path) == []


def test_options_are_checked(tmp_path: Path) -> None:
    for wrong in ({"workers": 0}, {"part_characters": 0}):
        with pytest.raises(OptionError, match="give 1 or more"):
            write_parts(TEXTS, tmp_path, **wrong)
    with pytest.raises(InputTypeError, match=r"distributed\.Client"):
        write_parts(TEXTS, tmp_path, workers="tcp://localhost")  # type: ignore[arg-type]


def test_progress_tells_the_time_left(capsys: pytest.CaptureFixture[str]) -> None:
    halfway = Progress(1000, 10.0, 0.5, found=0.25)
    assert halfway.rate == 100 and halfway.seconds_left == pytest.approx(20)  # a quarter in 10 s, half is left
    show(halfway)
    show(Progress(2000, 30.0, 1.0))
    assert "50%, 1,000 words, 100 words/s, 0:20 left" in capsys.readouterr().err


def test_a_killed_worker_of_a_cluster_loses_and_doubles_nothing(tmp_path: Path, rows: list[tuple[object, ...]]) -> None:
    distributed = pytest.importorskip("distributed", reason="needs the extra dask")
    killed: list[int] = []

    def kill(progress: Progress) -> None:
        if not killed:
            killed.append(next(iter(client.run(os.getpid).values())))
            os.kill(killed[0], signal.SIGKILL)

    with (
        distributed.LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster,
        distributed.Client(cluster) as client,
    ):
        done = write_parts(TEXTS, tmp_path, workers=client, part_characters=100, progress=kill)
        assert killed and killed[0] not in client.run(os.getpid).values()
    assert done.words == len(rows) and _rows(tmp_path) == rows
    assert len(list(tmp_path.iterdir())) == done.parts


def test_a_failed_part_can_be_done_alone(
    tmp_path: Path, rows: list[tuple[object, ...]], monkeypatch: pytest.MonkeyPatch
) -> None:
    own = running.write_part

    def fails(part: running.Part, folder: Path) -> int:
        if part.number == 3:
            raise OSError("no space left")
        return own(part, folder)

    monkeypatch.setattr(running, "write_part", fails)
    with pytest.raises(OSError, match="no space left"):
        write_parts(TEXTS, tmp_path, part_characters=200)
    monkeypatch.undo()
    assert write_parts(TEXTS, tmp_path, part_characters=200).found == 3
    assert _rows(tmp_path) == rows
