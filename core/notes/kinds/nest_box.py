"""The nest box goes in or comes out."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class NestBoxMoved:
    """The nest box goes in or comes out."""

    kind: ClassVar[str] = "nest_box"

    doe: Tag
    change: str
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
