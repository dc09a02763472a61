"""A doe would not take the buck."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.herd.changes import of_sex, seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_born, not_yet, was_gone, worst, wrong_sex
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import dated, noted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """A doe would not take the buck."""

    kind: ClassVar[str] = "refused"

    doe: Tag
    on: date
    buck: Tag | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Refused, herd: Herd, today: date) -> Problem | None:
    """A doe that is there; a buck, where one is named."""
    buck = herd.find(fact.buck) if fact.buck else None
    return worst(
        not_yet(fact.on, today),
        animal_problem(herd, fact.doe, fact.on, "doe"),
        worst(wrong_sex(buck, "buck"), was_gone(buck, fact.on), not_born(buck, fact.on)) if buck else None,
    )


def apply(fact: Refused, herd: Herd) -> Herd:
    """Seen of the doe: no mating came of it."""
    return seen(of_sex(herd, fact.doe, "doe"), fact.doe, fact.on, fact.kind, said(fact))


def reply(fact: Refused, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The refusal; nothing is due from it."""
    line = f"Doe {fact.doe} refused {f'buck {fact.buck}' if fact.buck else 'the buck'}"
    return (dated(line, fact.on, after), "No breeding recorded. Try again in a day or two.")


def show(fact: Refused, _herd: Herd) -> str:
    """`2026-11-25: doe 22 refused buck 5`."""
    return noted(fact.on, f"doe {fact.doe} refused {f'buck {fact.buck}' if fact.buck else 'the buck'}")


KIND = Kind(fact=Refused, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
