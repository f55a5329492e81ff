"""The whole way from two strings to a Document, on one screen.

source -> passages (lines paired with renderings) -> tokens -> readings in context -> links to the English
       -> glosses and reasons -> difficulty and the words worth picking out
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache
from typing import NamedTuple

from latingloss.alignment import align
from latingloss.alignment.glossing import old_english, word_of
from latingloss.alignment.rendering import english_signs, linked_words, reweigh
from latingloss.context.relations import relations
from latingloss.corrections.applying import with_emphasis, with_links, with_words
from latingloss.corrections.matching import NOTHING, OfLine, match
from latingloss.corrections.matching import Line as PrintedLine
from latingloss.corrections.models import Corrections
from latingloss.difficulty.emphasis import emphasized
from latingloss.difficulty.reader import Reader
from latingloss.difficulty.score import known_relatives
from latingloss.document import Document, Link, Passage, RenderingToken, Token
from latingloss.engines import Engine, TokenChoices, read_narrowed
from latingloss.engines.builtin import BuiltInEngine
from latingloss.errors import InputTypeError, OptionError, TextError
from latingloss.tables import collector_paused
from latingloss.text.checking import MOST_CHARACTERS, check, check_tokens, check_whole
from latingloss.text.lines import Line, lines
from latingloss.text.pairing import pair_texts
from latingloss.text.tokens import Kind, Span, tokenize, tokenize_english

EMPHASIS_SHARE = 0.25


class _Line(NamedTuple):
    """A passage before it is annotated."""

    start: int
    end: int
    stanza: int
    tokens: list[Span]
    rendering: list[Span]


class Annotator:
    """Annotates texts with one engine and one set of options; may be shared by threads.

    `engine` follows `latingloss.engines.Engine`; None is the built-in one. `emphasis_share` is the share of a
    passage's words that may be picked out, 0..1. `reader` is who the words are scored for; None is a beginner who
    knows none of them.
    """

    engine: Engine

    def __init__(
        self, engine: Engine | None = None, *, emphasis_share: float = EMPHASIS_SHARE, reader: Reader | None = None
    ) -> None:
        if isinstance(emphasis_share, bool) or not isinstance(emphasis_share, int | float):
            raise InputTypeError(f"emphasis_share must be a number, not {type(emphasis_share).__name__}")
        if not 0 <= emphasis_share <= 1:
            raise OptionError(f"emphasis_share is {emphasis_share}; it is a share of the words, from 0 to 1")
        self.engine = BuiltInEngine() if engine is None else engine
        self.emphasis_share = emphasis_share
        self.reader = Reader() if reader is None else reader

    def annotate(self, latin: str, english: str | None = None, *, corrections: Corrections | None = None) -> Document:
        """Annotate a Latin text, with its English rendering if there is one; see `latingloss.annotate`."""
        check(latin, "latin")
        lines = _paired_lines(latin, check(english, "english")) if english is not None else _latin_lines(latin)
        return self._document(latin, english, lines, corrections=corrections)

    def annotate_tokens(
        self,
        latin_sentences: Sequence[Sequence[str]],
        english: Sequence[Sequence[str]] | None = None,
        *,
        corrections: Corrections | None = None,
    ) -> Document:
        """Annotate sentences given as tokens; see `latingloss.annotate_tokens`."""
        _check_token_lists(latin_sentences, english)
        source, latin_spans = _joined(latin_sentences, tokenize)
        rendering, english_spans = _joined(english or [], tokenize_english)
        english_spans += [[] for _ in range(len(latin_spans) - len(english_spans))]
        lines, at = [], 0
        for spans, others, sentence in zip(latin_spans, english_spans, latin_sentences, strict=True):
            end = at + len(" ".join(sentence))
            lines.append(_Line(at, end, 0, spans, others))
            at = end + 1
        return self._document(source, rendering if english is not None else None, lines, corrections=corrections)

    def _document(
        self, source: str, english: str | None, lines: list[_Line], *, corrections: Corrections | None
    ) -> Document:
        if not isinstance(corrections, Corrections | None):
            kind = type(corrections).__name__
            raise InputTypeError(f"corrections must be Corrections, not {kind}; latingloss.corrections.read makes them")
        matched = match(corrections or Corrections(), [_printed(line) for line in lines] if corrections else [])
        sentences = [[t.text for t in line.tokens if t.kind == "word"] for line in lines]
        readings = read_narrowed(self.engine, sentences, matched.narrow)
        said = matched.lines or [NOTHING] * len(lines)
        seen: set[tuple[str, str]] = set()
        with collector_paused():
            passages = tuple(
                self._passage(line, choices, seen, corrected=corrected)
                for line, choices, corrected in zip(lines, readings, said, strict=True)
            )
        return Document(
            source=source, english=english, engine=self.engine.name, passages=passages,
            unmatched_corrections=matched.unmatched,
        )  # fmt: skip

    def _passage(
        self, line: _Line, choices: list[TokenChoices], seen: set[tuple[str, str]], *, corrected: OfLine
    ) -> Passage:
        """Align, gloss and score one passage; `choices` has the readings of its word tokens in order."""
        remaining = iter(choices)
        by_token: list[TokenChoices] = [next(remaining) if t.kind == "word" else () for t in line.tokens]
        english = [t.text for t in line.rendering]
        links = _links(line, by_token, corrected)
        if links:
            by_token = _with_english(by_token, links, english)
        chosen = [tuple(choice.readings[0][0] for choice in parts) for parts in by_token]
        related = relations(chosen, [t.text for t in line.tokens])
        old = old_english(english)
        tokens = []
        for i, (span, parts) in enumerate(zip(line.tokens, by_token, strict=True)):
            linked = tuple(line.rendering[k.english].text for k in links if k.latin == i)
            words = tuple(
                word_of(choice, relations=related[i][w], rendering=linked if w == 0 else (), old=old)
                for w, choice in enumerate(parts)
            )
            host = chosen[i][0] if words else None
            tokens.append(
                Token(
                    text=span.text, start=span.start, end=span.end, kind=span.kind, words=words,
                    difficulty=self.reader.difficulty(parts[0].form, host) if host else None,
                    relatives=tuple(r for _, r in known_relatives(host.lexeme)) if host else (),
                )
            )  # fmt: skip
        for i, here in corrected.items():
            tokens[i] = with_words(tokens[i], here)
        for i in emphasized(tokens, seen, share=self.emphasis_share):
            tokens[i] = tokens[i].model_copy(update={"emphasis": True})
        for i, here in corrected.items():
            tokens[i] = with_emphasis(tokens[i], here)
        rendering = tuple(RenderingToken(text=s.text, start=s.start, end=s.end, kind=s.kind) for s in line.rendering)
        return Passage(
            start=line.start, end=line.end, stanza=line.stanza, tokens=tuple(tokens), rendering=rendering, links=links
        )


def _printed(line: _Line) -> PrintedLine:
    return PrintedLine(
        [t.text for t in line.tokens], [t.kind == "word" for t in line.tokens], [t.text for t in line.rendering]
    )


def _links(line: _Line, tokens: list[TokenChoices], corrected: OfLine) -> tuple[Link, ...]:
    """Align a line, believing only what corrections leave of their words; the author's own links prevail."""
    if not line.rendering:
        return ()
    believed = [[c for c, _ in parts[0].readings] if i in corrected else [] for i, parts in enumerate(tokens)]
    links = align(
        [t.text for t in line.tokens], [t.text for t in line.rendering], readings=believed if corrected else None
    )
    return with_links(links, corrected) if corrected else links


