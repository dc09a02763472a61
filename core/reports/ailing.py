"""Who is not well: signs of ill health that somebody saw lately and that no later note says are over. No diagnosis."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date

from core.handbook import flags as figures
from core.handbook import health
from core.herd.state import Animal, Event
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.wording import begun, called
from core.words import day, full_day, listed


def ailing(barn: Evidence, animal: Animal) -> Finding | None:
    """The signs of an animal that is not well, the day of the first, and when a vet must be called; None for one that is well."""
    seen = _signs(animal, barn.today)
    if not seen:
        return None
    signs = list(dict.fromkeys(str(one.detail.get("sign")) for one in seen))
    urgent = any(_holds(sign, health.RED_FLAGS) for sign in signs)
    vet = f" {health.CALL_A_VET}" if urgent else ""
    text = begun(f"{listed(signs)} since {_told(seen[0].on, barn.today)}.{vet}")
    evidence = {"signs": signs, "since": seen[0].on.isoformat(), "last": seen[-1].on.isoformat(), "count": len(seen), "call_a_vet": urgent}
    return Finding(animal.key, animal.tag, "ailing", text, evidence, kinds=("ailment", "treated"))


def _told(on: date, today: date) -> str:
    """The day by its name, also where it is today's: what is noted today began earlier, or may last."""
    return day(on) if on.year == today.year else full_day(on)


def _signs(animal: Animal, today: date) -> list[Event]:
    """What was seen since it was last well: each note not long after the one before, the last one lately."""
    found: list[Event] = []
    for event in sorted((one for one in animal.events if one.on <= today), key=lambda one: one.on):
        if event.what == "remark" and found and is_over(str(event.detail.get("text") or "")):
            found = []
        elif event.what == "ailment":
            found = [*found, event] if found and (event.on - found[-1].on).days <= figures.AILING_DAYS.value else [event]
    return found if found and (today - found[-1].on).days <= figures.AILING_DAYS.value else []


def is_over(note: str) -> bool:
    """Whether a note on an animal that was not well says that it is well again."""
    return _holds(note, health.RECOVERED) and not _holds(note, health.NOT_YET)


def _holds(text: str, words: Iterable[str]) -> bool:
    """Whether one of the words or phrases stands in the text."""
    return any(re.search(rf"\b{re.escape(word)}\b", text.lower().replace("\u2019", "'")) for word in words)


def all_ailing(barn: Evidence) -> tuple[Finding, ...]:
    """Everybody that is not well, those for whom a vet must be called first."""
    found = [one for one in (ailing(barn, animal) for animal in barn.living) if one is not None]
    return tuple(sorted(found, key=lambda one: not one.evidence["call_a_vet"]))


def ailing_line(barn: Evidence, one: Finding) -> str:
    """The finding with its animal: `Doe 21: snotty nose since Wed 25 Nov.`"""
    return f"{called(barn.herd.animals[one.animal])}: {one.text[:1].lower()}{one.text[1:]}"


def ailing_document(one: Finding) -> dict[str, object]:
    """The finding as a value."""
    return {"tag": one.tag, "text": one.text} | dict(one.evidence)
