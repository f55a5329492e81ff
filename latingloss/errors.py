"""Every error that latingloss raises on purpose, one family.

>>> issubclass(TextError, ValueError) and issubclass(TextError, LatinglossError)
True
"""


class LatinglossError(Exception):
    """Root of the family: catch it to catch everything that latingloss raises on purpose."""


class TextError(LatinglossError, ValueError):
    """The text given cannot be read: empty, too long, or without a letter where a word is needed."""


class InputTypeError(LatinglossError, TypeError):
    """A value of the wrong type was given, such as bytes for text."""


class OptionError(LatinglossError, ValueError):
    """An option has a value outside those allowed."""


class UnknownLemmaError(LatinglossError, LookupError):
    """No entry of the lexicon has this lemma."""


class FormatError(LatinglossError, ValueError):
    """A file does not follow its format; the message gives file, line and column."""


class DataError(LatinglossError, ValueError):
    """A table shipped with latingloss, or put in its place, is malformed; the message gives file and line."""


class MissingExtraError(LatinglossError, ImportError):
    """An optional package is not installed; the message gives the pip command."""
