"""Verbs: person, tense and mood in English words, participles and the rest of the verb's nouns.

What the tenses say is that of Bennett 1918, sections 100-114 and 257-265; wishes and commands 272-281;
infinitives, participles, gerund and supine 326-340.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from latingloss.alignment.literal.nominals import ones
from latingloss.alignment.literal.pronouns import PERSONAL, personal
from latingloss.alignment.literal.sense import sense_of
from latingloss.alignment.literal.use import UNKNOWN, Use
from latingloss.english.bases import base, bases
from latingloss.english.verbs import agree, past_participle, present_participle

_MODAL = frozenset(("may", "might", "would", "should", "let", "mayest", "shall", "will"))
_HAVE = frozenset(("have", "has", "had", "hath", "hast"))
_WISHING = _MODAL | {"to", "be"}  # that he may come; to come; that they all be one
_STATES = frozenset(("have", "know", "hate", "remember", "want", "owe", "own", "seem", "lack", "matter", "befit"))
# words that tie what follows to the verb, so that a noun behind them is no object
_LINKS = frozenset(
    """up out away down back off together on in at to for with from into through by about around along aside under
    before after against apart across forward upon near beforehand round abroad behind below besides as like
    of""".split()
)
_SUBJECTS = frozenset(("i", "we", "you", "ye", "thou", "he", "she", "it", "they"))
_FULL = {"can": "be able", "must": "have to", "ought": "be bound", "may": "be allowed"}
_SEMIDEPONENT = ("audeō", "gaudeō", "soleō", "fīdō")  # Bennett 1918, section 114
_SHOWN = {"Neut": "(it)", "Fem": "(she)"}
_SHIFT = {"Pres": ("Past", "Perf"), "Past": ("Pqp", "Perf"), "Fut": ("Fut", "Perf")}
_PRESENT = {("Past", "Perf"): ("Pres", "Imp"), ("Pqp", "Perf"): ("Past", "Imp"), ("Fut", "Perf"): ("Fut", "Imp")}


class _Action(NamedTuple):
    """A verb's sense with its voice worked in: `be loved` for the passive of `love`."""

    sense: str
    state: bool  # says how things are, so that it has no `was being`
    impersonal: str  # the subject that the gloss brings, `it`
    passive: bool


def _action(use: Use) -> _Action:
    sense = sense_of(use)
    lemma = use.lexeme.lemma.partition("#")[0]
    impersonal = ""
    if found := re.match("(it|evening) (.+)", sense):
        impersonal, sense = found[1], found[2]
    elif lemma.endswith("t"):
        impersonal = "it"
    verb, _, rest = sense.partition(" ")
    sense = " ".join(filter(None, (verb if verb in bases(verb, "VERB") else base(verb, "VERB"), rest)))
    mood_tense = (use.features.get("Mood"), use.features.get("Tense"), use.features.get("Aspect"))
    if sense in _FULL and mood_tense != ("Ind", "Pres", "Imp"):
        sense = _FULL[sense]
    state = sense == "be" or sense.startswith("be ") or sense.removeprefix("not ").split(" ")[0] in _STATES
    if sense == "lie" and {"deceive", "pretend"} & set(use.lexeme.gloss.split("; ")):
        sense = "tell lies"  # lied, not lay
    active = use.lexeme.deponent or lemma.endswith("fīō") or sense.startswith("be ") or bool(impersonal)
    passive = (use.features.get("Voice") == "Pass" or use.features["VerbForm"] == "Gdv") and not active
    if passive and _object(sense):
        sense = next((g for g in use.lexeme.gloss.split("; ") if not _object(g)), sense)
    return _Action(sense, state, impersonal, passive)


def _object(sense: str) -> str:
    """The object that a phrase brings, `the gospel` of `preach the gospel`; it cannot become its passive."""
    _, _, rest = sense.partition(" ")
    word = rest.split(" ")[-1]
    if not rest or set(rest.split(" ")) & _LINKS or word.endswith("ly"):
        return ""
    return rest if bases(word, "NOUN") and not bases(word, "ADJ") else ""


