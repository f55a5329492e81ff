"""What the figures were measured on: machine, commit, version of the data."""

from __future__ import annotations

import os
import platform
import subprocess
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path

import latingloss
from latingloss.building.manifest import DATA, data_files


def setting() -> dict[str, str]:
    """Return the facts without which the figures say little."""
    load = ", ".join(f"{value:.1f}" for value in os.getloadavg())
    return {
        "measured": datetime.now(UTC).strftime("%Y-%m-%d %H:%M UTC"),
        "machine": f"{_processor()}, {os.cpu_count()} cores, {platform.system()} {platform.release()}",
        "load before the run (1, 5, 15 minutes)": load,
        "Python": platform.python_version(),
        "latingloss": f"{latingloss.__version__}, commit {_commit()}",
        "data": f"sha256 {_data_digest()[:16]} over all shipped tables",
    }


def _processor() -> str:
    names = [line for line in Path("/proc/cpuinfo").read_text().splitlines() if line.startswith("model name")]
    return names[0].partition(":")[2].strip() if names else platform.processor()


def _commit() -> str:
    def git(*arguments: str) -> str:
        found = subprocess.run(("git", *arguments), capture_output=True, text=True, cwd=Path(__file__).parent)
        return found.stdout.strip()

    changed = " with uncommitted changes" if git("status", "--porcelain") else ""
    return (git("rev-parse", "--short", "HEAD") or "unknown") + changed


def _data_digest() -> str:
    digest = sha256()
    for path in data_files():
        digest.update(path.relative_to(DATA).as_posix().encode() + path.read_bytes())
    return digest.hexdigest()