def _with_english(tokens: list[TokenChoices], links: Sequence[Link], english: list[str]) -> list[TokenChoices]:
    """Weigh the readings of each host word again by what the English linked to it, and around it, shows."""
    linked: list[list[int]] = [[] for _ in tokens]
    for link in links:
        linked[link.latin].append(link.english)
    verbs = [bool(t) and t[0].readings[0][0].features.get("VerbForm") == "Fin" for t in tokens]
    signs = english_signs(linked, english, verbs=verbs)
    weighed = []
    for choices, shown, found in zip(tokens, signs, linked, strict=True):
        if choices:
            host = choices[0]
            readings = reweigh(host.readings, shown, linked_words(found, english))
            choices = (host._replace(readings=readings), *choices[1:])
        weighed.append(choices)
    return weighed


@cache
def _default() -> Annotator:
    return Annotator()


def annotate(latin: str, english: str | None = None, *, corrections: Corrections | None = None) -> Document:
    """Annotate a Latin text, with its English rendering if there is one.

    Lines are paired with the rendering's lines even where their counts differ; blank lines part stanzas; a text
    on one line is taken sentence by sentence. Unknown words get guessed readings of low confidence, never an
    error. What `corrections` say prevails, and helps to read the words around; what they say of words that are not
    there is told in `Document.unmatched_corrections`. Raises `TextError` (a `ValueError`) for an empty text, one
    without a Latin letter or one too long, and `InputTypeError` (a `TypeError`) for anything but a string.

    >>> doc = annotate("Vesper venit.", "Evening comes.")
    >>> [(w.lemma, w.features.get("Case"), w.gloss) for t in doc.passages[0].tokens for w in t.words][0]
    ('vesper', 'Nom', 'evening')
    """
    return _default().annotate(latin, english, corrections=corrections)


