"""Where it is worked out what takes the big libraries: here, or wherever a shell that runs for weeks would rather have it."""

from __future__ import annotations

from collections.abc import Callable
from typing import ParamSpec, Protocol, TypeVar

P = ParamSpec("P")
Found = TypeVar("Found")


class Reckon(Protocol):
    """Has something worked out, and waits for it."""

    def __call__(self, what: Callable[P, Found], /, *given: P.args, **named: P.kwargs) -> Found:
        """What the function gives. It is a function of a module, which another process knows by its name, and asks neither clock nor book."""
        ...


def here(what: Callable[P, Found], /, *given: P.args, **named: P.kwargs) -> Found:
    """In this very thread."""
    return what(*given, **named)
