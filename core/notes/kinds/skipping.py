"""A chore will not be done this time."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Skipped:
    """A chore will not be done this time."""

    kind: ClassVar[str] = "skipped"

    chore: str
    on: date
    who: Tag | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
