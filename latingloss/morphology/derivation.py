"""Words outside the lexicon that are regularly made from a word in it, with a gloss composed from the base's.

Two ways: a prefix before a known verb, adjective or participle (`com` + `habitō`), and a suffix behind a known
stem (`vēnāt` + `iō`). Which affixes there are, what they are put to and what they mean is the table
`paradigms/derivation.tsv`; the rules are those of any school grammar (Allen and Greenough 1903, sections 227-277).
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import NamedTuple

from latingloss.english.adverbs import adverb
from latingloss.english.nouns import plural
from latingloss.english.verbs import agree, past_participle, present_participle
from latingloss.morphology.analysis import Analysis, exact
from latingloss.morphology.endings import Features, Table, endings
from latingloss.morphology.lexicon import Lexeme, lexemes
from latingloss.morphology.priors import cell_count, cell_name, lexeme_count
from latingloss.tables import built_once, read_table
from latingloss.text.orthography import plain, printed

_SHORTEST_BASE = 3  # letters; shorter ones are hidden in any word
_LONGEST_ENDING = 14  # letters of suffix and ending: itūdinibus
_SENSES = 2  # of the base that go into a gloss
_BASE_POWER = 0.3  # how much a base that is common counts against a rare one; a judgement

# root of the simple verb, and what it is behind a prefix (Allen and Greenough 1903, section 15; Bennett 1918, 7)
_WEAKENED = (
    ("fac", "fic"), ("fact", "fect"), ("cap", "cip"), ("capt", "cept"), ("ten", "tin"), ("jac", "jic"), ("jac", "ic"),
    ("jact", "ject"), ("rap", "rip"), ("rapt", "rept"), ("prem", "prim"), ("leg", "lig"), ("reg", "rig"),
    ("ag", "ig"), ("em", "im"), ("sed", "sid"), ("cad", "cid"), ("caed", "cīd"), ("caes", "cīs"), ("claud", "clūd"),
    ("claus", "clūs"), ("hab", "hib"), ("laed", "līd"), ("laes", "līs"), ("quaer", "quīr"), ("quaes", "quīs"),
    ("can", "cin"), ("scand", "scend"), ("grad", "gred"), ("fat", "fit"), ("fass", "fess"), ("sal", "sil"),
    ("tang", "ting"), ("frang", "fring"), ("stat", "stit"), ("plaud", "plōd"), ("damn", "demn"), ("sacr", "secr"),
    ("arc", "erc"), ("spec", "spic"), ("pat", "pet"), ("carp", "cerp"), ("sparg", "sperg"), ("tract", "trect"),
)  # fmt: skip


class Derived(NamedTuple):
    """A reading of a derived word: the lexeme made up for it, marked form, part of speech, features, weight."""

    lexeme: Lexeme
    form: str
    upos: str
    features: Features
    weight: float


class _Affix(NamedTuple):
    name: str
    kind: str  # what it is put to, with the gender of a noun if that matters
    base_ending: str  # makes a form of the base out of what stands before a suffix
    lemma: str  # suffix: ending of the lemma, "=" if that is the base's; prefix: its shapes and what they stand before
    stem: str
    table: str
    upos: str
    mark: str
    gloss: str


@built_once
def _affixes() -> tuple[_Affix, ...]:
    return tuple(_Affix(*row) for row in read_table("paradigms/derivation.tsv"))


@built_once
def _prefixes() -> dict[str, list[tuple[_Affix, str, str]]]:
    """By plain shape: affix, shape with vowel lengths, the letters it stands before (any if none)."""
    found: dict[str, list[tuple[_Affix, str, str]]] = defaultdict(list)
    for affix in _affixes():
        if affix.name.endswith("-"):
            for shape in affix.lemma.split(" "):
                marked, _, before = shape.partition(":")
                found[plain(marked)].append((affix, marked, before))
    return dict(found)


@built_once
def _suffixes() -> dict[str, list[tuple[_Affix, str, Features]]]:
    """By plain suffix and ending: affix, the same with vowel lengths, features."""
    found: dict[str, list[tuple[_Affix, str, Features]]] = defaultdict(list)
    for affix in _affixes():
        if affix.name.endswith("-"):
            continue
        if not affix.table:
            found[plain(affix.stem)].append((affix, affix.stem, {"Degree": "Pos"}))
            continue
        table = Table(affix.table, affix.upos, affix.mark)
        for text, features, _ in endings(table):
            found[plain(affix.stem + text)].append((affix, affix.stem + text, features))
        if affix.table == "3":
            for _, features, _ in endings(table._replace(whole=True)):
                found[plain(affix.lemma)].append((affix, affix.lemma, features))
    return dict(found)


def _ness(adjective: str) -> str:
    if " " in adjective:
        return f"being {adjective}"
    return (adjective[:-1] + "i" if adjective.endswith("y") and adjective[-2:-1] not in "aeo" else adjective) + "ness"


def _third(verb: str) -> str:
    return agree(verb, person="3", number="Sing")


_ENGLISH: dict[str, Callable[[str], str]] = {
    "base": str, "ing": present_participle, "pp": past_participle, "plural": plural, "ly": adverb, "ness": _ness,
    "s": _third,
}  # fmt: skip


@lru_cache(maxsize=20_000)
def _gloss(pattern: str, senses: tuple[str, ...]) -> str:
    """Put the first senses of a base into the parts of a pattern: `{base} again; {base} back`."""
    made, parts = [], pattern.split("; ")
    for part in parts:
        name = part[part.index("{") + 1 : part.index("}")]
        made += [part.replace("{" + name + "}", _ENGLISH[name](sense)) for sense in senses[: _SENSES // len(parts)]]
    return "; ".join(dict.fromkeys(made))


def _weight(base: Lexeme, upos: str, features: Features) -> float:
    """Return how common a cell is, of one gender of an adjective's three, and how common the base."""
    share: float = cell_count(cell_name(upos, features)) / cell_count(upos)
    if upos == "ADJ":
        share *= (features.get("Gender", "").count(",") + 1) / 3
    return share * float(lexeme_count(base) ** _BASE_POWER)


