"""A rabbit is put in another cage."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A rabbit is put in another cage."""

    kind: ClassVar[str] = "moved"

    who: Tag
    cage: str
    on: date
