"""The corpus path gives what annotation gives, row for row, however the words fall into batches."""

from __future__ import annotations

import gzip
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss import annotate
from latingloss.difficulty.score import difficulty
from latingloss.errors import LatinglossError

pl = pytest.importorskip("polars", reason="needs the extra corpus")
pytest.importorskip("pyarrow", reason="needs the extra corpus")

from latingloss.corpus import batches as batching  # noqa: E402
from latingloss.corpus import pieces, score, score_batches, summarize, write_parquet  # noqa: E402
from latingloss.corpus.chunks import Chunks  # noqa: E402
from latingloss.corpus.schema import FEATURES, SCHEMA  # noqa: E402
from latingloss.morphology.lexicon import find, lexemes  # noqa: E402
from latingloss.morphology.priors import lexeme_count  # noqa: E402
from latingloss.morphology.ranking import candidates  # noqa: E402
from latingloss.text.tokens import tokenize  # noqa: E402

_WORDS = "lux glória populúsque viden mecum itaque Stellae bonus virī amāvit sancti-\nficátur gaudébimus XII , . ! ℣ *"
_LINE = st.lists(st.sampled_from(_WORDS.split(" ")), min_size=1, max_size=9).map(" ".join)
_TEXT = st.lists(_LINE, min_size=1, max_size=4).map("\n".join)


def _annotated(text: str) -> list[tuple[object, ...]]:
    try:
        document = annotate(text)
    except LatinglossError:  # no Latin letter
        return []
    return [
        (p, t, token.start, token.end, w.form, w.lemma, w.upos, w.guessed, w.features)
        for p, passage in enumerate(document.passages)
        for t, token in enumerate(passage.tokens)
        if token.kind == "word"
        for w in token.words
    ]  # fmt: skip


@given(_TEXT)
def test_rows_are_the_words_of_annotation(text: str) -> None:
    columns = ["passage", "token", "start", "end", "form", "lemma", "upos", "guessed"]
    rows = [row for frame in score([("w", text)]) for row in frame.iter_rows(named=True)]
    features = [{name: str(row[c]) for c, name in FEATURES.items() if row[c] is not None} for row in rows]
    found = [(*(row[c] for c in columns), shown) for row, shown in zip(rows, features, strict=True)]
    assert found == _annotated(text)


def test_scores_are_those_of_the_score_room() -> None:
    text = "Gaudébimus itaque in lúmine, populusque praetergredietur Nabuchodonosor."
    frame = pl.concat(score([("w", text)]))
    for row in frame.iter_rows(named=True):
        readings = [c for c in candidates(row["form"]) if c.upos == row["upos"]]
        scores = {round(difficulty(row["form"], c).score, 2) for c in readings}
        assert any(abs(row["difficulty"] - s) < 0.011 for s in scores), row
    (document,) = annotate(text).passages
    hosts = {t.text: t.difficulty.score for t in document.tokens if t.difficulty}
    alone = frame.filter(pl.col("form").is_in(list(hosts)))
    assert alone["difficulty"].to_list() == pytest.approx([hosts[form] for form in alone["form"]], abs=2e-3)


@given(st.lists(st.tuples(st.sampled_from("ab"), _TEXT), max_size=6), st.integers(1, 20))
def test_rows_do_not_depend_on_the_batch(texts: list[tuple[str, str]], size: int) -> None:
    whole = [row for batch in score_batches(texts) for row in batch.to_pylist()]
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(batching, "TOKENS_A_BATCH", size)
        parts = [row for batch in score_batches(texts) for row in batch.to_pylist()]
    assert parts == whole


def test_without_context_each_word_has_its_likeliest_reading() -> None:
    text = "Sine gratia populusque in urbe, et gratia populi; xyzzyq XII."
    frame = pl.concat(score([("w", text)], context=False))
    for row in frame.iter_rows(named=True):
        best = candidates(row["form"])[0]
        assert (row["upos"], row["case"]) == (best.upos, best.features.get("Case"))
        assert row["confidence"] == pytest.approx(best.prior, abs=1e-3)
    assert frame["case"].to_list() != pl.concat(score([("w", text)]))["case"].to_list()


@given(st.text())
def test_chunks_are_cut_as_texts_are(text: str) -> None:
    prints: list[str] = []

    def number(form: str) -> int:
        prints.append(form)
        return len(prints) - 1

    chunks = Chunks(number)
    for _ in range(2):  # met before, too
        found = chunks.cut(text)
        spans = tokenize(text)
        assert found.start.tolist() == [span.start for span in spans]
        words = [prints[n] if n >= 0 else None for n in found.print.tolist()]
        assert words == [span.text if span.kind == "word" else None for span in spans]


