"""Something to be reminded of."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar

from core import words
from core.herd.calendar import key_of, reminder_chores
from core.herd.state import Herd, Reminding
from core.notes.checking import already_past, animal_problem, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import whom
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Reminder:
    """Something to be reminded of."""

    kind: ClassVar[str] = "remind"

    text: str
    on: date
    time: str | None = None
    who: Tag | None = None
    key: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Reminder, herd: Herd, today: date) -> Problem | None:
    """A day to come; an animal on the book, where one is named."""
    return worst(already_past(fact.on, today), None if fact.who is None or herd.find(fact.who) else animal_problem(herd, fact.who, today))


def apply(fact: Reminder, herd: Herd) -> Herd:
    """One more reminder; with a key it puts that chore off."""
    animal = herd.find(fact.who) if fact.who is not None else None
    who = animal.key if animal else None
    key = fact.key or key_of("custom", who or "", fact.on, "-".join(fact.text.lower().split()))
    reminding = Reminding(fact.text, fact.on, key, time=fact.time, who=who, told_on=herd.day)
    open_again = {other: day for other, day in herd.closed.items() if other != key}
    return replace(herd, reminders=(*herd.reminders, reminding), closed=open_again)


def reply(fact: Reminder, _before: Herd, after: Herd) -> tuple[str, ...]:
    """When what comes up."""
    time = f" at {fact.time}" if fact.time else ""
    who = f" ({whom(after, fact.who)})" if fact.who is not None and fact.who not in fact.text else ""
    moved = "Put off: " if fact.key and not fact.key.startswith("custom:") else "I will remind you: "
    return (words.sentence(f"{moved}{fact.text}{who}, {words.full_day(fact.on)}{time}"),)


def show(fact: Reminder, _herd: Herd) -> str:
    """`remind on 2026-11-27 at 07:00 for 9 key kindling:9:2026-10-28: trim nails`."""
    time = f" at {fact.time}" if fact.time else ""
    who = f" for {fact.who}" if fact.who is not None else ""
    key = f" key {fact.key}" if fact.key else ""
    return f"remind on {fact.on.isoformat()}{time}{who}{key}: {fact.text}"


KIND = Kind(
    fact=Reminder, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, chores=reminder_chores, reply=reply, show=show
)
