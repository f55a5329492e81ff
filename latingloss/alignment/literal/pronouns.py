"""Pronouns and determiners: by person, gender and case, or as the rendering has them."""

from __future__ import annotations

import re

from latingloss.alignment.literal.nominals import cased
from latingloss.alignment.literal.use import OWNERS, UNKNOWN, Use

PERSONAL = {
    ("1", "Sing"): ("I", "me"), ("1", "Plur"): ("we", "us"),
    ("2", "Sing"): ("you", "you"), ("2", "Plur"): ("you", "you"),
    "he": ("he", "him"), "she": ("she", "her"), "it": ("it", "it"), "they": ("they", "them"),
}  # fmt: skip


def pronoun(use: Use) -> str:
    constant = use.features | use.lexeme.constant
    kind, person = constant.get("PronType", ""), constant.get("Person", "")
    if constant.get("Poss"):
        return _possessive(use)
    if constant.get("Reflex"):
        return cased(use, _reflexive(use))
    if kind == "Prs" and person in ("1", "2"):
        return personal(use, PERSONAL[person, "Plur" if use.plural else "Sing"])
    if use.lexeme.lemma == "ipse" and not (use.features.get("Case") == "Gen" and OWNERS & set(use.low)):
        return cased(use, _reflexive(use)) if use.place.substantive else _reflexive(use)
    if use.lexeme.lemma in ("is", "ille", "iste", "hic", "ipse"):
        return _demonstrative(use)
    if kind in ("Rel", "Int") and use.lexeme.lemma in ("quī", "quis"):
        return _relative(use)
    return _quantity(use)


def personal(use: Use, pair: tuple[str, str]) -> str:
    if use.old and pair[0] == "you":
        pair = ("ye", "you") if use.plural else ("thou", "thee")
    case = use.features.get("Case", "Nom")
    if case == "Voc":
        return pair[0]
    return cased(use, pair[0] if case == "Nom" else pair[1])


def _gendered(use: Use) -> str:
    """He, she, it or they: as the rendering says, else as the features do."""
    genders = use.features.get("Gender", "Masc")
    return "they" if use.plural else "he" if "Masc" in genders else "she" if "Fem" in genders else "it"


def _reflexive(use: Use) -> str:
    said = next((w for w in use.low if w.endswith(("self", "selves"))), "")
    named = {"her": "herself", "its": "itself", "it": "itself", "them": "themselves", "their": "themselves"}
    several = "they" if use.place.owners and use.lexeme.lemma == "sē" else _gendered(use)
    own = {"he": "himself", "she": "herself", "it": "itself", "they": "themselves"}[several]
    return said or next((named[w] for w in use.low if w in named), own)


def _possessive(use: Use) -> str:
    owners = ("my", "mine", "thy", "thine", "your", "yours", "his", "her", "its", "our", "ours", "their")
    first = "their own" if use.place.owners and use.lexeme.lemma == "suus" else use.lexeme.gloss.split("; ")[0]
    old = {"tuus": "thy", "vester": "your"}.get(use.lexeme.lemma, first) if use.old else first
    word = next((w for w in use.low if w in owners), old)
    if not use.place.substantive:
        return word
    alone = {"my": "mine", "thy": "thine", "your": "yours", "our": "ours", "their": "theirs", "her": "hers"}
    return cased(use, alone.get(word, word))


def _demonstrative(use: Use) -> str:
    lemma, case = use.lexeme.lemma, use.features.get("Case", "")
    said = next((w for w in use.low if w in ("he", "him", "she", "her", "it", "they", "them")), "")
    owner = next((w for w in use.low if w in OWNERS), "")
    if case == "Gen" and owner:
        return owner
    named = lemma == "is" or said or (lemma == "ille" and use.place.substantive and not use.neuter)
    if lemma != "hic" and use.place.substantive is not False and named:
        gendered = {"him": "he", "her": "she", "them": "they"}.get(said, said)
        if not gendered or use.plural != (gendered == "they"):
            gendered = _gendered(use)
        return personal(use, PERSONAL[gendered])
    near = lemma == "hic"
    word = ("these" if near else "those") if use.plural else ("this" if near else "that")
    if use.place.substantive is False:
        return word
    return cased(use, f"{word} things" if use.place.substantive and use.plural and use.neuter else word)


def _relative(use: Use) -> str:
    """Who, whom, whose, which, what: by gender and case, or as the rendering has it."""
    case = use.features.get("Case", "Nom")
    genders = use.features.get("Gender", "Masc")
    said = next((w for w in use.low if w in ("who", "whom", "which", "what", "that")), "")
    if use.place.substantive is False:  # beside its noun: by which death
        return said if said in ("that", "what", "which") else "what" if use.lexeme.lemma == "quis" else "which"
    if use.place.thing and not said and case != "Gen":
        return cased(use, "which")
    if genders == "Neut":
        asks = use.lexeme.lemma == "quis"
        return cased(use, said if said in ("that", "what", "which") else "what" if asks else "which")
    if case == "Gen":
        return "of which" if said == "which" else "whose"
    thing = said in ("which", "that", "what")
    return cased(use, said if thing else "who" if case == "Nom" else "whom")


def _quantity(use: Use) -> str:
    """Every other pronoun and determiner: someone and something by gender, bare beside its noun."""
    glosses = use.lexeme.gloss.split("; ")
    content = " ".join(w for w in use.low if w not in ("of", "to", "by", "with", "from", "for", "unto"))
    fitting = [g for g in glosses if re.search("thing|what", g)] if use.neuter else []
    if "all" in glosses and not use.plural and "every" in glosses:
        fitting.append("every")
    word = next((g for g in glosses if g == content), "") or (fitting or glosses)[0] or content or UNKNOWN
    if use.plural and word.startswith("a "):
        word = "some" if "some" in glosses else word[2:]
    if use.upos == "DET" and not use.place.substantive:
        return word
    if use.plural and use.neuter and use.upos == "DET":
        word = f"{word} things"
    elif word == "other":
        word = "others" if use.plural else "another"
    return cased(use, re.sub("^whoever", "whomever", word) if use.features.get("Case") not in ("Nom", None) else word)
