"""A mating came to nothing."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Missed:
    """A mating came to nothing."""

    kind: ClassVar[str] = "missed"

    doe: Tag
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
