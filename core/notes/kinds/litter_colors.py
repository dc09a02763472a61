"""The colours in a litter."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import ColorCounts, Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class LitterColored:
    """The colours in a litter."""

    kind: ClassVar[str] = "litter_colors"

    doe: Tag
    colors: ColorCounts
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
