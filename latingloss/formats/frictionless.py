"""Frictionless metadata for tables: Table Schema and Data Package, version 1 (https://specs.frictionlessdata.io).

What the columns of a scored corpus hold is kept in its Parquet files; CSV has no room for it, so that a
`datapackage.json` beside the file tells.
"""

from __future__ import annotations

import json
import re
from pathlib import PurePath
from typing import Any

from latingloss.errors import OptionError

_TYPES = {"string": "string", "bool": "boolean", "float": "number", "double": "number", "halffloat": "number"}
_FORMATS = {".csv": "csv", ".tsv": "tsv", ".parquet": "parquet"}


def table_schema(schema: Any) -> dict[str, Any]:
    """Return the Table Schema of a `pyarrow.Schema` whose fields have descriptions, such as the corpus's.

    Raises `OptionError` for a column that is neither text, number nor truth value.

    >>> from latingloss.corpus.schema import SCHEMA
    >>> table_schema(SCHEMA)["fields"][1]["type"]
    'integer'
    """
    return {"fields": [_field(field) for field in schema], "missingValues": [""]}


def package(path: str, schema: Any) -> str:
    """Return the text of a `datapackage.json` for one table, CSV, TSV or Parquet, beside which it will lie.

    `path` is relative to it. Raises `OptionError` for another kind of file, or a path out of the folder, which the
    standard forbids.

    >>> from latingloss.corpus.schema import SCHEMA
    >>> json.loads(package("words.csv", SCHEMA))["resources"][0]["name"]
    'words'
    """
    file = PurePath(path)
    if file.suffix not in _FORMATS:
        raise OptionError(f"path is {path!r}; give a name that ends in {', '.join(_FORMATS)}")
    if file.is_absolute() or ".." in file.parts or "\\" in path:
        raise OptionError(f"path is {path!r}; give one within the folder of datapackage.json, without '..' or '\\'")
    name = re.sub(r"[^a-z0-9._-]+", "-", file.stem.lower()).strip("-") or "table"
    resource: dict[str, Any] = {"name": name, "path": file.as_posix(), "format": _FORMATS[file.suffix]}
    if file.suffix != ".parquet":
        resource |= {"profile": "tabular-data-resource", "encoding": "utf-8"}
    resource["schema"] = table_schema(schema)
    whole = {"name": name, "profile": "data-package", "resources": [resource]}
    return json.dumps(whole, ensure_ascii=False, indent=2) + "\n"


def _field(field: Any) -> dict[str, str]:
    kind = str(field.type)
    found = "integer" if re.fullmatch(r"u?int\d+", kind) else _TYPES.get(kind.removeprefix("large_"))
    if found is None:
        raise OptionError(f"column {field.name!r} is {kind}; Table Schema here has text, numbers and truth values")
    description = (field.metadata or {}).get(b"description", b"").decode()
    return {"name": field.name, "type": found} | ({"description": description} if description else {})
