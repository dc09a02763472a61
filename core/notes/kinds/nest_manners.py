"""What a doe does with her nest and kits."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class NestManners:
    """What a doe does with her nest and kits."""

    kind: ClassVar[str] = "nest_manners"

    doe: Tag
    sign: str
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
