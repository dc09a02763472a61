"""Column types that hand back exactly what was put in: moments in UTC, money, and small structures as JSON text."""

from __future__ import annotations

import json
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import DateTime, Dialect, Integer, Text, TypeDecorator

from core.notes.fact import Cents, ColorCounts, Fields


class Moment(TypeDecorator[datetime]):
    """A moment, kept in UTC. ValueError for one without an offset: whose seven o'clock would it be?"""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:  # noqa: ARG002 - SQLAlchemy's signature
        """What goes to the database."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError(f"{value.isoformat()} has no offset")
        return value.astimezone(UTC)

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:  # noqa: ARG002 - SQLAlchemy's signature
        """What comes back: SQLite forgets the offset, PostgreSQL answers in its own."""
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


class Money(TypeDecorator[Cents]):
    """Cents."""

    impl = Integer
    cache_ok = True

    def process_bind_param(self, value: Cents | None, dialect: Dialect) -> int | None:  # noqa: ARG002 - SQLAlchemy's signature
        """What goes to the database: a bare integer."""
        return None if value is None else int(value)

    def process_result_value(self, value: int | None, dialect: Dialect) -> Cents | None:  # noqa: ARG002 - SQLAlchemy's signature
        """Cents again."""
        return None if value is None else Cents(value)


class JsonText(TypeDecorator[Any]):
    """Anything that JSON can say, as text; None stays null."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: Any, dialect: Dialect) -> str | None:  # noqa: ARG002 - SQLAlchemy's signature
        """What goes to the database."""
        return None if value is None else json.dumps(value, ensure_ascii=False)

    def process_result_value(self, value: str | None, dialect: Dialect) -> Any:  # noqa: ARG002 - SQLAlchemy's signature
        """What was put in."""
        return None if value is None else json.loads(value)


class PairsText(JsonText):
    """Names with values, such as the colours of a litter, as a JSON list of pairs: order and repeats are kept."""

    cache_ok = True

    def __init__(self, made: type[ColorCounts] | type[Fields]) -> None:
        """Keep what to make of the pairs."""
        super().__init__()
        self.made = made

    def process_result_value(self, value: str | None, dialect: Dialect) -> ColorCounts | Fields | None:
        """The pairs as the fact holds them."""
        pairs = super().process_result_value(value, dialect)
        return None if pairs is None else self.made(tuple((name, each) for name, each in pairs))
