"""Every format is read back by a program of its own: poppler for PDF, python-docx for DOCX."""

import shutil
import subprocess
import sys
from io import BytesIO
from itertools import pairwise
from pathlib import Path

import pytest
from docx import Document as read_docx

import latingloss
from latingloss.errors import FormatError, MissingExtraError
from latingloss.sheets import (
    Booklet,
    SheetOptions,
    Text,
    sheet_docx,
    sheet_html,
    sheet_markdown,
    sheet_pdf,
    write_sheet,
)

EVIL = '#panic("x") $y$ @ref <b>&amp;</b> ]]> `code` *s* _u_ [l](m) | \\ {{ 7*7 }} \x01\x0b end'
SHOWN = '#panic("x") $y$ @ref <b>&amp;</b> ]]> `code` *s* _u_ [l](m) | \\ {{ 7*7 }} end'
DOCUMENT = latingloss.annotate(
    "Stellæ, et noctis siléntium.\nPax ǽterna ℣ manet.",
    "The stars, and the silence of the night.\nEternal peace stays.",
)
EVERY = ("latin", "literal", "grammar", "pronunciation", "rendering", "space")
needs_poppler = pytest.mark.skipif(not shutil.which("pdftotext"), reason="needs pdftotext of poppler")


def _evil() -> Booklet:
    words = DOCUMENT.passages[0].tokens[0].words[0].model_copy(update={"gloss": EVIL, "reason": EVIL})
    token = DOCUMENT.passages[0].tokens[0].model_copy(update={"words": (words,), "emphasis": True})
    passage = DOCUMENT.passages[0].model_copy(update={"tokens": (token, *DOCUMENT.passages[0].tokens[1:])})
    document = DOCUMENT.model_copy(update={"passages": (passage,)})
    return Booklet([Text(document, EVIL, EVIL, EVIL)] * 2, title=EVIL, introduction=EVIL)


def _pdf_text(data: bytes, tmp_path: Path, *, program: str = "pdftotext") -> str:
    path = tmp_path / "sheet.pdf"
    path.write_bytes(data)
    rest = ["-"] if program == "pdftotext" else []
    return subprocess.run([program, str(path), *rest], capture_output=True, text=True, check=True).stdout


def _docx_text(data: bytes) -> str:
    body = read_docx(BytesIO(data)).element.body
    return "\n".join(
        "".join(t.text or "" for t in p.iter() if t.tag.endswith("}t")) for p in body.iter() if p.tag.endswith("}p")
    )


@needs_poppler
def test_nothing_of_a_text_is_code_in_a_pdf(tmp_path: Path) -> None:
    text = " ".join(_pdf_text(sheet_pdf(_evil()), tmp_path).split())
    assert text.count(SHOWN) >= 6


def test_nothing_of_a_text_is_markup_in_a_docx() -> None:
    text = " ".join(_docx_text(sheet_docx(_evil())).split())
    assert text.count(SHOWN) >= 6


def test_nothing_of_a_text_is_markup_in_markdown() -> None:
    """CommonMark 0.31, section 2.4: a backslash before punctuation makes it plain."""
    title, *rest = sheet_markdown(_evil()).splitlines()
    assert title == (
        r'# \#panic("x") \$y\$ \@ref \<b\>\&amp;\</b\> \]\]\> \`code\` \*s\* \_u\_ \[l\](m) \| \\ {{ 7\*7 }} end'
    )
    assert "\n".join(rest).count(title.removeprefix("# ")) >= 6
    numbered = sheet_markdown(Booklet([Text(DOCUMENT, introduction="1. No list.\n\n- Nor this.")]))
    assert "\n1\\. No list.\n" in numbered and "\n\\- Nor this.\n" in numbered


@needs_poppler
def test_a_pdf_holds_its_fonts_macrons_and_signs(tmp_path: Path) -> None:
    data = sheet_pdf(DOCUMENT, SheetOptions(columns=EVERY))
    text = _pdf_text(data, tmp_path)
    for part in ("Stellæ", "stēlla", "ǽterna", "V/", "silence"):
        assert part in text
    fonts = _pdf_text(data, tmp_path, program="pdffonts").splitlines()[2:]
    assert fonts and all("Libertinus" in line and line.split()[-5] == "yes" for line in fonts)  # the column emb


