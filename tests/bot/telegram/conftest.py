"""A stand-in for the service, and a server on it whose owner is Ann."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.bot.telegram.served import Served
from tests.standin import StandIn


@pytest.fixture
def standin() -> Iterator[StandIn]:
    with StandIn() as served:
        yield served


@pytest.fixture
def served(standin: StandIn, tmp_path: Path) -> Iterator[Served]:
    with Served(standin, tmp_path / "book.sqlite") as server:
        yield server


@pytest.fixture
def barn(served: Served) -> Served:
    """The server, once Ann owns the book and has told of two animals."""
    served.owner()
    served.ask("Ann", "new doe 14")
    served.ask("Ann", "new buck 3")
    return served
