"""How the farm wants things."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from core.notes.fact import SettingValue
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingChanged:
    """How the farm wants things."""

    kind: ClassVar[str] = "setting"

    name: str
    value: SettingValue
    breed: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
