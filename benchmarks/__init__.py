"""Every figure of latingloss in one run: `python -m benchmarks`."""