def annotate_tokens(
    latin_sentences: Sequence[Sequence[str]],
    english: Sequence[Sequence[str]] | None = None,
    *,
    corrections: Corrections | None = None,
) -> Document:
    """Annotate sentences that are already cut into tokens, which are taken as given; one passage each.

    `english`, if given, has one list of tokens for each Latin sentence. The document's source is the tokens joined
    by spaces, a sentence a line. Raises `TextError` if the lists do not match or a token is empty, and
    `InputTypeError` for anything but lists of strings.

    >>> doc = annotate_tokens([["Stellae", "lucent", "."]])
    >>> [t.text for t in doc.passages[0].tokens]
    ['Stellae', 'lucent', '.']
    """
    return _default().annotate_tokens(latin_sentences, english, corrections=corrections)


def _latin_lines(latin: str) -> list[_Line]:
    found = lines(latin)
    tokens = _spans_within(found, tokenize(latin))
    return [_Line(*line, spans, []) for line, spans in zip(found, tokens, strict=True)]


def _paired_lines(latin: str, english: str) -> list[_Line]:
    """Passages with their renderings; a rendering line without Latin goes with the passage before it."""
    pairs = pair_texts(latin, english)
    rows = [row for row, _ in pairs if row]
    latin_spans = iter(_spans_within(rows, tokenize(latin)))
    english_spans = iter(_spans_within([column for _, column in pairs if column], tokenize_english(english)))
    found: list[_Line] = []
    leading: list[Span] = []
    for row, column in pairs:
        rendering = next(english_spans) if column else []
        if row:
            found.append(_Line(*row, next(latin_spans), leading + rendering))
            leading = []
        else:
            (found[-1].rendering if found else leading).extend(rendering)
    return found


def _spans_within(lines: Sequence[Line], spans: Sequence[Span]) -> list[list[Span]]:
    """Share tokens out over the lines they stand in; every token goes to exactly one."""
    out: list[list[Span]] = [[] for _ in lines]
    k = 0
    for span in spans:
        while k + 1 < len(lines) and span.start >= lines[k + 1].start:
            k += 1
        out[k].append(span)
    return out


def _joined(sentences: Sequence[Sequence[str]], cut: Callable[[str], list[Span]]) -> tuple[str, list[list[Span]]]:
    """Lay given tokens out as a text; the kind of a token is that of its first part when cut."""
    spans: list[list[Span]] = []
    kinds: dict[str, Kind] = {}
    at = 0
    for sentence in sentences:
        row = []
        for token in sentence:
            if token not in kinds:
                pieces = cut(token)
                kinds[token] = pieces[0].kind if pieces else "sign"
            row.append(Span(token, at, at + len(token), kinds[token]))
            at += len(token) + 1
        if not sentence:
            at += 1
        spans.append(row)
    return "\n".join(" ".join(sentence) for sentence in sentences), spans


def _check_token_lists(latin: Sequence[Sequence[str]], english: Sequence[Sequence[str]] | None) -> None:
    for name, sentences in (("latin_sentences", latin), ("english", english)):
        if sentences is None and name == "english":
            continue
        if isinstance(sentences, str | bytes) or not isinstance(sentences, Sequence):
            raise InputTypeError(f"{name} must be a list of lists of tokens, not {type(sentences).__name__}")
        for i, sentence in enumerate(sentences):
            check_tokens(sentence, f"{name}[{i}]")
            for j, token in enumerate(sentence):
                check_whole(token, f"{name}[{i}][{j}]")
                if not token or token.isspace():
                    raise TextError(f"{name}[{i}][{j}] is empty; leave empty tokens out")
        if (letters := sum(len(token) for sentence in sentences for token in sentence)) > MOST_CHARACTERS:
            raise TextError(
                f"{name}: {letters:,} characters, and one text may have {MOST_CHARACTERS:,}; cut it into texts, or use "
                "latingloss.corpus"
            )
    if english is not None and len(english) != len(latin):
        raise TextError(
            f"{len(latin)} Latin sentences but {len(english)} English ones; give one list of English tokens for each"
        )
