"""English kin of Latin words: relatives that make a word stick, and how little an English word recalls it."""

from latingloss.kin.distance import cognate_distance as cognate_distance
from latingloss.kin.frequency import english_zipf as english_zipf
from latingloss.kin.relations import relatives as relatives
from latingloss.kin.relations import relatives_of as relatives_of
