"""Sentences to learn from: the learn treebanks with gold readings, the verses with what their English says."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

import numpy as np

from latingloss.alignment import align
from latingloss.alignment.rendering import linked_words
from latingloss.alignment.signs import english_signs
from latingloss.building.lessons import Lesson
from latingloss.building.matching import gold_reading
from latingloss.building.sources import GoldWord, gold_sentences, verses
from latingloss.context.columns import Types, lay_out
from latingloss.engines.builtin import sense_order, word_parts
from latingloss.text.tokens import tokenize, tokenize_english

BATCH = 40  # sentences


class Verse(NamedTuple):
    """A verse as numbers of forms, with the signs and the words of its English for each."""

    forms: tuple[int, ...]
    signs: tuple[tuple[str, ...], ...]
    linked: tuple[tuple[str, ...], ...]


def chain(words: Sequence[GoldWord]) -> list[GoldWord]:
    """Put an enclitic conjunction before its host, where the sense has it: populusque, que populus."""
    out: list[GoldWord] = []
    for word in words:
        if word.part and word.form.lower() in ("que", "ve", "ue") and out:
            out.insert(len(out) - 1, word)
        else:
            out.append(word)
    return out


def treebank_lessons(path: Path, types: Types, *, weight: float) -> list[Lesson]:
    """Return a treebank's sentences as lessons; words whose gold reading the analyser lacks do not count."""
    found = []
    for sentence in gold_sentences(path):
        words = chain([w for w in sentence if w.upos not in ("PUNCT", "SYM") and any(c.isalpha() for c in w.form)])
        ids = [types.id(w.form) for w in words]
        gold = [gold_reading(types.readings(i), w) for i, w in zip(ids, words, strict=True)]
        if ids:
            found.append((ids, [-1 if g is None else g for g in gold]))
    lessons = []
    for k in range(0, len(found), BATCH):
        part = found[k : k + BATCH]
        columns = lay_out([ids for ids, _ in part], types)
        gold_rows = np.array([g for _, row in part for g in row], np.int32)
        counted = gold_rows >= 0
        target = np.zeros(len(columns.word), np.float32)
        target[columns.start[counted] + gold_rows[counted]] = 1.0
        counts = np.where(counted, weight, 0.0).astype(np.float32)
        lessons.append(Lesson(columns, target, counts[columns.word]))
    return lessons


def read_verses(shared: Path, types: Types) -> list[Verse]:
    """Return the verses, aligned with their English."""
    found = []
    for latin, english in verses(shared):
        tokens = [t.text for t in tokenize(latin) if t.kind == "word"]
        rendering = [t.text for t in tokenize_english(english)]
        if len(tokens) > 1:
            found.append(_verse(tokens, rendering, types))
    return found


def _verse(tokens: list[str], rendering: list[str], types: Types) -> Verse:
    parts = [word_parts(token) for token in tokens]
    ids = [[types.id(part) for part in row] for row in parts]
    linked: list[list[int]] = [[] for _ in tokens]
    for link in align(tokens, rendering):
        linked[link.latin].append(link.english)
    verbs = [types.readings(row[0])[0].features.get("VerbForm") == "Fin" for row in ids]
    signs = english_signs(linked, rendering, verbs=verbs)
    forms, said, words = [], [], []
    for t, w in sense_order(parts):
        forms.append(ids[t][w])
        said.append(signs[t] if w == 0 else ())
        words.append(linked_words(linked[t], rendering) if w == 0 else ())
    return Verse(tuple(forms), tuple(said), tuple(words))
