"""An animal, or untagged kits, are sold."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Cents, Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Sold:
    """An animal, or untagged kits, are sold."""

    kind: ClassVar[str] = "sold"

    on: date
    who: Tag | None = None
    litter_of: Tag | None = None
    count: int | None = None
    price: Cents | None = None
    to: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
