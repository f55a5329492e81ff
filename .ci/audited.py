"""Tells what pip-audit found; exits 1 for a known weakness, 0 also if its service cannot be reached, and says so."""

import json
import sys
from pathlib import Path

report = Path(sys.argv[1])
packages = json.loads(report.read_text())["dependencies"] if report.exists() else []
weak = [package for package in packages if package.get("vulns")]
audited = [package for package in packages if "skip_reason" not in package]
for package in weak:
    print(package["name"], package["version"], *(found["id"] for found in package["vulns"]))
if audited:
    print(f"{len(audited)} of {len(packages)} packages audited, {len(weak)} with known weaknesses")
else:
    print("NOT AUDITED: the service that knows of weaknesses cannot be reached from here")
sys.exit(bool(weak))
