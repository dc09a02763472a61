"""What a person means to do with an animal."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """What a person means to do with an animal."""

    kind: ClassVar[str] = "planned"

    who: Tag
    what: str
    on: date | None = None
    until: date | None = None
    with_: Tag | None = None
    reason: str | None = None
