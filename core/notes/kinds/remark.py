"""Words kept as they are."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """Words kept as they are."""

    kind: ClassVar[str] = "remark"

    text: str
    on: date
    who: Tag | None = None
