"""What an author knows better: a small YAML text that says how words are to be read, glossed, linked and marked.

    everywhere:                 # words that mean the same wherever they stand
      - word: Cecilia
        lemma: Caecilia
    passages:
      - latin: Da nobis noctem  # the words of a line, or its beginning so long as no other line begins so
        words:
          - word: noctem        # as printed; `et 2` is the second `et` of the line
            lemma: nox          # lengths and homograph number may be left out
            upos: NOUN
            features: Case=Acc|Number=Sing
            gloss: the night
            english: [the, night]   # the words of the rendering that render it; [] for none
            emphasis: true
            difficulty: 0.3
            note: said at Compline

All but `word` may be left out, and what is left out is as without correction. Case, accents, lengths and punctuation,
u for v and i for j make no difference to `latin` and `word`. Lines are known by their words, so corrections hold
when other lines change; a line that returns word for word is corrected each time.
"""

from latingloss.corrections.models import Corrections, LineCorrections, WordCorrection
from latingloss.corrections.reading import read, write

__all__ = ["Corrections", "LineCorrections", "WordCorrection", "read", "write"]
