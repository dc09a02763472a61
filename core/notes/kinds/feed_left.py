"""What is left in the feed bin."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.kind import Example

@dataclass(frozen=True, slots=True, kw_only=True)
class FeedLeft:
    """What is left in the feed bin."""

    kind: ClassVar[str] = "feed_left"

    grams: int
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
