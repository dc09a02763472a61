"""A mating came to nothing."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core import words
from core.herd.changes import of_sex, with_outcome
from core.herd.matings import open_mating, open_matings
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import by_key, dated, noted
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Missed:
    """A mating came to nothing."""

    kind: ClassVar[str] = "missed"

    doe: Tag
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example("9 no babies she missed", ({"doe": "9", "on": "2026-11-25"},)),
    Example("14 missed again", ({"doe": "14", "on": "2026-11-25"},)),
    Example("14 missed the first time", ({"doe": "14", "on": "2026-11-25"},)),
    Example("9 x 5 didn't take", ({"doe": "9", "on": "2026-11-25"},)),
    Example("Biscuit didn't take from Moss", ({"doe": "22", "on": "2026-11-25"},)),
    Example("Clover came up empty", ({"doe": "9", "on": "2026-11-25"},)),
    Example("Sorrel didn't take", ({"doe": "12", "on": "2026-11-25"},)),
    Example("biscuit missed", ({"doe": "22", "on": "2026-11-25"},)),
    Example("Missed: doe 14 (25 Nov).", ({"doe": "14", "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "I missed the bus",
    "16 missed her supper",
    "missed the show with 12",
    "22 palpated open",
)

OPENS: Final = ("miss",)
CUES: Final = {
    "miss": "missed | misses | miss | didnt take | did not take | didnt settle | false pregnancy | came up empty | never kindled | not pregnant after all"
    " | no babies from | no kits from | false pregnant | didnt catch | shes not bred after all | wasnt pregnant after all | a miss | breeding failed | failed to kindle",
}  # fmt: skip


def read(c: Clause) -> None:
    """A doe whose mating came to nothing."""
    cue = c.first("miss")
    if cue is None:
        if "miss" not in c.virtual:
            return
        cue = -1
    breeding = c.first("breed")
    if (breeding is not None and c.said(breeding) != "x") or (
        c.before is not None and any(found.fact.kind == "bred" for found in c.before.found) and not c.explicit() and not c.sorted_as("num")
    ):
        return  # "bred again since she didn't take"
    if cue >= 0 and _missed_a_thing(c, cue):
        return
    c.use(
        i
        for i in range(1, len(c.items))
        if c.said(i - 1) in {"from", "with", "to", "by", "x"} and (animal := c.known(i)) and animal.sex == "buck"
    )
    for pick in c.listed_subjects(cue):
        c.take(c.past(Missed, pick, "doe", {}, [c.items[cue]] if cue >= 0 else []))


#: What a doe can miss without any kits in it: the article tells that a thing is missed.
ARTICLES: Final = frozenset({"a", "an", "the", "her", "his", "my", "our", "their", "one"})


def _missed_a_thing(c: Clause, cue: int) -> bool:
    """`22 missed a dose`, `missed the vet call about 5`: no mating is spoken of."""
    article, *joined = c.said(cue + 1).split(" ")
    place = cue + 1 if joined else cue + 2
    thing = c.items[place] if place < len(c.items) else None
    return (
        c.said(cue) in {"missed", "miss", "misses"}
        and article in ARTICLES
        and thing is not None
        and thing.sort == "word"
        and thing.marks.isdisjoint({"breed", "kits", "litter", "kindle", "plan:breed"})
        and thing.said not in MISSED_MATINGS
    )


#: Of these it is a mating that came to nothing: `missed the first time`, `missed her due date`.
MISSED_MATINGS: Final = frozenset({"first", "second", "third", "last", "due", "date", "mark", "time", "breeding", "mating", "round"})


def check(fact: Missed, herd: Herd, today: date) -> Problem | None:
    """A doe that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"))


def apply(fact: Missed, herd: Herd) -> Herd:
    """Her open matings came to nothing."""
    doe = herd.find(fact.doe)
    if doe is None:
        return herd
    herd = of_sex(herd, fact.doe, "doe")
    return with_outcome(herd, tuple(m for m in open_matings(herd, doe.key, fact.on) if m.on < fact.on), "missed", fact.on)


def reply(fact: Missed, before: Herd, after: Herd) -> tuple[str, ...]:
    """The miss, and the breeding that it closes."""
    line = dated(f"Doe {fact.doe} missed", fact.on, after)
    doe = before.find(fact.doe)
    mating = open_mating(before, doe.key, fact.on) if doe else None
    if mating is None:
        return (line, "There was no open breeding of hers on the book.")
    return (line, f"Her breeding to {by_key(before, mating.buck)} of {words.day(mating.on)} is closed. She can be bred again.")


WRITTEN = ("doe {doe:TAG} missed",)


def show(fact: Missed, _herd: Herd) -> str:
    """`2026-11-25: doe 14 missed`."""
    return noted(fact.on, f"doe {fact.doe} missed")


KIND = Kind(fact=Missed, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