def verb(use: Use) -> str:
    action = _action(use)
    if not action.sense:
        return UNKNOWN
    form = use.features["VerbForm"]
    if form in ("Part", "Gdv"):
        text = _participle(use, action)
        return ones(use, text, verbal=True) if use.place.substantive else text
    if form == "Ger":
        prefix = {"Gen": "of ", "Abl": "by ", "Dat": "for ", "Acc": "for "}.get(use.features.get("Case", ""), "")
        return ("" if use.place.preposition else prefix) + present_participle(action.sense)
    if form == "Sup":
        return f"to {action.sense}"
    if action.passive:
        action = action._replace(sense=_passive(action.sense))
    return _infinitive(use, action) if form == "Inf" else _finite(use, action)


def _passive(sense: str) -> str:
    """`be sent away`; `have the gospel preached` where the phrase has its own object."""
    if rest := _object(sense):
        return f"have {rest} {past_participle(sense.partition(' ')[0])}"
    return f"be {past_participle(sense)}"


def _participle(use: Use, action: _Action) -> str:
    sense = action.sense
    done = sense.removeprefix("be ") if sense.startswith("be ") else past_participle(sense)
    if use.features["VerbForm"] == "Gdv":
        return f"to {sense}" if done == sense.removeprefix("be ") != sense else f"to {_passive(sense)}"
    if use.features.get("Tense") == "Pres":
        return present_participle(sense)
    if use.features.get("Tense") == "Fut":
        return f"about to {sense}"
    if use.place.head:
        return done
    if use.lexeme.deponent or use.lexeme.lemma.endswith(_SEMIDEPONENT):
        return done if done in use.low and "having" not in use.low else f"having {past_participle(sense)}"
    absolute = use.features.get("Case") == "Abl" and not use.place.preposition and not use.place.substantive
    return f"having been {done}" if absolute or "having" in use.low else done


def _tense(use: Use, *, fallback: tuple[str, str]) -> tuple[str, str]:
    """Tense and aspect in sense: those of memini are a step back, those of sum with a participle a step on."""
    tense, aspect = use.features.get("Tense", fallback[0]), use.features.get("Aspect", fallback[1])
    if use.lexeme.lemma.endswith("ī") and base(use.lexeme.gloss.split(" ")[0].strip(";"), "VERB") in use.lexeme.gloss:
        return _PRESENT.get((tense, aspect), (tense, aspect))
    return _SHIFT.get(tense, (tense, aspect)) if use.place.head else (tense, aspect)


def _active_head(use: Use) -> bool:
    """Tell whether the participle that a form of sum goes with has an active sense: `locūtus est`, has spoken."""
    head = use.place.head
    return bool(head) and head is not None and head.deponent and not head.gloss.startswith("be ")


def _infinitive(use: Use, action: _Action) -> str:
    tense, _ = _tense(use, fallback=("Pres", "Imp"))
    if _active_head(use):
        return "to have"
    if tense == "Past":
        return f"to have {past_participle(action.sense)}"
    if tense == "Fut":
        return f"to be about to {action.sense}"
    if use.place.bare:
        return action.sense
    return f"not to {action.sense[4:]}" if action.sense.startswith("not ") else f"to {action.sense}"


def _subject(use: Use, action: _Action) -> str:
    """The pronoun that the ending stands for, in brackets where it might as well be another."""
    person = use.features.get("Person", "3")
    if action.impersonal:
        return action.impersonal
    if use.place.subject:
        return ""
    if person in ("1", "2"):
        return personal(
            use._replace(features={"Case": "Nom", "Number": use.features.get("Number", "Sing")}),
            PERSONAL[person, "Plur" if use.plural else "Sing"],
        )
    low = [{"him": "he", "her": "she", "them": "they"}.get(w, w) if "let" in use.low else w for w in use.low]
    if use.plural:
        return "they" if "they" in low else "(they)"
    return next((w for w in low if w in ("he", "she", "it", "there")), _SHOWN.get(use.place.gender, "(he)"))


