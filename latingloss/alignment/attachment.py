"""Words of grammar join the Latin word whose ending they render, once the content words are linked.

The steps follow the alignment guidelines: an article goes with its noun, a preposition with a Latin preposition or
else with its noun, subject pronouns and auxiliaries with the verb, all by the English phrase they stand in.
"""

from __future__ import annotations

from latingloss.alignment.evidence import Pair
from latingloss.alignment.grammar import ARTICLES, AUXILIARIES, CASE_WORDS, OBJECTS, STAND_INS, SUBJECTS, is_open
from latingloss.alignment.phrases import head, is_verbal, predicate
from latingloss.alignment.syntax import auxiliaries, governors, own_subject
from latingloss.alignment.units import Unit

_PREPOSITIONS = CASE_WORDS - {"as"} | frozenset(
    "against before after under among between within without toward around across out upon over unto".split()
)
_OWN_NOUNS = ("res.NOUN", "homo.NOUN", "uir.NOUN", "populus.NOUN", "locus.NOUN")
_OWN_AUXILIARIES = ("nolo.VERB", "possum.VERB")
_PARTICLES = frozenset(["away", "forth", "up", "out", "down", "off", "back", "aside", "together"])
_LEANING = 0.01  # belief from which an object pronoun may move


def _has_lexeme(unit: Unit, *lexemes: str) -> bool:
    return any(r.lexeme in lexemes for r in unit.readings)


def _is_own(pair: Pair, word: int) -> bool:
    """Tell whether a word of grammar is believed to render a Latin word of its own, not an ending."""
    return any(not is_open(r.lexeme) for i in pair.links[word] for r in pair.units[i].readings)


def join_articles(pair: Pair) -> None:
    """Link articles, and the `O` of address, to the unit that the head of their noun phrase renders."""
    for j, word in enumerate(pair.words):
        if word not in ARTICLES and word != "o":
            continue
        found = head(pair, j + 1)
        unit = pair.unit_of(found) if found is not None else pair.unit_of(j)
        nominal = unit is not None and pair.units[unit].is_kind("noun", "adj", "part", odds=0.25)
        pair.links[j] = {unit} if unit is not None and (found is not None or nominal) else set()


def join_verbs(pair: Pair) -> None:
    """Link subject pronouns and auxiliaries to the verb they belong to, content words to both parts of `natum est`."""
    periphrases = auxiliaries(pair.units)
    decided: dict[int, int] = {}
    for j, word in enumerate(pair.words):
        if word in SUBJECTS | AUXILIARIES and not _keeps_own(pair, j):
            verb = _verb_of(pair, j, periphrases)
            if verb is not None:
                decided[j] = verb
    for j, unit in decided.items():
        pair.links[j] = {unit}
    for j in range(1, len(pair.words)):
        if pair.words[j] in AUXILIARIES and pair.words[j - 1] in AUXILIARIES and not pair.links[j]:
            pair.links[j] = set(pair.links[j - 1])
    _link_both_parts(pair, periphrases)


def complete_verbs(pair: Pair) -> None:
    """Link an unlinked word behind an auxiliary or subject to its verb, if that has no other: `have I called`."""
    complete = {i for j, units in enumerate(pair.links) if not pair.is_function(j) for i in units}
    for j in range(1, len(pair.words)):
        before = pair.unit_of(j - 1)
        if pair.links[j] or pair.is_function(j) or pair.breaks[j] or before is None or before in complete:
            continue
        verb = pair.units[before]
        is_full = verb.is_kind("verb", odds=0.6) and not _has_lexeme(verb, "sum.VERB")
        if is_full and pair.words[j - 1] in SUBJECTS | AUXILIARIES:
            pair.links[j] = {before}
            complete.add(before)


def join_let(pair: Pair) -> None:
    """Link the pronoun behind `let` to the verb that `let` renders: `let us sing`."""
    for j in range(1, len(pair.words)):
        verb = pair.unit_of(j - 1)
        if pair.words[j - 1] == "let" and pair.words[j] in OBJECTS and verb is not None and not pair.links[j]:
            pair.links[j] = {verb}


def _verb_of(pair: Pair, word: int, periphrases: dict[int, int]) -> int | None:
    """Return the unit that a subject pronoun or auxiliary belongs to: a verb, its `sum`, or the pronoun's own."""
    found = predicate(pair, word)
    unit = pair.unit_of(found) if found is not None else None
    if found is None or unit is None:
        return None
    is_subject = pair.words[word] in SUBJECTS
    if is_verbal(pair, unit):
        own = own_subject(pair.units, unit, pair.words[word]) if is_subject else None
        if own is None:
            return periphrases.get(unit, unit)
        _give_up(pair, own)
        return own
    copulas = [pair.unit_of(k) for k in range(word + 1, found) if is_subject and pair.words[k] in AUXILIARIES]
    verbal = [copula for copula in copulas if copula is not None and is_verbal(pair, copula)]
    return verbal[-1] if verbal else None


