"""Literal glosses: what one Latin form says in English, word for word.

The sense is the author's own English word where the rendering has one, else the first gloss of the lexicon; the
ending then says how it is put: `of the city`, `let us adore`, `about to come`. The rules are those of Bennett
1918: what the tenses say in 100-114 and 257-265, wishes and commands in 272-281, infinitives, participles, gerund
and supine in 326-340, the ablative in 213-231, places in 228-232.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from latingloss.english.bases import base, bases
from latingloss.english.grades import comparative, superlative
from latingloss.english.nouns import mass, plural
from latingloss.english.verbs import agree, past_participle, present_participle
from latingloss.morphology.lexicon import Lexeme

UNKNOWN = "(?)"  # no gloss and no rendering: said openly, so that the author fills it in

# English that only puts a word into its place; the rest of a rendering is its content
_FUNCTION = frozenset(
    """the a an of to by with from in on at unto for into than i we you ye thou thee he she it they him her them us me
    my thy thine your his its their our mine am is are was were be been being art wast have has had hath hast hadst
    having do does did doth dost didst will shall would should may might wouldst shouldst mightest let wilt shalt mayest
    o oh about who which whom that one ones thing things those can could must ought there not and himself herself
    itself themselves""".split()  # noqa: SIM905
)
_PARTICLES = frozenset(("up", "out", "away", "down", "back", "forth", "off", "over", "together", "again"))
_OWNERS = frozenset(("his", "her", "its", "their"))
_BE = frozenset(("am", "is", "are", "was", "were", "be", "been", "art", "wast"))
_MODAL = frozenset(("may", "might", "would", "should", "let", "mayest", "shall", "will"))
_HAVE = frozenset(("have", "has", "had", "hath", "hast"))
_TIMES = {"day": "on", "night": "in", "hour": "at", "year": "in", "month": "in", "time": "at", "summer": "in",
          "winter": "in", "morning": "in", "evening": "in", "spring": "in", "autumn": "in", "week": "in"}  # fmt: skip
_PERSONS = frozenset(
    """God Lord god lord woman king queen son friend servant slave priest bishop people prophet angel wife boy girl
    child youth virgin widow host guest prince poet shepherd saint apostle martyr enemy husband judge devil consul
    aedile advocate bishop candidate centurion chief client colleague companion cousin deacon disciple heir herald hero
    king monk nephew nobleman orphan parent patriarch patron pirate pupil relative rival secretary spirit steward thief
    tribune tyrant uncle witness hypocrite citizen person neighbour mother daughter sister""".split()  # noqa: SIM905
)
# masculine in Latin and ending as names of doers end in English, but none
_NO_PERSONS = frozenset(
    """carnelian cluster corner cucumber dagger finger fist flower hammer laughter number order quarter river shoulder
    terror thunder whisper""".split()  # noqa: SIM905
)
_LOCATIVES = {"domus": "at home", "humus": "on the ground", "rūs": "in the country", "mīlitia": "in the field"}
_STATES = frozenset(("have", "know", "hate", "remember", "want", "owe", "own", "seem", "lack", "matter", "befit"))
_FULL = {"can": "be able", "must": "have to", "ought": "be bound", "may": "be allowed"}
_SEMIDEPONENT = ("audeō", "gaudeō", "soleō", "fīdō")  # Bennett 1918, section 114
_ABLATIVES = ("by", "with", "from", "in", "on", "at", "than", "for", "through", "of")
_PERSONAL = {
    ("1", "Sing"): ("I", "me"), ("1", "Plur"): ("we", "us"),
    ("2", "Sing"): ("you", "you"), ("2", "Plur"): ("you", "you"),
    "he": ("he", "him"), "she": ("she", "her"), "it": ("it", "it"), "they": ("they", "them"),
}  # fmt: skip
_SHIFT = {"Pres": ("Past", "Perf"), "Past": ("Pqp", "Perf"), "Fut": ("Fut", "Perf")}
_PRESENT = {("Past", "Perf"): ("Pres", "Imp"), ("Pqp", "Perf"): ("Past", "Imp"), ("Fut", "Perf"): ("Fut", "Imp")}


class _Use(NamedTuple):
    """A word where it stands."""

    lexeme: Lexeme
    upos: str
    features: dict[str, str]
    said: tuple[str, ...]  # the rendering
    low: tuple[str, ...]  # the same in lower case
    old: bool
    subject: bool
    preposition: bool
    conjunction: bool
    substantive: bool | None
    head: Lexeme | None

    @property
    def plural(self) -> bool:
        return self.features.get("Number") == "Plur"

    @property
    def neuter(self) -> bool:
        return self.features.get("Gender") == "Neut"


def literal_gloss(
    lexeme: Lexeme,
    *,
    upos: str,
    features: dict[str, str],
    rendering: Sequence[str] = (),
    old_english: bool = False,
    subject: bool = False,
    preposition: bool = False,
    conjunction: bool = False,
    substantive: bool | None = None,
    head: Lexeme | None = None,
) -> str:
    """Return what a Latin form literally says in English; `(?)` if neither lexicon nor rendering tells.

    `rendering` is the English that renders this word. `subject`: its clause has a nominative subject, so a verb
    needs no pronoun. `preposition`: one governs it, so a noun stays bare. `conjunction`: one (ut, nē, cum) governs
    the subjunctive. `substantive`: an adjective, participle or determiner stands without (True) or with (False) a
    noun. `head`: the other half of a compound tense, sum for a participle and the participle's verb for sum.
    `old_english` gives thou, ye and their verb forms.

    >>> from latingloss.morphology.lexicon import find
    >>> literal_gloss(find("urbs")[0], upos="NOUN", features={"Case": "Gen", "Number": "Sing"})
    'of the city'
    >>> literal_gloss(find("clāmō")[0], upos="VERB", features={"Aspect": "Imp", "Mood": "Ind", "Number": "Plur",
    ...     "Person": "1", "Tense": "Pres", "VerbForm": "Fin", "Voice": "Act"}, rendering=["we", "weep"])
    'we weep'
    """
    said = tuple(re.sub("['’]s?$", "", word) for word in rendering)
    use = _Use(
        lexeme, upos, features, said, tuple(map(str.lower, said)), old_english, subject, preposition, conjunction,
        substantive, head,
    )  # fmt: skip
    if "VerbForm" in features:
        return _verb(use)
    if upos in ("PRON", "DET"):
        return _pronoun(use)
    sense = _sense(use)
    if not sense:
        return UNKNOWN
    if upos in ("NOUN", "PROPN"):
        return _noun(use, sense)
    if upos in ("ADJ", "NUM"):
        return _adjective(use, sense)
    return _degree(use, sense)


# --- the sense -------------------------------------------------------------------------------------------------


def _sense(use: _Use) -> str:
    """The author's word in its base form, the gloss that has it, or the first gloss."""
    glosses = [g for g in f"{use.lexeme.gloss}; {use.lexeme.church}".split("; ") if g]
    first = _first(use, glosses)
    if use.upos == "PROPN":
        if known := next((g for g in glosses if g in use.said), ""):
            return known
        names = [w for w, low in zip(use.said, use.low, strict=True) if w[:1].isupper() and low not in _FUNCTION]
        return base(names[-1], "NOUN") if len(names) == 1 and use.lexeme.kind == "people" else " ".join(names) or first
    if use.upos not in ("NOUN", "ADJ", "VERB", "AUX"):
        fitting = [g for g in glosses if set(g.split()) <= set(use.low)]
        return max(fitting, key=len) if fitting else " ".join(use.said) if 0 < len(use.said) < 3 else first
    kind = {"AUX": "VERB"}.get(use.upos, use.upos)
    content = [w for w, low in zip(use.said, use.low, strict=True) if low not in _FUNCTION]
    if not content and use.features.get("Degree") in ("Cmp", "Sup"):
        return next((g for g in glosses if not g.startswith("of ")), first)
    if not content:
        helping = {base(w, "VERB") for w in use.low}
        return next((g for g in glosses if kind == "VERB" and g in helping and g != "be"), first)
    forms = {form for w in content for form in (w.lower(), *bases(w.lower(), kind))}
    fitting = [g for g in glosses if (words := set(g.lower().split()) - _FUNCTION) and words <= forms]
    if fitting:
        return max(fitting, key=lambda g: (g in content, len(g)))  # Lord, if the rendering has the capital
    return (_given(use, content, kind) if use.upos != "AUX" else "") or first


