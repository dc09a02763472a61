"""Kits move from one doe to another."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Fostered:
    """Kits move from one doe to another."""

    kind: ClassVar[str] = "fostered"

    from_: Tag
    to: Tag
    count: int
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
