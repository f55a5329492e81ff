"""Write the manifest of the shipped data: `python -m latingloss.building.manifest`.

Version, source and licence are kept by hand in `data/manifest.tsv`; this fills in the checksums, and adds a row
with an empty source for a file that has none, which a test then refuses.
"""

from __future__ import annotations

from hashlib import sha256
from pathlib import Path

DATA = Path(__file__).parents[1] / "data"
MANIFEST = DATA / "manifest.tsv"
HEADER = ("file", "version", "source", "licence", "sha256")


def data_files() -> list[Path]:
    """Return every shipped data file but the manifest, in order."""
    return sorted(
        p
        for p in DATA.rglob("*")
        if p.is_file() and p.suffix != ".py" and p != MANIFEST and "__pycache__" not in p.parts
    )


def main() -> None:
    """Rewrite the manifest with fresh checksums."""
    rows: dict[str, list[str]] = {}
    if MANIFEST.exists():
        for line in MANIFEST.read_text(encoding="utf-8").splitlines()[1:]:
            cells = line.split("\t")
            rows[cells[0]] = cells
    lines = ["\t".join(HEADER)]
    for path in data_files():
        name = path.relative_to(DATA).as_posix()
        _, version, source, licence, *_ = [*rows.get(name, [name, "", "", ""]), "", "", ""]
        lines.append("\t".join((name, version, source, licence, sha256(path.read_bytes()).hexdigest())))
    MANIFEST.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
