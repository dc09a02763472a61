"""Both engines for the store's tests: SQLite in a temporary folder, PostgreSQL from the wheel."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlalchemy import Connection, Engine

from core.store.engine import engine
from core.store.migrate import bring_up
from core.store.people import add_farm
from tests.postgres import empty_postgres, postgres_server, postgres_template, postgres_url  # noqa: F401 - fixtures


@pytest.fixture(params=["sqlite", "postgres"])
def empty_url(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """A database with no tables, on each engine."""
    return f"sqlite:///{tmp_path}/book.sqlite" if request.param == "sqlite" else request.getfixturevalue("empty_postgres")


@pytest.fixture(params=["sqlite", "postgres"])
def book_url(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """A book in today's form, on each engine."""
    if request.param == "postgres":
        return str(request.getfixturevalue("postgres_url"))
    url = f"sqlite:///{tmp_path}/book.sqlite"
    bring_up(url)
    return url


@pytest.fixture
def opened(book_url: str) -> Iterator[Engine]:
    """An engine on the book."""
    made = engine(book_url)
    yield made
    made.dispose()


@pytest.fixture
def connection(opened: Engine) -> Iterator[Connection]:
    """A transaction on the book, with a farm of number 1."""
    with opened.begin() as begun:
        assert add_farm(begun, "home") == 1
        yield begun
