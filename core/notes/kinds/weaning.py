"""A litter leaves its doe."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Weaned:
    """A litter leaves its doe."""

    kind: ClassVar[str] = "weaned"

    doe: Tag
    count: int
    on: date
    bucks: int | None = None
    does: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