def _fits(affix: _Affix, base: Lexeme, features: Features) -> bool:
    """Tell whether a reading of a base's form is of the kind that an affix is put to."""
    kind, _, gender = affix.kind.partition(" ")
    if kind == "supine":
        return features.get("VerbForm") == "Sup"
    if kind == "infinitive":
        return features.get("VerbForm") == "Inf" and features["Aspect"] == "Imp"
    if kind == "noun":
        return base.upos == "NOUN" and gender in features.get("Gender", "")
    return base.upos == "ADJ" and features.get("Degree") == "Pos"


def _suffixed(key: str) -> Iterator[Derived]:
    for cut in range(max(_SHORTEST_BASE - 1, len(key) - _LONGEST_ENDING), len(key)):
        for affix, text, features in _suffixes().get(key[cut:], ()):
            for reading in exact(key[:cut] + affix.base_ending):
                base = lexemes()[reading.lexeme]
                if not _fits(affix, base, reading.features):
                    continue
                stem = reading.form[: len(reading.form) - len(affix.base_ending)]
                lexeme = base if affix.lemma == "=" else _suffixed_lexeme(affix, stem, base)
                yield Derived(lexeme, stem + text, affix.upos, features, _weight(base, affix.upos, features))


def _suffixed_lexeme(affix: _Affix, stem: str, base: Lexeme) -> Lexeme:
    lemma, gloss = printed(stem + affix.lemma), _gloss(affix.gloss, tuple(base.gloss.split("; ")))
    if not affix.table:
        return Lexeme(lemma, affix.upos, gloss, fixed=((lemma, {"Degree": "Pos"}),))
    table = Table(affix.table, affix.upos, affix.mark)
    whole = ((lemma, table._replace(whole=True)),) if affix.table == "3" else ()
    return Lexeme(lemma, affix.upos, gloss, ((stem + affix.stem, table), *whole))


