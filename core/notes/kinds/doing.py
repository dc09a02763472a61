"""A chore that has no event of its own was done."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.herd.changes import closed
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Pick
from core.notes.clauses.with_animals import COUNTED_THINGS
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import dated, noted, own_words, whom
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoreDone:
    """A chore that has no event of its own was done."""

    kind: ClassVar[str] = "done"

    chore: str
    on: date
    who: Tag | None = None
    key: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("twelve cages cleaned", ({"chore": "twelve cages cleaned", "on": "2026-11-25"},)),
    Example("cleaned 14 trays", ({"chore": "cleaned 14 trays", "on": "2026-11-25"},)),
    Example("emptied all the pans", ({"chore": "emptied all pans", "on": "2026-11-25"},)),
    Example("cleaned the trays", ({"chore": "cleaned trays", "on": "2026-11-25"},)),
    Example("done worming 22", ({"chore": "worming", "on": "2026-11-25", "who": "22"},)),
    Example(
        "trimmed nails on 3 and 5",
        (
            {"chore": "trimmed nails", "on": "2026-11-25", "who": "3"},
            {"chore": "trimmed nails", "on": "2026-11-25", "who": "5"},
        ),
    ),
    Example("trimmed nails on 9", ({"chore": "trimmed nails", "on": "2026-11-25", "who": "9"},)),
    Example("clipped Moss's nails yesterday", ({"chore": "clipped nails", "on": "2026-11-24", "who": "5"},)),
    Example("scrubbed the water bottles", ({"chore": "scrubbed water bottles", "on": "2026-11-25"},)),
    Example("I cleaned all the cages today", ({"chore": "cleaned all cages", "on": "2026-11-25"},)),
    Example("Finally trimmed Biscuit's nails", ({"chore": "trimmed nails", "on": "2026-11-25", "who": "22"},)),
    Example("Done: cleaned trays.", ({"chore": "cleaned trays", "on": "2026-11-25"},)),
    Example("[x] trim nails 16", ({"chore": "trim nails", "on": "2026-11-25", "who": "16"},)),
)
NOT_THIS: tuple[str, ...] = (
    "my brother took care of it",
    "we are so done with the flies",
    "the straw is done",
    "14 not done yet",
    "remind me friday to trim nails on 9",
    "trim nails on 9?",
)

OPENS: Final = ("done",)
CUES: Final = {
    "done": "got round to clipping | got around to clipping | got round to trimming | got around to trimming | emptied | scraped | raked out | shoveled out | did the nails | did nails | did her nails | did his nails | did toenails | did everybodys nails | cleaning out | cleaned out | done | trimmed | clipped | scrubbed | swept | disinfected | finished | cleaned | sanitized | washed | checked off | all done | mucked out | dusted | refilled | completed | took care of | nails trimmed | nails done | changed out"
    " | got trimmed | cut the nails | cut nails | cut her nails | cut his nails | cut their nails | cut toenails | brushed | groomed | hosed | limed | replaced the",
    "cut": "cut",
    "chore_word": "nails | nail | cages | cage | trays | tray | bottles | crocks | feeders | waterers | pans | pan | floor | barn | water lines | hutches | hutch | nest check | chores | droppings | manure | litter pans | toenails",
}  # fmt: skip


#: They are told of a chore without a word for what was done.
CLOSING: Final = frozenset(
    {"done", "all done", "finished", "completed", "checked off", "took care of", "nails trimmed", "nails done", "got trimmed"}
)
GROOMING: Final = frozenset({"brushed", "groomed"})
OWNING: Final = frozenset({"her", "his"})
#: They join a chore to the note before it, and are no part of it.
EDGES: Final = frozenset({"and", "and then", "then", "also", "too", "as well", "so", "but", "plus"})


def read(c: Clause) -> None:
    """A chore told as past, with its animal."""
    cue = _cue(c)
    if cue is None:
        return
    if (
        c.said(cue) not in CLOSING
        and not c.said(cue).endswith("nails")
        and not c.has("chore_word")
        and not c.sorted_as("cage")
        and not (c.has("box") and c.has("done") and c.marks.isdisjoint({"kits", "dead", "lose", "die"}))
        and not (c.said(cue) in GROOMING and c.known(cue + 1) is not None)
    ):
        return
    if c.has("kindle", "litter", "drug", "treat", "negation") or c.found or _over_with(c, cue):
        return
    places = c.explicit() or [i for i in c.sorted_as("num") if c.whole(i) is not None and c.known(i) and not c.counted(i)]
    pick = c.pick(places[-1]) if places else (c.spoken_of() if c.says(OWNING) else None)
    row: list[Pick | None] = [*_row(c, places)] or [pick]
    mine = {id(item) for each in row if each for item in each.items}
    counts = [c.items[i] for i in c.sorted_as("num") if c.said(i + 1) in COUNTED_THINGS]  # "twelve cages cleaned"
    spent = {id(c.items[i]) for i in c.dates()}
    words = [
        f"cage {item.value}" if item.sort == "cage" else item.said
        for item in c.items
        if id(item) not in mine
        and id(item) not in spent
        and (item.sort in {"word", "cage"} or item in counts)
        and item.said not in {"done", "i", "we", "the", "on", "for", "of", "just", "all done", "finally", "got", "finished", "with"}
    ]
    while words and words[0] in EDGES:
        words.pop(0)
    while words and words[-1] in EDGES:
        words.pop()
    if not words or (c.said(cue) == "took care of" and c.said(cue + 1) in {"it", "that", "him", "her", "them"}):
        return
    used = [c.items[cue], *counts, *(item for item in c.items if item.sort == "cage")]
    for each in row:
        c.take(c.past(ChoreDone, each, "who" if each else "", {"chore": " ".join(words)}, used))


def _row(c: Clause, places: list[int]) -> list[Pick]:
    """`trimmed nails on 3, 5 and 7`: as many animals as stand in a row at the end; none where it is a single one."""
    begin = len(places) - 1
    while begin > 0 and all(item.said in {",", "and", "&"} for item in c.items[places[begin - 1] + 1 : places[begin]]):
        begin -= 1
    return [c.pick(i) for i in places[begin:]] if len(places) - begin > 1 else []


def _cue(c: Clause) -> int | None:
    """The deed; a cut is one where it is nails that were cut."""
    cue = c.first("done")
    cut = c.first("cut") if cue is None else None
    nails = cut is not None and any(item.said in NAILS for item in c.items[cut + 1 : cut + LITTLE])
    return cut if nails else cue


NAILS: Final = frozenset({"nails", "nail", "toenails"})
LITTLE: Final = 5  # not a figure: items between the cut and what was cut


def _over_with(c: Clause, cue: int) -> bool:
    """`so done with this mud`, `the hay is done`: had enough of, or used up; a chore is named by its own word."""
    if c.said(cue - 1) in {"harm", "damage"} or c.said(cue + 1) in {"harm", "damage"} or "none" in c.items[max(cue - 2, 0)].marks:
        return True  # "no harm done"
    return c.said(cue) in {"done", "finished"} and c.said(cue - 1) in {"so", "is", "are", "was", "im", "am"} and not c.has("chore_word")


def check(fact: ChoreDone, herd: Herd, today: date) -> Problem | None:
    """An animal on the book, where one is named."""
    known = fact.who is None or herd.find(fact.who) is not None
    return worst(not_yet(fact.on, today), None if known else animal_problem(herd, fact.who or "", fact.on))


def apply(fact: ChoreDone, herd: Herd) -> Herd:
    """The chore is closed."""
    return closed(herd, fact.chore, fact.who, fact.key, fact.on)


def reply(fact: ChoreDone, _before: Herd, after: Herd) -> tuple[str, ...]:
    """What is done."""
    who = f" ({whom(after, fact.who)})" if fact.who is not None and fact.who not in fact.chore else ""
    chore = _EVERYONE.sub(r" for \1", fact.chore.replace("_", " "))
    return (dated(f"Done: {chore}{who}", fact.on, after),)


#: A chore is kept without its small words: "trimmed nails on everyone" as "trimmed nails everyone".
_EVERYONE = re.compile(r"(?<!\bfor)(?<!\bof) (everyone|everybody)$")


WRITTEN = ("chore done(?: for {who:TAG})?(?: key {key:KEY})?: {chore:WORDS}",)


def show(fact: ChoreDone, _herd: Herd) -> str:
    """`2026-11-25: chore done for 9 key kindling:9:2026-10-28: trimming nails`."""
    who = f" for {fact.who}" if fact.who is not None else ""
    key = f" key {fact.key}" if fact.key else ""
    return noted(fact.on, f"chore done{who}{key}: {own_words(fact.chore)}")


KIND = Kind(
    fact=ChoreDone, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN, plain=True
)