def _first(use: _Use, glosses: list[str]) -> str:
    """The first gloss; a name of God from the church sense, where it is addressed or is the word with a capital."""
    first = glosses[0] if glosses else ""
    church = use.lexeme.church.split("; ")[0]
    addressed = use.features.get("Case") == "Voc" or church.lower() == first
    return church if use.upos == "NOUN" and church[:1].isupper() and addressed and not use.plural else first


def _given(use: _Use, content: list[str], kind: str) -> str:
    """The content of a rendering that no gloss has, in its base form; empty if it is another kind of word."""
    if kind == "VERB":
        at = next((i for i, w in enumerate(content) if bases(w.lower(), "VERB")), None)
        if at is None:
            state = _BE & set(use.low) and bases(content[0].lower(), "ADJ")
            return f"be {content[0].lower()}" if state else ""  # is ashamed
        particle = [w for w in content[at + 1 : at + 2] if w in _PARTICLES]
        if any(w not in particle and not w.endswith("ly") for w in (*content[:at], *content[at + 1 :])):
            return ""  # take enjoyment, stand ready: no one verb stands for the Latin
        return " ".join([base(content[at].lower(), kind), *particle])
    last = content[-1].lower()
    fits = bases(last, kind) or (kind == "ADJ" and (use.substantive or bases(last, "VERB")))
    if not fits and any(bases(last, k) for k in ("NOUN", "ADJ", "VERB")):
        return ""
    lemma = base(last, kind)
    before = [w for w in content[-2:-1] if kind == "NOUN" and bases(w.lower(), "ADJ") and w.islower()]  # burnt offering
    return " ".join([*before, lemma.capitalize() if content[-1][:1].isupper() else lemma])


