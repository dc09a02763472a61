"""A chore that has no event of its own was done."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoreDone:
    """A chore that has no event of its own was done."""

    kind: ClassVar[str] = "done"

    chore: str
    on: date
    who: Tag | None = None
    key: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
