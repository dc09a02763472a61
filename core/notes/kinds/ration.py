"""What an animal, or a class of animals, is fed a day."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core import words
from core.herd.changes import changed
from core.herd.state import Herd, Ration
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Pick, decimal_text
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.items import Item
from core.notes.telling import called, dated, noted
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class RationSet:
    """What an animal, or a class of animals, is fed a day."""

    kind: ClassVar[str] = "ration"

    amount: float
    unit: str
    on: date
    who: Tag | None = None
    scope: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("cut Moss back to a third of a cup", ({"who": "5", "amount": 0.333, "unit": "cup", "on": "2026-11-25"},)),
    Example("moss gets two thirds of a cup", ({"who": "5", "amount": 0.667, "unit": "cup", "on": "2026-11-25"},)),
    Example("9 gets 1/4cup til she kindles", ({"who": "9", "amount": 0.25, "unit": "cup", "on": "2026-11-25"},)),
    Example(
        "Moss bcs 2, I bumped him up to 1 cup and cut Flint back to 1/2 cup",
        (
            {"kind": "condition", "who": "5", "score": 2.0, "on": "2026-11-25"},
            {"who": "5", "amount": 1.0, "unit": "cup", "on": "2026-11-25"},
            {"who": "3", "amount": 0.5, "unit": "cup", "on": "2026-11-25"},
        ),
    ),
    Example(
        "moss gets 3/4 cup, clover 1 cup and 16 1.5 cups",
        (
            {"who": "5", "amount": 0.75, "unit": "cup", "on": "2026-11-25"},
            {"who": "9", "amount": 1.0, "unit": "cup", "on": "2026-11-25"},
            {"who": "16", "amount": 1.5, "unit": "cup", "on": "2026-11-25"},
        ),
    ),
    Example(
        "does 1 cup bucks 1/2",
        (
            {"amount": 1.0, "unit": "cup", "on": "2026-11-25", "scope": "does"},
            {"amount": 0.5, "unit": "cup", "on": "2026-11-25", "scope": "bucks"},
        ),
    ),
    Example("fed 14 1 cup 1/2", ({"amount": 1.5, "unit": "cup", "on": "2026-11-25", "who": "14"},)),
    Example("bucks get 5 oz a day", ({"amount": 5, "unit": "oz", "on": "2026-11-25", "scope": "bucks"},)),
    Example("Flint 1 cup a day", ({"amount": 1, "unit": "cup", "on": "2026-11-25", "who": "3"},)),
    Example("does are on a cup and a half", ({"amount": 1.5, "unit": "cup", "on": "2026-11-25", "scope": "does"},)),
    Example("grow outs 6 oz each", ({"amount": 6, "unit": "oz", "on": "2026-11-25", "scope": "grow-outs"},)),
    Example("Grow-out feed: 5 oz a day each", ({"amount": 5, "unit": "oz", "on": "2026-11-25", "scope": "grow-outs"},)),
    Example("Juno gets 3/4 cup", ({"amount": 0.75, "unit": "cup", "on": "2026-11-25", "who": "14"},)),
    Example("I've been giving Moss a cup a day", ({"amount": 1, "unit": "cup", "on": "2026-11-25", "who": "5"},)),
    Example("Cut Biscuit back to half a cup", ({"amount": 0.5, "unit": "cup", "on": "2026-11-25", "who": "22"},)),
    Example("All the does get a cup a day now", ({"amount": 1, "unit": "cup", "on": "2026-11-25", "scope": "does"},)),
    Example("moss 3/4 c pellets", ({"amount": 0.75, "unit": "cup", "on": "2026-11-25", "who": "5"},)),
    Example(
        "Does 14 and 22: 150 g a day each.",
        ({"amount": 150, "unit": "g", "on": "2026-11-25", "who": "14"}, {"amount": 150, "unit": "g", "on": "2026-11-25", "who": "22"}),
    ),
)
NOT_THIS: tuple[str, ...] = (
    "bought 4 bags feed",
    "120 lb feed left",
    "gave 22 ivermectin .2 ml",
)

OPENS: Final = ()
CUES: Final = {
    "ration": "is up to | gets | get | ration | rations | fed | feeding | feed each | giving | bumped to | cut back to | cut to | up to | eats | eating | give | on | is getting | down to | switched to | cut down to | increased to | feed",
    "hay": "hay | pellets | oats | alfalfa | timothy",
    "scope:grow-outs": "grow outs | grow - out | grow - outs | growouts | grow out | growers | go | grow-outs | fryers | friars | juniors | growing ones | meat pen",
    "scope:bucks": "bucks | all bucks | the bucks | all the bucks | boys",
    "scope:does": "does | all does | the does | all the does | girls",
    "scope:all": "everybody | everyone | all of them | all rabbits | the whole barn | whole herd | the herd | all the rabbits | every rabbit | each rabbit",
}  # fmt: skip


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"cup", "weight"})


def read(c: Clause) -> None:
    """How much feed a day, for one animal or a class of them."""
    places = c.sorted_as("cup", "weight")
    if not places:
        return
    scope = _scope(c)
    told_on = bool(scope) and c.before is not None and any(found.fact is RationSet for found in c.before.found)
    if not (c.has("ration", "per_day") or told_on or (scope and c.has("each", "hay")) or c.items[places[0]].sort == "cup"):
        return
    if len(places) > 1 and _in_pairs(c, places):
        return
    place = next((i for i in places if c.items[i].sort == "cup"), places[0]) if c.has("weigh") else places[0]
    weighed = c.has("weigh") and not (c.has("per_day") and any(item.said == "is up to" for item in c.items))
    if weighed and c.items[place].sort == "weight":
        return
    if c.items[place].sort == "weight" and c.has("litter", "cull", "dress", "bag", "buy", "feed_left", "condition", "sell", "hand"):
        return
    if c.items[place].sort == "weight" and not (c.has("per_day", "each") or told_on or _fed(c)):
        return
    if any(
        c.said(i) in {"once", "when", "after", "as soon as"} and "pronoun" in c.items[i + 1].marks for i in range(place, len(c.items) - 1)
    ):
        return  # "up to 1 cup once she kindles"
    value, unit = c.items[place].value, "cup"
    if c.items[place].sort == "weight":
        value, unit = c.items[place].value[1], c.items[place].unit
    used = [c.items[place], *(item for item in c.items if item.marks & {"ration", "per_day", "each", "feed"})]
    values: dict[str, object] = {"amount": decimal_text(value), "unit": unit}
    if scope:
        values["scope"] = scope
        c.take(c.past(RationSet, None, "", values, used))
        return
    listed = c.listed_subjects(-1)
    for pick in listed if len(listed) > 1 else [c.subject_of(place, after=False)]:
        c.take(c.past(RationSet, pick, "who", values, used))


def _scope(c: Clause) -> str | None:
    """The class of animals that is spoken of; `all` where it stands alone (`all 2 oz hay`, `ration, all: 0.1 kg`)."""
    if c.explicit():
        return None
    named = next((scope for item in c.items if (scope := _scope_of(item))), None)
    if named:
        return named
    every = next((i for i, item in enumerate(c.items) if item.said == "all"), None)
    alone = every is not None and (
        every + 1 >= len(c.items) or c.items[every + 1].sort in {"cup", "weight", "mark"} or c.items[every + 1].marks & {"ration"}
    )
    return "all" if alone else None


def _in_pairs(c: Clause, places: list[int]) -> bool:
    """`bucks 1/2 cup, does 1 cup`, `Flint gets 1/2 cup, Moss 1`: each class or animal with the amount behind it."""
    spoken = c.subject is not None and c.subject.tag is not None
    fed = [
        i
        for i, item in enumerate(c.items)
        if _scope_of(item) or item.sort == "animal" or (c.known(i) is not None and not c.counted(i)) or (spoken and item.said == "him")
    ]
    if len(fed) != len(places) or any(at > place for at, place in zip(fed, places, strict=True)):
        return False
    if any(after < place for after, place in zip(fed[1:], places, strict=False)):
        return False
    words = [item for item in c.items if item.marks & {"ration", "per_day", "each", "feed"}]
    for at, place in zip(fed, places, strict=True):
        item, scope = c.items[place], _scope_of(c.items[at])
        value, unit = (item.value[1], item.unit) if item.sort == "weight" else (item.value, "cup")
        values = {"amount": decimal_text(value), "unit": unit, **({"scope": scope} if scope else {})}
        pick = None if scope else (Pick(c.subject, []) if c.subject is not None and c.said(at) == "him" else c.pick(at))
        c.take(c.past(RationSet, pick, "" if scope else "who", values, [item, *words]))
    return True


def _scope_of(item: Item) -> str | None:
    return next((mark.removeprefix("scope:") for mark in sorted(item.marks) if mark.startswith("scope:")), None)


def _fed(c: Clause) -> bool:
    """Whether a verb of feeding, not merely `on`, is there."""
    return (
        any("ration" in item.marks and item.said not in {"on", "up to", "down to", "feed"} for item in c.items)
        or any(mark.startswith("scope:") for mark in c.marks)
        or (_scope(c) == "all" and c.has("hay", "ration"))
    )


def check(fact: RationSet, herd: Herd, today: date) -> Problem | None:
    """For an animal that is there, or a class of animals; some feed."""
    who = animal_problem(herd, fact.who, fact.on) if fact.who is not None else None
    nobody = None
    if fact.who is None and fact.scope is None:
        nobody = Problem("which_animal", "Who gets that much?", (), 'Send it as "moss gets 1/2 cup" or "does get 1 cup".')
    some = None if fact.amount > 0 else Problem("how_many", "How much a day?", (), 'Send it as "moss gets 1/2 cup".')
    return worst(not_yet(fact.on, today), who, nobody, some)


def apply(fact: RationSet, herd: Herd) -> Herd:
    """What it eats a day from then on."""
    ration = Ration(fact.on, fact.amount, fact.unit)
    if fact.who is not None:
        return changed(herd, fact.who, ration=ration)
    return replace(herd, rations={**herd.rations, fact.scope or "all": ration})


def reply(fact: RationSet, _before: Herd, after: Herd) -> tuple[str, ...]:
    """Who gets how much a day."""
    who = called(after, fact.who) if fact.who is not None else f"{(fact.scope or 'all').capitalize()}, each"
    return (dated(f"{who}: {words.plain(fact.amount)} {fact.unit} a day", fact.on, after),)


WRITTEN = (
    "{who:TAG} gets {amount:DEC} (?P<unit>cup|oz|g|lb|kg) a day",
    "(?P<scope>bucks|does|grow-outs|all) get {amount:DEC} (?P<unit>cup|oz|g|lb|kg) a day",
)


def show(fact: RationSet, _herd: Herd) -> str:
    """`2026-11-25: 5 gets 0.5 cup a day`, `does get 1 cup a day`."""
    who = f"{fact.who} gets" if fact.who is not None else f"{fact.scope} get"
    return noted(fact.on, f"{who} {words.plain(fact.amount)} {fact.unit} a day")


KIND = Kind(
    fact=RationSet, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN, plain=True
)
