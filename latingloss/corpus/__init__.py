"""Whole corpora: texts in, one row a word out, in columns.

Needs the extra `corpus`: `pip install "latingloss[corpus]"`.
"""

from latingloss.corpus.rescoring import rescore as rescore
from latingloss.corpus.running import write_parts as write_parts
from latingloss.corpus.scoring import score as score
from latingloss.corpus.scoring import score_batches as score_batches
from latingloss.corpus.scoring import write_parquet as write_parquet
from latingloss.corpus.summary import summarize as summarize
from latingloss.corpus.table import Table as Table
