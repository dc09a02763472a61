"""A doe is put to a buck."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Bred:
    """A doe is put to a buck."""

    kind: ClassVar[str] = "bred"

    doe: Tag
    buck: Tag
    on: date
    falls: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
