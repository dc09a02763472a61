"""Putting a field of an earlier note right."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from core.notes.fact import Fields, Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Correct:
    """Putting a field of an earlier note right."""

    kind: ClassVar[str] = "correct"

    set: Fields
    who: Tag | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
