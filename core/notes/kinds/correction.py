"""Putting a field of an earlier note right."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from core.herd.state import Herd
from core.notes.fact import Fields, Tag
from core.notes.kind import Example, Kind


@dataclass(frozen=True, slots=True, kw_only=True)
class Correct:
    """Putting a field of an earlier note right."""

    kind: ClassVar[str] = "correct"

    set: Fields
    who: Tag | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def reply(_fact: Correct, _before: Herd, _after: Herd) -> tuple[str, ...]:
    """Nothing: the corrected note answers for itself."""
    return ()


def show(fact: Correct, _herd: Herd) -> str:
    """`correct 31: who 15, count 7`; the animal whose note it is stands only where it was said."""
    of = f" {fact.who}" if fact.who is not None else ""
    return f"correct{of}: " + ", ".join(f"{name} {value}" for name, value in fact.set)


KIND = Kind(fact=Correct, examples=EXAMPLES, not_this=NOT_THIS, reply=reply, show=show)
