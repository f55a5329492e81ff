"""A booklet as Markdown with tables (GitHub Flavored Markdown 0.29), for those who go on from plain text."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from latingloss.document import Document
from latingloss.sheets.booklet import Booklet
from latingloss.sheets.endings import EndingExamples
from latingloss.sheets.layout import Layout, Section, layout
from latingloss.sheets.options import SheetOptions
from latingloss.sheets.passages import Block, Piece
from latingloss.sheets.practice import Exercise, Part
from latingloss.sheets.rows import rows_of

# CommonMark 0.31, section 2.4: any punctuation may be escaped; these have a meaning inside a line or a table cell
_SPECIAL = re.compile(r"[\\`*_\[\]<>&|~#$@]|(?<=\w):(?=//)|(?<=[wW])\.(?=\w)")
_OPENING = re.compile(r"^(\d*)([-+=.)])")  # would begin a list or a rule
_WIDTH = 80  # characters of a row of stacked words
_GAPS = {"word": "." * 12, "letter": "." * 4}
_RULE = "." * 60


def sheet_markdown(given: Booklet | Document, options: SheetOptions | None = None) -> str:
    """Return a booklet, or a document as a booklet of one, as Markdown; `options` default to `SheetOptions()`.

    >>> from latingloss import annotate
    >>> print(sheet_markdown(annotate("Vesper venit.", "Evening comes.")).splitlines()[0])
    # Study sheet
    """
    page = layout(given, options)
    return "\n\n".join(filter(None, _parts(page))) + "\n"


def _parts(page: Layout) -> Iterator[str]:
    yield f"# {_line(page.title)}"
    yield from map(_line, page.introduction)
    for section in page.sections:
        yield from _section(section, page)
    yield from _words(page)
    yield from _endings(page)
    yield from _practice(page)
    yield f"*{page.statement}*"
    if page.review is not None:
        yield f"## Look over before printing\n\n{page.review_guide}"
        items = [(row.place.label, row.item) for row in page.review]
        doubts = [
            (where, _line(i.text), _line(f"{i.what}: {i.why}"), _line("; ".join(i.alternatives[:3])))
            for where, i in items
        ]
        yield _table(("Line", "Word", "Look at", "It could also be"), doubts) if doubts else ""


def _words(page: Layout) -> Iterator[str]:
    if page.words:
        yield "## Word list"
    for group in page.words:
        yield f"### {_line(group.heading)}" if group.heading else ""
        rows = []
        for entry in group.entries:
            first, *later = (place.label for place in entry.places)
            rows.append((_line(entry.form), entry.kind, _line(entry.senses), ", ".join((f"**{first}**", *later))))
        yield _table(("Word", "Kind", "Meaning", "Line"), rows)


def _endings(page: Layout) -> Iterator[str]:
    if page.endings:
        yield f"## Key to the endings\n\n{page.endings_guide}"
    for group in page.endings:
        yield f"### {group.heading}"
        rows = [(row.tells, row.name, "; ".join(map(_ending, row.endings))) for row in group.rows]
        yield _table(("It tells", "Called", "Endings"), rows)


def _ending(found: EndingExamples) -> str:
    words = (f"{_line(e.stem)}**{_line(e.ending)}** {_line(e.gloss)}" for e in found.examples)
    return f"**-{found.ending}** {', '.join(words)}"


def _practice(page: Layout) -> Iterator[str]:
    for practice in page.practice:
        yield f"## {_line(practice.heading)}"
        for exercise in practice.exercises:
            yield from _exercise(exercise)
    if page.practice:
        yield f"## Answers\n\n{page.answers_guide}"
    for practice in page.practice:
        yield f"### {_line(practice.of)}" if practice.of else ""
        for exercise in practice.answered:
            answers = [", ".join(_line(part.text) for part in item.answers) for item in exercise.items]
            yield f"**{exercise.title}.** {'; '.join(f'{number} {said}' for number, said in enumerate(answers, 1))}"


def _exercise(exercise: Exercise) -> Iterator[str]:
    yield f"### {exercise.title}\n\n{exercise.task}"
    if exercise.beside:
        pairs = zip(exercise.items, exercise.bank, strict=True)
        yield _table(("Word", "Meaning"), ((_parted(item.parts), _line(entry.text)) for item, entry in pairs))
        return
    yield " / ".join(f"*{_line(part.text)}*" for part in exercise.bank)
    under = ((f"*{_line(item.hint)}*" if item.hint else "", _RULE if item.ruled else "") for item in exercise.items)
    lines = (
        "<br>".join(filter(None, (_parted(i.parts), *below))) for i, below in zip(exercise.items, under, strict=True)
    )
    yield "\n".join(f"{number}. {line}" for number, line in enumerate(lines, 1))


def _parted(parts: Sequence[Part]) -> str:
    said = (_GAPS.get(part.kind) or _line(part.text, keep=True) for part in parts)
    return "".join(f"**{text}**" if part.kind == "sign" else text for part, text in zip(parts, said, strict=True))


def _section(section: Section, page: Layout) -> Iterator[str]:
    yield f"## {_line(section.title)}" if section.title else ""
    yield from map(_line, section.introduction)
    yield page.guide if section.number == 1 else ""
    for place, stanza in enumerate(section.stanzas):
        yield "---" if place else ""
        for block in stanza:
            yield from _block(block)
    yield f"*{_line(section.source)}*" if section.source else ""


def _block(block: Block) -> Iterator[str]:
    yield f"**{block.number}**"
    if block.across:
        yield _table([column.label for column in block.across], [[_run(column.pieces) for column in block.across]])
    yield from (_run(column.pieces) or "&nbsp;" for column in block.above)
    for row in rows_of(block.stacks, _WIDTH):
        lines = [[_run(stack.lines[k].pieces) for stack in row] for k in range(len(row[0].lines))]
        yield _table(lines[0], lines[1:])
    yield from (_run(column.pieces) or "&nbsp;" for column in block.below)
    notes = []
    for note in block.notes:
        spoken = f" {_line(note.spoken)}" if note.spoken else ""
        facts = "".join(f"; *{fact.label}:* {_line(fact.text)}" for fact in note.facts)
        notes.append(f"- {note.number} **{_line(note.text)}**{spoken}{facts}")
    yield "\n".join(notes)


def _run(pieces: Sequence[Piece]) -> str:
    return "".join(
        f"**{_line(p.text)}**<sup>{', '.join(map(str, p.numbers))}</sup>" if p.numbers else _line(p.text, keep=True)
        for p in pieces
    )


def _line(text: str, *, keep: bool = False) -> str:
    """Escape a text and put it on one line; `keep` keeps white space at its ends."""
    text = re.sub(r"\s+", " ", text) if keep else " ".join(text.split())
    return _OPENING.sub(r"\1\\\2", _SPECIAL.sub(r"\\\g<0>", text))


def _table(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    return "\n".join("| " + " | ".join(row) + " |" for row in (head, ["---"] * len(head), *rows))
