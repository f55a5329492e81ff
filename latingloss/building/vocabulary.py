"""The English words worth offering, and how common they are, from the package `wordfreq`."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator

from latingloss.building.etymologies import Etymologies

_SHIPPED = 25_000  # commonest words whose frequency is shipped
_RAREST = 1.7  # Zipf value below which readers seldom know a word
_FOREIGN = ("fr", "es", "it", "de", "pt")
_FOREIGN_MARGIN = 1.2  # Zipf: a word that much commoner in another language is seen in English as a quotation
_INFLECTED = (
    ("ness", ""), ("s", ""), ("es", ""), ("ed", ""), ("ed", "e"), ("ing", ""), ("ing", "e"), ("er", ""),
    ("er", "e"), ("ies", "y"), ("ily", "y"), ("iness", "y"), ("ven", "ve"), ("ably", "able"), ("ibly", "ible"),
)  # fmt: skip


class Vocabulary:
    """English words that an etymology knows, with Zipf values; `doubtful` are those better not offered."""

    def __init__(self, etymologies: Etymologies) -> None:
        from wordfreq import top_n_list, zipf_frequency

        self.common = [w for w in top_n_list("en", 2 * _SHIPPED) if w.isascii() and w.isalpha()][:_SHIPPED]
        listed = (word for language, word in etymologies.steps if language == "eng")
        self._etymologies = etymologies
        self.zipf = {
            word: zipf for word in sorted(set(listed))
            if word.isascii() and word.isalpha() and len(word) > 2 and (zipf := zipf_frequency(word, "en")) >= _RAREST
        }  # fmt: skip
        self.words = list(self.zipf)
        self.doubtful = {
            word for word, zipf in self.zipf.items()
            if self._is_made(word) or max(zipf_frequency(word, lang) for lang in _FOREIGN) > zipf + _FOREIGN_MARGIN
        }  # fmt: skip

    def _is_made(self, word: str) -> bool:
        """Tell whether a word is only an inflection, an everyday derivation or a compound of others."""
        if self._etymologies.is_compound(word):
            return True
        if word.endswith("ly") and (word[:-2] in self.zipf or word[:-1] + "e" in self.zipf):
            return True
        for cut in range(4, len(word) - 2):
            if self.zipf.get(word[:cut], 0) > 3 and self._etymologies.is_native(word[cut:]):
                return True
        return any(
            word.endswith(tail) and (base := word.removesuffix(tail) + put) in self.zipf and len(base) > 3
            and self.zipf[base] > self.zipf[word] - 0.5
            for tail, put in _INFLECTED
        )  # fmt: skip

    def by_zipf(self, extra: Iterable[str]) -> Iterator[tuple[str, str]]:
        """Yield rows of a Zipf value and all words that have it, commonest first: the common words and `extra`."""
        groups: dict[float, list[str]] = defaultdict(list)
        from wordfreq import zipf_frequency

        for word in sorted({*self.common, *(w for w in extra if w.islower() and w.isalpha())}):
            if zipf := zipf_frequency(word, "en"):
                groups[zipf].append(word)
        for zipf in sorted(groups, reverse=True):
            yield f"{zipf:.2f}", " ".join(groups[zipf])
