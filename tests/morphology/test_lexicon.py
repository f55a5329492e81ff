"""The lexicon's rows: well formed, complete, and in agreement with corpora and a school book."""

from __future__ import annotations

import gzip
import re
import unicodedata
from collections import Counter, defaultdict
from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

from latingloss.morphology.analysis import analyses
from latingloss.morphology.endings import Table, endings
from latingloss.morphology.inflection import forms_of
from latingloss.morphology.lexicon import Lexeme, find, lexemes
from latingloss.tables import read_table
from latingloss.text.orthography import plain

TABLES = ("nouns", "adjectives", "verbs", "indeclinables", "names")
COLUMNS = {"gloss": -5, "church": -4, "note": -3, "kin": -2, "spell": -1}
HERE = Path(__file__).parent


def rows() -> Iterator[tuple[str, list[str]]]:
    for table in TABLES:
        for row in read_table(f"lexicon/{table}.tsv"):
            yield table, row


def spelled(lemma: str) -> str:
    return lemma.partition("#")[0]


def parts(cell: str) -> list[str]:
    return [part for part in cell.split("; ") if part not in ("", "-")]


# ---- form of the rows


def test_every_lemma_is_written_in_latin_letters_and_marks() -> None:
    bad = [row[0] for _, row in rows() if not re.fullmatch(r"[A-Za-zāēīōūȳĀĒĪŌŪȲëïöüÿ]+(#\d)?", row[0])]
    assert not bad


def test_no_lemma_twice_and_homographs_numbered_from_one() -> None:
    for table in TABLES:
        lemmas = [row[0] for name, row in rows() if name == table]
        assert [lemma for lemma, n in Counter(lemmas).items() if n > 1] == []
        for lemma, n in Counter(map(spelled, lemmas)).items():
            numbers = sorted(x.partition("#")[2] for x in lemmas if spelled(x) == lemma) if n > 1 else [""]
            assert numbers == ([str(i) for i in range(1, n + 1)] if n > 1 else [""]), (table, lemma)


def test_rows_are_sorted_so_that_a_diff_can_be_read() -> None:
    for table in TABLES:
        keys = [(plain_sort(row[0]), row[0]) for name, row in rows() if name == table]
        assert [b for a, b in pairwise(keys) if a > b] == []


def plain_sort(lemma: str) -> str:
    return "".join(c for c in unicodedata.normalize("NFD", lemma.lower()) if not unicodedata.combining(c))


def test_every_entry_has_one_to_four_short_glosses() -> None:
    for table, row in rows():
        glosses = row[COLUMNS["gloss"]].split("; ")
        assert 1 <= len(glosses) <= 4 and all(0 < len(g.split()) <= 6 for g in glosses), (table, row[0], glosses)
        assert len(set(glosses)) == len(glosses), (table, row[0], glosses)
        assert not re.search(r"[()\[\]/]", row[COLUMNS["gloss"]]), (table, row[0])


def test_every_entry_inflects_and_its_lemma_is_among_its_forms() -> None:
    for lexeme in lexemes():
        forms = {plain(form) for form, _ in forms_of(lexeme)}
        assert forms, lexeme.lemma
        # sēipse and the like, and `for` (Bennett 1918, section 136), stand under a form that is not in use
        assert plain(spelled(lexeme.lemma)) in forms or lexeme.upos == "PRON" or lexeme.lemma == "for", lexeme.lemma


def test_the_lexicon_has_at_least_seven_thousand_lemmas_that_are_not_names() -> None:
    assert len({(table, row[0]) for table, row in rows() if table != "names"}) >= 7000


# ---- stems that belong together

GENITIVES = {
    "1": ("ae",), "2": ("ī",), "3": ("is",), "3i": ("is",), "4": ("ūs",), "5": ("eī", "ēī"),
    "1pl": ("ārum",), "2pl": ("ōrum",), "3pl": ("um",), "3ipl": ("ium",), "3ppl": ("ium",), "4pl": ("uum",),
}  # fmt: skip


def test_genitives_end_as_their_declension_wants() -> None:
    # Bennett, New Latin Grammar (1918), sections 18-19 and 20-54
    for table in ("nouns", "names"):
        for lemma, genitive, _, group, *_ in read_table(f"lexicon/{table}.tsv"):
            assert genitive.endswith(GENITIVES.get(group, ("",))), (lemma, genitive, group)


