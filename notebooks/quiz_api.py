"""A small quiz API: it annotates a text, or makes exercises of it. Run it by `uvicorn quiz_api:app` in this folder.

The work is done in threads, so that the server goes on taking requests. It says no early: a body that is too large is
answered 413 before it is read to its end, and a request for which too many wait already is answered 503 at once.
"""

from __future__ import annotations

import asyncio
import gc
from collections.abc import AsyncIterator, Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import asynccontextmanager
from typing import Any, TypeVar

from fastapi import FastAPI, HTTPException, Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse, Response
from pydantic import BaseModel, Field
from starlette.types import ASGIApp, Message, Receive, Scope, Send

import latingloss
from latingloss.document import Document
from latingloss.formats import schema
from latingloss.sheets.practice import KINDS, Exercise, exercises

MOST_BYTES = 65_536  # of a request's body
MOST_CHARACTERS = 5_000  # of a text: some 100 lines, read in 0.3 s, in 1 s if its words are all new
MOST_PENDING = 16  # requests in work or waiting; if all are short the last of them waits 0.1 to 0.2 s
THREADS = 2  # Python runs one at a time; the second keeps short texts from waiting for a long one

T = TypeVar("T")


class Text(BaseModel):
    """A Latin text with its English rendering."""

    latin: str = Field(max_length=MOST_CHARACTERS)
    english: str | None = Field(default=None, max_length=MOST_CHARACTERS)


class Quiz(Text):
    """A text, and the exercises wanted of it; another variant asks for other words."""

    kinds: list[str] = Field(["match"], max_length=len(KINDS), description=f"any of {', '.join(KINDS)}")
    variant: int = 1


class SizeLimit:
    """Stop reading a request whose body is larger than `most` bytes, whatever length it says it has."""

    def __init__(self, app: ASGIApp, most: int) -> None:
        self.app, self.most = app, most

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, counting what is read of it."""
        read = 0

        async def counted() -> Message:
            nonlocal read
            message = await receive()
            read += len(message.get("body", b""))
            if read > self.most:
                raise HTTPException(413, f"a request may have {self.most:,} bytes", headers={"Connection": "close"})
            return message

        await self.app(scope, counted, send)


class Pool:
    """Threads to work in, and a limit to how many may be waiting for them."""

    def __init__(self, threads: int, most: int) -> None:
        self.threads, self.most, self.pending = ThreadPoolExecutor(threads), most, 0

    async def run(self, work: Callable[..., T], *args: object) -> T:
        """Return what `work` does in a thread; raise 503 at once if too many wait."""
        if self.pending >= self.most:
            raise HTTPException(503, "too many requests are waiting; ask again soon", headers={"Retry-After": "1"})
        self.pending += 1
        try:
            return await asyncio.get_running_loop().run_in_executor(self.threads, work, *args)
        finally:
            self.pending -= 1


@asynccontextmanager
async def _ready(app: FastAPI) -> AsyncIterator[None]:
    """Read the tables before the first request comes, those for unknown words too."""
    await pool.run(latingloss.annotate, "Lux flabrigo venit.", "Light comes.")
    gc.freeze()  # the tables never go: to look through them again and again held requests up for 0.2 s
    yield
    gc.unfreeze()


pool = Pool(THREADS, MOST_PENDING)
app = FastAPI(title="Latin quiz", lifespan=_ready)
app.add_middleware(SizeLimit, most=MOST_BYTES)


@app.exception_handler(latingloss.LatinglossError)
def _unfit(request: Request, error: Exception) -> Response:
    return JSONResponse({"detail": str(error)}, 422)


@app.exception_handler(RequestValidationError)
def _invalid(request: Request, error: RequestValidationError) -> Response:
    """Say what is wrong without sending the input back: it may be long, or not be writable as UTF-8."""
    return JSONResponse({"detail": [{"where": found["loc"], "what": found["msg"]} for found in error.errors()]}, 422)


@app.post("/annotate", response_model=Document)
async def annotate(text: Text) -> Response:
    """Annotate a text; the answer follows the JSON Schema at `/schema`."""
    return Response(await pool.run(_annotated, text), media_type="application/json")


def _annotated(text: Text) -> str:
    return schema.write(latingloss.annotate(text.latin, text.english))


@app.post("/quiz")
async def quiz(text: Quiz) -> list[Exercise]:
    """Make exercises, each item with its answers."""
    return await pool.run(_exercises, text)


def _exercises(text: Quiz) -> list[Exercise]:
    return list(exercises(latingloss.annotate(text.latin, text.english), text.kinds, variant=text.variant))


@app.get("/schema")
def json_schema() -> dict[str, Any]:
    """Return the JSON Schema of an annotated text."""
    return schema.json_schema()
