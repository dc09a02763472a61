"""A medicine is given."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core import words
from core.handbook import health
from core.herd.changes import seen
from core.herd.questions import days_later
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import called, dated, noted, parts, said, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Treated:
    """A medicine is given."""

    kind: ClassVar[str] = "treated"

    who: Tag
    with_: str
    on: date
    dose: str | None = None
    withdrawal_days: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Treated, herd: Herd, today: date) -> Problem | None:
    """An animal that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on), _slip(fact))


#: A withdrawal time beyond this is a slip of the finger.
_LONGEST = 3650  # not a figure: ten years


def _slip(fact: Treated) -> Problem | None:
    if fact.withdrawal_days is None or 0 <= fact.withdrawal_days <= _LONGEST:
        return None
    remedy = f'Send it again, for example "gave {fact.who} {fact.with_}, 28 day withdrawal".'
    return Problem("which_number", f"A withdrawal time of {fact.withdrawal_days} days can't be. How long is it?", (), remedy)


def apply(fact: Treated, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: Treated, _before: Herd, after: Herd) -> tuple[str, ...]:
    """What was given, until when it must not be eaten, and the caution."""
    line = dated(parts(f"{called(after, fact.who)} given {fact.with_}", told("dose ", fact.dose)), fact.on, after)
    if fact.withdrawal_days is None:
        return (line, health.WITHDRAWAL)
    last = words.full_day(days_later(fact.on, fact.withdrawal_days))
    return (line, f"Withdrawal as you noted it: {words.count(fact.withdrawal_days, 'day')}. Not to be eaten until after {last}.")


def show(fact: Treated, _herd: Herd) -> str:
    """`2026-11-25: treated 22 with ivermectin, dose .2 ml, 28 day withdrawal`."""
    return noted(
        fact.on,
        parts(
            f"treated {fact.who} with {fact.with_}",
            told("dose ", fact.dose),
            None if fact.withdrawal_days is None else f"{fact.withdrawal_days} day withdrawal",
        ),
    )


KIND = Kind(fact=Treated, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
