"""Animal note: an animal comes on the book, or its details are completed."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.fact import Cents, Sex, Tag
from core.notes.kind import Example


@dataclass(frozen=True, slots=True, kw_only=True)
class AnimalNoted:
    """Animal note: an animal comes on the book, or its details are completed."""

    kind: ClassVar[str] = "animal"

    tag: Tag
    name: str | None = None
    sex: Sex | None = None
    breed: str | None = None
    color: str | None = None
    born: date | None = None
    sire: Tag | None = None
    dam: Tag | None = None
    origin: str | None = None
    price: Cents | None = None
    on: date | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
