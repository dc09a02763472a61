"""A kit gets its ear number."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Sex, Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Tagged:
    """A kit gets its ear number."""

    kind: ClassVar[str] = "tagged"

    tag: Tag
    on: date
    who: Tag | None = None
    litter_of: Tag | None = None
    sex: Sex | None = None
    color: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