def test_suffixes_keep_their_lengths_and_gender() -> None:
    # Bennett (1918), sections 43 and 147-150: -tiō -tiōnis, -tās -tātis, -tūdō, -men neuter, -tor masculine
    patterns = (("tiō", "tiōnis", "f"), ("siō", "siōnis", "f"), ("tūdō", "tūdinis", "f"), ("tor", "tōris", "m"))
    for lemma, genitive, gender, group, *_ in read_table("lexicon/nouns.tsv"):
        for ending, oblique, kind in patterns:
            if spelled(lemma).endswith(ending) and group == "3" and lemma not in ("castor", "rhētor", "titiō"):
                assert (genitive, gender) == (spelled(lemma).removesuffix(ending) + oblique, kind), lemma


def test_present_stem_of_lemma_and_infinitive_are_the_same() -> None:
    endings_of = {
        "āre": ("ō",), "ēre": ("eō",), "ere": ("iō", "ō"), "īre": ("iō", "eō"), "ārī": ("or",), "ērī": ("eor",),
        "īrī": ("ior",), "ī": ("ior", "or"),
    }  # fmt: skip
    irregular = re.compile(r"(sum|dō|ferō|fert|fīō|volō|nōlō|mālō|eō|edō|t)(#\d)?$")
    for lemma, infinitive, *_ in read_table("lexicon/verbs.tsv"):
        if irregular.search(lemma) or infinitive == "-" or infinitive.endswith("isse") or lemma == "praefor":
            continue
        stems = {infinitive.removesuffix(e) for e in endings_of if infinitive.endswith(e)}
        own = {spelled(lemma).removesuffix(e) for ends in endings_of.values() for e in ends}
        assert stems & own, (lemma, infinitive)


# ---- principal parts against corpora

PREFIXES = (
    "ā ab abs ad ac af ag al an ap ar as at ante circum com con cōn co cō col cor dē dis dī dif dir ē ex ef exs in im "
    "il ir īn inter intrō ob oc of op os per pel por post prae praeter prō prōd re red sub subs suc suf sug sum sup "
    "sur sus super trāns trā am amb sē bene male satis"
)
REGULAR = {
    "āre": ("āvī", "ātum"),
    "ārī": ("", "ātum"),
    "īre": ("īvī", "ītum"),
    "ēre": ("uī", "itum"),
    "īrī": ("", "ītum"),
}


@cache
def attested(shared: Path) -> frozenset[str]:
    """Plain forms of the Vulgate and of the learn treebanks."""
    found: set[str] = set()
    with gzip.open(shared / "corpora" / "vulgate-cpdv.tsv.gz", "rt", encoding="utf-8") as lines:
        for line in lines:
            found |= {plain(word) for word in re.findall(r"[^\W\d_]+", line.split("\t")[3])}
    return frozenset(found | {form for form, _, _ in treebank_words(shared)})


@cache
def treebank_words(shared: Path) -> tuple[tuple[str, str, str], ...]:
    """Plain form, plain lemma and gender of every noun and verb of the learn treebanks."""
    found = []
    for path in sorted((shared / "treebanks" / "learn").glob("*.gz")):
        with gzip.open(path, "rt", encoding="utf-8") as lines:
            for line in lines:
                cells = line.split("\t")
                if len(cells) > 5:
                    gender = re.search(r"Gender=(\w+)", cells[5]) if cells[3] == "NOUN" else None
                    found.append((plain(cells[1]), plain(cells[2]), gender.group(1) if gender else ""))
    return tuple(found)


def stem_of(part: str) -> str:
    return part.removesuffix("um") if part.endswith("um") else part.removesuffix("it").removesuffix("ī")


def is_attested(part: str, forms: frozenset[str]) -> bool:
    tables = ("sup",) if part.endswith("um") else ("perf", "sync")
    return any(plain(stem_of(part) + e.text) in forms for base in tables for e in endings(Table(base, "VERB")))


def is_regular(infinitive: str, part: str) -> bool:
    kind = 1 if part.endswith("um") else 0
    for ending, made in REGULAR.items():
        if infinitive.endswith(ending) and part in (
            infinitive.removesuffix(ending) + made[kind],
            infinitive[:-3] + "iī",
        ):
            return True
    return False


def without_prefix(lemma: str, part: str) -> set[tuple[str, str]]:
    """Lemma and part with the same prefix off both: `dēcerpō, dēcerpsī` gives `cerpō, cerpsī`."""
    cut = {(lemma[len(p) :], part[len(p) :]) for p in PREFIXES.split() if lemma.startswith(p) and part.startswith(p)}
    return {(lemma, part), *((base, tail) for base, tail in cut if len(base) > 2)}


