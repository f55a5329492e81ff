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
    from latingloss.sheets.authoring import TextPlan
    from latingloss.sheets.booklet import Booklet, Text

LEVELS = {"few": 0.15, "some": 0.25, "many": 0.4}  # share of a line's words that is picked out
_EXAMPLES = """\
examples:
  latingloss demo                                      write the bundled booklet as web page, PDF, DOCX and captions
  latingloss sheet hymn.la.txt hymn.en.txt --title "A hymn" --out hymn.pdf
  latingloss sheet hymn.la.txt hymn.en.txt --corrections hymn.yaml --out hymn.docx
  latingloss sheet songs.yaml --paper A5 --out songs.pdf   several texts, as a booklet file lists them:
      title: Songs for the choir
      texts:
        - {latin: hymn.la.txt, english: hymn.en.txt, title: A hymn, source: Anonymous}
        - {latin: motto.la.txt, corrections: motto.corrections.yaml}
  latingloss sheet hymn.la.txt hymn.en.txt --columns latin,rendering,space --lines > hymn.html
  latingloss sheet hymn.la.txt hymn.en.txt --practice all --out hymn.pdf   with exercises and their answers
  latingloss sheet hymn.la.txt hymn.en.txt --length 1:30 --out hymn.vtt    captions for a recording
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
    demo = commands.add_parser("demo", help="write the bundled booklet of two prayers of a choir")
    demo.add_argument("--out", help="file to write, .html, .pdf, .docx, .md or .vtt (default: all but .md, choir.*)")
    demo.set_defaults(run=_demo)
    sheet = commands.add_parser("sheet", help="make a study sheet of a Latin text, or a booklet of several")
    sheet.add_argument("latin", help="UTF-8 text file, or - for standard input; or a booklet file, .yaml")
    sheet.add_argument("english", nargs="?", help="its rendering, line for line or nearly")
    sheet.add_argument(
        "--out", default="-", help="file to write: .html, .pdf, .docx, .md, .vtt (default: HTML to standard output)"
    )
    sheet.add_argument("--title", default="", help="title of the sheet (default: the file's name)")
    sheet.add_argument("--corrections", metavar="FILE", help="YAML file of your corrections")
    sheet.set_defaults(run=_sheet)
    for command in (demo, sheet):
        command.add_argument(
            "--level", choices=LEVELS, default="some", help="how many words to pick out (default some)"
        )
        command.add_argument("--paper", choices=("A4", "Letter", "A5"), default="A4", help="A5 is half of A4")
        command.add_argument("--size", choices=("normal", "children", "large"), default="normal", help="of the print")
        command.add_argument(
            "--columns", default="latin,literal,rendering",
            help="of latin,literal,grammar,pronunciation,rendering,space, in your order (default %(default)s)",
        )  # fmt: skip
        command.add_argument("--lines", action="store_true", help="columns side by side, not each word over its sense")
        command.add_argument("--by-text", action="store_true", help="word list in order of appearance, not alphabet")
        command.add_argument(
            "--practice", metavar="KINDS", help="exercises: all, or any of match,cloze,order,endings,recitation"
        )
        command.add_argument("--variant", type=int, default=1, help="another number gives other exercises (default 1)")
        command.add_argument("--length", metavar="TIME", help="of the recording, for captions: 1:30, or seconds")
        command.add_argument(
            "--marks", metavar="FILE", help="for captions: a line of text for each line of Latin, its time first"
        )
    explain = commands.add_parser("explain", help="explain one Latin word")
    explain.add_argument("word")
    explain.set_defaults(run=_explain)
    score = commands.add_parser("score", help="print every word of Latin texts with its difficulty, tab-separated")
    score.add_argument("files", nargs="+", metavar="FILE", help="UTF-8 text file, or - for standard input")
    score.set_defaults(run=_score)
    return parser


def _demo(options: argparse.Namespace) -> None:
    from importlib.resources import as_file, files

    with as_file(files("latingloss") / "data" / "demo") as folder:
        booklet = _planned(str(folder / "booklet.yaml"), LEVELS[options.level])
    for out in [options.out] if options.out else [f"choir{ending}" for ending in (".html", ".pdf", ".docx", ".vtt")]:
        _write(booklet, options, out)


def _sheet(options: argparse.Namespace) -> None:
    from latingloss.sheets.authoring import TextPlan
    from latingloss.sheets.booklet import Booklet

    if options.latin == options.english == "-":
        raise FormatError("both texts are -: standard input holds one; put the other into a file")
    share = LEVELS[options.level]
    if options.latin.lower().endswith((".yaml", ".yml")):
        if options.english or options.corrections or options.title:
            raise FormatError(f"{options.latin}: a booklet file names renderings, titles and corrections itself")
        booklet = _planned(options.latin, share)
    else:
        title = options.title or ("" if options.latin == "-" else Path(options.latin).name.split(".")[0])
        plan = TextPlan(options.latin, options.english, options.corrections, title=title)
        booklet = Booklet([_text(plan, share)])
    _write(booklet, options, options.out)


def _planned(name: str, share: float) -> Booklet:
    """Make the booklet that a booklet file describes."""
    from latingloss.sheets.authoring import booklet_plan
    from latingloss.sheets.booklet import Booklet

    plan = booklet_plan(read_text(name), name=name)
    return Booklet([_text(text, share) for text in plan.texts], title=plan.title, introduction=plan.introduction)


def _text(plan: TextPlan, share: float) -> Text:
    """Read and annotate one text; corrections that fit nothing in it are told, and stop nothing."""
    from latingloss import corrections
    from latingloss.pipeline import Annotator
    from latingloss.sheets.booklet import Text

    latin, english = read_text(plan.latin), read_text(plan.english) if plan.english else None
    known = corrections.read(read_text(plan.corrections), name=plan.corrections) if plan.corrections else None
    document = Annotator(emphasis_share=share).annotate(latin, english, corrections=known)
    for lost in document.unmatched_corrections:
        print(f"{plan.corrections}: {lost}", file=sys.stderr)
    return Text(document, plan.title, plan.introduction, plan.source)


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


def _write(booklet: Booklet, options: argparse.Namespace, out: str) -> None:
    from latingloss.sheets import SheetOptions, sheet_html, write_sheet
    from latingloss.sheets.captions import read_marks, seconds
    from latingloss.sheets.options import EXERCISES

    chosen = SheetOptions(
        paper=options.paper, size=options.size, columns=tuple(options.columns.split(",")),
        arrangement="lines" if options.lines else "interlinear", word_order="text" if options.by_text else "alphabet",
        exercises=EXERCISES if options.practice == "all" else tuple(filter(None, (options.practice or "").split(","))),
        variant=options.variant, length=seconds(options.length) if options.length else None,
        marks=read_marks(read_text(options.marks), name=options.marks) if options.marks else (),
    )  # fmt: skip
    if out == "-":
        _standard_output().write(sheet_html(booklet, chosen))
    else:
        print(f"wrote {write_sheet(booklet, out, chosen).resolve()}")


def _standard_output() -> TextIO:
    """Return standard output writing UTF-8 whatever the system's own encoding is."""
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(encoding="utf-8", newline="\n")
    return sys.stdout
