"""From a chosen reading to the published word: literal gloss and reason, from what was found around it."""

from __future__ import annotations

from collections.abc import Sequence

from latingloss.alignment.literal import Place, literal_gloss
from latingloss.alignment.literal.nominals import is_person
from latingloss.context.relations import Partner, Relations
from latingloss.document import Word
from latingloss.engines import Choice
from latingloss.morphology.ranking import Candidate, reading
from latingloss.morphology.reasons import Evidence, reason
from latingloss.text.orthography import printed

LEAST_SHOWN = 0.001  # readings less likely than this are left out of a word's alternatives
_THOU = frozenset(("thou", "thee", "thy", "thine", "ye", "hath", "doth", "art", "shalt", "wilt"))


def old_english(rendering: Sequence[str]) -> bool:
    """Tell whether a rendering says thou: then the glosses do too."""
    return any(word.lower() in _THOU for word in rendering)


def word_of(choice: Choice, *, relations: Relations, rendering: Sequence[str] = (), old: bool = False) -> Word:
    """Return the published word of a choice; `rendering` is the English that is linked to it, in order."""
    (best, confidence), *others = choice.readings
    best = best._replace(features=_with_gender(best.features, relations.agrees_with or relations.antecedent))
    return Word(
        form=choice.form,
        marked_form=printed(best.form),
        lemma=printed(best.lexeme.lemma),
        upos=best.upos,
        features=best.features,
        gloss=literal_gloss(
            best.lexeme,
            upos=best.upos,
            features=best.features,
            rendering=rendering,
            old_english=old,
            place=_place(choice.form, best, relations),
        ),
        senses=best.lexeme.gloss,
        reason=_reason(best, relations, rendering),
        confidence=min(1.0, confidence),
        guessed=best.guessed,
        alternatives=tuple(reading(c, probability=p) for c, p in others if p >= LEAST_SHOWN),
    )


def _with_gender(features: dict[str, str], partner: Partner | None) -> dict[str, str]:
    """Keep of a form's genders those of the noun it goes with: `bonīs` in `bonīs rēgīnīs` is feminine."""
    own = features.get("Gender", "").split(",")
    shared = [g for g in own if partner and g in partner.reading.features.get("Gender", "").split(",")]
    return features | {"Gender": ",".join(shared)} if shared and len(shared) < len(own) else features


# conjunctions whose subjunctive is what someone wants or fears; behind the others it tells a fact
_WISHED = frozenset(("ut", "utī", "nē", "quō", "quōminus", "quīn", "nēve", "neu", "dummodo", "nēquandō"))


def _place(form: str, best: Candidate, found: Relations) -> Place:
    """What the words around do to the gloss."""
    conjunction = found.conjunction.reading.lexeme.lemma if found.conjunction else ""
    other = found.auxiliary.reading if found.auxiliary else None
    capital = form[:1].isupper() and (not found.opens or ";" not in best.lexeme.church)
    return Place(
        subject=found.subject is not None,
        preposition=found.preposition is not None,
        conjunction=conjunction in _WISHED,
        fact=conjunction != "" and conjunction not in _WISHED,
        substantive=_stands_alone(best, found),
        head=other.lexeme if other else None,
        gender=other.features.get("Gender", "") if other else "",
        owners=found.reflexive is not None and found.reflexive.reading.features.get("Number") == "Plur",
        capital=capital,
        called=found.called,
        thing=found.antecedent is not None and _is_thing(found.antecedent.reading),
        compared=found.comparative is not None,
        means=found.means,
        bare=best.features.get("VerbForm") == "Inf" and found.verb is not None and _takes_bare(found.verb.reading),
    )


def _is_thing(reading: Candidate) -> bool:
    return reading.upos in ("NOUN", "PROPN") and not is_person(reading.lexeme)


def _takes_bare(verb: Candidate) -> bool:
    """Tell whether the gloss of a verb is one that an infinitive follows without `to`: do not, can, must."""
    if verb.features.get("Mood") == "Imp":
        return verb.lexeme.lemma == "nōlō"
    now = verb.features.get("Mood") == "Ind" and verb.features.get("Tense") == "Pres"
    return now and verb.lexeme.gloss.split("; ")[0] in ("can", "must")


def _stands_alone(best: Candidate, found: Relations) -> bool | None:
    """Tell whether an adjective, determiner or participle stands for a noun; None for what is never beside one."""
    participle = best.features.get("VerbForm") in ("Part", "Gdv")
    if participle and best.features.get("Case") == "Nom" and found.verb is None:
        return False  # said of a subject that was not found
    if best.upos == "PRON" and found.agrees_with is not None:
        return False
    if best.upos in ("ADJ", "DET") or participle:
        return found.agrees_with is None and found.auxiliary is None and found.beside is None
    return None


def _reason(best: Candidate, found: Relations, rendering: Sequence[str]) -> str:
    def text(partner: Partner | None) -> str:
        return partner.text if partner else ""

    evidence = Evidence(
        form=printed(best.form),
        preposition=text(found.preposition),
        verb=text(found.verb),
        governs=found.verb.reading.lexeme.governs if found.verb else "",
        agrees_with=text(found.agrees_with),
        antecedent=text(found.antecedent),
        belongs_to=text(found.owner),
        subject=text(found.subject),
        conjunction=text(found.conjunction),
        comparative=text(found.comparative),
        infinitive=text(found.infinitive),
        absolute=text(found.absolute),
        apposition=text(found.apposition),
        beside=text(found.beside),
        english=" ".join(rendering) if best.features.get("Case") else "",
    )
    return reason(upos=best.upos, features=best.features, lexeme=best.lexeme, evidence=evidence)