# --- nouns and what stands for them ----------------------------------------------------------------------------


def _noun(use: _Use, sense: str) -> str:
    lemma, case = use.lexeme.lemma.partition("#")[0], use.features.get("Case")
    only_plural = any(table.mark.endswith("pl") for _, table in use.lexeme.stems)
    one_form = (only_plural and sense in use.lexeme.gloss) or use.lexeme.kind == "place"
    text = plural(sense) if use.plural and not one_form else sense
    if case == "Loc" and lemma in _LOCATIVES:
        return _LOCATIVES[lemma]
    if case == "Abl" and lemma in ("domus", "rūs", "humus") and not (use.preposition or use.low or use.plural):
        return "from home" if lemma == "domus" else f"from the {sense}"
    return _cased(use, text, article=_article(use, text, sense))


def _article(use: _Use, text: str, sense: str) -> str:
    if text.split(" ")[0] in ("the", "what", "those", "one", "his", "another"):
        return ""
    if "the" in use.low:
        return "the"
    if not use.plural and ("a" in use.low or "an" in use.low):
        return "an" if text[0] in "aeiou" else "a"
    named = use.upos == "PROPN" and use.lexeme.kind != "people"
    some = use.plural and bool(use.low)
    return (
        "" if named or some or sense == "God" or mass(re.split(" (?:of|for|in) ", sense)[0].split(" ")[-1]) else "the"
    )


def _cased(use: _Use, text: str, *, article: str = "") -> str:
    """Put a noun, or what stands for one, into its case."""
    case = use.features.get("Case", "")
    framed = f"{article} {text}".strip()
    if use.preposition or case in ("Nom", "Acc"):
        return text
    if case == "Voc":
        return f"O {text}" if use.upos in ("NOUN", "PROPN") or use.substantive else text
    said = next((w for w in use.low if w in ("of", "to", "unto", "for", *_ABLATIVES)), "")
    if not case:
        return f"{said} {framed}".strip()
    if case == "Dat":
        return f"{said if said in ('for', 'unto') else 'to'} {framed}"
    if case == "Abl":
        return f"{said if said in _ABLATIVES else _ablative(use, text)} {framed}"
    return f"{'at' if case == 'Loc' else 'of'} {framed}"


def _ablative(use: _Use, text: str) -> str:
    """By a person, with a thing, from a town, on a day (Bennett 1918, sections 216-231)."""
    lexeme = use.lexeme
    if use.upos == "PROPN":
        return {"place": "from", "month": "in"}.get(lexeme.kind, "by")
    if (use.substantive or use.upos in ("PRON", "DET")) and not use.neuter:
        return "by"
    noun = base(text, "NOUN")
    head = lexeme.gloss.split("; ")[0].split(" of ")[0].split(" ")[-1]
    doer = lexeme.parts.endswith((" m.", " c.")) and head.endswith(("er", "or", "man", "ist", "ian"))
    agent = lexeme.lemma.endswith("trīx") or (doer and head not in _NO_PERSONS) or {head, noun} & _PERSONS
    return _TIMES.get(noun, "by" if agent else "with")