def test_perfects_and_supines_are_attested_regular_like_their_simple_verb_or_looked_over(shared: Path) -> None:
    forms, known, open_parts = attested(shared), set(), {}
    for lemma, infinitive, perfect, supine, *_ in read_table("lexicon/verbs.tsv"):
        for part in parts(perfect) + parts(supine):
            if is_attested(part, forms):
                known |= without_prefix(spelled(lemma), part)
            elif not is_regular(infinitive, part):
                open_parts[spelled(lemma), part] = without_prefix(spelled(lemma), part)
    looked_over = set((HERE / "principal_parts.txt").read_text(encoding="utf-8").split())
    rest = [f"{lemma}:{part}" for (lemma, part), cut in open_parts.items() if not cut & known]
    print(f"{len(rest)} principal parts neither attested, nor regular, nor like a verb whose parts are")
    assert [x for x in rest if x not in looked_over] == []


def test_genders_agree_with_the_treebanks(shared: Path) -> None:
    counts: dict[str, Counter[str]] = defaultdict(Counter)
    for _, lemma, gender in treebank_words(shared):
        if gender:
            counts[lemma][gender] += 1
    nouns: dict[str, set[str]] = defaultdict(set)
    for lexeme in lexemes():
        for form, features in forms_of(lexeme) if lexeme.upos == "NOUN" else ():
            nouns[plain(spelled(lexeme.lemma))] |= set(features.get("Gender", "").split(",")) if form else set()
    # the treebanks differ: soror m. and arbor m. and horror f. are slips there; specus is m. or f. in the poets
    elsewhere = {"soror", "arbor", "horror", "lac", "specus", "humus", "imber", "cinis", "cupido"}
    wrong = []
    for lemma, count in counts.items():
        gender, times = count.most_common(1)[0]
        if lemma in nouns and times > 1 and not set(gender.split(",")) & nouns[lemma] and lemma not in elsewhere:
            wrong.append((lemma, count, nouns[lemma]))
    assert not wrong


# ---- a school book's words, and English

SPELLINGS = {
    "plow": "plough", "rumor": "rumour", "to-day": "today", "cæsar": "caesar", "intrust": "entrust",
    "corselet": "corslet", "slain": "slay", "whom": "who", "misse": "miss",
}  # fmt: skip
# in D'Ooge's list but not one word, or a misprint of it (supplicum), or not a word of the list at all
NOT_LEMMAS = re.compile(r"[ .?=-]|^(which|to|supplicum)$")
# what stands there for a gloss: a pronunciation, a remark, and `is` where ours is the verb's `be; exist`
NOT_GLOSSES = re.compile(r"\u035d|^relative conjunction$|^he \(she, it\) is$")


SMALL = "a an the to of be in one s for and or with he she it"


def english(gloss: str) -> set[str]:
    bare = [word.removesuffix("s") for word in re.findall(r"[a-zæ-]+", gloss.lower())]
    words = [SPELLINGS.get(word, word) for word in bare]
    return {word[:5] for word in words} - set(SMALL.split())


def lexemes_of(word: str) -> list[Lexeme]:
    return [*find(word), *(lexemes()[a.lexeme] for a in analyses(plain(word)))]


def test_every_headword_of_dooge_is_known_and_a_gloss_agrees(shared: Path) -> None:
    # D'Ooge, Latin for Beginners (1911), lesson vocabularies
    path = shared / "checks" / "dooge-1911-lesson-vocabulary.tsv"
    unknown, disagree = [], []
    for line in path.read_text(encoding="utf-8").splitlines()[1:]:
        _, _, lemma, _, gloss, *_ = line.split("\t")
        if NOT_LEMMAS.search(lemma):
            continue
        found = lexemes_of(lemma)
        unknown += [] if found else [lemma]
        theirs = set() if NOT_GLOSSES.search(gloss) else english(gloss)
        ours = set().union(*(english(f"{x.gloss} {x.church}") for x in found))
        disagree += [(lemma, gloss, ours)] if theirs and not theirs & ours else []
    assert not unknown
    assert not disagree


def test_glosses_and_kin_are_english_words() -> None:
    wordfreq = pytest.importorskip("wordfreq", reason="the word list is only in the builder's environment")
    listed = set((HERE / "english_words.txt").read_text(encoding="utf-8").split())
    unknown = defaultdict(list)
    for table, row in rows():
        texts = [row[COLUMNS["church"]], row[COLUMNS["kin"]], *([row[COLUMNS["gloss"]]] if table != "names" else [])]
        for word in re.findall(r"[A-Za-z]+", " ".join(texts)):
            if not wordfreq.zipf_frequency(word.lower(), "en") and word not in listed:
                unknown[word].append(row[0])
    assert not unknown
