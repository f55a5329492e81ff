"""English words of grammar, and which Latin words or endings each may render.

An open-class Latin word (noun, verb, adjective) is rendered by content words; the words of grammar around them
render its ending. What an ending can say is fixed by the grammar of both languages: a verb ending is never `of`.
"""

from __future__ import annotations

ARTICLES = frozenset(("the", "a"))
SUBJECTS = frozenset(["i", "we", "you", "he", "she", "it", "they", "there"])
OBJECTS = frozenset(["me", "us", "him", "them", "her"])
AUXILIARIES = frozenset(
    ["be", "have", "do", "will", "shall", "would", "should", "may", "might", "can", "could", "must", "let"]
)
POSSESSIVES = frozenset(["my", "our", "your", "his", "her", "its", "their", "own"])
CASE_WORDS = frozenset(["of", "to", "by", "with", "from", "for", "in", "on", "at", "into", "about", "through", "as"])
STAND_INS = frozenset(["thing", "one", "man", "people", "place"])  # what English adds to a bare adjective
POINTERS = frozenset(["this", "that", "these", "those", "all", "each", "every"])
CONJUNCTIONS = frozenset(["and", "or", "but", "for:", "so", "then", "if", "when", "while", "than"])
RELATIVES = frozenset(["who", "whom", "whose", "which", "what", "that"])
FUNCTION_WORDS = (ARTICLES | SUBJECTS | OBJECTS | AUXILIARIES | POSSESSIVES | CASE_WORDS | CONJUNCTIONS | RELATIVES) - {
    "through",
    "about",
} | frozenset(
    ["o", "not", "that", "this", "these", "those", "up", "out", "himself", "themselves", "thing", "man", "one"]
)

# Open-class lexemes that English renders with words of grammar.
_GRAMMATICAL = frozenset(
    word
    for line in (
        "sum possum nolo uolo habeo facio debeo fio omnis alius suus meus tuus noster uester multus tantus talis",
        "qualis quantus solus unus totus cunctus uniuersus ceterus alter uter uterque nullus ullus ipse singulus",
        "proprius oportet licet res homo uir uoluntas",
    )
    for word in line.split()
)
_OWN_WORDS = {  # what those lexemes may be rendered by, beside content words
    "sum": AUXILIARIES | {"there"},
    "possum": AUXILIARIES,
    "debeo": AUXILIARIES | {"to"},
    "oportet": AUXILIARIES | {"it"},
    "licet": AUXILIARIES | {"it"},
    "nolo": AUXILIARIES | {"not"},
    "uolo": AUXILIARIES,
    "habeo": AUXILIARIES,
    "facio": AUXILIARIES,
    "fio": AUXILIARIES,
    "res": STAND_INS,
    "homo": STAND_INS | {"those", "who"},
    "uir": STAND_INS,
    "uoluntas": frozenset(("will",)),
}
_NEGATIVE = frozenset(
    word
    for line in (
        "non ne nec neque nemo nihil nil nolo nondum nequaquam numquam nunquam nullus haud minime nescio nequeo neu",
        "neue necdum nequando nisi absque sine neuter nonne num numquid ignoro",
    )
    for word in line.split()
)
_NOMINAL = ARTICLES | CASE_WORDS | {"o"}
_BY_KIND = {
    "noun": _NOMINAL,
    "name": _NOMINAL,
    "adj": _NOMINAL | STAND_INS | {"those", "who"},
    "pron": CASE_WORDS | STAND_INS | {"the"},
    "part": _NOMINAL | SUBJECTS | AUXILIARIES | STAND_INS | {"who", "those", "that", "while", "when", "which", "if"},
    "fin": SUBJECTS | AUXILIARIES | {"to"},
    "Inf": AUXILIARIES | {"to"},
    "Sup": AUXILIARIES | {"to", "for"},
    "Ger": _NOMINAL,
    "Gdv": _NOMINAL | AUXILIARIES,
}


def is_open(lexeme: str) -> bool:
    """Tell whether a lexeme, by its key, is rendered by content words only, not by words of grammar."""
    lemma, _, upos = lexeme.partition(".")
    return upos in ("NOUN", "VERB", "ADJ", "?") and lemma not in _GRAMMATICAL


def ending_admits(cell: str, word: str) -> bool:
    """Tell whether an ending, by its cell, may be rendered by an English word of grammar."""
    return word in _BY_KIND.get(cell.partition(" ")[0], ())


def lexeme_admits(lexeme: str, word: str) -> bool:
    """Tell whether a lexeme itself, by its key, may be rendered by an English word."""
    lemma, _, upos = lexeme.partition(".")
    if word == "not":
        return lemma in _NEGATIVE
    if word not in FUNCTION_WORDS:
        return True
    if lemma in _OWN_WORDS:
        return word in _OWN_WORDS[lemma]
    if is_open(lexeme):
        return False
    if upos == "PRON":
        return word not in AUXILIARIES
    if upos in ("ADJ", "VERB"):
        return word not in AUXILIARIES | CONJUNCTIONS | CASE_WORDS | SUBJECTS
    return word not in AUXILIARIES | SUBJECTS | OBJECTS | POSSESSIVES | ARTICLES
