"""The search for English relatives of a lexeme, in etymologies and in regular correspondences."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from functools import cache
from math import ceil
from typing import NamedTuple

from latingloss.building.etymologies import Etymologies, Origin
from latingloss.building.vocabulary import Vocabulary
from latingloss.kin.correspondences import english_shapes, english_stems, letters, stems
from latingloss.kin.letters import Weights
from latingloss.kin.looks import lexeme_shapes, likeness, scored, without_ending
from latingloss.morphology.analysis import Analysis, analyses
from latingloss.morphology.lexicon import Lexeme, find, lexemes
from latingloss.tables import read_table
from latingloss.text.orthography import has_lengths, plain

_ALIKE, _RECALLING = 0.48, 0.1  # likeness that is enough by itself, and if the word shows the gloss or the lemma
_RAREST_UNMEANT = 2.6  # Zipf value a word needs when no gloss agrees with it
_PER_LEMMA = 8  # relatives kept beside those of the lexicon
CLASSES = frozenset({"NOUN", "VERB", "ADJ", "ADV", "NUM", "DET", "PRON", "ADP"})
_LONG_SUFFIX = re.compile(
    r"....(tion|sion|ity|ence|ance|ency|ancy|ment|tude|able|ible|ary|ory|ous|ive|ate|al|ar|ic|ile|ure)$"
)


Entry = tuple[str, str]  # lemma and part of speech


class Candidate(NamedTuple):
    """An English word that may be kin to a lexeme, and why."""

    word: str
    kind: str
    chain: str


def listed_kin(lexeme: Lexeme) -> list[str]:
    """Return the single English words that the lexicon gives as kin; cousins begin with `~`."""
    return [word for word in lexeme.kin.split("; ") if word and " " not in word]


class KinFinder:
    """Finds English relatives of lexemes in etymologies and regular correspondences."""

    def __init__(self, weights: Weights, etymologies: Etymologies, vocabulary: Vocabulary) -> None:
        self.weights, self.etymologies, self.vocabulary = weights, etymologies, vocabulary
        self.refused = {(lemma, word) for lemma, word, _ in read_table("kin/refused.tsv")}  # found, looked at and wrong
        self.entries = [lexeme for lexeme in lexemes() if lexeme.upos in CLASSES]
        self.origins: dict[str, list[tuple[Origin, tuple[Entry, ...]]]] = {}
        self.by_entry: dict[Entry, list[str]] = defaultdict(list)
        for word in vocabulary.words:
            traced = [(origin, _entries_of(origin.latin)) for origin in etymologies.origins(word)]
            self.origins[word] = traced
            for entry in dict.fromkeys(entry for _, entries in traced for entry in entries):
                self.by_entry[entry].append(word)

    def candidates(self, lexeme: Lexeme) -> list[Candidate]:
        """Return the relatives of one lexeme beyond doubt, most alike and best known first."""
        shapes = lexeme_shapes(lexeme, self.weights, self.weights)
        ranked = []
        traced = self.by_entry.get(_entry(lexeme), [])
        for word in dict.fromkeys([*(w for w in traced if self._is_borne_out(lexeme, w)), *self._regular(lexeme)]):
            meant = _agrees(word, lexeme.gloss)
            if (lexeme.spelled, word) in self.refused or not self._is_offered(lexeme, word, meant):
                continue
            alike = likeness(shapes.borrowed, english_stems(word), self.weights)
            visible = meant or word.startswith(plain(lexeme.spelled))
            if alike >= (_RECALLING if visible else _ALIKE):
                ranked.append((-alike - 0.1 * min(self.vocabulary.zipf[word], 4.5), word))
        return [self.described(lexeme, word) for _, word in sorted(ranked)][:_PER_LEMMA]

    def _is_offered(self, lexeme: Lexeme, word: str, meant: bool) -> bool:
        """Tell whether a word helps a reader: no name, no quoted Latin, no everyday derivation."""
        vocabulary = self.vocabulary
        if word in vocabulary.doubtful or self.etymologies.is_native(word) or self.etymologies.is_disputed(word):
            return False
        quoted = letters(word) == letters(lexeme.spelled) and word not in _content(lexeme.gloss)
        rare = vocabulary.zipf[word] < _RAREST_UNMEANT and not word.startswith(plain(lexeme.spelled))
        obscure = rare or word in self.etymologies.names or len(word) < 4
        return not quoted and (meant or not obscure)

    def _is_borne_out(self, lexeme: Lexeme, word: str) -> bool:
        """Tell whether the gloss, the lexicon's kin or the spelling bear out an etymology.

        Where the etymon may be a form of several entries, the spelling says nothing.
        """
        if _agrees(word, lexeme.gloss):
            return True
        alone = any(entries == (_entry(lexeme),) for _, entries in self.origins[word])
        return _anchored(word, lexeme, 5) or (alone and _begins_with(word, lexeme))

    def _regular(self, lexeme: Lexeme) -> Iterator[str]:
        """Yield the English words that the lemma's regular spelling gives, if nothing speaks against them."""
        rivals = [other for other in find(plain(lexeme.spelled)) if other.lemma != lexeme.lemma]
        heads = {letters(stem)[:3] for stem in stems(lexeme)}
        for shape in english_shapes(lexeme):
            if shape not in self.origins:
                continue
            traced = self.origins[shape]
            meant = _agrees(shape, lexeme.gloss)
            near = [origin for origin, _ in traced if letters(origin.latin)[:3] in heads and origin.latin.islower()]
            elsewhere = any(entries and _entry(lexeme) not in entries for _, entries in traced)
            own = any(_entry(lexeme) in entries for _, entries in traced)
            greek = self.etymologies.is_greek(shape) and not own
            if (traced and not near) or (rivals and not meant) or greek:
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
        own = [origin for origin, entries in traced if _entry(lexeme) in entries]
        own += [origin for origin, _ in traced if letters(origin.latin).startswith(tuple(heads))]
        if own:
            longer = len(letters(own[0].latin)) > len(letters(lexeme.spelled)) + 1
            made = longer and letters(own[0].latin) != letters(word)
            kind = "through French" if own[0].french else "borrowed"
            return Candidate(word, kind, _chain(lexeme, own[0], word, middle=own[0].latin if made else ""))
        regular = not traced and word in set(english_shapes(lexeme))
        return Candidate(word, "borrowed" if regular else "family", f"{lexeme.spelled} > {word}" if regular else "")


