"""Reads Web Annotations that `latingloss.formats.webannotation` wrote, on the text as it is now."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from pydantic import ValidationError

from latingloss.document import Token
from latingloss.errors import FormatError
from latingloss.text.checking import check_string


def read(text: str, source: str) -> list[Token]:
    """Read the words annotated, in the order of `source`, the Latin text that they are in.

    A word that is not where it was is looked for by its quotation, with as much of what stood around it as still
    does; one that is gone is left out, and so are annotations without an analysis. Raises `FormatError` if the text
    is not JSON, no collection of annotations, or an analysis does not follow the schema.

    >>> from latingloss import annotate
    >>> from latingloss.formats.webannotation import write
    >>> written = write(annotate("Stellae lucent."))
    >>> [(t.text, t.start) for t in read(written, "Nunc stellae et Stellae lucent.")]
    [('Stellae', 16), ('lucent', 24)]
    """
    check_string(source, "source")
    tokens = []
    for number, item in enumerate(_items(text)):
        try:
            analysis = _analysis(item.get("body"))
            place = _place(item["target"]["selector"], source) if analysis else None
            if analysis and place:
                own = {"text": source[place[0] : place[1]], "start": place[0], "end": place[1]}
                tokens.append(Token.model_validate_json(json.dumps(json.loads(analysis) | own)))
        except ValidationError as error:
            first = error.errors()[0]
            raise _wrong(number, f"{'.'.join(map(str, first['loc'])) or 'analysis'}: {first['msg']}") from error
        except (KeyError, TypeError, AttributeError, ValueError, RecursionError) as error:
            raise _wrong(number, f"{type(error).__name__}: {error}") from error
    return sorted(tokens, key=lambda token: token.start)


def _wrong(number: int, said: str) -> FormatError:
    return FormatError(f"Web Annotation, items[{number}]: {said}")


def _items(text: str) -> Iterator[Any]:
    try:
        whole = json.loads(text)
    except (TypeError, ValueError, RecursionError) as error:
        raise FormatError(f"Web Annotation: not JSON: {error}") from error
    page = whole.get("first") if isinstance(whole, dict) else None
    items = page.get("items") if isinstance(page, dict) else None
    if not isinstance(items, list):
        raise FormatError("Web Annotation: no first.items; give an AnnotationCollection with its page in it")
    yield from items


def _analysis(body: Any) -> str | None:
    """Return the JSON of the body that has it."""
    for one in body if isinstance(body, list) else [body]:
        if isinstance(one, dict) and one.get("format") == "application/json":
            value: str = one["value"]
            return value
    return None


def _place(selectors: list[dict[str, Any]], source: str) -> tuple[int, int] | None:
    """Return where the words quoted stand now: where they stood, else where most around them is as it was."""
    by_type = {selector["type"]: selector for selector in selectors}
    quote, position = by_type["TextQuoteSelector"], by_type["TextPositionSelector"]
    exact, start = quote["exact"], position["start"]
    if not exact:
        raise ValueError("an empty quotation")
    if start >= 0 and source.startswith(exact, start):
        return start, start + len(exact)
    found, at = [], source.find(exact)
    while at >= 0:
        around = _same(quote["prefix"][::-1], source[:at][::-1]) + _same(quote["suffix"], source[at + len(exact) :])
        found.append((around, -abs(at - start), at))
        at = source.find(exact, at + 1)
    if not found:
        return None
    best = max(found)[2]
    return best, best + len(exact)


def _same(one: str, other: str) -> int:
    """Count the characters that two texts begin with alike."""
    return next((i for i, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other)))
