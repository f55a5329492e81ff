"""The few commands: `python -m latingloss demo`, `sheet`, `explain` and `score`.

Only argparse is loaded before a command is known, so that `--help` is quick.
"""

from __future__ import annotations

import argparse
import csv
import os
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

from latingloss import __version__
from latingloss.errors import FormatError, LatinglossError

if TYPE_CHECKING:
    from latingloss.document import Document

LEVELS = {"few": 0.15, "some": 0.25, "many": 0.4}  # share of a line's words that is picked out
_EXAMPLES = """\
examples:
  latingloss demo                                      write the sheet of the bundled evening blessing
  latingloss sheet hymn.la.txt hymn.en.txt --title "A hymn" --out hymn.html
  latingloss sheet - < psalm.txt > psalm.html          Latin from standard input, no rendering
  latingloss explain noctem
  latingloss score psalm.txt > psalm.tsv               a row for every word, with its difficulty
"""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; return the exit code: 0, or 2 for a mistake in what was given (told on standard error)."""
    options = _parser().parse_args(arguments)
    try:
        options.run(options)
        sys.stdout.flush()
    except BrokenPipeError:  # the reader has what it wants, as with `| head`; spare Python's own last flush
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    except LatinglossError as error:
        print(f"latingloss: {error}", file=sys.stderr)
        return 2
    return 0


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="latingloss",
        description="Read, align and score Latin for beginners, and print the page to teach from.",
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"latingloss {__version__}")
    commands = parser.add_subparsers(metavar="command", required=True)
    demo = commands.add_parser("demo", help="write the study sheet of the bundled evening blessing")
    demo.add_argument("--out", default="sheet.html", help="file to write (default %(default)s)")
    demo.set_defaults(run=_demo, title="", level="some")
    sheet = commands.add_parser("sheet", help="make a study sheet of a Latin text and its English rendering")
    sheet.add_argument("latin", help="UTF-8 text file, or - for standard input")
    sheet.add_argument("english", nargs="?", help="its rendering, line for line or nearly")
    sheet.add_argument("--out", default="-", help="file to write (default: standard output)")
    sheet.add_argument("--title", default="", help="title of the sheet (default: the file's name)")
    sheet.add_argument("--level", choices=LEVELS, default="some", help="how many words to pick out (default some)")
    sheet.set_defaults(run=_sheet)
    for command in (demo, sheet):
        command.add_argument("--paper", choices=("A4", "Letter"), default="A4")
        command.add_argument("--size", choices=("normal", "large"), default="normal", help="of the print")
    explain = commands.add_parser("explain", help="explain one Latin word")
    explain.add_argument("word")
    explain.set_defaults(run=_explain)
    score = commands.add_parser("score", help="print every word of Latin texts with its difficulty, tab-separated")
    score.add_argument("files", nargs="+", metavar="FILE", help="UTF-8 text file, or - for standard input")
    score.set_defaults(run=_score)
    return parser


def _demo(options: argparse.Namespace) -> None:
    from importlib.resources import files

    texts = files("latingloss") / "data" / "demo"
    latin, english, about = (
        (texts / f"evening.{part}.txt").read_text(encoding="utf-8") for part in ("la", "en", "about")
    )
    options.title, _, introduction = about.strip().partition("\n\n")
    _make_sheet(options, latin, english, introduction=introduction)


def _sheet(options: argparse.Namespace) -> None:
    if options.latin == options.english == "-":
        raise FormatError("both texts are -: standard input holds one; put the other into a file")
    latin = read_text(options.latin)
    english = read_text(options.english) if options.english else None
    if not options.title:
        options.title = "Study sheet" if options.latin == "-" else Path(options.latin).name.split(".")[0]
    _make_sheet(options, latin, english, introduction="")


def _make_sheet(options: argparse.Namespace, latin: str, english: str | None, *, introduction: str) -> None:
    from latingloss.pipeline import Annotator
    from latingloss.sheets import SheetOptions, sheet_html

    chosen = SheetOptions(title=options.title, introduction=introduction, paper=options.paper, size=options.size)
    document = Annotator(emphasis_share=LEVELS[options.level]).annotate(latin, english)
    _write(sheet_html(document, chosen), options.out)


def _explain(options: argparse.Namespace) -> None:
    from latingloss.sheets.explaining import explain

    sys.stdout.write(explain(options.word))


def _score(options: argparse.Namespace) -> None:
    from latingloss.pipeline import annotate

    texts = [(name, read_text(name)) for name in options.files]  # all are read before a row is printed
    rows = csv.writer(_standard_output(), delimiter="\t", lineterminator="\n")
    rows.writerow(("file", "passage", "word", "lemma", "upos", "difficulty", "zipf", "reasons"))
    for name, text in texts:
        rows.writerows(_score_rows(name, annotate(text)))
        print(f"{name}: scored", file=sys.stderr)


def _score_rows(name: str, document: Document) -> Iterator[tuple[object, ...]]:
    for number, passage in enumerate(document.passages, 1):
        for token in passage.tokens:
            if token.difficulty:
                host, score = token.words[0], token.difficulty
                zipf = next((part.value for part in score.parts if part.name == "frequency"), "")
                yield name, number, token.text, host.lemma, host.upos, score.score, zipf, "; ".join(score.reasons)


def read_text(name: str) -> str:
    """Read a UTF-8 text, with or without byte-order mark and with any line ends; `-` is standard input.

    Raises FormatError if the file cannot be read, or is not UTF-8: then with line and column.
    """
    try:
        data = sys.stdin.buffer.read() if name == "-" else Path(name).read_bytes()
    except OSError as error:
        raise FormatError(f"{name}: {(error.strerror or str(error)).lower()}; give the path of a text file") from None
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start]
        line, column = before.count(b"\n") + 1, len(before) - before.rfind(b"\n")
        raise FormatError(f"{name}, line {line}, byte {column}: not UTF-8; save the file as UTF-8") from None
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _write(page: str, out: str) -> None:
    if out == "-":
        _standard_output().write(page)
        return
    try:
        Path(out).write_text(page, encoding="utf-8", newline="\n")
    except OSError as error:
        raise FormatError(f"{out}: {(error.strerror or str(error)).lower()}; give a path that can be written") from None
    print(f"wrote {Path(out).resolve()}")


def _standard_output() -> TextIO:
    """Return standard output writing UTF-8 whatever the system's own encoding is."""
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(encoding="utf-8", newline="\n")
    return sys.stdout
