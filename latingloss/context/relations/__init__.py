"""How the chosen readings hang together: what governs a word, what it agrees with, whose it is.

No full parse: clauses are cut at their verbs and conjunctions, and within them each word looks for the partner that
its reading allows. What is found is given as evidence for the explanations; what is not clear is left out.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from latingloss.context.relations.clauses import Clause, clauses_of
from latingloss.context.relations.genitives import owners
from latingloss.context.relations.lemmas import SAYING, TOGETHER
from latingloss.context.relations.phrases import Found, agreeing, apposed, governed
from latingloss.context.relations.verbs import Hanging
from latingloss.context.relations.words import Word, words_of
from latingloss.morphology.ranking import Candidate


class Partner(NamedTuple):
    """A word that another is related to: as printed, and its reading."""

    text: str
    reading: Candidate


class Relations(NamedTuple):
    """What was found for one word."""

    preposition: Partner | None = None
    agrees_with: Partner | None = None  # the noun it goes with
    antecedent: Partner | None = None  # of a relative: the noun it goes back to
    owner: Partner | None = None  # for a genitive: the noun that it belongs to
    verb: Partner | None = None  # whose subject or object it is; of saying, for the quod behind it
    subject: Partner | None = None  # of a verb; of the clause, for a noun said of it
    auxiliary: Partner | None = None  # for a participle: its form of sum; for sum: its participle
    conjunction: Partner | None = None  # for a subjunctive
    infinitive: Partner | None = None  # for an accusative: the infinitive whose subject it is
    absolute: Partner | None = None  # the other half of an ablative absolute
    comparative: Partner | None = None  # that an ablative is compared with
    apposition: Partner | None = None  # the noun before, that this one names again
    reflexive: Partner | None = None  # for sē and suus: the verb whose subject they go back to
    together: Partner | None = None  # for a verb: the object with which it says something of its own: grātiās agere
    means: str = ""  # what a word says in this clause, where it may say several things: that, as, than, give
    called: bool = False  # a vocative behind O or another vocative
    opens: bool = False  # it begins a sentence, so that a capital says nothing
    beside: Partner | None = None  # for a nominative adjective: the verb whose unnamed subject it goes with


def relations(chosen: Sequence[tuple[Candidate, ...]], texts: Sequence[str]) -> list[tuple[Relations, ...]]:
    """Return for each token's words what they are related to; `chosen` has the readings, empty for punctuation."""
    words = words_of(chosen, texts)
    prepositions = governed(words)
    fields = _fields(words, clauses_of(words), prepositions)
    out: list[list[Relations]] = [[NONE] * len(parts) for parts in chosen]
    for word, found in zip(words, fields, strict=True):
        means = _meaning(words, word, found) or _into(words, word, prepositions)
        called = word.case == "Voc" and not word.mark and _calls(words[word.place - 1])
        out[word.token][word.part] = Relations(means=means, opens=word.mark == ".", called=called, **found)
    return [tuple(row) for row in out]


NONE = Relations()


def _meaning(words: list[Word], word: Word, found: dict[str, Partner]) -> str:
    """Quod behind a verb of saying is that, ut without a verb is as, quam behind a comparative is than; give thanks."""
    if "together" in found:
        return TOGETHER[word.lemma, found["together"].reading.lexeme.lemma]
    if word.kind == "subordinator" and "verb" in found:
        return "that"
    if word.lemma == "ut" and word.kind == "comparing":
        return "as"
    before = words[max(0, word.place - 6) : word.place] if word.lemma == "quam" else []
    return "than" if any(w.features.get("Degree") == "Cmp" for w in before) else ""


def _into(words: list[Word], word: Word, prepositions: Found) -> str:
    """In with an accusative is into (Bennett 1918, section 143)."""
    if word.lemma != "in" or word.reading.upos != "ADP":
        return ""
    nouns = (words[place] for place, other in prepositions.items() if other is word)
    return "into" if any(noun.case == "Acc" for noun in nouns) else ""


def _calls(before: Word) -> bool:
    return before.case == "Voc" or before.reading.upos == "INTJ"


