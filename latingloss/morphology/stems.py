"""From what a dictionary shows of a word to its stems: genitive, degrees, principal parts.

Each function returns pairs of a stem, with vowel lengths, and the table (see `endings`) that inflects it. The
rules are those of any school grammar (Bennett 1918, sections 11-49 nouns, 62-77 adjectives, 94-136 verbs).
"""

from __future__ import annotations

from latingloss.morphology.endings import GENDERS, Table

Stems = tuple[tuple[str, Table], ...]

# lexicon class, ending of the lemma -> table; the stem is the lemma without that ending
_BY_LEMMA = (
    ("1", "a", "1"), ("1g", "ās", "1ās"), ("1g", "ēs", "1ēs"), ("1g", "ē", "1ē"), ("1g", "a", "1"),
    ("2", "ius", "2ius"), ("2", "us", "2us"), ("2", "ium", "2ium"), ("2", "um", "2um"),
    ("2g", "eus", "2eus"), ("2g", "os", "2os"), ("2g", "ōs", "2ōs"), ("2g", "on", "2on"), ("2g", "us", "2us"),
    ("4", "us", "4"), ("4", "ū", "4"), ("5", "ēs", "5"),
)  # fmt: skip
# lexicon class -> table and the genitive endings without which the stem remains
_BY_GENITIVE = {
    "1": ("1", ("ae",)), "1g": ("1", ("ae",)), "2": ("2r", ("ī",)), "2g": ("2r", ("ī",)), "3": ("3", ("is",)),
    "3i": ("3i", ("is",)), "3p": ("3p", ("is",)), "3g": ("3g", ("eōs", "is", "os")), "4": ("4", ("ūs",)),
    "5": ("5", ("eī", "ēī")),
}  # fmt: skip
_BY_PLURAL = {
    "1": ("1", ("ārum",)), "2": ("2us", ("ōrum",)), "3": ("3", ("um",)), "3i": ("3i", ("ium",)),
    "3p": ("3p", ("ium",)), "3g": ("3g", ("um",)), "4": ("4", ("uum",)), "5": ("5", ("ērum",)),
    "1g": ("1", ("ārum",)), "2g": ("2us", ("ōrum",)),
}  # fmt: skip
_LIMUS = {"facilis", "difficilis", "similis", "dissimilis", "gracilis", "humilis"}


def noun_stems(lemma: str, *, genitive: str, declension: str, gender: str) -> Stems:
    """Return the stems of a noun; `declension` is the lexicon's class, gender m, f, n or c.

    >>> [(s, t.base, t.whole) for s, t in noun_stems("rēx", genitive="rēgis", declension="3", gender="m")]
    [('rēg', '3', False), ('rēx', '3', True)]
    """
    number = declension[-2:] if declension.endswith(("pl", "sg")) else ""
    group = declension.removesuffix(number)
    base, stem = _noun_table(lemma, genitive, group, plural=number == "pl")
    if gender == "n" and base in ("2us", "4"):
        base = {"2us": "2um" if number == "pl" else "2us", "4": "4" if lemma.endswith("ū") else "4us"}[base]
    mark = GENDERS[gender] + ("+" + number if number else "")
    stems = [(stem, Table(base, "NOUN", mark))]
    if number != "pl" and base in ("2r", "3", "3i", "3p", "3g"):
        stems.append((lemma, Table(base, "NOUN", mark, whole=True)))
    return tuple(stems)


def _noun_table(lemma: str, genitive: str, group: str, *, plural: bool) -> tuple[str, str]:
    if not plural:
        for wanted, ending, base in _BY_LEMMA:
            if group == wanted and lemma.endswith(ending):
                return base, lemma.removesuffix(ending)
    base, endings = (_BY_PLURAL if plural else _BY_GENITIVE)[group]
    ending = next((e for e in endings if genitive.endswith(e)), endings[0])
    return base, genitive.removesuffix(ending)


