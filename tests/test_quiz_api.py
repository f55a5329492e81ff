"""The quiz API of the second notebook: what it answers, and when it says no."""

from __future__ import annotations

import asyncio
import gc
import importlib
import json
from collections import Counter
from collections.abc import AsyncIterator
from pathlib import Path
from threading import Event
from types import ModuleType
from typing import Any

import pytest

import latingloss
from latingloss.formats import schema

pytest.importorskip("fastapi", reason="needs the extra notebook")
httpx = pytest.importorskip("httpx", reason="needs the extra notebook")

LATIN = "Vesper venit,\net stellae noctis clarae lucent."
ENGLISH = "Evening comes,\nand the bright stars of the night shine."
JSON = {"Content-Type": "application/json"}


@pytest.fixture
def api(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    monkeypatch.syspath_prepend(Path(__file__).parents[1] / "notebooks")
    return importlib.import_module("quiz_api")


def client(api: ModuleType) -> Any:
    return httpx.AsyncClient(transport=httpx.ASGITransport(api.app), base_url="http://quiz")


def post(api: ModuleType, path: str, **request: Any) -> Any:
    async def ask() -> Any:
        async with client(api) as asked:
            return await asked.post(path, **request)

    return asyncio.run(ask())


def test_annotation_is_the_library_s_own(api: ModuleType) -> None:
    answer = post(api, "/annotate", json={"latin": LATIN, "english": ENGLISH})
    assert answer.status_code == 200
    assert schema.read(answer.text) == latingloss.annotate(LATIN, ENGLISH)


def test_answer_follows_the_schema_served(api: ModuleType) -> None:
    """Checked by the package jsonschema, against draft 2020-12 of JSON Schema."""
    jsonschema = pytest.importorskip("jsonschema")

    async def ask() -> tuple[Any, Any]:
        async with client(api) as asked:
            return (await asked.post("/annotate", json={"latin": LATIN})).json(), (await asked.get("/schema")).json()

    answer, served = asyncio.run(ask())
    jsonschema.Draft202012Validator(served).validate(answer)
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.Draft202012Validator(served).validate(answer | {"source": None})


def test_quiz_has_gaps_and_as_many_answers(api: ModuleType) -> None:
    answer = post(api, "/quiz", json={"latin": LATIN, "english": ENGLISH, "kinds": ["match"], "variant": 3})
    (match,) = answer.json()
    assert len(match["items"]) >= 4
    for item in match["items"]:
        assert [part["kind"] for part in item["parts"]].count("letter") == len(item["answers"]) == 1


@pytest.mark.parametrize(
    "body",
    [
        b'{"latin": "123"}',  # no Latin letter
        b'{"latin": ""}',
        b'{"english": "Light"}',
        b'{"latin": "lux \\ud800"}',  # half a character
        b'{"latin": ',
        b"\xff",
        b"[" * 50_000,
        json.dumps({"latin": "lux " * 2_000}).encode(),  # a text too long
        b'{"latin": "lux", "kinds": ["sermon"]}',
        b'{"latin": "lux", "variant": ' + b"9" * 5_000 + b"}",
    ],
)
def test_bad_request_is_told_what_is_wrong(api: ModuleType, body: bytes) -> None:
    """Codes by RFC 9110, sections 15.5.1 and 15.5.21."""
    answer = post(api, "/quiz", content=body, headers=JSON)
    assert answer.status_code in (400, 422)
    assert answer.json()["detail"] and len(answer.content) < 500


def test_large_request_is_not_read_to_its_end(api: ModuleType) -> None:
    sent = 0

    async def large() -> AsyncIterator[bytes]:
        nonlocal sent
        for _ in range(1_000):
            sent += 1_000
            yield b"a" * 1_000

    answer = post(api, "/annotate", content=large(), headers=JSON)
    assert answer.status_code == 413
    assert api.MOST_BYTES < sent <= api.MOST_BYTES + 2_000


def test_overload_is_answered_at_once_and_the_rest_served(api: ModuleType) -> None:
    """More requests than may wait come while every thread is busy: those too many get 503 before any is served."""
    go, statuses = Event(), Counter[int]()

    async def ask(asked: Any) -> None:
        answer = await asked.post("/annotate", json={"latin": "Lux venit."})
        statuses[answer.status_code] += 1
        if statuses[503] == 5:
            go.set()  # none of the others could be served before

    async def crowd() -> None:
        async with client(api) as asked:
            await asyncio.gather(*(ask(asked) for _ in range(api.MOST_PENDING + 5)))

    for _ in range(api.THREADS):
        api.pool.threads.submit(go.wait, 60)
    asyncio.run(crowd())
    assert go.is_set() and statuses == {200: api.MOST_PENDING, 503: 5}
    assert post(api, "/annotate", json={"latin": "Lux venit."}).status_code == 200


def test_tables_stay_out_of_collections_while_the_server_runs(api: ModuleType) -> None:
    async def run() -> int:
        async with api.app.router.lifespan_context(api.app):
            return gc.get_freeze_count()

    assert asyncio.run(run()) > 10_000
    assert gc.get_freeze_count() == 0
