"""The table of English forms against LemmInflect (Jascob 2019), which it was made from, and the rules against grammars.

Spelling rules: Murray, English Grammar (1795), on orthography; examples from memory, not compared with the print.
"""

from __future__ import annotations

import random
import subprocess
import sys

import pytest
from lemminflect import getAllLemmas, getInflection

from latingloss.english.bases import bases
from latingloss.english.spelling import with_ed, with_er, with_ing, with_s
from latingloss.english.vocabulary import TAGS, forms, table


@pytest.mark.parametrize(
    ("made", "word"),
    [
        (with_s("city"), "cities"),
        (with_s("day"), "days"),
        (with_s("church"), "churches"),
        (with_ed("hop"), "hopped"),
        (with_ed("hope"), "hoped"),
        (with_ed("cry"), "cried"),
        (with_ed("look"), "looked"),
        (with_ing("die"), "dying"),
        (with_ing("hope"), "hoping"),
        (with_ing("see"), "seeing"),
        (with_ing("run"), "running"),
        (with_er("holy", "est"), "holiest"),
        (with_er("big"), "bigger"),
    ],
)
def test_spelling_rules(made: str, word: str) -> None:
    assert made == word


def sample(upos: str, column: int) -> list[str]:
    words = sorted(w for w, kinds in table().items() if kinds[column])
    return random.Random(1).sample(words, 400)


@pytest.mark.parametrize(("upos", "column"), [("NOUN", 0), ("VERB", 1), ("ADJ", 2)])
def test_table_has_the_forms_of_lemminflect(upos: str, column: int) -> None:
    for word in sample(upos, column):
        found = [getInflection(word, tag, inflect_oov=False) for tag in TAGS[upos]]
        assert forms(word, upos) == (tuple(f[0] for f in found) if all(found) else ()), word


@pytest.mark.parametrize(("upos", "column"), [("NOUN", 0), ("VERB", 1), ("ADJ", 2)])
def test_forms_lead_back_to_their_base(upos: str, column: int) -> None:
    from latingloss.english.bases import _ARCHAIC_PAST

    for word in sample(upos, column):
        for form in forms(word, upos):
            if form not in _ARCHAIC_PAST:
                assert bases(form, upos) == tuple(getAllLemmas(form, upos).get(upos, ())), form


def test_common_words_do_not_load_lemminflect() -> None:
    """It takes half a second; glosses of everyday text do without it."""
    code = (
        "import sys; from latingloss import annotate;"
        "annotate('Bonus pastor ovem perditam invenit et laetus domum rediit, ubi amici cenam paraverant.');"
        "sys.exit('lemminflect' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
