"""How documents, passages, paradigms, word lists and scores show in a notebook: HTML without script, light and dark.

The analysis of a word stands in the page as text and is shown while the pointer or the keyboard is on the word.
Where HTML is not shown the notebook falls back to the models' own text.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from latingloss.document import Difficulty, Document, Paradigm, Passage, Reading
from latingloss.sheets.html import template
from latingloss.sheets.wording import dictionary_form, grammar_of, kind_of, parts_of, rendering_of

if TYPE_CHECKING:
    from latingloss.sheets.words import WordGroup


def document_html(document: Document) -> str:
    """Return a document as an HTML fragment: its passages, one under the other.

    >>> from latingloss import annotate
    >>> "of the night" in document_html(annotate("Stellae noctis lucent."))
    True
    """
    shown = [_passage(passage, rendering_of(document, passage)) for passage in document.passages]
    return template("notebook.html.jinja").render(passages=shown, table=None)


def passage_html(passage: Passage) -> str:
    """Return a passage as an HTML fragment; its rendering is joined from its tokens.

    >>> from latingloss import annotate
    >>> passage_html(annotate("Vesper venit.").passages[0]).count('tabindex="0"')
    2
    """
    return template("notebook.html.jinja").render(
        passages=[_passage(passage, " ".join(token.text for token in passage.rendering))], table=None
    )


def paradigm_html(paradigm: Paradigm) -> str:
    """Return a paradigm as an HTML table, a row for each cell.

    >>> from latingloss import inflect
    >>> "noctium" in paradigm_html(inflect("nox"))
    True
    """
    rows: dict[str, list[str]] = {}
    for cell in paradigm.forms:
        rows.setdefault(_described(paradigm.upos, cell.features), []).append(cell.form)
    head = dictionary_form(paradigm.lemma, paradigm.upos)
    lines = [(said or "the form", ", ".join(dict.fromkeys(forms))) for said, forms in rows.items()]
    return _table(
        (("What it is", ""), ("Form", "la")), lines, head=head, about=f"{kind_of(paradigm.upos)}: {paradigm.gloss}"
    )


def words_html(group: WordGroup) -> str:
    """Return a part of a word list as an HTML table."""
    rows = [(e.form, e.kind, e.senses, ", ".join(place.label for place in e.places)) for e in group.entries]
    return _table((("Word", "la"), ("Kind", ""), ("Meaning", ""), ("Line", "")), rows, about=group.heading)


def difficulty_html(difficulty: Difficulty) -> str:
    """Return a score as an HTML table of its parts.

    >>> from latingloss import annotate
    >>> score = annotate("Vesper venit.").passages[0].tokens[0].difficulty
    >>> "frequency" in difficulty_html(score)
    True
    """
    rows = [(p.name, f"{p.value:g}", f"{p.effect:+.2f}", p.reason) for p in difficulty.parts]
    about = f"difficulty {difficulty.score:.2f} (0 easy, 1 hard)"
    return _table((("Part", ""), ("Measured", ""), ("Adds", ""), ("Why", "")), rows, about=about)


def _table(columns: Sequence[tuple[str, str]], rows: Sequence[Sequence[str]], *, about: str, head: str = "") -> str:
    """Set a table; `columns` have a name and the language of their cells, if it is not the page's."""
    table = {"columns": columns, "rows": rows, "head": head, "about": about}
    return template("notebook.html.jinja").render(passages=[], table=table, zip=zip)


def _described(upos: str, features: Mapping[str, str]) -> str:
    said = grammar_of(Reading(lemma="", upos=upos, features=dict(features), form="", probability=1.0))
    genders = (
        features.get("Gender", "").replace("Fem", "feminine").replace("Masc", "masculine").replace("Neut", "neuter")
    )
    several = upos in ("ADJ", "DET", "PRON", "NUM") or features.get("VerbForm") in ("Part", "Gdv")
    return said.partition(", ")[2] + (f" {genders.replace(',', ', ')}" if several and genders else "")


def _passage(passage: Passage, rendering: str) -> dict[str, object]:
    tokens: list[dict[str, object]] = []
    end = passage.start
    for token in passage.tokens:
        words = [
            {
                "form": form, "gloss": word.gloss or "?", "grammar": grammar_of(word), "reason": word.reason,
                "lemma": dictionary_form(word.lemma, word.upos), "confidence": f"{word.confidence:.0%}",
            }
            for form, word in zip(parts_of(token)[: len(token.words)], token.words, strict=True)
        ]  # fmt: skip
        hardness = f"{token.difficulty.score:.2f}" if token.difficulty else ""
        gap = " " if token.start > end else ""
        end = token.end
        tokens.append({
            "gap": gap, "text": token.text, "words": words, "emphasis": token.emphasis, "difficulty": hardness,
        })  # fmt: skip
    return {"tokens": tokens, "rendering": rendering}
