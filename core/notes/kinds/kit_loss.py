"""Kits die in the nest or at the doe's foot."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class KitsLost:
    """Kits die in the nest or at the doe's foot."""

    kind: ClassVar[str] = "kits_lost"

    doe: Tag
    count: int
    on: date
    cause: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
