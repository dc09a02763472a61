"""A mark for type, fur, colour, size or the whole animal."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Scored:
    """A mark for type, fur, colour, size or the whole animal."""

    kind: ClassVar[str] = "scored"

    who: Tag
    trait: str
    score: float
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