def _fields(words: list[Word], clauses: list[Clause], prepositions: Found) -> list[dict[str, Partner]]:
    """What was found for each word, by the name of the field."""
    apposition = apposed(words)
    agreement = agreeing(words, prepositions)
    hanging = Hanging(words, prepositions, agreement=agreement, apposition=apposition)
    for clause in clauses:
        hanging.read(clause)
    hanging.verbs.update(_told(clauses))
    possession = {k: w for k, w in owners(words, agreement, apposition).items() if k not in hanging.verbs}
    tables: dict[str, Found] = {
        "preposition": prepositions, "apposition": apposition, "agrees_with": agreement, "owner": possession,
        "verb": hanging.verbs, "subject": hanging.subjects, "auxiliary": hanging.auxiliaries,
        "infinitive": hanging.infinitives, "absolute": hanging.absolutes, "beside": hanging.beside,
        "antecedent": _antecedents(words, clauses, agreement), "reflexive": _reflexives(words, clauses),
        "conjunction": _conjunctions(clauses), "comparative": _compared(words, prepositions),
        "together": {v.place: words[k] for k, v in hanging.verbs.items() if (v.lemma, words[k].lemma) in TOGETHER},
    }  # fmt: skip
    fields: list[dict[str, Partner]] = [{} for _ in words]
    for name, table in tables.items():
        for place, other in table.items():
            fields[place][name] = Partner(other.text, other.reading)
    return fields


def _conjunctions(clauses: list[Clause]) -> Found:
    """What opens the clause of a subjunctive: conjunction, relative or question word."""
    return {
        c.finite.place: c.opener for c in clauses if c.finite and c.opener and c.finite.features.get("Mood") == "Sub"
    }


def _told(clauses: list[Clause]) -> Found:
    """The verb of saying that `quod` or `quia` follows: sciō quod, I know that (common in the Vulgate)."""
    found: Found = {}
    for clause in clauses:
        opener, verb = clause.opener, clause.outer.finite if clause.outer else None
        if opener is None or verb is None or not 0 < opener.place - verb.place <= 3:
            continue
        if opener.lemma in ("quod", "quia", "quoniam") and verb.lemma in SAYING:
            found[opener.place] = verb
    return found


def _reflexives(words: list[Word], clauses: list[Clause]) -> Found:
    """The verb of the clause that `sē` and `suus` stand in."""
    found: Found = {}
    for word in words:
        if word.lemma in ("sē", "suus") and (verb := clauses[word.clause].finite):
            found[word.place] = verb
    return found


_MEASURES = frozenset(("multus", "paulum", "paulus", "nihil", "quantus", "tantus", "is", "hic"))


def _compared(words: list[Word], prepositions: Found) -> Found:
    """The comparative beside an ablative: `altior monte` (Bennett 1918, section 217)."""
    found: Found = {}
    for word in words:
        if word.features.get("Degree") != "Cmp" or word.kind != "adjective":
            continue
        if any(w.lemma == "quam" and w.clause == word.clause for w in words):
            continue
        for j in (word.place + 1, word.place - 1):
            other = words[j] if 0 <= j < len(words) else word
            free = other.case == "Abl" and j not in prepositions and other.clause == word.clause
            if free and other.kind in ("noun", "pronoun") and not other.agrees(word) and other.lemma not in _MEASURES:
                found[j] = word
                break
    return found


def _antecedents(words: list[Word], clauses: list[Clause], agreement: Found) -> Found:
    """What relatives go back to (Bennett 1918, section 250), where only one noun can be meant."""
    found: Found = {}
    for clause in clauses:
        relative = clause.opener
        if relative is None or relative.kind != "pronoun" or relative.reading.lexeme.constant["PronType"] != "Rel":
            continue
        if relative.place in agreement:
            continue  # quae mulier: which woman
        first = clause.words[0].place
        fitting = []
        for other in reversed(words[max(0, first - 3) : first]):
            if other.kind == "finite":
                break
            head = other.kind in ("noun", "pronoun") or (other.kind == "determiner" and other.place not in agreement)
            if head and other.number == relative.number and not other.genders.isdisjoint(relative.genders):
                fitting.append(other)
            if other.mark == ".":  # it opens the sentence
                break
        if fitting and (len(fitting) == 1 or fitting[0].kind != "noun"):
            found[relative.place] = fitting[0]
    return found