def adjective_stems(lemma: str, *, forms: str, group: str) -> Stems:
    """Return the positive stems of an adjective; `forms` are its other nominatives, or its genitive.

    >>> [(s, t.base) for s, t in adjective_stems("pulcher", forms="pulchra; pulchrum", group="12")]
    [('pulchr', '12r'), ('pulcher', '12r')]
    """
    if group == "cmp":  # interior, prior: a comparative that has no positive
        return ((lemma.removesuffix("ior"), Table("comparative", "ADJ", "Cmp")),)
    number = "pl" if group.endswith("pl") else ""
    group = group.removesuffix("pl")
    listed = forms.split("; ")
    mark = "Pos+" + number if number else "Pos"
    if group in ("12", "pron"):
        regular = lemma.endswith("us") or bool(number)
        base = group if regular else group + "r"
        stem = listed[0][:-2] if number else lemma[:-2] if regular else listed[0][:-1]
    elif len(listed) == 2 or (listed[0].endswith("e") and not number):
        base = "3adjer" if len(listed) == 2 else "3adj"
        stem, regular = (listed[0][:-2] if len(listed) == 2 else lemma[:-2]), False
    else:
        base = "3c" if group == "3c" else "3adj" if number else "3adjone"
        stem, regular = (lemma[:-2] if number else listed[0].removesuffix("is")), bool(number)
    table = Table(base, "ADJ", mark)
    return ((stem, table),) if regular else ((stem, table), (lemma, table._replace(whole=True)))


def comparative_stems(column: str, stem: str) -> Stems:
    """Return the comparative's stem; an empty column means the regular one, `-` none.

    >>> comparative_stems("melior", "bon")[0][0], comparative_stems("", "alt")[0][0]
    ('mel', 'alt')
    """
    if column == "-":
        return ()
    if not column:
        return ((stem, Table("comparative", "ADJ", "Cmp")),)
    tables = (("ior", "comparative"), ("or", "comparative_or"), ("ūs", "plus"))
    found = []
    for form in column.split("; "):
        ending, base = next((pair for pair in tables if form.endswith(pair[0])), ("", "comparative"))
        found.append((form.removesuffix(ending), Table(base, "ADJ", "Cmp")))
    return tuple(found)


def superlative_stems(column: str, lemma: str, stem: str) -> Stems:
    """Return the superlative's stem; an empty column means the regular one, `-` none.

    >>> [superlative_stems("", lemma, stem)[0][0] for lemma, stem in (("ācer", "ācr"), ("facilis", "facil"))]
    ['ācerrim', 'facillim']
    """
    if column == "-":
        return ()
    regular = lemma + "rim" if lemma.endswith("er") else stem + ("lim" if lemma in _LIMUS else "issim")
    stems = [c.removesuffix("us") for c in column.split("; ")] if column else [regular]
    return tuple((s, Table("12", "ADJ", "Sup")) for s in stems)


def adverb_form(column: str, stem: str, group: str) -> str | None:
    """Return the adverb of an adjective: -ē from the first two declensions, -iter or -ter from the third.

    >>> adverb_form("", "alt", "12"), adverb_form("", "sapient", "3"), adverb_form("-", "alt", "12")
    ('altē', 'sapienter', None)
    """
    if column:
        return None if column == "-" else column.split("; ")[0]
    if group == "12":
        return stem + "ē"
    return stem + ("er" if stem.endswith("nt") else "iter")


# infinitive ending -> (present table, is it deponent); -ere and -ī with a lemma in -iō, -ior are 3io
_CONJUGATIONS = (
    ("ārī", "1", True), ("ērī", "2", True), ("īrī", "4", True), ("āre", "1", False), ("ēre", "2", False),
    ("īre", "4", False), ("ere", "3", False), ("ī", "3", True),
)  # fmt: skip
# infinitive of an irregular verb -> its table; the stem is what stands before the infinitive
_IRREGULAR = (
    ("posse", "possum"), ("prōdesse", "prosum"), ("ēsse", "edo"), ("esse", "sum"), ("nōlle", "nolo"),
    ("mālle", "malo"), ("velle", "volo"), ("fierī", "fio"), ("ferre", "fero"), ("quīre", "queo"), ("īre", "eo"),
    ("dare", "do"), ("are", "do"),
)  # fmt: skip
_OWN_TABLES = {"inquam": "inquam", "ajō": "ajo", "quaesō": "quaeso", "salvē": "salve", "for": "for", "cedo": "cedo"}


