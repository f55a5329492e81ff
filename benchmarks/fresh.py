"""Runs a piece of Python in a process of its own, for what can be measured only once: cold starts, peak memory."""

from __future__ import annotations

import json
import subprocess
import sys
from statistics import median

# The peak is read from /proc: getrusage in a child also counts what its parent held when it was started.
_PREFACE = """\
import json, sys
from time import perf_counter, process_time
def memory_mb():
    return next(int(l.split()[1]) for l in open("/proc/self/status") if l.startswith("VmHWM")) / 1024
"""


def fresh(code: str, *arguments: str, given: str = "") -> dict[str, float]:
    """Run code in a new interpreter and return the JSON it prints; `given` is its standard input.

    The code has the clocks of `time`, and `memory_mb`, which tells its peak.
    """
    command = (sys.executable, "-c", _PREFACE + code, *arguments)
    found = subprocess.run(command, capture_output=True, text=True, input=given)
    if found.returncode:
        raise SystemExit(f"a benchmark process failed:\n{found.stderr}")
    numbers: dict[str, float] = json.loads(found.stdout)
    return numbers


def median_of(times: int, code: str, *arguments: str) -> dict[str, float]:
    """Return the medians of so many fresh runs."""
    runs = [fresh(code, *arguments) for _ in range(times)]
    return {name: median(run[name] for run in runs) for name in runs[0]}
