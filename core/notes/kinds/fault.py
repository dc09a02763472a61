"""Something that counts against an animal at a show or for breeding."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.herd.changes import seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import called, dated, noted, parts, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultSeen:
    """Something that counts against an animal at a show or for breeding."""

    kind: ClassVar[str] = "fault"

    who: Tag
    fault: str
    on: date
    disqualifies: bool | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: FaultSeen, herd: Herd, today: date) -> Problem | None:
    """An animal that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))


def apply(fact: FaultSeen, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: FaultSeen, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The fault, and whether it disqualifies."""
    weight = {True: "disqualifies", False: "does not disqualify", None: None}[fact.disqualifies]
    return (dated(parts(f"{called(after, fact.who)}: {fact.fault}", weight), fact.on, after),)


def show(fact: FaultSeen, _herd: Herd) -> str:
    """`2026-11-25: 31 fault white toenail, disqualifies`."""
    return noted(
        fact.on,
        parts(f"{fact.who} fault {fact.fault}", {True: "disqualifies", False: "does not disqualify", None: None}[fact.disqualifies]),
    )


KIND = Kind(fact=FaultSeen, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