def _adjective(use: _Use, sense: str) -> str:
    return _ones(use, _degree(use, sense)) if use.substantive else _degree(use, sense)


def _degree(use: _Use, sense: str) -> str:
    """Grade an adjective or adverb, but not a comparative that has an entry and a gloss of its own."""
    degree = use.features.get("Degree", "")
    own = any(form == use.lexeme.lemma and f.get("Degree") == degree for form, f in use.lexeme.fixed)
    if own or degree not in ("Cmp", "Sup"):
        return sense
    return comparative(sense) if degree == "Cmp" else superlative(sense)


def _ones(use: _Use, text: str, *, verbal: bool = False) -> str:
    """An adjective or participle as a noun: `holy ones`, `of the holy`, `good things`, `those loving`."""
    if use.neuter:
        noun = "things" if use.plural else "thing"
        return _cased(use, f"{noun} {text}" if verbal else f"{text} {noun}", article="" if use.plural else "the")
    if verbal:
        return _cased(use, f"{'those' if use.plural else 'one'} {text}", article="" if use.plural else "the")
    if use.plural and use.features.get("Case") in ("Gen", "Dat") and not use.preposition:
        return _cased(use, text, article="the")
    return _cased(use, f"{text} {'ones' if use.plural else 'one'}", article="the")


# --- pronouns and determiners ----------------------------------------------------------------------------------


def _pronoun(use: _Use) -> str:
    constant = use.features | use.lexeme.constant
    kind, person = constant.get("PronType", ""), constant.get("Person", "")
    if constant.get("Poss"):
        return _possessive(use)
    if constant.get("Reflex"):
        return _cased(use, _reflexive(use))
    if kind == "Prs" and person in ("1", "2"):
        return _personal(use, _PERSONAL[person, "Plur" if use.plural else "Sing"])
    if use.lexeme.lemma == "ipse" and not (use.features.get("Case") == "Gen" and _OWNERS & set(use.low)):
        return _cased(use, _reflexive(use)) if use.substantive else _reflexive(use)
    if use.lexeme.lemma in ("is", "ille", "iste", "hic", "ipse"):
        return _demonstrative(use)
    if kind in ("Rel", "Int") and use.lexeme.lemma in ("quī", "quis"):
        return _relative(use)
    return _quantity(use)


def _personal(use: _Use, pair: tuple[str, str]) -> str:
    if use.old and pair[0] == "you":
        pair = ("ye", "you") if use.plural else ("thou", "thee")
    case = use.features.get("Case", "Nom")
    if case == "Voc":
        return pair[0]
    return _cased(use, pair[0] if case == "Nom" else pair[1])


def _gendered(use: _Use) -> str:
    """He, she, it or they: as the rendering says, else as the features do."""
    genders = use.features.get("Gender", "Masc")
    return "they" if use.plural else "he" if "Masc" in genders else "she" if "Fem" in genders else "it"


def _reflexive(use: _Use) -> str:
    said = next((w for w in use.low if w.endswith(("self", "selves"))), "")
    named = {"her": "herself", "its": "itself", "it": "itself", "them": "themselves", "their": "themselves"}
    own = {"he": "himself", "she": "herself", "it": "itself", "they": "themselves"}[_gendered(use)]
    return said or next((named[w] for w in use.low if w in named), own)


def _possessive(use: _Use) -> str:
    owners = ("my", "mine", "thy", "thine", "your", "yours", "his", "her", "its", "our", "ours", "their")
    first = use.lexeme.gloss.split("; ")[0]
    old = {"tuus": "thy", "vester": "your"}.get(use.lexeme.lemma, first) if use.old else first
    word = next((w for w in use.low if w in owners), old)
    if not use.substantive:
        return word
    alone = {"my": "mine", "thy": "thine", "your": "yours", "our": "ours", "their": "theirs", "her": "hers"}
    return _cased(use, alone.get(word, word))


