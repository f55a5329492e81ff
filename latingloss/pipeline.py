"""The whole way from two strings to a Document, on one screen.

source -> passages (lines paired with renderings) -> tokens -> readings in context -> links to the English
       -> glosses and reasons -> difficulty and the words worth picking out
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from latingloss.alignment import align
from latingloss.alignment.glossing import old_english, word_of
from latingloss.alignment.rendering import linked_words, reweigh
from latingloss.alignment.signs import english_signs
from latingloss.context.relations import relations
from latingloss.corrections.applying import with_emphasis, with_links, with_words
from latingloss.corrections.matching import NOTHING, OfLine, match
from latingloss.corrections.matching import Line as PrintedLine
from latingloss.corrections.models import Corrections
from latingloss.difficulty.emphasis import emphasized
from latingloss.difficulty.reader import Reader
from latingloss.difficulty.score import known_relatives
from latingloss.document import Document, Link, Passage, RenderingToken, Token
from latingloss.engines import Engine, TokenChoices, check_engine, read_narrowed
from latingloss.engines.builtin import BuiltInEngine
from latingloss.errors import InputTypeError, OptionError
from latingloss.tables import collector_paused
from latingloss.text.bilingual import BilingualLine, of_texts, of_tokens

EMPHASIS_SHARE = 0.25


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
        if engine is not None:
            check_engine(engine, "engine")
        if not isinstance(reader, Reader | None):
            raise InputTypeError(f"reader must be a latingloss.Reader, not {type(reader).__name__}")
        self.engine = BuiltInEngine() if engine is None else engine
        self.emphasis_share = emphasis_share
        self.reader = Reader() if reader is None else reader

    def annotate(self, latin: str, english: str | None = None, *, corrections: Corrections | None = None) -> Document:
        """Annotate a Latin text, with its English rendering if there is one; see `latingloss.annotate`."""
        with collector_paused():
            return self.annotate_lines(of_texts(latin, english), latin, english, corrections=corrections)

    def annotate_tokens(
        self,
        latin_sentences: Sequence[Sequence[str]],
        english: Sequence[Sequence[str]] | None = None,
        *,
        corrections: Corrections | None = None,
    ) -> Document:
        """Annotate sentences given as tokens; see `latingloss.annotate_tokens`."""
        with collector_paused():
            source, rendering, lines = of_tokens(latin_sentences, english)
            return self.annotate_lines(lines, source, rendering, corrections=corrections)

    def annotate_lines(
        self,
        lines: Sequence[BilingualLine],
        source: str,
        english: str | None = None,
        *,
        corrections: Corrections | None = None,
    ) -> Document:
        """Annotate a text that is laid out already, as `latingloss.text.bilingual` does it; a passage a line."""
        if not isinstance(corrections, Corrections | None):
            kind = type(corrections).__name__
            raise InputTypeError(f"corrections must be Corrections, not {kind}; latingloss.corrections.read makes them")
        matched = match(corrections or Corrections(), [_printed(line) for line in lines] if corrections else [])
        sentences = [[t.text for t in line.tokens if t.kind == "word"] for line in lines]
        said = matched.lines or [NOTHING] * len(lines)
        seen: set[tuple[str, str]] = set()
        with collector_paused():
            readings = read_narrowed(self.engine, sentences, matched.narrow)
            passages = tuple(
                self._passage(line, choices, seen, corrected=corrected)
                for line, choices, corrected in zip(lines, readings, said, strict=True)
            )
        return Document(
            source=source, english=english, engine=self.engine.name, passages=passages,
            unmatched_corrections=matched.unmatched,
        )  # fmt: skip

    def _passage(
        self, line: BilingualLine, choices: list[TokenChoices], seen: set[tuple[str, str]], *, corrected: OfLine
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


def _printed(line: BilingualLine) -> PrintedLine:
    return PrintedLine(
        [t.text for t in line.tokens], [t.kind == "word" for t in line.tokens], [t.text for t in line.rendering]
    )


def _links(line: BilingualLine, tokens: list[TokenChoices], corrected: OfLine) -> tuple[Link, ...]:
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
def default_annotator() -> Annotator:
    """Return the annotator of `annotate` and `annotate_tokens`, which keeps the forms that it has met."""
    return Annotator()


def annotate(latin: str, english: str | None = None, *, corrections: Corrections | None = None) -> Document:
    """Annotate a Latin text, with its English rendering if there is one.

    Lines are paired with the rendering's lines even where their counts differ; blank lines part stanzas; a text
    on one line is taken sentence by sentence. Unknown words get guessed readings of low confidence, never an
    error. What `corrections` say prevails, and helps to read the words around; what they say of words that are not
    there, or that have no such form, is told in `Document.unmatched_corrections`. Raises `TextError` (a `ValueError`)
    for an empty text, one without a Latin letter or one too long, and `InputTypeError` (a `TypeError`) for anything
    but a string.

    >>> doc = annotate("Vesper venit.", "Evening comes.")
    >>> [(w.lemma, w.features.get("Case"), w.gloss) for t in doc.passages[0].tokens for w in t.words][0]
    ('vesper', 'Nom', 'evening')
    """
    return default_annotator().annotate(latin, english, corrections=corrections)


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
    return default_annotator().annotate_tokens(latin_sentences, english, corrections=corrections)
