"""Words kept as they are."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """Words kept as they are."""

    kind: ClassVar[str] = "remark"

    text: str
    on: date
    who: Tag | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
