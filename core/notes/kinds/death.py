"""An animal, or untagged weaned kits, die."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Died:
    """An animal, or untagged weaned kits, die."""

    kind: ClassVar[str] = "died"

    on: date
    who: Tag | None = None
    litter_of: Tag | None = None
    count: int | None = None
    cause: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
