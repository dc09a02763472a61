"""A medicine is given."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Treated:
    """A medicine is given."""

    kind: ClassVar[str] = "treated"

    who: Tag
    with_: str
    on: date
    dose: str | None = None
    withdrawal_days: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