def test_a_pdf_is_the_same_every_time_and_accessible() -> None:
    """PDF/UA-1 (ISO 14289-1): Typst refuses to write one that breaks its rules."""
    import json

    from latingloss.sheets import pdf

    assert sheet_pdf(DOCUMENT) == sheet_pdf(DOCUMENT)
    made = pdf._compiler().compile(
        pdf._source(), format="pdf", sys_inputs={"sheet": json.dumps(pdf.data_of(DOCUMENT))}, pdf_standards=["ua-1"]
    )
    assert isinstance(made, bytes) and b"pdfuaid" in made


@pytest.mark.parametrize("arrangement", ["interlinear", "lines"])
@pytest.mark.parametrize("paper", ["A4", "Letter", "A5"])
@pytest.mark.parametrize("size", ["normal", "children", "large"])
def test_every_setting_prints_every_column(arrangement: str, paper: str, size: str) -> None:
    options = SheetOptions(columns=EVERY, arrangement=arrangement, paper=paper, size=size)
    assert sheet_pdf(DOCUMENT, options).startswith(b"%PDF")
    text = _docx_text(sheet_docx(DOCUMENT, options))
    for part in ("siléntium", "silence", "of the night", "see-LEHN-tsee-oom", "____"):
        assert part in text
    assert "noun, genitive singular" in text


def test_a_docx_has_real_headings_styles_and_tables() -> None:
    file = read_docx(
        BytesIO(sheet_docx(Booklet([Text(DOCUMENT, title="One"), Text(DOCUMENT, title="Two")], title="Both")))
    )
    heads = [
        (p.style.name, p.text) for p in file.paragraphs if p.style and p.style.name.startswith(("Title", "Heading"))
    ]
    assert heads[:3] == [("Title", "Both"), ("Heading 1", "One"), ("Heading 1", "Two")]
    assert file.core_properties.title == "Both"
    assert [[cell.text for cell in row.cells][:2] for row in file.tables[0].rows] == [
        ["Stellæ,", "et"], ["stars", "and"],
    ]  # fmt: skip
    assert file.tables[0].cell(0, 0).paragraphs[0].style.name == "Latin"


def test_tables_of_a_long_line_do_not_touch() -> None:
    """Word processors join tables that follow each other without a paragraph: common practice, no source."""
    document = latingloss.annotate(
        "Stellæ noctis lucent et luna silvam magnam illústrat dum omnes dórmiunt in tectis suis."
    )
    body = list(read_docx(BytesIO(sheet_docx(document, SheetOptions(paper="A5", size="large")))).element.body)
    tables = [place for place, part in enumerate(body) if part.tag.endswith("}tbl")]
    assert len(tables) > 2 and all(after - before > 1 for before, after in pairwise(tables))


def test_columns_come_in_the_author_s_order() -> None:
    page = sheet_markdown(
        DOCUMENT, SheetOptions(columns=("rendering", "space", "latin"), arrangement="lines", parts=())
    )
    assert "| English | My notes | Latin |" in page


def test_without_a_rendering_no_line_of_it_is_printed() -> None:
    page = sheet_html(latingloss.annotate("Vesper venit."))
    assert 'class="rendering"' not in page


@pytest.mark.parametrize("name", ["sheet.txt", "sheet", "sheet.pdf.exe"])
def test_another_ending_is_refused_with_those_allowed(name: str) -> None:
    with pytest.raises(FormatError, match=r"\.html, \.pdf, \.docx, \.md or \.vtt"):
        write_sheet(DOCUMENT, name)


@pytest.mark.parametrize(("package", "make"), [("docx", sheet_docx), ("typst", sheet_pdf)])
def test_a_missing_package_names_the_command(monkeypatch: pytest.MonkeyPatch, package: str, make: object) -> None:
    from latingloss.sheets import pdf

    pdf._compiler.cache_clear()
    monkeypatch.setitem(sys.modules, package, None)
    with pytest.raises(MissingExtraError, match=r'pip install "latingloss\[print\]"'):
        make(DOCUMENT)  # type: ignore[operator]
