"""Count how common lexemes, endings and forms are: `python -m latingloss.building.statistics ../shared`.

Learn treebanks give labelled counts. The Vulgate has none: its forms are shared out over their readings by
expectation maximisation (Dempster, Laird and Rubin 1977), starting from the labelled counts; where a form has
several lexemes, those count more whose glosses stand in the verse's English. Writes
`data/statistics/{lexemes,cells,forms,domains}.tsv`.
"""

from __future__ import annotations

import sys
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple

from latingloss.alignment.grammar import FUNCTION_WORDS
from latingloss.building.matching import gold_reading
from latingloss.building.sources import WORD, GoldWord, gold_sentences, learn_sentences, verses
from latingloss.difficulty.frequency import LABELLED
from latingloss.english.words import base_forms
from latingloss.morphology.analysis import Analysis, analyses
from latingloss.morphology.enclitics import split
from latingloss.morphology.lexicon import lexemes
from latingloss.morphology.priors import cell_name
from latingloss.morphology.ranking import candidates
from latingloss.text.orthography import plain

ROUNDS = 12
_UNSAID = 0.05  # odds of a lexeme whose glosses a verse does not have, while it has another's
OUT = Path(__file__).parents[1] / "data" / "statistics"


class Met(NamedTuple):
    """A form as it is met in a verse."""

    form: str  # plain key
    capital: bool  # inside a sentence
    glossed: frozenset[int]  # those of its lexemes that have a gloss in the verse's English


def vulgate_forms(shared: Path) -> Counter[Met]:
    """Count the forms of the Vulgate, with what the English of their verses says of their lexemes."""
    counts: Counter[Met] = Counter()
    for latin, english in verses(shared):
        said = {base for word in WORD.findall(english.lower()) for base in base_forms(word)}
        start = True
        for match in WORD.finditer(latin):
            before = latin[: match.start()].rstrip()[-1:]
            start = start or before in ".?!:"
            host = split(match.group()) or (match.group(), "")
            for i, part in enumerate(p for p in host if p):
                capital = i == 0 and match.group()[0].isupper() and not start
                counts[Met(plain(part), capital, _glossed(plain(part), said))] += 1
            start = False
    return counts


def _glossed(form: str, said: set[str]) -> frozenset[int]:
    """Return the lexemes of a form that has several, of whose glosses one is among the words said."""
    found = {a.lexeme for a in analyses(form)}
    return frozenset(i for i in found if not _glosses(i).isdisjoint(said)) if len(found) > 1 else frozenset()


@cache
def _glosses(lexeme: int) -> frozenset[str]:
    """The content words of a lexeme's glosses, in their base forms; all words if it has no content word."""
    entry = lexemes()[lexeme]
    words = {base_forms(w)[0] for w in WORD.findall(f"{entry.gloss} {entry.church}".lower())}
    return frozenset(words - FUNCTION_WORDS or words)


def _name(upos: str, analysis: Analysis) -> str:
    return cell_name("VERB" if "VerbForm" in analysis.features else upos, analysis.features)


def gold_counts(sentences: Iterable[list[GoldWord]]) -> tuple[Counter[tuple[str, str]], Counter[str]]:
    """Count lexemes and cells over sentences of treebanks, where the analyser has the treebank's reading."""
    by_lexeme: Counter[tuple[str, str]] = Counter()
    by_cell: Counter[str] = Counter()
    for sentence in sentences:
        for word in sentence:
            if word.upos in ("PUNCT", "X", "SYM"):
                continue
            choices = candidates(word.form)
            found = gold_reading(choices, word)
            if found is not None and not choices[found].guessed:
                lexeme = choices[found].lexeme
                by_lexeme[lexeme.lemma, lexeme.upos] += 1
                by_cell[cell_name(choices[found].upos, choices[found].features)] += 1
    return by_lexeme, by_cell


