"""What is left in the feed bin."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core.herd.state import Event, Herd
from core.notes.checking import not_yet
from core.notes.clauses.amounts import bare_weight
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need
from core.notes.kind import Example, Kind
from core.notes.telling import dated, grams, noted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedLeft:
    """What is left in the feed bin."""

    kind: ClassVar[str] = "feed_left"

    grams: int
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example("feed bin: 95 lb", ({"grams": 43091, "on": "2026-11-25"},)),
    Example("got eighty pounds of feed left", ({"grams": 36287, "on": "2026-11-25"},)),
    Example("2 1/2 bags of feed left", ({"grams": 56700, "on": "2026-11-25"},)),
    Example("we've got about a hundred pounds of feed to get through the month", ({"grams": 45359, "on": "2026-11-25"},)),
    Example("140 lb of pellets left", ({"grams": 63503, "on": "2026-11-25"},)),
    Example("we have 2 bags of feed left", ({"grams": 45360, "on": "2026-11-25"},)),
    Example("weighed the bin, 60 lb of feed left", ({"grams": 27216, "on": "2026-11-25"},)),
    Example("feed on hand 55 lb", ({"grams": 24948, "on": "2026-11-25"},)),
    Example("down to 30 lb of feed", ({"grams": 13608, "on": "2026-11-25"},)),
    Example("There's maybe 40 pounds of pellets left", ({"grams": 18144, "on": "2026-11-25"},)),
    Example("We've only got about twenty pounds of feed left", ({"grams": 9072, "on": "2026-11-25"},)),
    Example(
        "Got 2 bags pellets 50 lb $18 each, 160 lb left now",
        ({"kind": "feed_bought", "bags": 2, "grams": 45359, "price": "36.00", "on": "2026-11-25"}, {"grams": 72575, "on": "2026-11-25"}),
    ),
    Example("a hundred pounds of feed left", ({"grams": 45359, "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "12 has 6 left",
    "22 left her feed",
    "bought 100 lb feed",
    "31 left the pen",
)

OPENS: Final = ()
CUES: Final = {
    "bin": "bin | barrel | feed bin | feed barrel | can | feed can | trash can | tote | hopper | drum | in the bin | in the barrel | in the can",
    "feed_left": "weve only got | ive only got | we only have | i only have | weve got | ive got | we have | remain | remains | still in | left over | left in the barn | inventory | feed inventory | in storage | feed left | left | remaining | on hand | feed on hand | in the bin | in the barrel | of feed left | down to | feed remaining | still have | have about | in stock | in the can | left in",
}  # fmt: skip


def read(c: Clause) -> None:
    """A weight of feed that is still there."""
    if not (c.has("feed_left") or _in_the_bin(c)) or not (
        c.has("feed", "bag", "bin") or any("feed" in item.said for item in c.items if "feed_left" in item.marks) or _behind_bags(c)
    ):
        return
    if (c.has("buy") and not _got_left(c)) or c.has("kits", "per_day") or c.explicit() or _gone_from(c):
        return
    weights = c.sorted_as("weight")
    bags = next((place for i in c.each("bag") if (place := c.past_fillers(i - 1, -1)) >= 0 and c.items[place].sort == "num"), None)
    used = [item for item in c.items if item.marks & {"feed_left", "feed", "bag"}]
    if weights:
        grams = c.grams(weights[0])
        c.take(c.past(FeedLeft, None, "", {"grams": grams}, [c.items[weights[0]], *used]))
    elif bags is not None:
        bag = c.herd.settings.said.get("feed_bag")
        grams = int(c.items[bags].value * int(bag)) if bag else None
        need = None if grams is not None else Need("how_many", "grams", "How much feed is left, in pounds or kilos?")
        c.take(c.past(FeedLeft, None, "", {"grams": grams}, [c.items[bags], *used], need))
    else:
        numbers = c.sorted_as("num")
        if len(numbers) == 1:
            grams = bare_weight(c, numbers[0])[0]
            c.take(c.past(FeedLeft, None, "", {"grams": grams}, [c.items[numbers[0]], *used]))


def _got_left(c: Clause) -> bool:
    """`got eighty pounds of feed left`: had, and not bought."""
    return c.said(c.opening() or 0) == "got" and c.says({"left", "of feed left", "feed left", "remaining"}) and not c.sorted_as("money")


def _in_the_bin(c: Clause) -> bool:
    """`feed bin: 95 lb`: what stands in the bin, and nothing else."""
    bin_ = c.first("bin")
    return (
        bin_ is not None
        and c.said(bin_).startswith("feed ")
        and c.said(bin_ + 1) in {":", "at", "has", "=", "-"}
        and bool(c.sorted_as("weight"))
    )


def _gone_from(c: Clause) -> bool:
    """`12 left her feed`: an animal that went from it."""
    return any(c.said(i) == "left" and "pronoun" in c.items[i + 1].marks for i in range(len(c.items) - 1))


def _behind_bags(c: Clause) -> bool:
    """`bought 3 bags at 19.25, 190 lb left`: the breath before told of feed that was bought."""
    return c.before is not None and c.before.has("buy") and c.before.has("feed", "bag") and bool(c.sorted_as("weight"))


def check(fact: FeedLeft, _herd: Herd, today: date) -> Problem | None:
    """Not in the future."""
    return not_yet(fact.on, today)


def apply(fact: FeedLeft, herd: Herd) -> Herd:
    """The bin as it was found."""
    return replace(herd, feed=(*herd.feed, Event(fact.on, fact.kind, said(fact))))


def reply(fact: FeedLeft, _before: Herd, after: Herd) -> tuple[str, ...]:
    """What is left."""
    return (dated(f"Feed left: {grams(after, fact.grams)}", fact.on, after),)


WRITTEN = ("{grams:NUM} g feed left",)


def show(fact: FeedLeft, _herd: Herd) -> str:
    """`2026-11-25: 54431 g feed left`."""
    return noted(fact.on, f"{fact.grams} g feed left")


KIND = Kind(
    fact=FeedLeft, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN, plain=True
)
