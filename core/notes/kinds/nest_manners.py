"""What a doe does with her nest and kits."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.handbook import flags
from core.herd.changes import of_sex, seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import bad_notes, dated, noted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class NestManners:
    """What a doe does with her nest and kits."""

    kind: ClassVar[str] = "nest_manners"

    doe: Tag
    sign: str
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: NestManners, herd: Herd, today: date) -> Problem | None:
    """A doe that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"))


def apply(fact: NestManners, herd: Herd) -> Herd:
    """Kept with what was seen of her."""
    return seen(of_sex(herd, fact.doe, "doe"), fact.doe, fact.on, fact.kind, said(fact))


_ADVICE = {
    "soiled": "Clean the box and put in dry bedding.",
    "scattered": "Put the kits back in a heap in the nest and cover them.",
    "no_fur": "Line the nest for her: dry hay or straw, and fur if you keep some.",
    "no_nest": "Line the nest for her: dry hay or straw, and fur if you keep some.",
}


def reply(fact: NestManners, _before: Herd, after: Herd) -> tuple[str, ...]:
    """What she did, and what may help now."""
    line = dated(f"Doe {fact.doe}: nest {fact.sign.replace('_', ' ')}", fact.on, after)
    bad = bad_notes(after, fact.doe, fact.kind, fact.on) if fact.sign != "good" else 0
    often = f"That is bad note {bad} in 12 months: it comes up in the digest." if bad >= flags.BAD_NEST_NOTES.value else None
    return tuple(each for each in (line, _ADVICE.get(fact.sign), often) if each)


def show(fact: NestManners, _herd: Herd) -> str:
    """`2026-11-25: doe 16 nest manners stepped on`."""
    return noted(fact.on, f"doe {fact.doe} nest manners {fact.sign.replace('_', ' ')}")


KIND = Kind(fact=NestManners, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
