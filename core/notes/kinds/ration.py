"""What an animal, or a class of animals, is fed a day."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class RationSet:
    """What an animal, or a class of animals, is fed a day."""

    kind: ClassVar[str] = "ration"

    amount: float
    unit: str
    on: date
    who: Tag | None = None
    scope: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