_ODD = [
    "V. ",
    "R. ",
    "℟ ",
    "XI",
    "vi.",
    "glo-\n",
    "glo- \u00a0\n  ",
    "DI ",
    "M. ",
    "Tullius",
    " ",
    "\n",
    "\u2028",
    ".",
    "a",
    "\u00ad",
]


@given(st.lists(st.sampled_from(_ODD), max_size=12).map("".join))
def test_chunks_that_depend_on_their_place_are_cut_where_they_stand(text: str) -> None:
    test_chunks_are_cut_as_texts_are.hypothesis.inner_test(text)


def test_texts_of_one_work_count_their_passages_on() -> None:
    frame = pl.concat(score([("a", "Lux lucet.\nNox venit."), ("a", "Sol oritur."), ("b", "Luna surgit.")]))
    assert frame.select("work", "passage").unique(maintain_order=True).rows() == [
        ("a", 0),
        ("a", 1),
        ("a", 2),
        ("b", 0),
    ]


@pytest.mark.parametrize("suffix", ["", ".gz"])
def test_a_file_gives_the_rows_of_its_text(tmp_path: Path, suffix: str, monkeypatch: pytest.MonkeyPatch) -> None:
    text = "".join(f"Lux {i} lucet, populusque sancti-\r\nficátur;\r\n\r\nnox venit.\n" for i in range(40))
    path = tmp_path / f"hymn.txt{suffix}"
    with gzip.open(path, "wt", newline="") if suffix else open(path, "w", newline="") as file:
        file.write(text)
    whole = pl.concat(score([("hymn", text)]))
    monkeypatch.setattr(pieces, "PIECE_CHARACTERS", 100)
    assert pl.concat(score(path)).equals(whole)
    assert all(text[a:b] for a, b in whole.select("start", "end").rows())


def test_parquet_has_the_documented_columns(tmp_path: Path) -> None:
    from pyarrow import parquet

    path = tmp_path / "words.parquet"
    assert write_parquet([("a", "Stellae lucent; nox venit.")], path) == 4
    schema = parquet.read_schema(path)
    assert schema.equals(SCHEMA)
    assert all(schema.field(name).metadata for name in schema.names)
    assert [p.name for p in tmp_path.iterdir()] == ["words.parquet"]


def test_the_summary_is_that_of_the_rows() -> None:
    frame = pl.concat(score([("a", "Stellae lucent; stellae praetergrediuntur."), ("b", "Lux lucet.")]))
    summary = summarize(frame, hardest=1)
    assert summary["work"].to_list() == ["a", "b"]
    own = frame.filter(pl.col("work") == "a")
    row = summary.row(0, named=True)
    assert (row["words"], row["types"]) == (4, 3)
    assert row["mean"] == pytest.approx(own["difficulty"].mean())
    assert row["hard_share"] == pytest.approx(sum(d >= 0.5 for d in own["difficulty"]) / 4)
    assert row["hardest"] == [own.sort("difficulty")["lemma"][-1]]


def test_coverage_is_by_the_rank_of_the_counted_lemmas() -> None:
    # ranks from the shipped counts themselves: et is the first, praetergredior is beyond the 2,000th
    summary = summarize(pl.concat(score([("a", "Et nox et praetergredietur.")])))
    assert summary.select("coverage_500", "coverage_1000", "coverage_2000").row(0) == (0.75, 0.75, 0.75)
    counts = sorted((lexeme_count(lexeme) for lexeme in lexemes()), reverse=True)
    rank = {lemma: 1 + counts.index(lexeme_count(find(lemma)[0])) for lemma in ("et", "nox", "praetergredior")}
    assert rank["et"] < rank["nox"] <= 500 and rank["praetergredior"] > 2000


def test_no_words_give_no_rows(tmp_path: Path) -> None:
    assert list(score_batches([("a", ""), ("b", "… 12 \u00ad")])) == []
    assert write_parquet([], tmp_path / "none.parquet") == 0


@given(st.text(st.characters(categories=["L", "M", "P", "Zs"]), max_size=30))
def test_any_text_is_scored(text: str) -> None:
    rows = [row for frame in score([("w", text)]) for row in frame.iter_rows(named=True)]
    words = [span for span in tokenize(text) if span.kind == "word"]
    assert {(row["start"], row["end"]) for row in rows} == {(span.start, span.end) for span in words}


def test_without_the_extra_the_command_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    import sys

    from latingloss.errors import MissingExtraError

    monkeypatch.setitem(sys.modules, "polars", None)
    monkeypatch.delitem(sys.modules, "latingloss.corpus.extra")
    with pytest.raises(MissingExtraError, match=r'pip install "latingloss\[corpus\]"'):
        __import__("latingloss.corpus.extra")
