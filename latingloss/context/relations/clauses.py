"""Where clauses begin and end: each finite verb has one, and words go with the verb that stands in theirs.

Subordinate clauses open with their conjunction or relative and end with a comma behind their verb, or where
another verb without `and` shows that the clause around them goes on.
"""

from __future__ import annotations

from latingloss.context.relations.words import Word

_NOMINAL = frozenset(("noun", "adjective", "determiner", "pronoun", "participle"))
# conjunctions that compare as often without a verb of their own: sīcut agnus
_COMPARING = frozenset(("sīcut", "sīcutī", "tamquam", "quasi", "velut", "velutī", "ceu", "prout", "ut"))


class Clause:
    """A clause: its verb, what opens it, and the clause around it."""

    __slots__ = ("finite", "number", "opener", "outer", "words")

    def __init__(self, number: int, outer: Clause | None = None, opener: Word | None = None) -> None:
        self.number = number
        self.outer = outer
        self.opener = opener
        self.finite: Word | None = None
        self.words: list[Word] = []

    def add(self, word: Word) -> None:
        """Take a word in."""
        word.clause = self.number
        self.words.append(word)


class _Cutter:
    """Cuts one passage into clauses, from left to right."""

    def __init__(self) -> None:
        self.clauses: list[Clause] = []
        self.current = self.open()

    def open(self, outer: Clause | None = None, opener: Word | None = None) -> Clause:
        self.current = Clause(len(self.clauses), outer, opener)
        self.clauses.append(self.current)
        return self.current

    def read(self, word: Word) -> None:
        """Put the next word into its clause."""
        current = self.current
        if word.mark == "." and current.words:
            current = self.open()
        elif word.mark and current.opener and current.finite:
            self._close(word)
        if word.kind == "subordinator" or word.relative:
            self._subordinate(word)
        elif word.kind == "finite":
            self._verb(word)
        else:
            self.current.add(word)

    def _close(self, word: Word) -> None:
        """End a subordinate clause at a comma, but not before `and` that goes on with it."""
        outer = self.current.outer
        if outer is not None and (word.kind != "coordinator" or not outer.finite):
            self.current = outer

    def _subordinate(self, word: Word) -> None:
        before = self.current.words[-1] if self.current.words else None
        outer = self.current
        clause = self.open(outer, word)
        if before is not None and before.kind == "preposition" and before.place == word.place - 1 and word.case:
            outer.words.pop()
            clause.add(before)
        clause.add(word)

    def _verb(self, word: Word) -> None:
        """A second verb in a clause begins a new one, or goes on with the clause around."""
        current = self.current
        if not current.finite:
            current.finite = word
            current.add(word)
            return
        at = _joint(current, current.finite)
        moved = current.words[at:]
        del current.words[at:]
        joined = bool(moved) and moved[0].kind == "coordinator"
        outer = current.outer
        if current.opener and not joined and outer is not None:
            self._between(current, moved)
            self.current = outer
            if outer.finite:
                self.open(outer.outer, outer.opener)
        else:
            self.open(current.outer, current.opener)
        for other in moved:
            self.current.add(other)
        self.current.add(word)
        self.current.finite = word

    def _between(self, inner: Clause, moved: list[Word]) -> None:
        """Give words between the verbs of two clauses, which may belong to either, a clause of their own."""
        assert inner.finite is not None
        start = inner.words.index(inner.finite) + 1
        if not moved and start < len(inner.words):
            between = self.open(inner.outer)
            for other in inner.words[start:]:
                between.add(other)
            del inner.words[start:]


def _joint(clause: Clause, verb: Word) -> int:
    """Where, behind its verb, the words of a clause go over to the next verb."""
    words = clause.words
    start = words.index(verb) + 1
    joints = [i for i in range(start, len(words)) if words[i].kind == "coordinator"]
    for i in joints:
        if i + 1 == len(words) or not _joins_nouns(words, i):
            return i
    if joints:
        return joints[-1]
    return next((i for i in range(start, len(words)) if words[i].mark), len(words))


def _joins_nouns(words: list[Word], i: int) -> bool:
    """Tell whether a conjunction stands between two nouns, or the like, of one case."""
    before = next((w for w in reversed(words[max(0, i - 2) : i]) if w.kind in _NOMINAL and w.case != "Gen"), None)
    after = next((w for w in words[i + 1 : i + 3] if w.kind in _NOMINAL), None)
    return before is not None and after is not None and before.case == after.case and before.case != ""


def clauses_of(words: list[Word]) -> list[Clause]:
    """Return the clauses of a passage and write its clause's number on each word."""
    cutter = _Cutter()
    for i, word in enumerate(words):
        if word.lemma in _COMPARING and word.kind == "subordinator":
            waiting = cutter.current.opener is not None and cutter.current.finite is None and word.lemma != "ut"
            if waiting or not _has_verb(words, i):
                word.kind = "comparing"
        cutter.read(word)
    return cutter.clauses


def _has_verb(words: list[Word], i: int) -> bool:
    """Tell whether a finite verb follows before the next mark."""
    for word in words[i + 1 : i + 12]:
        if word.mark:
            return False
        if word.kind == "finite":
            return True
    return False
