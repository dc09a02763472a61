"""Bringing a book up to the form that this version of the program writes, each time one is opened."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from sqlalchemy import Connection, inspect, select
from sqlalchemy.sql import column, func, table

from core.store.engine import engine

if TYPE_CHECKING:
    from alembic.config import Config

#: The newest form. Alembic takes a while to load, so a book that already has it is opened without.
HEAD = "0004"

MIGRATIONS = Path(__file__).parent / "migrations"

#: Any number: all programs that open the same PostgreSQL book wait for each other under it.
LOCK = 7_405_221


class UnknownFormError(Exception):
    """The book was written by a newer version of the program."""


def bring_up(url: str) -> None:
    """Make the tables, or change them to today's form. Raises UnknownFormError for a book from the future."""
    made = engine(url, foreign_keys=False)
    try:
        with made.begin() as connection:
            if connection.dialect.name == "postgresql":
                connection.execute(select(func.pg_advisory_xact_lock(LOCK)))
            if form(connection) != HEAD:
                _upgrade(connection)
    finally:
        made.dispose()


def form(connection: Connection) -> str | None:
    """The form that the book has; None for an empty database."""
    if not inspect(connection).has_table("alembic_version"):
        return None
    found: str | None = connection.scalar(select(column("version_num")).select_from(table("alembic_version")))
    return found


def config(connection: Connection) -> Config:
    """Alembic's settings, with the connection to work on."""
    from alembic.config import Config  # noqa: PLC0415 - slow to load, and seldom needed

    settings = Config()
    settings.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    settings.attributes["connection"] = connection
    return settings


def _upgrade(connection: Connection) -> None:
    """Run the migrations that are missing."""
    from alembic import command  # noqa: PLC0415 - slow to load, and seldom needed
    from alembic.util import CommandError  # noqa: PLC0415 - the same

    try:
        command.upgrade(config(connection), "head")
    except CommandError as error:
        raise UnknownFormError(str(error)) from error
