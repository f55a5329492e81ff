"""How much of running text the lexicon knows; a word is known if it has a reading that is not guessed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from benchmarks.figures import Figure
from benchmarks.sources import TREEBANKS, Sources, sentences, verses
from latingloss.morphology.enclitics import split
from latingloss.morphology.ranking import candidates
from latingloss.text.tokens import tokenize, word_text

_MOST_EXAMPLES = 8
_NO_WORDS = ("PUNCT", "SYM", "X", "NUM")


def vulgate_forms(sources: Sources) -> Counter[str]:
    """Return the printed words of the Vulgate with their counts, enclitics parted."""
    printed: Counter[str] = Counter()
    for _, latin, _ in verses(sources):
        printed.update(token.text for token in tokenize(latin) if token.kind == "word")
    parted: Counter[str] = Counter()
    for text, count in printed.items():
        word = word_text(text)
        for part in split(word) or (word,):
            parted[part] += count
    return parted


def coverage(sources: Sources) -> Iterator[Figure]:
    """Yield the share of known running words of the Vulgate and of every check treebank."""
    yield _known("the Vulgate", vulgate_forms(sources), ">= 98.5")
    for name in TREEBANKS:
        yield _known(name, _treebank_forms(sources, name), ">= 96")


def _treebank_forms(sources: Sources, name: str) -> Counter[str]:
    gold = (word for s in sentences(sources, name) for _, words in s for word in words)
    forms = (word[1] for word in gold if word[3] not in _NO_WORDS and any(c.isalpha() for c in word[1]))
    return Counter(part for form in forms for part in split(form) or (form,))


def _known(name: str, forms: Counter[str], aim: str) -> Figure:
    unknown = Counter({form: count for form, count in forms.items() if candidates(form)[0].guessed})
    share = 100 * (1 - unknown.total() / forms.total())
    commonest = ", ".join(form for form, _ in unknown.most_common(_MOST_EXAMPLES))
    note = f"{forms.total():,} words; unknown most often: {commonest}"
    return Figure(f"coverage: {name}", round(share, 2), "%", aim, note)
