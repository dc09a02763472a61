"""An animal is butchered."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core import words
from core.handbook import breeds
from core.herd.changes import gone, left, weighed
from core.herd.litters import the_litter
from core.herd.state import Herd
from core.notes.checking import leaver_problem, not_yet, worst
from core.notes.clauses.amounts import bare_weight
from core.notes.clauses.clause import Clause
from core.notes.clauses.leaving import leaving
from core.notes.clauses.scene import Need, first_need
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.items import Item
from core.notes.telling import dated, grams, kits_after, motherless, noted, of_kits, parts, said, whom, withdrawal_caution
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Culled:
    """An animal is butchered."""

    kind: ClassVar[str] = "culled"

    on: date
    who: Tag | None = None
    litter_of: Tag | None = None
    count: int | None = None
    live_grams: int | None = None
    dressed_grams: int | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("culled the runt from 12", ({"on": "2026-11-25", "litter_of": "12", "count": 1},)),
    Example("butcherd r23, 5lb live 2lb 11 drsd", ({"on": "2026-11-25", "who": "R23", "live_grams": 2268, "dressed_grams": 1219},)),
    Example("processed 32 live 5-2 dressed 2-12", ({"on": "2026-11-25", "who": "32", "live_grams": 2325, "dressed_grams": 1247},)),
    Example("processed 31 5-1 dressed 2-10", ({"on": "2026-11-25", "who": "31", "live_grams": 2296, "dressed_grams": 1191},)),
    Example(
        "culled R21 yesterday, live 5 lb 2 oz, dressed 2 lb 11 oz",
        ({"on": "2026-11-24", "who": "R21", "live_grams": 2325, "dressed_grams": 1219},),
    ),
    Example("butchered three of 16's kits", ({"on": "2026-11-25", "litter_of": "16", "count": 3},)),
    Example("R23 went to freezer camp", ({"on": "2026-11-25", "who": "R23"},)),
    Example(
        "We butchered R22 and R23 yesterday, dressed out 2 lb 10 oz and 2 lb 12 oz",
        (
            {"on": "2026-11-24", "who": "R22", "dressed_grams": 1191},
            {"on": "2026-11-24", "who": "R23", "dressed_grams": 1247},
        ),
    ),
    Example("butch r23 4-14/2-9", ({"on": "2026-11-25", "who": "R23", "live_grams": 2211, "dressed_grams": 1162},)),
    Example("butchered thirty two dressed two pounds ten", ({"on": "2026-11-25", "who": "32", "dressed_grams": 1191},)),
    Example("procesed r22", ({"on": "2026-11-25", "who": "R22"},)),
)
NOT_THIS: tuple[str, ...] = (
    "kidding about butchering Flint",
    "joked about butchering 31",
    "butchered the extras from 16",
    "cull 12 on dec 3",
    "should I cull 12?",
    "R21 is the next to be butchered",
    "32 is going to freezer camp on December 12th",
    "I may have to cull Sorrel",
)

OPENS: Final = ("cull",)
CUES: Final = {
    "cull": "to the processor | to the butcher | to the locker | to the abattoir | dressed weights | dressed wts | carcass weights | butchered | butch | butchd | procd | procsd | proc | processed | culled | slaughtered | harvested | put in the freezer | to the freezer | in the freezer | freezer camp | sent to freezer camp | went to freezer camp | went to the freezer | dispatched | cauled | cold book"
    " | went in the freezer | put in freezer | butchering | processing | made into | cooked | dressed out",
    "eat": "ate",
    "dress": "hung | hung weight | hanging weight | hot carcass | dressed weights | dressed wts | carcass weights | dressing out at | dressed | dr | dress | dressed out | dressed out at | hanging | carcass | dressed weight | drs | dressd",
    "live_weight": "live | alive | live weight | on the hoof | lv | live wt",
}  # fmt: skip


def read(c: Clause) -> None:
    """Which animal, or how many kits; its weight before and after."""
    cue = c.first("cull")
    if cue is None:
        cue = eaten_by_us(c)
    if cue is None and "cull" not in c.virtual:
        if c.first("dress") is None or not (c.sorted_as("weight", "pair") or _decimal(c) is not None):
            return
        cue = c.first("dress")
    if cue is not None and (
        (c.said(cue).endswith("ing") and (c.has("intent") or c.ahead() or c.planned_for(cue) or c.to_come(cue)))
        or (cue and "intent" in c.items[cue - 1].marks)
    ):
        return  # it is only planned
    if _each_its_weight(c):
        return
    live, dressed, used = _weights(c)
    c.used.update(id(item) for item in used)
    found = leaving(c, Culled, cue, to=False, money=False)
    if len(found) > 1 and (live is not None or dressed is not None):
        for each in found:
            each.need = Need(
                "which_animal", "", "Whose weight is that? Send each with its own, for example \u201cbutchered 31 5-2, 32 4-15\u201d."
            )
    for each in found[:1]:
        each.used.extend(used)
        each.values |= {"live_grams": live, "dressed_grams": dressed}
        if any(item.sort in {"weight", "pair", "clock"} and _grams(c, item) is None for item in used):
            each.need = first_need(each.need, Need("which_number", "dressed_grams", "Which weight is that? Ounces go up to 15."))


EATERS: Final = frozenset({"we", "i", "family", "kids", "just"})


def eaten_by_us(c: Clause) -> int | None:
    """`we ate R22`, `ate one of Thistle's fryers`: people ate it, and no doe her kits."""
    for i in c.each("eat"):
        behind = i + 1
        eater = i == c.opening() or c.said(i - 1) in EATERS
        if c.said(i) == "ate" and eater and (c.known(behind) is not None or (c.part_of() or (0, 0))[0] == behind):
            return i
    return None


def _decimal(c: Clause) -> int | None:
    """`hung weight was 2.75`: the one number that can be no animal."""
    broken = [i for i in c.sorted_as("num") if c.items[i].value != int(c.items[i].value) and "." in c.said(i)]
    return broken[0] if len(broken) == 1 else None


def _each_its_weight(c: Clause) -> bool:
    """`butchered R22 and R23, dressed 2-10 and 2-12`: in order; any other list of weights for several animals is left to be asked."""
    places = c.sorted_as("weight", "pair", "clock")
    explicit = c.explicit()
    if len(explicit) < 2 or not places:
        return False
    picks = {c.mention(i).tags if c.mention(i) else (): c.pick(i) for i in explicit}  # type: ignore[union-attr] # asked just before
    if len(picks) == len(places) and all(i < places[0] for i in explicit):
        name = "dressed_grams" if c.has("dress") else "live_grams"
        words = [item for item in c.items if item.marks & {"dress", "live_weight", "cull", "weigh"}]
        for pick, place in zip(picks.values(), places, strict=True):
            c.take(c.past(Culled, pick, "who", {name: c.grams(place)}, [c.items[place], *words]))
        return True
    return False


def _weights(c: Clause) -> tuple[int | None, int | None, list[Item]]:
    """Live and dressed weight, by the word beside each; one alone without a word is the live one."""
    places = c.sorted_as("weight", "pair", "clock")
    if len(c.explicit()) > 1 and len({c.mention(i).tags for i in c.explicit() if c.mention(i)}) > 1:  # type: ignore[union-attr] # asked just before
        return None, None, []
    if not places and c.has("dress") and (place := _decimal(c)) is not None:
        grams, items = bare_weight(c, place)
        return None, grams, [*items, *(item for item in c.items if "dress" in item.marks)]
    used = [c.items[i] for i in places[:2]] + [item for item in c.items if item.marks & {"dress", "live_weight", "cull", "weigh"}]
    live: int | None = None
    dressed: int | None = None
    labels = c.each("dress", "live_weight")
    if places and labels:
        if len(places) == 2 and len(labels) == 1:  # one of two told: what is dressed weighs less
            weights = sorted(c.grams(place) or 0 for place in places)
            return weights[1], weights[0], used
        leading = any(place > labels[-1] for place in places)
        for place in places[:2]:
            if _label(c, place, places, labels, leading=leading) == "dress":
                dressed = c.grams(place)
            else:
                live = c.grams(place)
        return live, dressed, used
    if len(places) == 2:
        return c.grams(places[0]), c.grams(places[1]), used
    if len(places) == 1 and "cull" in c.virtual and c.before is not None and c.before.has("dress") and not c.before.has("live_weight"):
        return None, c.grams(places[0]), used  # "dressed weights: 31 2-8, 32 2-6"
    return (c.grams(places[0]), None, used) if places else (None, None, [])


def _label(c: Clause, place: int, places: list[int], labels: list[int], *, leading: bool) -> str:
    """`live` or `dress`: the word before each weight, or behind it where the last word ends the note."""
    if leading:
        earlier = max((other for other in places if other < place), default=-1)
        own = [i for i in labels if earlier < i < place]
    else:
        later = min((other for other in places if other > place), default=len(c.items))
        own = [i for i in labels if place < i < later]
    return "dress" if own and "dress" in c.items[own[-1 if leading else 0]].marks else "live"


def _grams(c: Clause, item: Item) -> int | None:
    return c.grams(c.items.index(item))


def check(fact: Culled, herd: Herd, today: date) -> Problem | None:
    """An animal that is there, or no more untagged kits than there are; weights that can be."""
    leaver = leaver_problem(herd, fact.who, fact.litter_of, fact.count, fact.on, "butchered")
    return worst(not_yet(fact.on, today), leaver, _weight_problem(fact, herd))


def _weight_problem(fact: Culled, herd: Herd) -> Problem | None:
    live, dressed = fact.live_grams, fact.dressed_grams
    animal = herd.find(fact.who) if fact.who is not None else None
    if live is not None and animal is not None and live > breeds.heaviest_believable_g(animal.breed):
        return Problem("impossible", f"{grams(herd, live)} live can't be for {fact.who}. What did it weigh?", (), _AGAIN)
    if live is not None and dressed is not None and dressed >= live:
        text = f"{grams(herd, dressed)} dressed of {grams(herd, live)} live can't be. Which number is wrong?"
        return Problem("which_number", text, (), _AGAIN)
    return None


_AGAIN = 'Send it again, for example "butchered 32 5-2 dressed 2-12".'


def apply(fact: Culled, herd: Herd) -> Herd:
    """Gone, with its last weight; untagged kits are fewer."""
    if fact.who is not None:
        animal = herd.find(fact.who)
        if animal is not None and fact.live_grams is not None:
            herd = weighed(herd, animal, fact.on, fact.live_grams)
        return gone(herd, fact.who, fact.on, fact.kind, said(fact))
    doe = herd.find(fact.litter_of or "")
    litter = the_litter(herd, doe.key, fact.on) if doe else None
    return herd.with_litter(left(litter, fact.on, fact.count or 0, fact.kind, said(fact, "litter_of", "count"))) if litter else herd


def reply(fact: Culled, before: Herd, after: Herd) -> tuple[str, ...]:
    """Who was butchered, live and dressed; plain warnings where it was treated."""
    who = whom(before, fact.who) if fact.who is not None else of_kits(None, fact.litter_of, fact.count)
    live = f"{grams(after, fact.live_grams)} live" if fact.live_grams is not None else None
    dressed = f"{grams(after, fact.dressed_grams)} dressed" if fact.dressed_grams is not None else None
    share = words.share(fact.dressed_grams / fact.live_grams) if fact.dressed_grams is not None and fact.live_grams else None
    line = dated(parts(f"Butchered {who}", live, dressed, share), fact.on, after)
    caution = withdrawal_caution(before, fact.who, fact.on)
    return tuple(
        each for each in (line, kits_after(fact.litter_of, before, after, fact.on), motherless(before, fact.who, fact.on), caution) if each
    )


#: Words for an animal that left which say neither butchered nor died, only that somebody ended it.
_OPEN_WORD = re.compile(r"\b(?:dispatch(?:ed)?|culled)\b", re.IGNORECASE)


def taken_as(fact: Culled, text: str) -> str | None:
    """How a word that may also tell of a death was taken, and how to say the other; None where the note leaves no doubt."""
    if fact.who is None or fact.live_grams is not None or fact.dressed_grams is not None or not _OPEN_WORD.search(text):
        return None
    return f'Taken as butchered. If no meat came of it: "undo", then "{fact.who} died".'


WRITTEN = (
    "butchered {who:TAG}(?:, {live_grams:NUM} g live)?(?:, {dressed_grams:NUM} g dressed)?",
    "butchered {count:NUM} kits? of doe {litter_of:TAG}(?:, {live_grams:NUM} g live)?(?:, {dressed_grams:NUM} g dressed)?",
)


def show(fact: Culled, _herd: Herd) -> str:
    """`2026-11-25: butchered 32, 2325 g live, 1247 g dressed`."""
    return noted(
        fact.on,
        parts(
            f"butchered {of_kits(fact.who, fact.litter_of, fact.count)}",
            None if fact.live_grams is None else f"{fact.live_grams} g live",
            None if fact.dressed_grams is None else f"{fact.dressed_grams} g dressed",
        ),
    )


KIND = Kind(fact=Culled, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
