"""Table Schema and Data Package: the rules of https://specs.frictionlessdata.io (version 1), and its own validator."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

pa = pytest.importorskip("pyarrow", reason='needs the extra corpus: pip install "latingloss[corpus]"')

from latingloss import corpus  # noqa: E402
from latingloss.corpus.schema import SCHEMA  # noqa: E402
from latingloss.errors import OptionError  # noqa: E402
from latingloss.formats.frictionless import package, table_schema  # noqa: E402

# Table Schema, "Types and Formats"
_TYPES = set(
    "string number integer boolean object array date time datetime year yearmonth duration geopoint geojson any".split()
)


def test_every_column_has_name_type_and_description() -> None:
    fields = table_schema(SCHEMA)["fields"]
    assert [field["name"] for field in fields] == SCHEMA.names
    assert all(field["type"] in _TYPES and field["description"] for field in fields)
    kinds = {field["name"]: field["type"] for field in fields}
    assert (kinds["lemma"], kinds["person"], kinds["zipf"], kinds["guessed"]) == (
        "string", "integer", "number", "boolean",
    )  # fmt: skip


def test_a_package_keeps_the_rules() -> None:
    """Data Package: a name in lower case; Data Resource: `path` is relative, without `..`."""
    whole = json.loads(package("out/Psalmi 1.csv", SCHEMA))
    (resource,) = whole["resources"]
    assert re.fullmatch(r"[a-z0-9._-]+", whole["name"]) and re.fullmatch(r"[a-z0-9._-]+", resource["name"])
    assert (resource["path"], resource["format"]) == ("out/Psalmi 1.csv", "csv")
    assert resource["profile"] == "tabular-data-resource"
    assert resource["schema"] == table_schema(SCHEMA)
    assert "encoding" not in json.loads(package("words.parquet", SCHEMA))["resources"][0]  # a binary file


@pytest.mark.filterwarnings("default")  # of the libraries that it uses
@pytest.mark.parametrize("suffix", ["csv", "tsv"])
def test_the_validator_of_frictionless_accepts_a_scored_corpus(tmp_path: Path, suffix: str) -> None:
    frictionless = pytest.importorskip("frictionless", reason="needs its validator: pip install frictionless")
    frame = next(corpus.score([("Hymn, 1", 'Stellae lucent; "nobiscum" canta.'), ("Ps", "Xyzabus est.")]))
    frame.write_csv(tmp_path / f"words.{suffix}", separator="\t" if suffix == "tsv" else ",")
    (tmp_path / "datapackage.json").write_text(package(f"words.{suffix}", SCHEMA), encoding="utf-8")
    report = frictionless.validate(str(tmp_path / "datapackage.json"))
    assert report.valid, report.flatten(["rowNumber", "fieldName", "type", "note"])
    (tmp_path / f"words.{suffix}").write_text("work\nx\n", encoding="utf-8")
    assert not frictionless.validate(str(tmp_path / "datapackage.json")).valid


@pytest.mark.parametrize(
    ("path", "said"),
    [("words.xls", "ends in"), ("../words.csv", "within"), ("/w.csv", "within"), ("a\\w.csv", "within"), ("", "ends")],
)
def test_other_paths_are_refused(path: str, said: str) -> None:
    with pytest.raises(OptionError, match=said):
        package(path, SCHEMA)


def test_a_column_of_another_kind_is_refused() -> None:
    with pytest.raises(OptionError, match="'tags' is list"):
        table_schema(pa.schema([("tags", pa.list_(pa.string()))]))