def _prefixed(key: str) -> Iterator[Derived]:
    for cut in range(1, min(7, len(key) - _SHORTEST_BASE + 1)):
        rest = key[cut:]
        fitting = [s for s in _prefixes().get(key[:cut], ()) if not s[2] or rest[0] in s[2]]
        particular = {affix for affix, _, before in fitting if before}  # cōn before f and s, not con
        shapes = [s for s in fitting if s[2] or s[0] not in particular]
        if not shapes:
            continue
        for root, weak in (("", ""), *_weakened().get(rest[:2], ())):
            if not rest.startswith(plain(weak)):
                continue
            for reading in exact(plain(root) + rest[len(weak) :]):
                if reading.form.startswith(root):
                    for affix, marked, _ in shapes:
                        yield from _with_prefix(affix, (marked, root, weak), reading)


@built_once
def _weakened() -> dict[str, list[tuple[str, str]]]:
    """The pairs of root and weakened root by the first two letters of the latter."""
    found: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for root, weak in _WEAKENED:
        found[plain(weak)[:2]].append((root, weak))
    return dict(found)


def _with_prefix(affix: _Affix, change: tuple[str, str, str], reading: Analysis) -> Iterator[Derived]:
    """Yield the reading of a base's form with a prefix, if the base is of the prefix's kind."""
    prefix, root, weak = change
    base, features = lexemes()[reading.lexeme], dict(reading.features)

    def changed(text: str) -> str:
        return prefix + (weak + text[len(root) :] if text.startswith(root) else text)

    lemma, stems, senses = changed(base.lemma.partition("#")[0]), base.stems, base.gloss.split("; ")
    upos = base.upos
    if affix.kind == "adjective" and affix.name == "in-" and features.get("VerbForm") == "Part":
        stem = next((s for s, table in base.stems if table.base == "sup" and reading.form.startswith(s)), "")
        if root or not stem or features["Aspect"] != "Perf":
            return
        upos, lemma, stems = "ADJ", changed(stem + "us"), ((stem, Table("12", "ADJ", "Pos")),)
        senses = [past_participle(sense) for sense in senses]
        features = {k: features[k] for k in ("Case", "Gender", "Number") if k in features}
        features = dict(sorted((features | {"Degree": "Pos"}).items()))
    else:
        fits = base.upos == "VERB" if affix.kind == "verb" else upos in ("ADJ", "ADV") and "Degree" in features
        if not fits or (root and affix.kind == "adjective"):  # only verbs weaken their vowel here
            return
    lexeme = Lexeme(
        printed(lemma), upos, _gloss(affix.gloss, tuple(senses)), tuple((changed(s), table) for s, table in stems),
        tuple((changed(f), more) for f, more in base.fixed) if upos != "ADJ" else (), deponent=base.deponent,
    )  # fmt: skip
    yield Derived(lexeme, changed(reading.form), upos, features, _weight(base, upos, features))


def derived(form: str) -> list[Derived]:
    """Return the readings of a form as a word made from one in the lexicon, best first; often none.

    Whether the lexicon has the form itself is not asked.

    >>> [(d.lexeme.lemma, d.lexeme.gloss) for d in derived("inamabilis")[:1]]
    [('inamābilis', 'not lovable; not lovely')]
    """
    key = plain(form)
    best: dict[tuple[str, str, str], Derived] = {}
    for found in (*_suffixed(key), *_prefixed(key)):
        name = found.lexeme.lemma, found.upos, str(found.features)
        if name not in best or best[name].weight < found.weight:
            best[name] = found
    return sorted(best.values(), key=lambda d: -d.weight)
