"""A doe gives birth."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Kindled:
    """A doe gives birth."""

    kind: ClassVar[str] = "kindled"

    doe: Tag
    on: date
    born: int | None = None
    alive: int | None = None
    dead: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
