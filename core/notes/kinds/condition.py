"""Flesh over the backbone, felt by hand: 1 bony to 5 fat."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class ConditionScored:
    """Flesh over the backbone, felt by hand: 1 bony to 5 fat."""

    kind: ClassVar[str] = "condition"

    who: Tag
    score: float
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
