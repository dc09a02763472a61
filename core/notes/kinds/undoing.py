"""Taking a note back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Undo:
    """Taking a note back."""

    kind: ClassVar[str] = "undo"

    who: Tag | None = None
    about: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