def _give_up(pair: Pair, unit: int) -> None:
    """Move object pronouns off a unit that turned out to be a subject, to the next pronoun they may render."""
    for j, units in enumerate(pair.links):
        if unit in units and pair.words[j] in OBJECTS:
            leanings = [
                (float(pair.belief[j, i]), i) for i, u in enumerate(pair.units) if i != unit and u.is_kind("pron")
            ]
            best = max(leanings, default=(0.0, -1))
            pair.links[j] = {best[1]} if best[0] > _LEANING else set()


def _keeps_own(pair: Pair, word: int) -> bool:
    unit = pair.unit_of(word)
    if unit is None:
        return False
    if pair.words[word] in SUBJECTS:
        return _is_own(pair, word) and pair.units[unit].is_kind("pron", odds=0.5)
    return _has_lexeme(pair.units[unit], *_OWN_AUXILIARIES)


def _link_both_parts(pair: Pair, periphrases: dict[int, int]) -> None:
    participles = {auxiliary: participle for participle, auxiliary in periphrases.items()}
    for j, units in enumerate(pair.links):
        if not pair.is_function(j):
            for i in tuple(units):
                units.update({periphrases[i]} if i in periphrases else {participles[i]} if i in participles else ())


def join_prepositions(pair: Pair) -> None:
    """Link prepositions to the Latin preposition that governs their noun, or else to the noun itself."""
    governed = governors(pair.units)
    for j, word in enumerate(pair.words):
        if pair.printed[j] not in _PREPOSITIONS and word not in _PREPOSITIONS:
            continue
        if word == "to" and (verb := _infinitive(pair, j)) is not None:
            pair.links[j] = {verb}
            continue
        found = head(pair, j + 1)
        unit = pair.unit_of(found) if found is not None else None
        if unit is None or any(pair.units[i].is_kind("conj", odds=0.6) for i in pair.links[j]):
            continue
        other = pair.units[unit]
        is_genitive = word == "of" and other.has_case("Gen") > 0.1
        if unit in governed and not is_genitive:
            pair.links[j] = {governed[unit]}
        elif any(pair.units[i].is_kind("adp") for i in pair.links[j]) and not is_genitive:
            continue
        elif word in CASE_WORDS and other.is_kind("noun", "adj", "part", "pron", odds=0.25):
            pair.links[j] = {unit}


def _infinitive(pair: Pair, word: int) -> int | None:
    k = word + 1
    while k < len(pair.words) and pair.words[k] in ("be", "have", "not"):
        k += 1
    if k == len(pair.words) or pair.is_function(k):
        return None
    unit = pair.unit_of(k)
    if unit is None or not pair.units[unit].is_kind("verb", odds=0.5):
        return None
    return unit


def join_stand_ins(pair: Pair) -> None:
    """Link `thing`, `man`, `one` to the adjective or pronoun they complete: `all things`."""
    for j in range(1, len(pair.words)):
        if pair.words[j] not in STAND_INS or pair.breaks[j] or (pair.links[j] and not pair.is_function(j)):
            continue
        if any(_has_lexeme(pair.units[i], *_OWN_NOUNS) for i in pair.links[j]):
            continue
        unit = pair.unit_of(j - 1)
        if unit is not None and pair.units[unit].is_kind("adj", "pron", "part"):
            pair.links[j] = set(pair.links[j - 1])


def join_particles(pair: Pair) -> None:
    """Link a particle and its verb alike where only one of them is linked: `sent him away`, `came down`."""
    for j, word in enumerate(pair.words):
        if word not in _PARTICLES:
            continue
        verb = _verb_before(pair, j)
        if verb is None:
            continue
        if not pair.links[j]:
            pair.links[j] = set(pair.links[verb])
        elif not pair.links[verb] and is_verbal(pair, min(pair.links[j])):
            pair.links[verb] = set(pair.links[j])


def _verb_before(pair: Pair, particle: int) -> int | None:
    """Return the content word just before a particle, one object between them at most."""
    for k in range(particle - 1, max(-1, particle - 3), -1):
        if pair.breaks[k + 1]:
            return None
        if not pair.is_function(k):
            unit = pair.unit_of(k)
            return k if unit is None or is_verbal(pair, unit) else None
    return None


def attach(pair: Pair) -> None:
    """Decide the words of grammar of a pair whose content words are linked."""
    complete_verbs(pair)
    join_particles(pair)
    join_articles(pair)
    join_verbs(pair)
    join_let(pair)
    join_prepositions(pair)
    join_stand_ins(pair)
