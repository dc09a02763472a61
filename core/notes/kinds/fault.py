"""Something that counts against an animal at a show or for breeding."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultSeen:
    """Something that counts against an animal at a show or for breeding."""

    kind: ClassVar[str] = "fault"

    who: Tag
    fault: str
    on: date
    disqualifies: bool | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
