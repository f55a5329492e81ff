"""What hangs on a verb: subject, object, dative and ablative, infinitive, the halves of a compound tense.

Subject and predicate are those of Bennett 1918, sections 166-168, the object 172-177, the accusative with
infinitive 330-331, datives and ablatives that verbs want 187 and 218, the ablative absolute 227.
"""

from __future__ import annotations

from latingloss.context.relations.clauses import Clause
from latingloss.context.relations.lemmas import COPULAS, GIVING, INTRANSITIVE, MODAL, NAMING, SAYING, TIMES
from latingloss.context.relations.phrases import Found
from latingloss.context.relations.subjects import clearly_subject, is_person, third
from latingloss.context.relations.words import Word

_VERBS = frozenset(("finite", "infinitive", "participle", "gerund"))
_HEADS = frozenset(("noun", "pronoun", "determiner", "adjective", "participle"))


class Hanging:
    """What was found for the verbs of one passage; each maps a place to a word."""

    def __init__(self, words: list[Word], prepositions: Found, *, agreement: Found, apposition: Found) -> None:
        self.words = words
        self.prepositions = prepositions
        self.agreement = agreement
        self.apposition = apposition
        self.subjects: Found = {}  # of finite verbs; of predicates
        self.verbs: Found = {}  # of nouns
        self.auxiliaries: Found = {}
        self.infinitives: Found = {}  # of their accusative subjects
        self.absolutes: Found = {}
        self.beside: Found = {}  # verbs whose unnamed subject a nominative goes with

    def read(self, clause: Clause) -> None:
        """Find what hangs together in one clause."""
        nouns: dict[str, list[Word]] = {}
        verbs = []
        for word in clause.words:
            if word.kind in _VERBS:
                verbs.append(word)
            if word.case and word.kind in _HEADS and word.place not in self.prepositions:
                nouns.setdefault(word.case, []).append(word)
        if clause.finite:
            self._compound(clause.finite, nouns.get("Nom", ()))
            self._nominatives(clause, nouns.get("Nom", []))
        self._absolute(nouns.get("Abl", ()))
        self._infinitives(clause, verbs)
        self._accusatives(verbs, nouns.get("Acc", ()))
        for case in ("Dat", "Abl", "Gen"):
            self._indirect(case, verbs, nouns.get(case, ()))

    def _compound(self, finite: Word, nominatives: list[Word] | tuple[Word, ...]) -> None:
        """Join `est` to the perfect participle beside it."""
        if finite.lemma != "sum":
            return
        near = [
            w
            for w in nominatives
            if w.features.get("VerbForm") == "Part" and w.features.get("Tense") == "Past" and w.number == finite.number
            and abs(w.place - finite.place) <= 3
        ]  # fmt: skip
        if near:
            best = min(near, key=lambda w: abs(w.place - finite.place))
            self.auxiliaries[best.place] = finite
            self.auxiliaries[finite.place] = best

    def _nominatives(self, clause: Clause, nominatives: list[Word]) -> None:
        """Tell subject from predicate."""
        verb = clause.finite
        assert verb is not None
        free = [w for w in nominatives if w.place not in self.agreement and w.place not in self.auxiliaries]
        if verb.features.get("Person", "3") != "3":
            subject = next((w for w in free if is_person(w, verb)), None)
        else:
            subject = self._subject(verb, [w for w in free if w.place not in self.apposition])
        if subject is not None:
            self.subjects[verb.place] = subject
            self.verbs[subject.place] = verb
        links = self._links(verb)
        for word in nominatives:
            if word is subject or word.place in self.apposition:
                continue
            if word.place in self.auxiliaries or word.kind in ("adjective", "participle"):
                self._beside(word, verb, subject, links=links)
            elif word in free and links and subject is not None and clearly_subject(subject, word):
                self.subjects[word.place] = subject
            elif word in free and subject is not None and not links and _joined(self.words, subject, word):
                self.verbs[word.place] = verb

    def _subject(self, verb: Word, free: list[Word]) -> Word | None:
        """The subject of a verb in the third person; beside `is`, one that no mark parts from it comes first."""
        if not self._links(verb):
            return third(verb, free, copula=False)
        same_side = [w for w in free if not self._parted(w, verb)]
        subject = third(verb, same_side or free, copula=True)
        if subject is None or subject.kind != "noun" or subject.place > verb.place or verb.lemma != "sum":
            return subject
        return subject if self._something_said(subject, verb) else None  # rēx est: he is king

    def _something_said(self, subject: Word, verb: Word) -> bool:
        """Tell whether the words between a noun and `is` behind it say what or where it is."""
        around = self.words[max(0, subject.place - 4) : verb.place + 4]
        others = [w for w in around if w.clause == verb.clause and w is not subject]
        said = ("adjective", "participle")
        return any(w.kind == "preposition" or w.case == "Dat" or (w.case == "Nom" and w.kind in said) for w in others)

    def _parted(self, one: Word, other: Word) -> bool:
        first, last = sorted((one.place, other.place))
        return any(w.mark for w in self.words[first + 1 : last + 1])

    def _beside(self, word: Word, verb: Word, subject: Word | None, *, links: bool) -> None:
        """An adjective or participle without a noun beside it is said of the subject, named or not."""
        if word.place in self.agreement:
            return
        fits = subject is not None and word.number == subject.number and not word.genders.isdisjoint(subject.genders)
        if subject is not None and fits and (links or word.kind == "participle" or word.place in self.auxiliaries):
            self.agreement[word.place] = subject
        elif subject is None and word.number == verb.number:
            self.beside[word.place] = verb

    def _links(self, verb: Word) -> bool:
        """Tell whether a verb says what its subject is."""
        if verb.lemma == "sum":
            other = self.auxiliaries.get(verb.place)
            return other is None or other.lemma in NAMING
        naming = verb.lemma in NAMING and verb.features.get("Voice") == "Pass"
        return naming or verb.lemma in COPULAS

    def _absolute(self, ablatives: list[Word] | tuple[Word, ...]) -> None:
        for word in ablatives:
            noun = self.agreement.get(word.place) if word.features.get("VerbForm") == "Part" else None
            if noun is not None and noun.place not in self.prepositions and noun.kind in ("noun", "pronoun"):
                self.absolutes[noun.place] = word
                self.absolutes[word.place] = noun

    def _infinitives(self, clause: Clause, verbs: list[Word]) -> None:
        """An infinitive completes the verb of wanting or saying nearest to it, or goes with `is` or `it is right`."""
        for word in verbs:
            if word.kind != "infinitive":
                continue
            ruling = [v for v in verbs if v is not word and (v.lemma in MODAL or v.lemma in SAYING)]
            if not ruling and clause.finite and clause.finite.lemma == "sum" and _something_good(clause):
                ruling = [clause.finite]
            if ruling:
                self.verbs[word.place] = min(ruling, key=lambda v: _far(self.words, word, v))

    def _accusatives(self, verbs: list[Word], accusatives: list[Word] | tuple[Word, ...]) -> None:
        free = [w for w in accusatives if w.place not in self.agreement and w.place not in self.apposition]
        for word in free:
            infinitive = self._said(word, verbs, free)
            if infinitive is not None:
                self.infinitives[word.place] = infinitive
            elif word.lemma not in TIMES and (verb := self._governor(word, verbs)):
                self.verbs[word.place] = verb

    def _said(self, word: Word, verbs: list[Word], accusatives: list[Word]) -> Word | None:
        """The infinitive whose subject an accusative is (he says that *they* come), if that is clear."""
        infinitive = next((v for v in verbs if v.kind == "infinitive" and abs(v.place - word.place) <= 5), None)
        sayer = self.verbs.get(infinitive.place) if infinitive else None
        if infinitive is None or sayer is None or sayer.lemma not in SAYING or word is not accusatives[0]:
            return None
        passive = infinitive.features.get("Voice") == "Pass" and not infinitive.reading.lexeme.deponent
        alone = passive or infinitive.lemma in INTRANSITIVE
        if sayer.lemma in MODAL:
            return infinitive if word.lemma == "sē" and alone else None
        return infinitive if alone or word.lemma == "sē" else None

    def _governor(self, word: Word, verbs: list[Word]) -> Word | None:
        """The verb whose object an accusative is, if that is clear: far nearer than any other, or the only one."""
        able = [v for v in verbs if v is not word and _takes_object(v) and not v.agrees(word)]
        if any(v.kind == "infinitive" for v in verbs):
            if not any(v.lemma in MODAL for v in verbs):
                return None  # subject or object of the infinitive
            able = [v for v in able if v.lemma not in MODAL]
        ranked = sorted((_far(self.words, word, v), v.place, v) for v in able)
        if not ranked or ranked[0][0] > 7 or (len(ranked) > 1 and ranked[1][0] - ranked[0][0] < 1):
            return None
        return ranked[0][2]

    def _indirect(self, case: str, verbs: list[Word], nouns: list[Word] | tuple[Word, ...]) -> None:
        """A dative, or what a verb wants in another case than the accusative."""
        for word in nouns:
            if word.place in self.agreement or word.place in self.absolutes:
                continue
            near = [v for v in verbs if v is not word and _far(self.words, word, v) <= 5]
            wanting = [v for v in near if case.lower() in v.reading.lexeme.governs]
            if not wanting and case == "Dat":
                wanting = [v for v in near if v.lemma in GIVING]
            if not wanting and case == "Dat" and word.kind == "pronoun" and len(verbs) == 1:
                wanting = near
            if wanting:
                self.verbs[word.place] = min(wanting, key=lambda v: _far(self.words, word, v))


