"""TEI P5 (https://tei-c.org/guidelines/p5/): verse in `lg` and `l`, words in `w`, marks in `pc`, numbers in `num`.

The text of the first division is the source, character by character, white space too, so that offsets need no
markup; what XML cannot hold becomes U+FFFD, or, if it is white space, a line break. A `w` carries @lemma, @pos (UD
part of speech), @msd (UD features, as in CoNLL-U) and @cert; a token with an enclitic is a `w` of `w`, with @norm
where the word is not spelled out in the print. The rendering is a second division, tied to the first by `linkGrp`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from xml.sax.saxutils import escape, quoteattr

from latingloss.document import Document, Passage, RenderingToken, Token, Word
from latingloss.formats.cells import UNPRINTABLE
from latingloss.formats.tei_reader import read

__all__ = ["read", "write"]

_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")  # XML 1.0, production 2
_ELEMENTS = {"word": "w", "number": "num", "punctuation": "pc", "sign": "pc"}


def write(document: Document, *, title: str = "Annotated Latin text") -> str:
    """Write a document as a TEI file with a minimal header.

    >>> from latingloss import annotate
    >>> write(annotate("Stellae lucent.")).partition("</l>")[0][-22:]
    '">lucent</w><pc>.</pc>'
    """
    body = "".join(_latin(document)) + "".join(_english(document))
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        '<TEI xmlns="http://www.tei-c.org/ns/1.0"><teiHeader><fileDesc>'
        f"<titleStmt><title>{_text(title)}</title></titleStmt>"
        "<publicationStmt><p>Unpublished</p></publicationStmt>"
        "<sourceDesc><p>Plain text, annotated with latingloss</p></sourceDesc>"
        f"</fileDesc></teiHeader><text><body>{body}</body></text></TEI>\n"
    )


def _latin(document: Document) -> Iterator[str]:
    """Yield the pieces of the first division; all text in it together is the source."""
    yield '<div type="source" xml:lang="la">'
    at, stanza = 0, -1
    passages = [(i, p) for i, p in enumerate(document.passages) if p.tokens]
    for i, passage in passages:
        gap = _text(document.source[at : passage.tokens[0].start])
        if passage.stanza != stanza:
            yield f"{'</lg>' if stanza >= 0 else ''}{gap}<lg>"
            stanza = passage.stanza
        else:
            yield gap
        yield from _line(document, passage, i)
        at = passage.tokens[-1].end
    end = _text(document.source[at:])
    yield f"</lg>{end}</div>" if passages else f"<lg><l>{end}</l></lg></div>"


def _line(document: Document, passage: Passage, number: int) -> Iterator[str]:
    linked = {link.latin for link in passage.links}
    yield f"<l{_identity(f'l{number}') if passage.rendering else ''}>"
    at = passage.tokens[0].start
    for i, token in enumerate(passage.tokens):
        yield _text(document.source[at : token.start])
        yield _token(token, _identity(f"l{number}.{i}") if i in linked else "")
        at = token.end
    yield "</l>"


def _token(token: Token, identity: str) -> str:
    if len(token.words) == 1:
        name = _ELEMENTS[token.kind]
        return f"<{name}{identity}{_analysis(token.words[0])}>{_text(token.text)}</{name}>"
    if token.words:
        return f"<w{identity}>{_parts(token)}</w>"
    name = _ELEMENTS[token.kind]
    kind = ' type="sign"' if token.kind == "sign" else ""
    return f"<{name}{identity}{kind}>{_text(token.text)}</{name}>"


def _parts(token: Token) -> str:
    """Return the words of a token as elements: around their print, or, where it is not theirs, behind it."""
    if "".join(word.form for word in token.words) == token.text:
        return "".join(f"<w{_analysis(word)}>{_text(word.form)}</w>" for word in token.words)
    words = "".join(f"<w norm={_attribute(word.form)}{_analysis(word)}/>" for word in token.words)
    return _text(token.text) + words


def _analysis(word: Word) -> str:
    msd = "|".join(f"{name}={value}" for name, value in sorted(word.features.items(), key=lambda pair: pair[0].lower()))
    found = {"lemma": word.lemma, "pos": word.upos, "msd": msd, "cert": f"{word.confidence:.6f}"}
    return "".join(f" {name}={_attribute(value)}" for name, value in found.items() if value)


def _english(document: Document) -> Iterator[str]:
    lines = [(i, passage) for i, passage in enumerate(document.passages) if passage.rendering and passage.tokens]
    if not lines or document.english is None:
        return
    yield '<div type="rendering" xml:lang="en"><lg>'
    links = []
    for i, passage in lines:
        yield f'<l corresp="#l{i}">'
        at = passage.rendering[0].start
        for k, token in enumerate(passage.rendering):
            yield _text(document.english[at : token.start])
            yield _english_token(token, _identity(f"e{i}.{k}"))
            at = token.end
        yield "</l>"
        links += [(f"#l{i}.{k.latin} #e{i}.{k.english}", k.confidence) for k in passage.links]
    yield "</lg>"
    if links:
        marked = "".join(f'<link target="{target}" cert="{confidence:.6f}"/>' for target, confidence in links)
        yield f'<linkGrp type="rendering">{marked}</linkGrp>'
    yield "</div>"


def _english_token(token: RenderingToken, identity: str) -> str:
    name = _ELEMENTS[token.kind]
    kind = ' type="sign"' if token.kind == "sign" else ""
    return f"<{name}{identity}{kind}>{_text(token.text)}</{name}>"


def _identity(name: str) -> str:
    return f' xml:id="{name}"'


def _fit(text: str) -> str:
    return _NOT_XML.sub(lambda match: "\n" if match[0].isspace() else UNPRINTABLE, text)


def _text(text: str) -> str:
    return escape(_fit(text), {"\r": "&#13;"})


def _attribute(text: str) -> str:
    return quoteattr(_fit(text), {"\r": "&#13;", "\n": "&#10;", "\t": "&#9;"})
