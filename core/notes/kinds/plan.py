"""What a person means to do with an animal."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


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


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
