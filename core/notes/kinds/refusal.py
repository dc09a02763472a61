"""A doe would not take the buck."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """A doe would not take the buck."""

    kind: ClassVar[str] = "refused"

    doe: Tag
    on: date
    buck: Tag | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
