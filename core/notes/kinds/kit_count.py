"""Somebody counts the kits under a doe."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class KitsCounted:
    """Somebody counts the kits under a doe."""

    kind: ClassVar[str] = "kit_count"

    doe: Tag
    count: int
    on: date
    age_days: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
