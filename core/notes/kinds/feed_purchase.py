"""Feed is bought."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Cents
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedBought:
    """Feed is bought."""

    kind: ClassVar[str] = "feed_bought"

    on: date
    grams: int | None = None
    bags: int | None = None
    price: Cents | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
