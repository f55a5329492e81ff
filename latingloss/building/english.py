"""Make the tables of English forms: `python -m latingloss.building.english`.

Takes the words that glosses and renderings use, with the commonest of English (package `wordfreq`), looks their
forms up in LemmInflect (Jascob 2019, MIT), and writes down what the spelling rules do not give.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

from latingloss.english.spelling import with_ly
from latingloss.english.vocabulary import TAGS, forms, listed_bases, regular, table
from latingloss.morphology.lexicon import lexemes
from latingloss.tables import read_table

OUT = Path(__file__).parents[1] / "data" / "english"
_COMMON = 8_000  # commonest English words taken in whether or not a gloss has them
_LEAST_ZIPF = 1.6  # of an adverb that LemmInflect leaves out: about once in 25 million words


def used_words() -> set[str]:
    """Return the words of glosses, of the aligner's vocabulary and of common English."""
    from wordfreq import top_n_list

    glossed = " ".join(f"{x.gloss} {x.church}" for x in lexemes()).lower()
    aligned = (word for word, *_ in read_table("alignment/words.tsv"))
    found = {*re.findall("[a-z-]*[a-z]", glossed), *aligned, *top_n_list("en", _COMMON)}
    return {w for w in found if re.fullmatch("[a-z]+(-[a-z]+)*", w)}


def _cell(word: str, upos: str) -> str:
    """Return what a table has for a word as one part of speech: nothing, + if regular, or its forms."""
    from lemminflect import getAllLemmas, getInflection

    if word not in getAllLemmas(word, upos).get(upos, ()):
        return ""
    found = [next(iter(getInflection(word, tag, inflect_oov=False)), "-") for tag in TAGS[upos]]
    cells = ["+" if form == made else form for form, made in zip(found, regular(word, upos), strict=True)]
    return "+" if set(cells) == {"+"} else " ".join(cells)


def _adverb(word: str) -> str:
    """Return + if people write the adverb in -ly, and it is no other word: gladly, but no uglily and no lowly."""
    from lemminflect import getAllLemmas
    from wordfreq import zipf_frequency

    made = with_ly(word)
    listed = getAllLemmas(made)
    used = "ADV" in listed or (not listed and zipf_frequency(made, "en") >= _LEAST_ZIPF)
    return "+" if used and "ADJ" in getAllLemmas(word) else ""


def _write(name: str, header: str, rows: Iterable[tuple[str, ...]]) -> None:
    OUT.mkdir(exist_ok=True)
    lines = [header, *("\t".join(row) for row in rows)]
    (OUT / name).write_text("\n".join(lines) + "\n", encoding="utf-8")


def _is_plural_name(word: str, words: set[str]) -> bool:
    """Tell whether LemmInflect lacks a word that is the plural of another: shekels, Amalekites."""
    from lemminflect import getAllLemmas

    return bool(re.fullmatch("..+[^aiousx]s", word)) and word[:-1] in words and not getAllLemmas(word)


def _other_forms(word: str, upos: str) -> set[str]:
    """Return every form that LemmInflect has for a listed word: leaped beside leapt."""
    from lemminflect import getAllLemmas, getInflection

    if word not in getAllLemmas(word, upos).get(upos, ()):
        return set()
    return {form for tag in TAGS[upos] for form in getInflection(word, tag, inflect_oov=False) if form.isalpha()}


def main() -> None:
    """Write `words.tsv`, then, with the rules that read it, `bases.tsv`."""
    from lemminflect import getAllLemmas

    words = used_words()
    stems = {base for w in words for found in getAllLemmas(w).values() for base in found if base.isascii()}
    entries = sorted({*words, *(s for s in stems if re.fullmatch("[a-z]+(-[a-z]+)*", s))})
    rows = [(w, *(_cell(w, upos) for upos in TAGS), _adverb(w)) for w in entries]
    # a plain form such as `cities` needs no row: the rules undo it
    inflected = {w for w in entries if any(w not in found for found in getAllLemmas(w).values())}
    rows = [row for row in rows if any(row[1:]) or row[0] not in inflected]
    _write("words.tsv", "word\tnoun\tverb\tadjective\tadverb", rows)
    _write("bases.tsv", "form\tupos\tbases", ())
    for cached in (table, forms, listed_bases):  # the glosses were made with the table as it was
        cached.cache_clear()
    exceptions = [(w, "NOUN", w[:-1]) for w in words if _is_plural_name(w, words)]
    made = {form for row in rows for upos in TAGS for form in (*forms(row[0], upos), *_other_forms(row[0], upos))}
    for word in sorted({*entries, *made}):
        for upos in TAGS:
            right = tuple(getAllLemmas(word, upos).get(upos, ()))
            if (listed_bases(word, upos) or ()) != right and (upos != "NOUN" or not _is_plural_name(word, words)):
                exceptions.append((word, upos, " ".join(right)))
    _write("bases.tsv", "form\tupos\tbases", sorted(exceptions))


if __name__ == "__main__":
    main()