def _something_good(clause: Clause) -> bool:
    """Tell whether a clause says of something that it is good, easy or right: then an infinitive is what is."""
    return any(w.kind == "adjective" and w.number == "Sing" and "Neut" in w.genders for w in clause.words)


def _joined(words: list[Word], one: Word, other: Word) -> bool:
    """Tell whether two nominatives are joined by `and`."""
    first, last = sorted((one.place, other.place))
    return last - first <= 4 and any(w.kind == "coordinator" for w in words[first:last])


def _takes_object(word: Word) -> bool:
    if word.lemma in INTRANSITIVE:
        return False
    lexeme = word.reading.lexeme
    governs = lexeme.governs
    if governs and "acc" not in governs and word.kind != "finite":
        return False
    voice = word.features.get("Voice")
    return voice == "Act" or lexeme.deponent or word.kind == "gerund" or (word.kind == "infinitive" and voice != "Pass")


def _far(words: list[Word], word: Word, verb: Word) -> float:
    """How far a verb is; a mark between counts like three words, the far side of a participle like two."""
    first, last = sorted((word.place, verb.place))
    marks = sum(1 for w in words[first + 1 : last + 1] if w.mark)
    beyond = 2.0 if verb.kind == "participle" and verb.place > word.place else 0.0
    return last - first + 3 * marks + beyond + (0.5 if verb.place < word.place else 0.0)
