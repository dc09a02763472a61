"""A question for the book."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.herd.state import Herd
from core.notes.checking import worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import parts, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Query:
    """A question for the book."""

    kind: ClassVar[str] = "query"

    about: str
    who: Tag | None = None
    with_: Tag | None = None
    scope: str | None = None
    breed: str | None = None
    until: date | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Query, herd: Herd, _today: date) -> Problem | None:
    """Animals that are, or were, on the book."""
    return worst(*(_unknown(herd, tag) for tag in (fact.who, fact.with_) if tag is not None))


def _unknown(herd: Herd, tag: str) -> Problem | None:
    if herd.find(tag) is not None:
        return None
    return Problem("which_animal", f"There is no {tag} on the book. Whom do you mean?", (), "Ask again with a tag or a name.")


def reply(_fact: Query, _before: Herd, _after: Herd) -> tuple[str, ...]:
    """Nothing: a question is answered by its report."""
    return ()


def show(fact: Query, _herd: Herd) -> str:
    """`query pair, who 15, with 7, scope does, breed Mini Rex, until 2026-12-01`."""
    return parts(
        f"query {fact.about}",
        told("who ", fact.who),
        told("with ", fact.with_),
        told("scope ", fact.scope),
        told("breed ", fact.breed),
        told("until ", fact.until),
    )


KIND = Kind(fact=Query, examples=EXAMPLES, not_this=NOT_THIS, check=check, reply=reply, show=show)
