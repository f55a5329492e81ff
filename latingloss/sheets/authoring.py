"""A booklet read from a small YAML file that names the text files it is made of, so that it can be made again.

title: Songs for the parish choir
introduction: For the Thursday rehearsal.
texts:
  - latin: evening.la.txt        # beside this file
    english: evening.en.txt      # these and all below may be left out
    corrections: evening.yaml
    title: A Blessing at Evening
    introduction: To close the rehearsal.
    source: Written for the choir; CC BY-SA 4.0
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from latingloss.errors import FormatError

_TOP = {"title": str, "introduction": str, "texts": list}
_KEYS = {"latin": str, "english": str, "corrections": str, "title": str, "introduction": str, "source": str}


class TextPlan(NamedTuple):
    """The files and words of one text, not yet read."""

    latin: str
    english: str | None = None
    corrections: str | None = None
    title: str = ""
    introduction: str = ""
    source: str = ""


class BookletPlan(NamedTuple):
    """What a booklet file says."""

    texts: tuple[TextPlan, ...]
    title: str = ""
    introduction: str = ""


def booklet_plan(content: str, *, name: str) -> BookletPlan:
    """Read a booklet file; file names in it are relative to `name`, the file's own.

    Raises FormatError, with the line where YAML gives one, for anything but what is shown above.

    >>> booklet_plan("texts: [{latin: hymn.la.txt}]", name="songs/hymns.yaml").texts[0].latin
    'songs/hymn.la.txt'
    """
    try:
        found = yaml.safe_load(content)
    except yaml.YAMLError as error:
        mark = getattr(error, "problem_mark", None)
        where = f", line {mark.line + 1}, column {mark.column + 1}" if mark else ""
        raise FormatError(f"{name}{where}: {getattr(error, 'problem', None) or 'not YAML'}") from None
    top = _checked(found, _TOP, name)
    if not top.get("texts"):
        raise FormatError(f"{name}: no texts; list them under 'texts:', each with 'latin:' and a file name")
    return BookletPlan(**top | {"texts": tuple(_text(text, name, n) for n, text in enumerate(top["texts"], 1))})


def _text(found: Any, name: str, number: int) -> TextPlan:
    keys = _checked(found, _KEYS, f"{name}, text {number}")
    if "latin" not in keys:
        raise FormatError(f"{name}, text {number}: no 'latin:'; name the file with the Latin")
    home = Path(name).parent
    return TextPlan(**{k: str(home / v) if k in ("latin", "english", "corrections") else v for k, v in keys.items()})


def _checked(found: Any, allowed: Mapping[str, type], where: str) -> dict[str, Any]:
    if not isinstance(found, dict):
        raise FormatError(f"{where}: give 'key: value' lines with any of {', '.join(allowed)}")
    for key, value in found.items():
        if key not in allowed:
            raise FormatError(f"{where}: no key {key!r}; allowed are {', '.join(allowed)}")
        if not isinstance(value, allowed[key]):
            kind = "a list" if allowed[key] is list else "text; put it in quotes"
            raise FormatError(f"{where}: {key} must be {kind}")
    return found
