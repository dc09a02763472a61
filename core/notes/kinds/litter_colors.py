"""The colours in a litter."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core import words
from core.herd.litters import alive_now, litter_meant, the_litter
from core.herd.state import Herd
from core.notes.checking import nest_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Pick
from core.notes.fact import ColorCounts, Tag
from core.notes.kind import Example, Kind
from core.notes.slots.items import color_said
from core.notes.telling import color_written, dated, noted
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class LitterColored:
    """The colours in a litter."""

    kind: ClassVar[str] = "litter_colors"

    doe: Tag
    colors: ColorCounts
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example("16 kits: castor=3", ({"doe": "16", "colors": {"castor": 3}, "on": "2026-11-25"},)),
    Example("16's litter: 4 castor, 1 opal", ({"doe": "16", "colors": {"castor": 4, "opal": 1}, "on": "2026-11-25"},)),
    Example("16: 4 black 1 castor", ({"doe": "16", "colors": {"black": 4, "castor": 1}, "on": "2026-11-25"},)),
    Example("Sorrel's kits look like seven reds", ({"doe": "12", "colors": {"red": 7}, "on": "2026-11-25"},)),
    Example("litter of 12 is 5 red and 2 white", ({"doe": "12", "colors": {"red": 5, "white": 2}, "on": "2026-11-25"},)),
    Example("16 litter colors 3 black 2 castor", ({"doe": "16", "colors": {"black": 3, "castor": 2}, "on": "2026-11-25"},)),
    Example("Colours, litter of 12: red, 4; white, 3", ({"doe": "12", "colors": {"red": 4, "white": 3}, "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "33 is black",
    "16: 2 black pails and 1 blue",
    "16 has 5 kits",
    "31 4-2",
)

OPENS: Final = ("litter_color",)
CUES: Final = {
    "litter_color": "litter colors | litter is | litter has | coloring up | kit colors | colors | colours",
}  # fmt: skip


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"color", "kits", "litter"})


def read(c: Clause) -> None:
    """How many kits of each colour."""
    pairs = _pairs(c)
    if not c.has("litter", "kits", "litter_color") and not _all_of_them(c, pairs):
        return
    labelled = any(c.said(at + 1) in {":", "="} for _, _, at in pairs)  # "16 kits: castor=3"
    if (
        not pairs
        or (len(pairs) == 1 and not labelled and not c.has("litter", "litter_color") and not _agree(c, pairs, c.subject_of(pairs[0][1])))
        or c.has("sell", "cull", "list", "tag", "give")
    ):
        return
    counts: dict[str, int] = {}
    for color, place, _ in pairs:
        counts[color] = counts.get(color, 0) + (c.whole(place) or 0)
    used = [item for _, place, at in pairs for item in (c.items[place], c.items[at])]
    c.used.update(id(item) for item in used)
    pick = _doe(c, pairs[0][1], labelled=labelled)
    total = [
        c.items[i] for i in c.sorted_as("num") if c.whole(i) == sum(counts.values()) and (pick is None or c.items[i] not in pick.items)
    ]
    c.take(c.past(LitterColored, pick, "doe", {"colors": ColorCounts(tuple(counts.items()))}, [*used, *total]))


def _agree(c: Clause, pairs: list[tuple[str, int, int]], pick: Pick | None) -> bool:
    """Whether the numbers come to all the kits that a doe has on the book."""
    doe = c.herd.find(pick.tag) if pick and pick.tag else None
    litter = the_litter(c.herd, doe.key, c.today) if doe else None
    return litter is not None and sum(c.whole(place) or 0 for _, place, _ in pairs) == alive_now(litter)


def _all_of_them(c: Clause, pairs: list[tuple[str, int, int]]) -> bool:
    """`16: 3 black 2 castor`, `Thistle's five are two blacks and three castors`: no word of kits, but as many as the doe has."""
    if len(pairs) < 2 or c.has("new", "breed", "buck_word", "doe_word"):
        return False
    opening = c.opening()
    known = opening is not None and c.known(opening) is not None and opening < pairs[0][1]
    return known and _agree(c, pairs, c.pick(opening or 0))


def _pairs(c: Clause) -> list[tuple[str, int, int]]:
    found: list[tuple[str, int, int]] = []
    colors = [i for i, item in enumerate(c.items) if color_said(item) and not c.taken(i)]
    headed = bool(colors) and (c.said(colors[0] - 1) == ":" or c.whole(c.past_fillers(colors[0] - 1, -1)) is None)
    behind = [i + 2 if c.said(i + 1) == "," else i + 1 for i in colors]
    if headed and all(c.whole(place) is not None for place in behind):
        return [(color_said(c.items[i]) or "", place, i) for i, place in zip(colors, behind, strict=True)]  # `castor 3, black 2`
    for i, item in enumerate(c.items):
        color = color_said(item) if not c.taken(i) else None
        before = c.past_fillers(i - 1, -1)
        if color and c.whole(before) is not None and all(before != place for _, place, _ in found):
            found.append((color, before, i))
        elif color and c.whole(c.past_fillers(i + 1, 1)) is not None and c.said(i + 1) in {":", "="}:
            found.append((color, c.past_fillers(i + 1, 1), i))
    return found


def _doe(c: Clause, first: int, *, labelled: bool) -> Pick | None:
    if c.explicit():
        return c.subject_of(first)
    led = c.led("of", "for", "from", "doe", "litter")
    if led is not None:
        return c.pick(led)
    opening = c.opening()
    if opening is not None and c.whole(opening) is not None and (not c.counted(opening) or (labelled and c.known(opening))):
        return c.pick(opening)
    return c.spoken_of()


def check(fact: LitterColored, herd: Herd, today: date) -> Problem | None:
    """A doe with a litter, and no more kits than were born or came."""
    doe = herd.find(fact.doe)
    there = worst(not_yet(fact.on, today), nest_problem(herd, fact.doe, fact.on))
    if there or doe is None:
        return there
    litter = litter_meant(herd, doe.key, fact.on)
    total = sum(count for _, count in fact.colors)
    most = max(litter.born or 0, alive_now(litter)) if litter else 0
    if total <= most:
        return None
    text = f"That is {words.count(total, 'kit')}, but the book knows of {most} in doe {fact.doe}'s litter. Record it all the same?"
    return Problem("confirm", text, ("yes", "no"), "Answer yes, or send the right doe or numbers.")


def apply(fact: LitterColored, herd: Herd) -> Herd:
    """The litter's colours; the last count holds."""
    doe = herd.find(fact.doe)
    litter = litter_meant(herd, doe.key, fact.on) if doe else None
    return herd.with_litter(replace(litter, colors=tuple(fact.colors))) if litter else herd


def reply(fact: LitterColored, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The colours with their counts."""
    counts = words.listed(f"{count} {color}" for color, count in fact.colors)
    return (dated(f"Doe {fact.doe}'s litter: {counts}", fact.on, after),)


WRITTEN = ("doe {doe:TAG} litter colors {colors:REST}",)


def show(fact: LitterColored, _herd: Herd) -> str:
    """`2026-11-25: doe 16 litter colors 3 castor, 2 black`."""
    return noted(fact.on, f"doe {fact.doe} litter colors {', '.join(f'{count} {color_written(color)}' for color, count in fact.colors)}")


KIND = Kind(
    fact=LitterColored, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN, plain=True
)
