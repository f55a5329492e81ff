"""Offline builders of the shipped statistics; deterministic, run by hand, inputs named in the data manifest."""
