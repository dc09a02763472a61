"""How an animal behaves to people."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class TemperShown:
    """How an animal behaves to people."""

    kind: ClassVar[str] = "temper"

    who: Tag
    grade: str
    on: date
    sign: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
