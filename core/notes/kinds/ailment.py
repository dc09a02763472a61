"""A sign of ill health that somebody saw."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.handbook import health
from core.herd.changes import seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import called, dated, noted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Ailing:
    """A sign of ill health that somebody saw."""

    kind: ClassVar[str] = "ailment"

    who: Tag
    sign: str
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Ailing, herd: Herd, today: date) -> Problem | None:
    """An animal that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))


def apply(fact: Ailing, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: Ailing, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The sign, and when it is a vet's matter. No diagnosis."""
    sign = fact.sign.lower()
    urgent = health.CALL_A_VET if any(re.search(rf"\b{re.escape(flag)}\b", sign) for flag in health.RED_FLAGS) else None
    catching = health.ZOONOSES if any(word in sign for word in health.CATCHING_SIGNS) else None
    line = dated(f"{called(after, fact.who)}: {fact.sign}", fact.on, after)
    return tuple(each for each in (line, urgent, catching) if each)


def show(fact: Ailing, _herd: Herd) -> str:
    """`2026-11-25: 5 ailing, snotty nose`."""
    return noted(fact.on, f"{fact.who} ailing, {fact.sign}")


KIND = Kind(fact=Ailing, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