def estimate(
    forms: Counter[Met], gold: tuple[Counter[tuple[str, str]], Counter[str]]
) -> tuple[dict[tuple[str, str], float], dict[str, float]]:
    """Share the forms' counts out over their readings until stable; gold counts stay in."""
    entries = lexemes()
    lexeme_n: dict[tuple[str, str], float] = defaultdict(lambda: 0.2)
    cell_n: dict[str, float] = defaultdict(lambda: 0.5)
    for key, n in gold[0].items():
        lexeme_n[key] += n
    for name, n in gold[1].items():
        cell_n[name] += n
    table = []
    for (form, capital, glossed), n in forms.items():
        found = analyses(form)
        fitting = [a for a in found if capital == entries[a.lexeme].lemma[0].isupper()] or list(found)
        shares: dict[tuple[tuple[str, str], str], float] = {}
        for a in fitting:
            lexeme = entries[a.lexeme]
            reading = (lexeme.lemma, lexeme.upos), _name(lexeme.upos, a)
            worth = a.share * (_UNSAID if glossed and a.lexeme not in glossed else 1.0)
            shares[reading] = max(worth, shares.get(reading, 0.0))
        table.append((n, shares))
    for _ in range(ROUNDS):
        new_lexeme: dict[tuple[str, str], float] = defaultdict(float)
        new_cell: dict[str, float] = defaultdict(float)
        upos_total: dict[str, float] = defaultdict(float)
        for name, value in cell_n.items():
            upos_total[name.split(" ")[0]] += value
        for n, shares in table:
            weights = [
                s * lexeme_n[key] * cell_n[cell] / upos_total[cell.split(" ")[0]] for (key, cell), s in shares.items()
            ]
            total = sum(weights)
            for (key, cell), weight in zip(shares, weights, strict=True):
                share = n * weight / total
                new_lexeme[key] += share
                new_cell[cell] += share
        for key, value in gold[0].items():
            new_lexeme[key] += LABELLED * value
        for cell, value in gold[1].items():
            new_cell[cell] += LABELLED * value
        lexeme_n, cell_n = defaultdict(lambda: 0.2, new_lexeme), defaultdict(lambda: 0.5, new_cell)
    return lexeme_n, cell_n


def _called(cells: Mapping[str, float]) -> dict[str, float]:
    """Return how common vocatives of possessives are (`filia mea`), which no learn treebank has: as of adjectives."""
    return {
        f"DET {number} Voc": cells[f"DET {number} Nom"] * cells[f"ADJ {number} Voc"] / cells[f"ADJ {number} Nom"]
        for number in ("Sing", "Plur")
    }


def domain_lines(shared: Path) -> Iterator[str]:
    """Yield rows of the labelled counts by domain: classical texts (Latin-CIRCSE), charters (Latin-LLCT)."""
    folder = shared / "treebanks" / "learn"
    classical, charters = (
        gold_counts(sentence for path in sorted(folder.glob(f"{name}-*")) for sentence in gold_sentences(path))[0]
        for name in ("circse", "llct")
    )
    for lemma, upos in sorted(classical | charters):
        yield f"{lemma}\t{upos}\t{classical[lemma, upos]}\t{charters[lemma, upos]}"


def main(shared: Path) -> None:
    """Write the four tables."""
    forms = vulgate_forms(shared)
    lexeme_n, cell_n = estimate(forms, gold_counts(learn_sentences(shared)))
    cell_n |= _called(cell_n)
    for upos in sorted({name.split(" ")[0] for name in cell_n}):
        cell_n[upos] = sum(v for k, v in cell_n.items() if k.split(" ")[0] == upos and " " in k) or cell_n[upos]
    plain_forms: Counter[str] = Counter()
    for (form, _, _), n in forms.items():
        plain_forms[form] += n
    for sentence in learn_sentences(shared):
        plain_forms.update(plain(w.form) for w in sentence if w.form.isalpha())
    OUT.mkdir(exist_ok=True)
    lines = [f"{lemma}\t{upos}\t{n:.1f}" for (lemma, upos), n in sorted(lexeme_n.items()) if n >= 0.05]
    (OUT / "lexemes.tsv").write_text("lemma\tupos\tcount\n" + "\n".join(lines) + "\n", encoding="utf-8")
    lines = [f"{name}\t{n:.1f}" for name, n in sorted(cell_n.items()) if n >= 0.05]
    (OUT / "cells.tsv").write_text("cell\tcount\n" + "\n".join(lines) + "\n", encoding="utf-8")
    lines = [f"{form}\t{n}" for form, n in sorted(plain_forms.items(), key=lambda x: (-x[1], x[0]))]
    (OUT / "forms.tsv").write_text("form\tcount\n" + "\n".join(lines) + "\n", encoding="utf-8")
    lines = list(domain_lines(shared))
    (OUT / "domains.tsv").write_text("lemma\tupos\tclassical\tcharters\n" + "\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
