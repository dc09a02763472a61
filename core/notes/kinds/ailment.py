"""A sign of ill health that somebody saw."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Ailing:
    """A sign of ill health that somebody saw."""

    kind: ClassVar[str] = "ailment"

    who: Tag
    sign: str
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
