"""A placing at a show."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.herd.changes import seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import called, dated, noted, parts, quoted, said, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A placing at a show."""

    kind: ClassVar[str] = "shown"

    who: Tag
    on: date
    placing: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("31 placed 4", ({"who": "31", "placing": "placed 4", "on": "2026-11-25"},)),
    Example("32 2nd in class of 8", ({"who": "32", "placing": "2nd in class of 8", "on": "2026-11-25"},)),
    Example(
        "Show results 11/21: 15 first, 7 third.",
        (
            {"who": "15", "on": "2026-11-21", "placing": "first"},
            {"who": "7", "on": "2026-11-21", "placing": "third"},
        ),
    ),
    Example("Juno 2nd place saturday", ({"who": "14", "on": "2026-11-21", "placing": "2nd"},)),
    Example("33 best opposite of breed at the fair", ({"who": "33", "on": "2026-11-25", "placing": "best opposite of breed"},)),
    Example("Flint best of variety", ({"who": "3", "on": "2026-11-25", "placing": "best of variety"},)),
    Example("Moss won best in show on saturday", ({"who": "5", "on": "2026-11-21", "placing": "won best in show"},)),
    Example(
        "Judge said 33 has great type, gave her best opposite",
        (
            {"who": "33", "on": "2026-11-25", "placing": "best opposite"},
            {"kind": "remark", "text": "Judge said 33 has great type", "on": "2026-11-25", "who": "33"},
        ),
    ),
    Example(
        "Show 21 Nov: buck 3, BOB; 14, 1st.",
        (
            {"who": "3", "on": "2026-11-21", "placing": "bob"},
            {"who": "14", "on": "2026-11-21", "placing": "1st"},
        ),
    ),
    Example("33 took 3rd at last Saturday's show", ({"who": "33", "placing": "3rd", "on": "2026-11-21"},)),
    Example("Flint best of bred sunday", ({"who": "3", "placing": "best of breed", "on": "2026-11-22"},)),
)
NOT_THIS: tuple[str, ...] = (
    "I won the raffle",
    "show me 14",
    "showing the kids the barn",
)

OPENS: Final = ("show",)
CUES: Final = {
    "show": "shown | bob | bos | bov | bosv | bis | bosb | best of breed | best in show | best of variety | best opposite | best opposite sex | best opposite of breed | best opposite of variety | best fur | first place | second place | third place"
    " | fourth place | fifth place | class winner | won her class | won his class | won class | in class | placed | placed first | placed second | placed third | won | won first | got a leg | earned a leg | a leg | show results | grand champion"
    " | reserve in show | reserve best in show | champion | got best of breed | took best of breed | ribbon | took first | took second | took third | got first | got second | got third | blue ribbon | red ribbon | dead last",
    "show_place": "at the show | show | fair | at the fair | county fair | youth show | specialty show",
    "place_word": "place | class | sr | jr | senior | junior",
    "place_number": "1st | 2nd | 3rd | first | second | third | fourth | fifth | sixth | 1st place | 2nd place | 3rd place",
}  # fmt: skip


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"ordinal"})


PLACE_AHEAD: Final = frozenset(
    {"place", "in", "at the show", "at the fair", "class", "sr", "jr", "senior", "junior", "intermediate", "int"}
)
NAME_AHEAD: Final = frozenset({"for", "to", "with", "by", "from", "and", "called"})


def read(c: Clause) -> None:
    """An animal and where it placed."""
    cue = _cue(c)
    if cue is None or _of_no_show(c, cue):
        return
    pick = c.subject_of(cue)
    if pick is None:
        return
    numbers = [i for i in c.sorted_as("num") if c.items[i] not in pick.items and c.said(i - 1) in {"of", "out of", "placed", "class of"}]
    words = _words(c, numbers)
    used = [c.items[i] for i in words] + [item for item in c.items if "show_place" in item.marks]
    c.take(c.past(Shown, pick, "who", {"placing": _placing(c, words)}, [*used, *(c.items[i] for i in numbers)]))


def _cue(c: Clause) -> int | None:
    """A word of shows, else a place taken: `7 third` below `Show results`, `33 took 3rd`."""
    cue = c.first("show")
    if cue is None:
        cue = next((i for i in c.sorted_as("ordinal") if _is_place(c, i)), None)
    if cue is not None:
        return cue
    listed = bool(c.virtual & {"show", "show_place"})
    return c.first("show_place", *(("place_number",) if listed else ())) if listed or c.has("place_number") else None


def _is_place(c: Clause, i: int) -> bool:
    """Whether an ordinal is a place: in a list of results, behind a verb, or before what it is the place in."""
    return (
        bool(c.virtual & {"show", "show_place"})
        or c.said(i - 1) in {"took", "placed", "earned"}
        or (c.said(i - 1) in {"got", "won", "a", "gets"} and c.has("show_place"))
        or c.said(i + 1) in PLACE_AHEAD
    )


def _of_no_show(c: Clause, cue: int) -> bool:
    """Whether the word is of something else: somebody's name, a wish, a sum that was won, kits put somewhere."""
    said = c.said(cue)
    return (
        (said == "bob" and c.said(cue - 1).split(" ")[-1] in NAME_AHEAD)
        or (c.has("plan") and c.said(cue + 1) in {"of", "in"} and _of_a_bunch(c, cue))
        or (said == "won" and not c.has("show_place") and len(c.items) > cue + 1 and c.items[cue + 1].sort == "num")
        or (said == "placed" and c.said(cue + 1) in {"her", "his", "the", "a", "them", "it"})  # "9 placed her kits nicely"
    )


def _of_a_bunch(c: Clause, cue: int) -> bool:
    """`keep 33, best fur of the bunch`."""
    return any(item.marks & {"litter", "kits"} or item.said in {"bunch", "lot"} for item in c.items[cue + 2 : cue + 5])


def _words(c: Clause, numbers: list[int]) -> list[int]:
    """Where the words of the placing stand: `placed 4`, `2nd in class of 8`."""
    told = {
        j
        for i in numbers
        if c.said(i - 1) == "placed" or "class" in c.said(i - 2) or (i > 1 and c.items[i - 2].sort == "ordinal")
        for j in (i - 1, i)
    }
    return [i for i, item in enumerate(c.items) if i in told or item.marks & {"show", "place_number"} or item.sort == "ordinal"]


def _placing(c: Clause, words: list[int]) -> str | None:
    """Those words, an ordinal written in one."""
    said = " ".join(c.said(i) for i in words if c.said(i) not in {"show results", "results", "shown"})
    return said.replace(" st", "st").replace(" nd", "nd").replace(" rd", "rd").replace(" th", "th") or None


def check(fact: Shown, herd: Herd, today: date) -> Problem | None:
    """An animal that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))


def apply(fact: Shown, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: Shown, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The placing."""
    return (dated(parts(f"{called(after, fact.who)} shown", fact.placing), fact.on, after),)


WRITTEN = ("{who:TAG} shown(?:, placing {placing:TEXT})?",)


def show(fact: Shown, _herd: Herd) -> str:
    """`2026-11-25: 3 shown, placing "best of breed"`."""
    return noted(fact.on, parts(f"{fact.who} shown", told("placing ", quoted(fact.placing))))


KIND = Kind(fact=Shown, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN, plain=True)