def _demonstrative(use: _Use) -> str:
    lemma, case = use.lexeme.lemma, use.features.get("Case", "")
    said = next((w for w in use.low if w in ("he", "him", "she", "her", "it", "they", "them")), "")
    owner = next((w for w in use.low if w in _OWNERS), "")
    if case == "Gen" and owner:
        return owner
    if lemma != "hic" and use.substantive is not False and (lemma == "is" or said):
        gendered = {"him": "he", "her": "she", "them": "they"}.get(said, said) or _gendered(use)
        return _personal(use, _PERSONAL[gendered])
    near = lemma == "hic"
    word = ("these" if near else "those") if use.plural else ("this" if near else "that")
    if use.substantive is False:
        return word
    return _cased(use, f"{word} things" if use.substantive and use.plural and use.neuter else word)


def _relative(use: _Use) -> str:
    """Who, whom, whose, which, what: by gender and case, or as the rendering has it."""
    case = use.features.get("Case", "Nom")
    genders = use.features.get("Gender", "Masc")
    said = next((w for w in use.low if w in ("who", "whom", "which", "what", "that")), "")
    if genders == "Neut":
        asks = use.lexeme.lemma == "quis"
        return _cased(use, said if said in ("that", "what", "which") else "what" if asks else "which")
    if case == "Gen":
        return "of which" if said == "which" else "whose"
    thing = said in ("which", "that", "what")
    return _cased(use, said if thing else "who" if case == "Nom" else "whom")


def _quantity(use: _Use) -> str:
    """Every other pronoun and determiner: someone and something by gender, bare beside its noun."""
    glosses = use.lexeme.gloss.split("; ")
    content = " ".join(w for w in use.low if w not in ("of", "to", "by", "with", "from", "for", "unto"))
    fitting = [g for g in glosses if re.search("thing|what", g)] if use.neuter else []
    if "all" in glosses and not use.plural and "every" in glosses:
        fitting.append("every")
    word = next((g for g in glosses if g == content), "") or (fitting or glosses)[0] or content or UNKNOWN
    if use.upos == "DET" and not use.substantive:
        return word
    if word == "other":
        word = "others" if use.plural else "another"
    if use.plural and use.neuter and use.upos == "DET":
        word = f"{word} things"
    return _cased(use, re.sub("^whoever", "whomever", word) if use.features.get("Case") not in ("Nom", None) else word)


# --- verbs -----------------------------------------------------------------------------------------------------


class _Action(NamedTuple):
    """A verb's sense with its voice worked in: `be loved` for the passive of `love`."""

    sense: str
    state: bool  # says how things are, so that it has no `was being`
    impersonal: str  # the subject that the gloss brings, `it`
    passive: bool


def _action(use: _Use) -> _Action:
    sense = _sense(use)
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
    passive = use.features.get("Voice") == "Pass" and not active
    return _Action(sense, state, impersonal, passive)


def _verb(use: _Use) -> str:
    action = _action(use)
    if not action.sense:
        return UNKNOWN
    form = use.features["VerbForm"]
    if form in ("Part", "Gdv"):
        text = _participle(use, action)
        return _ones(use, text, verbal=True) if use.substantive else text
    if form == "Ger":
        prefix = {"Gen": "of ", "Abl": "by ", "Dat": "for ", "Acc": "for "}.get(use.features.get("Case", ""), "")
        return ("" if use.preposition else prefix) + present_participle(action.sense)
    if form == "Sup":
        return f"to {action.sense}"
    if action.passive:
        action = action._replace(sense=f"be {past_participle(action.sense)}")
    return _infinitive(use, action) if form == "Inf" else _finite(use, action)


def _participle(use: _Use, action: _Action) -> str:
    sense = action.sense
    done = sense.removeprefix("be ") if sense.startswith("be ") else past_participle(sense)
    if use.features["VerbForm"] == "Gdv":
        return f"to {sense}" if done == sense.removeprefix("be ") != sense else f"to be {done}"
    if use.features.get("Tense") == "Pres":
        return present_participle(sense)
    if use.features.get("Tense") == "Fut":
        return f"about to {sense}"
    if use.head:
        return done
    if use.lexeme.deponent or use.lexeme.lemma.endswith(_SEMIDEPONENT):
        return done if done in use.low and "having" not in use.low else f"having {past_participle(sense)}"
    absolute = use.features.get("Case") == "Abl" and not use.preposition and not use.substantive
    return f"having been {done}" if absolute or "having" in use.low else done


