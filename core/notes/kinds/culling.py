"""An animal is butchered."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Culled:
    """An animal is butchered."""

    kind: ClassVar[str] = "culled"

    on: date
    who: Tag | None = None
    litter_of: Tag | None = None
    count: int | None = None
    live_grams: int | None = None
    dressed_grams: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
