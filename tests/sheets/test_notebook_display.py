"""How models show in a notebook: escaped, without script, every word with its analysis, reachable by keyboard."""

import re

import latingloss
from latingloss.sheets import Booklet, Text, word_list
from latingloss.sheets.notebook import document_html, paradigm_html, passage_html

DOCUMENT = latingloss.annotate("Noctísque siléntium, <b>venit</b>.", "And the silence of <i>night</i> comes.")


def test_every_word_can_be_reached_and_says_what_it_is() -> None:
    """WCAG 2.2, success criterion 1.4.13 (content on hover or focus) needs the keyboard too: 2.1.1."""
    page = document_html(DOCUMENT)
    words = sum(bool(token.words) for token in DOCUMENT.passages[0].tokens)
    assert page.count('tabindex="0"') == words
    assert ".word:is(:hover, :focus) > .about" in page
    assert "-que" in page and "noun, genitive" in page


def test_nothing_of_the_text_is_markup_and_nothing_is_run() -> None:
    for page in (document_html(DOCUMENT), passage_html(DOCUMENT.passages[0])):
        assert "<i>" not in page and "<b>venit" not in page
        assert not re.search(r"<script|https?:|@import|url\(", page)


def test_a_paradigm_has_all_its_forms() -> None:
    paradigm = latingloss.inflect("bonus")
    page = paradigm_html(paradigm)
    assert all(form in page for form in paradigm.all_forms())
    assert "genitive plural feminine" in page


def test_word_lists_and_scores_show_as_tables() -> None:
    (group,) = word_list(Booklet([Text(DOCUMENT)]), "alphabet")
    page = group._repr_html_()
    assert page.count("<tr>") == 1 + len(group.entries)
    assert all(f'<th scope=row lang="la">{entry.form}</th>' in page for entry in group.entries)
    score = DOCUMENT.passages[0].tokens[0].difficulty
    assert score is not None
    assert all(part.reason in score._repr_html_() for part in score.parts)
