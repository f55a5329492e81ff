"""Corrections read from YAML, or JSON, which is YAML, and written again.

Only text, lists and mappings are read, from the events of the parser: no tag is obeyed, no anchor followed, no object
made, and every value is text until the models read it, so that `no` stays the Latin word.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import yaml
from pydantic import ValidationError

from latingloss.corrections.models import Corrections, LineCorrections, WordCorrection
from latingloss.document import Record
from latingloss.errors import FormatError
from latingloss.text.checking import check_string, check_whole

_MOST_CHARACTERS = 1_000_000
_MOST_TOLD = 10  # mistakes at a time
_DEEPEST = 6
# what is wanted where, by pydantic's name of the mistake
_WANTED = {
    "missing": "no {!r} here; give it",
    "tuple_type": "{!r} is a list; give its items in brackets, or each on a line after a dash",
    "too_short": "{!r} is an empty list; give at least one, or leave it out",
    "model_type": "keys with values are wanted here, as in `word: noctem`",
    "string_type": "{!r} is text; give one word or line",
    "bool_parsing": "{!r} is true or false",
    "float_parsing": "{!r} is a number from 0 to 1",
    "greater_than_equal": "{!r} is a number from 0 to 1",
    "less_than_equal": "{!r} is a number from 0 to 1",
}
_NULLS = ("", "~", "null", "Null", "NULL")

_Path = tuple[str | int, ...]
_Place = tuple[int, int]  # line and column, from 1


def read(text: str, *, name: str = "corrections") -> Corrections:
    """Read corrections; `name` says in messages which text it is, such as the file's name.

    Raises `FormatError` with line and column if the text is not YAML, has anchors, tags or keys that are not known,
    or says of a word what cannot be said, up to ten mistakes at a time, each on a line; `InputTypeError` for anything
    but `str`.

    >>> read("everywhere: [{word: Cecilia, lemma: Caecilia}]").everywhere[0].lemma
    'Caecilia'
    >>> read("everywhere: [{word: Cecilia, lema: Caecilia}]")  # doctest: +ELLIPSIS
    Traceback (most recent call last):
    latingloss.errors.FormatError: corrections, line 1, column 30: no key 'lema'; the keys are word, lemma, upos, ...
    """
    check_string(text, name)
    check_whole(text, name)
    if len(text) > _MOST_CHARACTERS:
        raise FormatError(f"{name}: {len(text):,} characters, and corrections may have {_MOST_CHARACTERS:,}; cut them")
    built = _Built(name, text)
    try:
        return Corrections.model_validate({} if built.value is None else built.value)
    except ValidationError as error:
        raise built.error(error) from None


def write(corrections: Corrections) -> str:
    """Write corrections as YAML that `read` reads again.

    >>> print(write(read('everywhere: [{"word": "Cecilia", "english": ["Cecily"]}]')), end="")
    everywhere:
      - word: Cecilia
        english: [Cecily]
    """
    found = corrections.model_dump(exclude_none=True, exclude_defaults=True)
    lists = {key: [_listed(entry) for entry in entries] for key, entries in found.items()}
    return yaml.dump(lists, Dumper=_Dumper, allow_unicode=True, sort_keys=False, width=10**6) if lists else ""


def _listed(entry: dict[str, Any]) -> dict[str, Any]:
    return {key: list(value) if key == "words" else value for key, value in entry.items()}


class _Dumper(yaml.SafeDumper):
    """Lists a level further in than their key, tuples in brackets, no anchors."""

    def increase_indent(self, flow: bool = False, indentless: bool = False) -> None:
        super().increase_indent(flow, False)

    def ignore_aliases(self, data: object) -> bool:
        return True


def _text(dumper: yaml.SafeDumper, text: str) -> yaml.ScalarNode:
    """Escape what does not print: PyYAML loses some line ends (U+0085) that it writes bare."""
    return dumper.represent_scalar("tag:yaml.org,2002:str", text, style=None if text.isprintable() else '"')


_Dumper.add_representer(str, _text)
_Dumper.add_representer(tuple, lambda d, items: d.represent_sequence("tag:yaml.org,2002:seq", items, flow_style=True))


class _Built:
    """The plain values of a YAML text, and where each stands."""

    def __init__(self, name: str, text: str) -> None:
        self.name = name
        self.places: dict[_Path, _Place] = {(): (1, 1)}
        self.keys: dict[_Path, _Place] = {}
        self.noted: list[tuple[_Place, str]] = []
        try:
            self.value = self._document(yaml.parse(text, Loader=yaml.SafeLoader))
        except yaml.MarkedYAMLError as error:
            mark = error.problem_mark or error.context_mark
            raise self._wrong(_place(mark) if mark else (1, 1), f"not YAML: {error.problem}") from None
        except yaml.reader.ReaderError as error:
            before = text[: error.position]
            place = before.count("\n") + 1, len(before) - before.rfind("\n")
            said = f"character U+{error.character:04X}, which no YAML text has; take it out"
            raise self._wrong(place, said) from None
        if self.noted:
            raise self._told()

    def error(self, found: ValidationError) -> FormatError:
        """Return what the models say is wrong as one error, each mistake with its place."""
        errors = found.errors(include_url=False)
        within = {one["loc"][:depth] for one in errors for depth in range(len(one["loc"]))}
        self.noted = [  # a list whose items are all wrong counts as empty
            self._mistake(one) for one in errors if one["type"] != "too_short" or one["loc"] not in within
        ]
        return self._told()

    def _mistake(self, found: Any) -> tuple[_Place, str]:
        path: _Path = (*found["loc"], *found.get("ctx", {}).get("at", ()))
        if found["type"] == "extra_forbidden":
            keys = ", ".join(_model_at(path).model_fields)
            return self.keys[path], f"no key {path[-1]!r}; the keys are {keys}"
        wanted = _WANTED.get(found["type"])
        said = wanted.format(path[-1] if path else "") if wanted else found["msg"]
        while path not in self.places:
            path = path[:-1]
        return self.places[path], said

    def _wrong(self, place: _Place, said: str) -> FormatError:
        """Return the error of a mistake after which nothing can be read, with what was noted before."""
        self.noted.append((place, said))
        return self._told()

    def _told(self) -> FormatError:
        told = [f"{self.name}, line {line}, column {column}: {said}" for (line, column), said in sorted(self.noted)]
        more = [f"{self.name}: {len(told) - _MOST_TOLD} more mistakes"] if len(told) > _MOST_TOLD else []
        return FormatError("\n".join([*told[:_MOST_TOLD], *more]))

    def _document(self, events: Iterator[yaml.Event]) -> Any:
        value = None
        documents = 0
        for event in events:
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents > 1:
                    raise self._wrong(_place(event.start_mark), "a second document (---); give one")
            elif isinstance(event, yaml.NodeEvent):
                value = self._node(event, events, ())
        return value

    def _node(self, event: yaml.Event, events: Iterator[yaml.Event], path: _Path) -> Any:
        place = self.places[path] = _place(event.start_mark)
        if isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None):
            self.noted.append((place, "an anchor (&) or alias (*); write it out, or put text into quotes"))
        if tag := getattr(event, "tag", None):
            self.noted.append((place, f"a tag, {tag!r}; take it out, or put text into quotes"))
        if isinstance(event, yaml.AliasEvent):
            return None
        if isinstance(event, yaml.ScalarEvent):
            return None if event.style is None and event.value in _NULLS else event.value
        if len(path) > _DEEPEST:
            raise self._wrong(place, f"more than {_DEEPEST} levels of lists in lists; take some out")
        return self._list(events, path) if isinstance(event, yaml.SequenceStartEvent) else self._mapping(events, path)

    def _list(self, events: Iterator[yaml.Event], path: _Path) -> list[Any]:
        items: list[Any] = []
        while not isinstance(event := next(events), yaml.SequenceEndEvent):
            items.append(self._node(event, events, (*path, len(items))))
        return items

    def _mapping(self, events: Iterator[yaml.Event], path: _Path) -> dict[str, Any]:
        pairs: dict[str, Any] = {}
        while not isinstance(event := next(events), yaml.MappingEndEvent):
            place = _place(event.start_mark)
            if not isinstance(event, yaml.ScalarEvent):
                raise self._wrong(place, "a list or mapping as key; give a word")
            key = event.value
            if key in pairs:
                self.noted.append((place, f"{key!r} comes twice; write it once"))
            self.keys[*path, key] = place
            pairs[key] = self._node(next(events), events, (*path, key))
        return pairs


def _model_at(path: _Path) -> type[Record]:
    if len(path) == 1:
        return Corrections
    return LineCorrections if path[0] == "passages" and len(path) == 3 else WordCorrection


def _place(mark: Any) -> _Place:
    return mark.line + 1, mark.column + 1
