"""Counts the steps that a program takes in its database, and stops it at one of them."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

from sqlalchemy import Engine, event

Stop = Callable[[], None]


class FaultError(Exception):
    """The step that failed."""


def fail() -> None:
    """Stop by an error, as a full disk would."""
    raise FaultError


def die() -> None:
    """Stop at once, as `kill -9` would: nothing is tidied up, no transaction is ended."""
    os._exit(9)


@contextmanager
def stopping_at(engine: Engine, step: int, stop: Stop) -> Iterator[list[str]]:
    """Stop before the step of that number, counted from 0: each statement, and each commit. What was reached is listed."""
    reached: list[str] = []

    def count(what: str) -> None:
        reached.append(what)
        if len(reached) == step + 1:
            stop()

    def statement(_connection: Any, _cursor: Any, words: str, *_rest: Any) -> None:
        count(words.split("\n", 1)[0])

    def commit(_connection: Any) -> None:
        count("COMMIT")

    event.listen(engine, "before_cursor_execute", statement)
    event.listen(engine, "commit", commit)
    try:
        yield reached
    finally:
        event.remove(engine, "before_cursor_execute", statement)
        event.remove(engine, "commit", commit)
