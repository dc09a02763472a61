"""The colours in a litter."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import ColorCounts, Tag


@dataclass(frozen=True, slots=True, kw_only=True)
class LitterColored:
    """The colours in a litter."""

    kind: ClassVar[str] = "litter_colors"

    doe: Tag
    colors: ColorCounts
    on: date
