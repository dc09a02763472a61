"""Taking a note back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from core.herd.state import Herd
from core.notes.fact import Tag
from core.notes.kind import Example, Kind


@dataclass(frozen=True, slots=True, kw_only=True)
class Undo:
    """Taking a note back."""

    kind: ClassVar[str] = "undo"

    who: Tag | None = None
    about: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def reply(_fact: Undo, _before: Herd, _after: Herd) -> tuple[str, ...]:
    """Nothing: what was taken back is told where the journal is known."""
    return ()


def show(fact: Undo, _herd: Herd) -> str:
    """`undo the weighed on 31`."""
    about = f" the {fact.about}" if fact.about is not None else ""
    return f"undo{about}" + (f" on {fact.who}" if fact.who is not None else "")


KIND = Kind(fact=Undo, examples=EXAMPLES, not_this=NOT_THIS, reply=reply, show=show)