def verb_stems(lemma: str, *, infinitive: str, perfect: str, supine: str) -> tuple[Stems, bool]:
    """Return the stems of a verb from its principal parts, and whether it is deponent.

    >>> stems, deponent = verb_stems("regō", infinitive="regere", perfect="rēxī", supine="rēctum")
    >>> [(s, t.base) for s, t in stems], deponent
    ([('reg', '3'), ('rēx', 'perf'), ('rēct', 'sup')], False)
    """
    present, deponent = _present_stems(lemma, infinitive)
    stems = list(present)
    impersonal = lemma.endswith("t")
    for part in perfect.split("; "):
        if part not in ("", "-"):
            stems += _perfect_stems(part, "3sg" if impersonal else "")
    supines = [p.removesuffix("um") for p in supine.split("; ") if p not in ("", "-")]
    stems += [(stem, Table("sup", "VERB", "dep" if deponent else "")) for stem in supines]
    return tuple(stems), deponent


def _present_stems(lemma: str, infinitive: str) -> tuple[Stems, bool]:
    if lemma in _OWN_TABLES:
        stem = {"salvē": "salv"}.get(lemma, "")
        return ((stem, Table(_OWN_TABLES[lemma], "VERB")),), lemma == "for"
    if infinitive in ("", "-") or infinitive.endswith("isse"):
        memory = ((lemma.removesuffix("meminī"), Table("memini", "VERB")),) if lemma.endswith("meminī") else ()
        return (*memory, (lemma[:-1], Table("perf", "VERB"))), False
    impersonal = "3sg" if lemma.endswith("t") and not lemma.endswith(("st", "rt")) else ""
    for ending, base in _IRREGULAR:
        if infinitive.endswith(ending) and _is_irregular(lemma, base):
            stem = infinitive.removesuffix(ending)
            edible = ((stem + "ed", Table("3", "VERB")),) if base == "edo" else ()
            return (*edible, (stem, Table(base, "VERB"))), False
    for ending, base, deponent in _CONJUGATIONS:
        if infinitive.endswith(ending):
            base = "3io" if base == "3" and lemma.endswith(("iō", "ior")) else base
            mark = "+".join(m for m in ("dep" if deponent else "", impersonal) if m)
            stem = infinitive.removesuffix(ending).removesuffix("i" if base == "3io" else "")
            stems: Stems = ((stem, Table(base, "VERB", mark)),)
            if lemma.endswith("orior"):  # orior, orīrī goes by the fourth, but oritur, orerer by the third
                stems += ((stem, Table("3io", "VERB", mark)),)
            if base == "3" and stem.endswith("ed") and lemma in ("edō", "comedō"):
                stems += ((stem.removesuffix("ed"), Table("edo", "VERB")),)
            return stems, deponent
    return (), False


def _is_irregular(lemma: str, base: str) -> bool:
    endings: dict[str, str | tuple[str, ...]]
    endings = {"eo": "eō", "queo": "queō", "do": "dō", "sum": ("sum", "est"), "edo": "edō", "fio": ("fīō", "fit")}
    return lemma.endswith(endings.get(base, ""))


def _perfect_stems(part: str, mark: str) -> Stems:
    """The perfect stem with what is shortened from it: amāstī, audiī, nōsse, abīstis."""
    stem = part.removesuffix("it").removesuffix("ī")
    stems = [(stem, Table("perf", "VERB", mark))]
    if stem.endswith(("āv", "ēv", "ōv")):
        stems.append((stem[:-1], Table("sync", "VERB", mark)))
    elif stem.endswith("īv"):
        stems += [(stem[:-2] + "i", Table("perf", "VERB", mark)), (stem[:-1], Table("isync", "VERB", mark))]
    elif stem.endswith("i"):
        stems.append((stem[:-1] + "ī", Table("isync", "VERB", mark)))
    return tuple(stems)
