"""Running: the parts of a corpus scored one after another, by processes, or on a cluster."""

from __future__ import annotations

import signal
from collections import deque
from collections.abc import Callable, Iterator
from concurrent.futures import Executor, Future, ProcessPoolExecutor
from contextlib import contextmanager
from multiprocessing import get_context
from os import PathLike
from pathlib import Path
from time import perf_counter
from typing import TYPE_CHECKING, Any, NamedTuple

from latingloss.corpus.files import MOST_BYTES
from latingloss.corpus.parts import PART_CHARACTERS, Part, is_written, parts, remove_others, write_part
from latingloss.corpus.progress import Progress
from latingloss.corpus.sources import BadFile, Corpus, Texts
from latingloss.errors import FormatError, InputTypeError, OptionError

if TYPE_CHECKING:
    from distributed import Client

_AHEAD = 2  # parts handed out for each worker, so that none waits


class Written(NamedTuple):
    """What `write_parts` did."""

    parts: int  # in the folder now
    found: int  # of these, finished before
    words: int  # scored in this call
    seconds: float
    bad_files: tuple[str, ...]  # each with file, line and reason

    def __str__(self) -> str:
        """Return it in words.

        >>> print(Written(8, 2, 460_000, 4.6, ("old.txt, line 3: byte 5 is not UTF-8",)))
        8 parts, 2 of them finished before; 460,000 words in 4.6 s; 1 bad file left out:
          old.txt, line 3: byte 5 is not UTF-8
        """
        before = f", {self.found} of them finished before" if self.found else ""
        bad = len(self.bad_files)
        left_out = [f"; {bad} bad file{'s' * (bad > 1)} left out:", *self.bad_files] if bad else []
        return f"{self.parts} parts{before}; {self.words:,} words in {self.seconds:.1f} s" + "\n  ".join(left_out)


def write_parts(
    texts: Texts, folder: str | PathLike[str], *, workers: int | Client = 1, context: bool = True,
    part_characters: int = PART_CHARACTERS, on_bad_file: BadFile | None = None,
    progress: Callable[[Progress], None] | None = None, most_bytes: int = MOST_BYTES,
) -> Written:  # fmt: skip
    """Score a corpus into a folder of Parquet files, `part-000000.parquet` and so on, with the columns of `SCHEMA`.

    Takes what `score` takes. `workers` is a number of processes or a Dask client, whose workers must reach the folder
    by the same path; rows and files are the same whatever it is. (Processes are spawned: a script must keep its calls
    under `if __name__ == "__main__":`.) A part has at least `part_characters`, and the end of the corpus what is
    left. `progress` is called after each part; `latingloss.corpus.progress.show` prints it.

    If the call is stopped or fails, whole parts stay, and the same call goes on from there; parts that were scored
    from other texts, or by another version, are replaced. The folder's `part-*` files belong to the call.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     first = write_parts([("Hymn", "Stellae lucent.")], folder)
    ...     again = write_parts([("Hymn", "Stellae lucent.")], folder)
    >>> (first.words, first.found), (again.words, again.found)
    ((2, 0), (0, 1))
    """
    bad: list[str] = []

    def note(error: FormatError) -> None:
        bad.append(str(error))
        if on_bad_file:
            on_bad_file(error)

    if part_characters < 1:
        raise OptionError(f"part_characters is {part_characters}; give 1 or more")
    corpus = Corpus(texts, on_bad_file=note if on_bad_file else None, most_bytes=most_bytes)
    out = Path(folder).absolute()
    out.mkdir(parents=True, exist_ok=True)
    with _executor(workers) as (executor, ahead):
        run = _Run(corpus, out, progress)
        try:
            run.go(executor, ahead, parts(corpus, part_characters, context=context))
        except BaseException as error:
            run.drop()
            error.add_note(f"The parts that are whole stay in {folder}; the same call goes on from there.")
            raise
    remove_others(out, run.count)
    return Written(run.count, run.found, run.words, perf_counter() - run.start, tuple(bad))


class _Run:
    """One call: parts handed out and taken back in their order."""

    def __init__(self, corpus: Corpus, folder: Path, progress: Callable[[Progress], None] | None) -> None:
        self._corpus, self._folder, self._progress = corpus, folder, progress
        self.start = perf_counter()
        self.count = self.found = self.words = 0
        self._read_found = 0
        self._waiting: deque[tuple[Part, Future[int]]] = deque()

    def go(self, executor: Executor, ahead: int, handed: Iterator[Part]) -> None:
        """Score all parts that are not there yet, so many handed out at once."""
        before = 0
        for part in handed:
            self.count += 1
            if is_written(part, self._folder):
                self.found += 1
                self._read_found += part.read - before
            else:
                self._waiting.append((part._replace(pieces=()), executor.submit(write_part, part, self._folder)))
            before = part.read
            while len(self._waiting) >= ahead:
                self._take()
        while self._waiting:
            self._take(last=len(self._waiting) == 1)

    def drop(self) -> None:
        """Take back the parts that are not begun."""
        for _, future in self._waiting:
            future.cancel()

    def _take(self, *, last: bool = False) -> None:
        part, future = self._waiting.popleft()
        self.words += future.result()
        if self._progress:
            whole = self._corpus.bytes
            share, found = (part.read / whole, self._read_found / whole) if whole else (None, 0.0)
            share = 1.0 if last else share  # what a bad file has is never read
            self._progress(Progress(self.words, perf_counter() - self.start, share, found))


class _Here(Executor):
    """Does its work at once, in this process."""

    def submit(self, fn: Callable[..., Any], /, *args: Any, **kwargs: Any) -> Future[Any]:
        future: Future[Any] = Future()
        future.set_result(fn(*args, **kwargs))
        return future


@contextmanager
def _executor(workers: int | Client) -> Iterator[tuple[Executor, int]]:
    """Yield what does the work, and how many parts to hand it at once."""
    if isinstance(workers, bool) or not (isinstance(workers, int) or hasattr(workers, "get_executor")):
        raise InputTypeError(f"workers is {workers!r:.60}; give a number of processes or a distributed.Client")
    executor: Executor
    if not isinstance(workers, int):
        client: Any = workers
        executor, ahead = client.get_executor(retries=2), _AHEAD * max(1, sum(client.nthreads().values()))
    elif workers < 1:
        raise OptionError(f"workers is {workers}; give 1 or more")
    elif workers == 1:
        executor, ahead = _Here(), 1
    else:
        executor = ProcessPoolExecutor(workers, get_context("spawn"), initializer=_leave_interrupts)
        ahead = _AHEAD * workers
    try:
        yield executor, ahead
    finally:
        executor.shutdown(wait=True)


def _leave_interrupts() -> None:
    """Let only the process that hands out the work be interrupted; the parts in work are finished."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
