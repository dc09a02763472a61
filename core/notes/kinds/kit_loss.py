"""Kits die in the nest or at the doe's foot."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core import words
from core.handbook import health
from core.herd.changes import lost
from core.herd.litters import litter_meant
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, too_many, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import dated, kits_left, noted, parts, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class KitsLost:
    """Kits die in the nest or at the doe's foot."""

    kind: ClassVar[str] = "kits_lost"

    doe: Tag
    count: int
    on: date
    cause: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: KitsLost, herd: Herd, today: date) -> Problem | None:
    """No more kits can be lost than are alive."""
    doe = herd.find(fact.doe)
    if doe is None or doe.sex == "buck":
        return worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"))
    fewer = too_many(herd, litter_meant(herd, doe.key, fact.on), fact.doe, fact.count, fact.on, "lost")
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"), fewer)


def apply(fact: KitsLost, herd: Herd) -> Herd:
    """Fewer kits under her."""
    doe = herd.find(fact.doe)
    litter = litter_meant(herd, doe.key, fact.on) if doe else None
    return herd.with_litter(lost(litter, fact.on, fact.count, fact.cause)) if litter else herd


def reply(fact: KitsLost, before: Herd, after: Herd) -> tuple[str, ...]:
    """What was lost to what, and how many are left."""
    cause = f" ({fact.cause.replace('_', ' ')})" if fact.cause else ""
    line = dated(f"Doe {fact.doe} lost {words.count(fact.count, 'kit')}{cause}", fact.on, after)
    doe = before.find(fact.doe)
    litter = litter_meant(before, doe.key, fact.on) if doe else None
    left = kits_left(after, after.litters.get(litter.key) if litter else None, fact.doe)
    care = {"cold": health.COLD, "heat": health.HEAT, "sick": health.CALL_A_VET}.get(fact.cause or "")
    return tuple(each for each in (line, left, care) if each)


def show(fact: KitsLost, _herd: Herd) -> str:
    """`2026-11-25: doe 12 lost 2 kits, cause cold`."""
    cause = told("cause ", fact.cause.replace("_", " ") if fact.cause else None)
    return noted(fact.on, parts(f"doe {fact.doe} lost {words.count(fact.count, 'kit')}", cause))


KIND = Kind(fact=KitsLost, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
