"""CoNLL-U, the format of Universal Dependencies v2: https://universaldependencies.org/format.html

A passage is a sentence, a stanza a paragraph (`# newpar`), the rendering a comment (`# text_en`). Tokens with an
enclitic are multiword tokens, written as ranges. There is no parse; since the format wants a tree, every word hangs
on the first as `dep`, the relation that says nothing. MISC carries

    SpaceAfter, SpacesBefore, SpacesAfter   white space, so that the offsets can be had again
    Source      the print, where the FORM cannot show it: line breaks, decomposed accents, control characters
    LId         the lemma with its homograph number
    MarkedForm, Gloss, Confidence, Guessed  of the word
    Difficulty  score of the token, 0 easy .. 1 hard
    Align       English tokens that render it, as `number:confidence`, numbers from 1 in `# tokens_en`

Escapes are those usual in SpacesAfter (`\\s`, `\\t`, `\\n`, `\\r`, `\\p` for `|`), and Python's for all else.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from latingloss.document import Document, Passage, RenderingToken, Token, Word
from latingloss.formats.cells import UNPRINTABLE, escaped, one_line
from latingloss.formats.conllu_reader import read

__all__ = ["read", "write"]

_UPOS = {"punctuation": "PUNCT", "sign": "SYM", "number": "NUM", "word": "X"}


def write(document: Document) -> str:
    """Write a document as CoNLL-U; passages without tokens are left out, and so is what MISC has no place for.

    >>> from latingloss import annotate
    >>> write(annotate("Stellae lucent.")).splitlines()[3].split("\\t")[:4]
    ['1', 'Stellae', 'stēlla', 'NOUN']
    """
    spacing = _spacing(document)
    blocks = []
    stanza = -1
    for number, passage in enumerate(document.passages, 1):
        if not passage.tokens:
            continue
        comments = ["# newpar"] if passage.stanza != stanza else []
        stanza = passage.stanza
        comments += [f"# sent_id = {number}", f"# text = {_running_text(passage.tokens)}"]
        comments += _english_comments(passage.rendering)
        blocks.append("\n".join([*comments, *_rows(passage, spacing)]) + "\n\n")
    return "".join(blocks)


def _spacing(document: Document) -> Iterator[dict[str, str]]:
    """Yield for every token of the document the white space around it."""
    tokens = [token for passage in document.passages for token in passage.tokens]
    ends = [token.start for token in tokens[1:]] + [len(document.source)]
    for i, (token, end) in enumerate(zip(tokens, ends, strict=False)):
        misc = {}
        if i == 0 and token.start:
            misc["SpacesBefore"] = escaped(document.source[: token.start], space=True)
        gap = document.source[token.end : end]
        if not gap:
            misc["SpaceAfter"] = "No"
        elif gap != " ":
            misc["SpacesAfter"] = escaped(gap, space=True)
        yield misc


def _running_text(tokens: Sequence[Token | RenderingToken]) -> str:
    text = _shown(tokens[0].text)
    for before, token in pairwise(tokens):
        text += (" " if token.start > before.end else "") + _shown(token.text)
    return text


def _english_comments(rendering: tuple[RenderingToken, ...]) -> list[str]:
    if not rendering:
        return []
    spans, at = [], 0
    for i, token in enumerate(rendering):
        at += i > 0 and token.start > rendering[i - 1].end
        end = at + len(_shown(token.text))
        spans.append(f"{at}:{end}")
        at = end
    return [f"# text_en = {_running_text(rendering)}", f"# tokens_en = {' '.join(spans)}"]


def _rows(passage: Passage, spacing: Iterator[dict[str, str]]) -> Iterator[str]:
    aligned: dict[int, list[str]] = {}
    for link in passage.links:
        aligned.setdefault(link.latin, []).append(f"{link.english + 1}:{link.confidence:.6g}")
    number = 1
    for i, token in enumerate(passage.tokens):
        misc = next(spacing) | _source(token.text)
        if token.difficulty:
            misc["Difficulty"] = f"{token.difficulty.score:.6g}"
        if i in aligned:
            misc["Align"] = ",".join(aligned[i])
        yield from _token_rows(token, number, misc)
        number += max(1, len(token.words))


def _token_rows(token: Token, number: int, misc: dict[str, str]) -> Iterator[str]:
    """Yield one row, or a range and its words."""
    if not token.words:
        features = {"NumForm": "Roman" if token.text[0].isalpha() else "Digit"} if token.kind == "number" else {}
        lemma = _shown(token.text)
        yield _row(str(number), token.text, misc, lemma=lemma, upos=_UPOS[token.kind], features=features)
    elif len(token.words) == 1:
        yield _word_row(number, token.words[0], misc, form=token.text)
    else:
        yield _row(f"{number}-{number + len(token.words) - 1}", token.text, misc)
        for k, word in enumerate(token.words):
            yield _word_row(number + k, word, _source(word.form), form=word.form)


def _word_row(number: int, word: Word, misc: dict[str, str], *, form: str) -> str:
    lemma = word.lemma.partition("#")[0]
    own = {"LId": word.lemma} if lemma != word.lemma else {}
    own |= {"MarkedForm": escaped(word.marked_form, space=True)} if word.marked_form != word.form else {}
    own |= {"Gloss": escaped(word.gloss)} if word.gloss else {}
    own |= {"Confidence": f"{word.confidence:.6g}"}
    own |= {"Guessed": "Yes"} if word.guessed else {}
    own |= {"Note": escaped(word.note)} if word.note else {}
    own |= {"Corrected": "Yes"} if word.corrected else {}
    return _row(str(number), form, misc | own, lemma=_shown(lemma), upos=word.upos, features=word.features)


def _row(
    number: str, form: str, misc: Mapping[str, str], *,
    lemma: str = "_", upos: str = "_", features: Mapping[str, str] | None = None,
) -> str:  # fmt: skip
    ordered = sorted((features or {}).items(), key=lambda pair: pair[0].lower())
    feats, rest = ("|".join(f"{name}={value}" for name, value in pairs) or "_" for pairs in (ordered, misc.items()))
    head = ("_", "_") if "-" in number else ("0", "root") if number == "1" else ("1", "dep")
    return "\t".join((number, _shown(form), lemma, upos, "_", feats, *head, "_", rest))


def _shown(text: str) -> str:
    """Put text on one line; U+FFFD, the sign of a file gone wrong to validators, becomes a box."""
    return one_line(text).replace(UNPRINTABLE, "\u25a1")


def _source(text: str) -> dict[str, str]:
    return {"Source": escaped(text, space=True)} if _shown(text) != text else {}
