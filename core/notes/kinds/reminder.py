"""Something to be reminded of."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Reminder:
    """Something to be reminded of."""

    kind: ClassVar[str] = "remind"

    text: str
    on: date
    time: str | None = None
    who: Tag | None = None
    key: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