def _chain(lexeme: Lexeme, origin: Origin, word: str, *, middle: str) -> str:
    steps = [lexeme.spelled, middle, f"French {origin.french}" if origin.french else "", word]
    return " > ".join(step for step in steps if step)


def _entry(lexeme: Lexeme) -> Entry:
    return lexeme.lemma, lexeme.upos


@cache
def _entries_of(form: str) -> tuple[Entry, ...]:
    """Return the entries of which an etymon is cited: by nominative, oblique singular, infinitive, participle."""
    key = plain(form).partition(" ")[0]  # of `aqua vitae` the head counts
    if not key.isalpha():
        return ()
    entries = lexemes()
    cited = [a for a in analyses(key) if plain(a.form) == key and _is_citation(a, entries[a.lexeme])]
    exact = [a for a in cited if plain(entries[a.lexeme].spelled) == key or a.features.get("Degree") == "Cmp"]
    cited = exact or cited
    if has_lengths(form):
        marked = [a for a in cited if a.form.replace("j", "i") == form.replace("j", "i")]
        cited = marked or cited
    found = tuple(dict.fromkeys(_entry(entries[a.lexeme]) for a in cited))
    spelled = {lemma.partition("#")[0] for lemma, _ in found}
    return found if len(found) == 1 or len(spelled) > 1 else ()  # homographs: which one is meant is not known


def _is_citation(analysis: Analysis, lexeme: Lexeme) -> bool:
    features = analysis.features
    if lexeme.upos not in CLASSES:
        return False
    if plain(analysis.form) == plain(lexeme.spelled):
        return True
    if lexeme.upos == "VERB":
        return features.get("VerbForm") in ("Inf", "Part", "Sup", "Ger", "Gdv")
    if features.get("Degree") == "Cmp":  # minor, of parvus
        return features.get("Case") == "Nom" and features.get("Number") == "Sing"
    return features.get("Number") == "Sing" and features.get("Case") in ("Acc", "Gen", "Abl")


def _content(gloss: str) -> list[str]:
    return [word for word in re.findall(r"[a-z]+", gloss.lower()) if len(word) > 2]


def _agrees(word: str, gloss: str) -> bool:
    """Tell whether an English word, or one made from the same stem, stands among the glosses."""
    return any(word == other or (len(word) > 4 and word[:5] == other[:5]) for other in _content(gloss))


def _begins_with(word: str, lexeme: Lexeme) -> bool:
    """Tell whether a word begins with the lemma, where the lemma shows the stem that English takes: not `homo`."""
    lemma = plain(lexeme.spelled)
    oblique = [plain(stem) for stem, table in lexeme.stems if not table.whole]
    return len(lemma) > 3 and word.startswith(lemma) and (not oblique or lemma.startswith(tuple(oblique)))


def _anchored(word: str, lexeme: Lexeme, shared: int) -> bool:
    """Tell whether a word begins like one that the lexicon gives as kin: `aquatint` like `aquatic`."""
    mine = letters(word)
    for other in listed_kin(lexeme):
        theirs = letters(other)
        needed = max(shared, ceil(0.6 * min(len(mine), len(theirs))))
        if not other.startswith("~") and len(theirs) >= needed and mine[:needed] == theirs[:needed]:
            return True
    return False
