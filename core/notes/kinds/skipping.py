"""A chore will not be done this time."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.herd.changes import closed
from core.herd.chore import CHORES
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import dated, noted, quoted, whom
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Skipped:
    """A chore will not be done this time."""

    kind: ClassVar[str] = "skipped"

    chore: str
    on: date
    who: Tag | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("skip the weighing on 31", ({"chore": "weighing", "on": "2026-11-25", "who": "31"},)),
    Example("don't bother with the nest check on 12", ({"chore": "the nest check", "on": "2026-11-25", "who": "12"},)),
    Example("Skip: nest check, doe 12.", ({"chore": "nest check", "on": "2026-11-25", "who": "12"},)),
)
NOT_THIS: tuple[str, ...] = (
    "15 skipped her feed",
    "14 missed",
    "done trimming nails 9",
    "the radio skipped again",
)

OPENS: Final = ("skip",)
CUES: Final = {
    "skip": "skip | skipped | skipping | dont bother with | dont bother | no need to | no need for | cancel the | cancel | skips",
}  # fmt: skip


#: They join a chore to the word that it was left out, and are no part of it.
BEFORE_SKIPPED: Final = frozenset(
    {"the", "on", "for", "of", "her", "his", "mark", "as", "is", "was", "got", "been", "we", "i", "and", "so"}
)


def read(c: Clause) -> None:
    """A chore that is left out this time."""
    cue = c.first("skip")
    if cue is None or (cue > (c.opening() or 0) and not c.explicit() and c.led() is None and not any(c.known(i) for i in range(cue))):
        return  # "the radio skipped again"
    places = c.explicit() or [i for i in c.sorted_as("num") if c.whole(i) is not None and c.known(i)]
    pick = c.pick(places[-1]) if places else c.spoken_of()
    mine = set(map(id, pick.items)) if pick else set()
    words = [
        item.said
        for item in c.items[cue + 1 :]
        if id(item) not in mine
        and item.sort in {"word", "span"}
        and item.said not in {"the", "on", "for", "of", "her", "his", "this", "time"}
    ]
    words = words or [
        item.said for item in c.items[:cue] if id(item) not in mine and item.sort == "word" and item.said not in BEFORE_SKIPPED
    ]  # "nest check on 12 skipped"
    chore = " ".join(words)
    c.use(i for i, item in enumerate(c.items) if item.sort == "word" or (item.sort == "span" and i > cue))
    found = c.past(
        Skipped,
        pick,
        "who" if pick else "",
        {"chore": chore or None},
        [c.items[cue]],
        None if chore else Need("what", "chore", "Which chore is to be skipped?"),
    )
    c.take(found)


def check(fact: Skipped, herd: Herd, today: date) -> Problem | None:
    """An animal that is there, where one is named."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on) if fact.who is not None else None)


def apply(fact: Skipped, herd: Herd) -> Herd:
    """The chore is closed, as if it were done."""
    return closed(herd, fact.chore, fact.who, None, fact.on)


def reply(fact: Skipped, before: Herd, after: Herd) -> tuple[str, ...]:
    """Which chore is let go."""
    who = f" for {whom(after, fact.who)}" if fact.who is not None else ""
    line = dated(f"Skipped: {fact.chore.replace('_', ' ')}{who}", fact.on, after)
    return (line,) if before.closed != after.closed else (line, "No such chore is open.")


WRITTEN = ("skip {chore:CHORE}(?: for {who:TAG})?",)


def show(fact: Skipped, _herd: Herd) -> str:
    """`2026-11-25: skip check_nest for 12`."""
    return noted(
        fact.on, f"skip {fact.chore if fact.chore in CHORES else quoted(fact.chore)}" + (f" for {fact.who}" if fact.who is not None else "")
    )


KIND = Kind(fact=Skipped, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
