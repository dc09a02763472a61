"""A question for the book."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Query:
    """A question for the book."""

    kind: ClassVar[str] = "query"

    about: str
    who: Tag | None = None
    with_: Tag | None = None
    scope: str | None = None
    breed: str | None = None
    until: date | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
