"""An animal is given away."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenAway:
    """An animal is given away."""

    kind: ClassVar[str] = "given_away"

    on: date
    who: Tag | None = None
    litter_of: Tag | None = None
    count: int | None = None
    to: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
