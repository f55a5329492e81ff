"""The shipped data: every file with its version, source, licence and checksum, and every table readable."""

import csv
from hashlib import sha256

import pytest

from latingloss.building.manifest import DATA, HEADER, MANIFEST, data_files
from latingloss.tables import read_table

TABLES = [p for p in data_files() if p.suffix == ".tsv"]


def rows() -> dict[str, dict[str, str]]:
    with MANIFEST.open(encoding="utf-8", newline="") as lines:
        reader = csv.DictReader(lines, delimiter="\t", quoting=csv.QUOTE_NONE)
        assert tuple(reader.fieldnames or ()) == HEADER
        return {row["file"]: row for row in reader}


def test_the_manifest_names_every_file_and_no_other():
    assert list(rows()) == [p.relative_to(DATA).as_posix() for p in data_files()]


@pytest.mark.parametrize("path", data_files(), ids=lambda p: p.relative_to(DATA).as_posix())
def test_a_file_has_version_source_licence_and_its_checksum(path):
    row = rows()[path.relative_to(DATA).as_posix()]
    assert row["version"] == "2026.11"
    assert len(row["source"]) > 20
    assert row["sha256"] == sha256(path.read_bytes()).hexdigest(), "run python -m latingloss.building.manifest"


# Licences that data under CC BY-SA 4.0 may be made from: Creative Commons, "Compatible Licenses" (BY-SA 4.0); NC and
# ND are not among them.
@pytest.mark.parametrize("name", [p.relative_to(DATA).as_posix() for p in data_files()])
def test_licences_allow_sharing_alike(name):
    row = rows()[name]
    assert row["licence"] == "CC BY-SA 4.0"
    assert not {"NC", "ND"} & set(row["source"].replace("-", " ").split())


@pytest.mark.parametrize("path", TABLES, ids=lambda p: p.relative_to(DATA).as_posix())
def test_tables_are_plain_and_every_row_parses(path):
    raw = path.read_bytes()
    assert raw.endswith(b"\n") and b"\r" not in raw and not raw.startswith(b"\xef\xbb\xbf")
    header, *lines = raw.decode("utf-8").split("\n")
    assert len(set(header.split("\t"))) == header.count("\t") + 1
    found = read_table(path.relative_to(DATA).as_posix())
    assert len(found) == sum(map(bool, lines)) > 0
    assert all(row[0] or row[1] for row in found)


@pytest.mark.parametrize("path", TABLES, ids=lambda p: p.relative_to(DATA).as_posix())
def test_no_row_comes_twice(path):
    found = [tuple(row) for row in read_table(path.relative_to(DATA).as_posix())]
    assert len(set(found)) == len(found)


def test_the_data_fit_in_the_wheel():
    assert sum(p.stat().st_size for p in data_files()) < 15_000_000
