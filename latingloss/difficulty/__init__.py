"""Difficulty: frequency, length, cognate distance, the score, and the words worth picking out."""
