"""Formats: one file each, `write(document)` to text and, where the standard allows, `read(text)` back."""
