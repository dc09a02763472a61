"""One server a book: a second one would fight over the messages and might answer twice."""

from __future__ import annotations

import hashlib
import os
import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from functools import partial
from pathlib import Path

#: A book that is a file: its path alone, or a SQLite address with it.
FILE = re.compile(r"(?:sqlite(?:\+\w+)?:///)?(?!:memory:)([^:?][^?]*)(?:\?.*)?")


class AlreadyServedError(Exception):
    """Another `serve` runs for this book."""


def lock_file(url: str, bot: str, folder: Path) -> Path:
    """Where the lock lies: beside a book that is a file, else in the data folder, named after the book and the bot."""
    if "://" not in url or url.startswith("sqlite"):
        found = FILE.fullmatch(url)
        if found:
            return Path(found[1] + ".serving")
    return folder / f"serving-{hashlib.sha256(f'{url} {bot}'.encode()).hexdigest()[:16]}.lock"


@contextmanager
def alone(file: Path) -> Iterator[Callable[[], None]]:
    """Hold the lock. It ends with the process, however that ends. AlreadyServedError where somebody else holds it.

    What it gives is to be called now and then as a sign of life: the file's time says when that was last.
    """
    file.parent.mkdir(parents=True, exist_ok=True)
    held = os.open(file, os.O_RDWR | os.O_CREAT, 0o600)
    try:
        _hold(held)
        yield partial(_touch, file)
    finally:
        os.close(held)


def _touch(file: Path) -> None:
    """A sign of life. A disk that takes none must stop nothing else."""
    with suppress(OSError):
        os.utime(file)


def last_sign(file: Path) -> tuple[float | None, bool]:
    """When a server of that book last gave a sign of life [s since 1970], and whether one runs now."""
    try:
        when = file.stat().st_mtime
        with alone(file):
            pass
    except FileNotFoundError:
        return None, False
    except AlreadyServedError:
        return when, True
    return when, False


def _hold(held: int) -> None:
    """Take the lock of an open file."""
    try:
        if os.name == "nt":  # pragma: no cover - Windows has no flock
            import msvcrt  # noqa: PLC0415 - only there

            msvcrt.locking(held, msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined,unused-ignore]
        else:
            import fcntl  # noqa: PLC0415 - not on Windows

            fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as error:
        raise AlreadyServedError(str(error)) from error
