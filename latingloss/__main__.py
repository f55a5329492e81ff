"""`python -m latingloss`."""

from latingloss.cli import main

raise SystemExit(main())
