"""A whole litter on the scale."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class LitterWeighed:
    """A whole litter on the scale."""

    kind: ClassVar[str] = "litter_weighed"

    doe: Tag
    grams: int
    on: date
    count: int | None = None
    age_days: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