def _tense(use: _Use, *, fallback: tuple[str, str]) -> tuple[str, str]:
    """Tense and aspect in sense: those of memini are a step back, those of sum with a participle a step on."""
    tense, aspect = use.features.get("Tense", fallback[0]), use.features.get("Aspect", fallback[1])
    if use.lexeme.lemma.endswith("ī") and base(use.lexeme.gloss.split(" ")[0].strip(";"), "VERB") in use.lexeme.gloss:
        return _PRESENT.get((tense, aspect), (tense, aspect))
    return _SHIFT.get(tense, (tense, aspect)) if use.head else (tense, aspect)


def _active_head(use: _Use) -> bool:
    """Tell whether the participle that a form of sum goes with has an active sense: `locūtus est`, has spoken."""
    head = use.head
    return bool(head) and head is not None and head.deponent and not head.gloss.startswith("be ")


def _infinitive(use: _Use, action: _Action) -> str:
    tense, _ = _tense(use, fallback=("Pres", "Imp"))
    if _active_head(use):
        return "to have"
    if tense == "Past":
        return f"to have {past_participle(action.sense)}"
    if tense == "Fut":
        return f"to be about to {action.sense}"
    return f"not to {action.sense[4:]}" if action.sense.startswith("not ") else f"to {action.sense}"


def _subject(use: _Use, action: _Action) -> str:
    """The pronoun that the ending stands for, in brackets where it might as well be another."""
    person = use.features.get("Person", "3")
    if action.impersonal:
        return action.impersonal
    if use.subject:
        return ""
    if person in ("1", "2"):
        return _personal(
            use._replace(features={"Number": use.features.get("Number", "Sing")}),
            _PERSONAL[person, "Plur" if use.plural else "Sing"],
        )
    low = [{"him": "he", "her": "she", "them": "they"}.get(w, w) if "let" in use.low else w for w in use.low]
    if use.plural:
        return "they" if "they" in low else "(they)"
    return next((w for w in low if w in ("he", "she", "it", "there")), "(he)")


def _finite(use: _Use, action: _Action) -> str:
    subject = _subject(use, action)
    mood = use.features.get("Mood", "Ind")
    if mood == "Imp":
        return _command(use, action, subject)
    tense, aspect = _tense(use, fallback=("Pres", "Imp"))
    if mood == "Sub" and use.conjunction and use.low and not _MODAL & set(use.low):
        mood = "Ind"  # the rendering has a plain fact: cum venīret, when he was coming
    if mood == "Sub" and not use.conjunction and tense in ("Pres", "Past") and (tense, aspect) != ("Past", "Imp"):
        return _wish(use, action, subject, perfect=aspect == "Perf")
    words = [subject, *_predicate(use, action, mood=mood, tense=tense, aspect=aspect)]
    return " ".join(filter(None, words))


def _command(use: _Use, action: _Action, subject: str) -> str:
    if use.features.get("Tense") == "Fut":
        return " ".join(filter(None, (subject, _agreeing(use, "shall"), action.sense)))
    if use.lexeme.lemma == "nōlō":
        return "do not"
    return f"do {action.sense}!" if action.sense.startswith("not ") else f"{action.sense}!"


def _wish(use: _Use, action: _Action, subject: str, *, perfect: bool) -> str:
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


def _agreeing(use: _Use, verb: str, *, before: bool = False) -> str:
    person, number = use.features.get("Person", "3"), use.features.get("Number", "Sing")
    if "it" in use.lexeme.gloss.split(" "):  # whatever the table has, `it matters` is of the third person
        person, number = "3", "Sing"
    head, rest = ("do", f" {verb}") if verb.startswith("not ") else (verb, "")  # does not know
    return agree(head, person=person, number=number, before=before, archaic=use.old) + rest


def _predicate(use: _Use, action: _Action, *, mood: str, tense: str, aspect: str) -> list[str]:
    """Auxiliaries and verb of a finite form."""
    sense = action.sense
    bare = _active_head(use)
    done = "" if bare else past_participle(sense)
    if mood == "Sub":
        helper = (
            "may" if tense == "Pres" or (tense, aspect) == ("Past", "Perf") else "might" if use.conjunction else "would"
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
