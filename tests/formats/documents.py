"""Documents for the round trips: what annotation makes of any text, and documents put together by hand."""

from __future__ import annotations

from hypothesis import strategies as st

from latingloss import annotate
from latingloss.document import Difficulty, Document, Link, Passage, RenderingToken, Token, Word
from latingloss.errors import LatinglossError
from latingloss.text.tokens import Span, tokenize, tokenize_english, word_text

_WORDS = "Lux glória cǽcus rosā populúsque viden mecum itaque æternæ Ἰησοῦς sancti-\nficátur e\u0304sse a\u0338"
_MARKS = "XII iv 7 ℣ ℟ * † « » … — , . ? ; : | \\ = # _ \\s\\p <w> & \u0338 \x00 \x0b \u2028 \u00ad 🙂"
_PIECES = st.sampled_from([*_WORDS.split(" "), *_MARKS.split(" ")])
_GAPS = st.sampled_from([" ", "", "  ", "\n", "\r\n", "\n\n", "\t", "\u00a0", "\u3000"])
texts = st.one_of(
    st.lists(st.tuples(_PIECES, _GAPS), min_size=1, max_size=25).map(lambda p: "".join(a + b for a, b in p)),
    st.text(st.characters(exclude_categories=["Cs"]), max_size=40).map(lambda tail: "lux " + tail),
)
_RENDERING = "Light of God’s o'er 3 | \\ # , . “ ” and\nso é <b>"
_ENGLISH = st.lists(st.sampled_from([*_RENDERING.split(" ")]), min_size=1, max_size=12)


@st.composite
def documents(draw: st.DrawFn) -> Document:
    """A text annotated; without a Latin letter, its tokens alone."""
    text = draw(texts)
    try:
        return annotate(text)
    except LatinglossError:
        tokens = tuple(Token(text=s.text, start=s.start, end=s.end, kind=s.kind) for s in tokenize(text))
        passages = (Passage(start=tokens[0].start, end=tokens[-1].end, tokens=tokens),) if tokens else ()
        return Document(source=text, passages=passages)


@st.composite
def linked_documents(draw: st.DrawFn) -> Document:
    """One or two passages with a rendering and any links between them."""
    latin = draw(st.lists(st.lists(_PIECES, min_size=1, max_size=6), min_size=1, max_size=2))
    source, english = "", ""
    passages = []
    for n, pieces in enumerate(latin):
        spans = tokenize(" ".join(pieces), offset=len(source))
        source += " ".join(pieces) + "\n"
        line = " ".join(draw(_ENGLISH))
        rendering = tokenize_english(line, offset=len(english))
        english += line + "\n"
        pairs = st.tuples(st.integers(0, len(spans) - 1), st.integers(0, len(rendering) - 1))
        links = draw(st.lists(pairs, unique=True, max_size=5)) if spans and rendering else []
        if spans:
            stanza = draw(st.integers(0, 1)) if n else 0
            passages.append(_passage(spans, rendering, links).model_copy(update={"stanza": stanza}))
    return Document(source=source, english=english, passages=tuple(passages))


def _passage(spans: list[Span], rendering: list[Span], links: list[tuple[int, int]]) -> Passage:
    return Passage(
        start=spans[0].start,
        end=spans[-1].end,
        tokens=tuple(_token(span) for span in spans),
        rendering=tuple(RenderingToken(**span._asdict()) for span in rendering),
        links=tuple(Link(latin=a, english=b, confidence=0.25) for a, b in sorted(links)),
    )


def _token(span: Span) -> Token:
    if span.kind != "word":
        return Token(**span._asdict())
    word = {"form": word_text(span.text), "marked_form": "rosā", "lemma": "lūx#2", "upos": "NOUN", "gloss": "a|b=c"}
    words = (Word.model_validate(word | {"features": {"Case": "Gen"}, "confidence": 0.5}),)
    return Token(**span._asdict(), words=words, difficulty=Difficulty(score=0.125, parts=()))
