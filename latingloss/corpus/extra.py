"""The optional packages of the corpus room, or an error that names the command to install them."""

from __future__ import annotations

from latingloss.errors import MissingExtraError

try:
    import polars as pl
    import pyarrow as pa
except ImportError as error:
    raise MissingExtraError('latingloss.corpus needs Polars and PyArrow: pip install "latingloss[corpus]"') from error

__all__ = ["pa", "pl"]