def _finite(use: Use, action: _Action) -> str:
    subject = _subject(use, action)
    mood = use.features.get("Mood", "Ind")
    if mood == "Imp":
        return _command(use, action, subject)
    if mood == "Sub" and use.features.get("Person") == "2" and _forbidden(use):
        return _command(use, action, subject)  # nē dēserās, forsake not (Bennett 1918, section 276)
    tense, aspect = _tense(use, fallback=("Pres", "Imp"))
    told = use.place.fact or (use.place.conjunction and use.low and not _bare(use))
    if told and not _WISHING & set(use.low):
        mood = "Ind"  # a plain fact, or one in the rendering: cum venīret, when he was coming
    clause = use.place.conjunction or use.place.fact
    if mood == "Sub" and not clause and tense in ("Pres", "Past") and (tense, aspect) != ("Past", "Imp"):
        return _wish(use, action, subject, perfect=aspect == "Perf")
    words = [subject, *_predicate(use, action, mood=mood, tense=tense, aspect=aspect)]
    return " ".join(filter(None, words))


def _bare(use: Use) -> bool:
    """Tell whether the rendering has the verb without ending or subject, as in commands and behind `to`."""
    if (_MODAL | _SUBJECTS | {"to"}) & set(use.low):
        return False
    verbs = [w for w in use.low if w != "not" and bases(w, "VERB")]
    main = [w for w in verbs if w != "do"] or verbs
    return bool(main) and base(main[0], "VERB") == main[0]


def _forbidden(use: Use) -> bool:
    """Tell whether the rendering has a second person as a command: do (not) forsake, Forsake (me not).

    Behind a conjunction that may be ut, a verb in lower case is no command but for the perfect: nē fēceris.
    """
    if not _bare(use):
        return False
    if "do" in use.low and sum(bool(bases(w, "VERB")) for w in use.low) > 1:
        return True
    perfect = use.features.get("Aspect") == "Perf" and use.features.get("Tense") == "Past"
    return use.place.conjunction and (perfect or use.said[0][:1].isupper())


def _command(use: Use, action: _Action, subject: str) -> str:
    if use.features.get("Tense") == "Fut":
        return " ".join(filter(None, (subject, _agreeing(use, "shall"), action.sense)))
    if use.lexeme.lemma == "nōlō":
        return "do not"
    return f"do {action.sense}!" if action.sense.startswith("not ") else f"{action.sense}!"


def _wish(use: Use, action: _Action, subject: str, *, perfect: bool) -> str:
    """The subjunctive on its own: let us adore, may he come (Bennett 1918, sections 274-279)."""
    person = use.features.get("Person", "3")
    sense = action.sense
    if perfect:
        sense = "have" if _active_head(use) else f"have {past_participle(sense)}"
    if person == "1" and use.plural and not perfect:
        return f"let us {sense}"
    if person == "3" and "let" in use.low and subject and not action.impersonal and not perfect:
        objects = {"he": "him", "she": "her", "they": "them", "(he)": "(him)", "(they)": "(them)"}
        return f"let {objects.get(subject, subject)} {sense}"
    return " ".join(filter(None, ("may", subject, sense)))


def _agreeing(use: Use, verb: str, *, before: bool = False) -> str:
    person, number = use.features.get("Person", "3"), use.features.get("Number", "Sing")
    if "it" in use.lexeme.gloss.split(" "):  # whatever the table has, `it matters` is of the third person
        person, number = "3", "Sing"
    head, rest = ("do", f" {verb}") if verb.startswith("not ") else (verb, "")  # does not know
    return agree(head, person=person, number=number, before=before, archaic=use.old) + rest


def _predicate(use: Use, action: _Action, *, mood: str, tense: str, aspect: str) -> list[str]:
    """Auxiliaries and verb of a finite form."""
    sense = action.sense
    bare = _active_head(use)
    done = "" if bare else past_participle(sense)
    if mood == "Sub":
        helper = (
            "may"
            if tense == "Pres" or (tense, aspect) == ("Past", "Perf")
            else "might"
            if use.place.conjunction
            else "would"
        )
        return [_agreeing(use, helper), *(("have", done) if aspect == "Perf" else (sense,))]
    if tense == "Fut":
        helper = "shall" if "shall" in use.low or "shalt" in use.low else "will"
        return [_agreeing(use, helper), *(("have", done) if aspect == "Perf" else (sense,))]
    if tense == "Pqp":
        return [_agreeing(use, "have", before=True), done]
    if tense == "Past" and aspect == "Perf" and (bare or _HAVE & set(use.low)):
        return [_agreeing(use, "have"), done]
    if tense == "Past" and aspect == "Imp" and not action.state:
        return [_agreeing(use, "be", before=True), present_participle(sense)]
    return [_agreeing(use, sense, before=tense == "Past")]
