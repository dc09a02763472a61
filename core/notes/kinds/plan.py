"""What a person means to do with an animal.

Over 300 lines: what a plan is for, whom it is about, its day and its reason, and the chores that follow.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import pairwise
from typing import ClassVar, Final

from core import words
from core.handbook import health
from core.herd.calendar import plan_chores
from core.herd.state import Herd, Intention
from core.notes.checking import already_past, animal_problem, worst
from core.notes.clauses.clause import CONDITIONS, Clause
from core.notes.clauses.planned import animal_places, place_taken, plan_told
from core.notes.clauses.scene import Found, Need, Pick, first_need
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.dates import Days, Said
from core.notes.slots.items import Item, breed_said
from core.notes.telling import quoted, withdrawal_caution
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """What a person means to do with an animal."""

    kind: ClassVar[str] = "planned"

    who: Tag
    what: str
    on: date | None = None
    until: date | None = None
    with_: Tag | None = None
    reason: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("cull 22 after christmas", ({"who": "22", "what": "cull", "on": "2026-12-26"},)),
    Example("breed 7 to 14 the 5th of next month", ({"who": "14", "what": "breed", "on": "2026-12-05", "with": "7"},)),
    Example(
        "gonna butcher R22 and R23 saturday",
        (
            {"who": "R22", "what": "cull", "on": "2026-11-28"},
            {"who": "R23", "what": "cull", "on": "2026-11-28"},
        ),
    ),
    Example("cull 33 before dec 5", ({"who": "33", "what": "cull", "until": "2026-12-05"},)),
    Example(
        "sell 31 and 32",
        (
            {"who": "31", "what": "sell"},
            {"who": "32", "what": "sell"},
        ),
    ),
    Example("R22 is going to freezer camp on December 12th", ({"who": "R22", "what": "cull", "on": "2026-12-12"},)),
    Example("breeding 22 to Moss on sunday", ({"who": "22", "what": "breed", "on": "2026-11-29", "with": "5"},)),
    Example("keep 33 until march", ({"who": "33", "what": "keep", "until": "2027-03-31"},)),
    Example("replace Sorrel with 33", ({"who": "12", "what": "replace", "with": "33"},)),
    Example("breed 16 to 3 on dec 5", ({"who": "16", "what": "breed", "on": "2026-12-05", "with": "3"},)),
    Example("review R21 on dec 20", ({"who": "R21", "what": "review", "on": "2026-12-20"},)),
    Example("retire Moss in the spring", ({"who": "5", "what": "retire"},)),
    Example("I want to cull Sorrel in December", ({"who": "12", "what": "cull", "on": "2026-12-01", "until": "2026-12-31"},)),
    Example(
        "We're going to breed Thistle to Juno's Boy next week",
        ({"who": "16", "what": "breed", "on": "2026-11-30", "until": "2026-12-06", "with": "7"},),
    ),
    Example(
        "Culls planned, 6 Dec: 31, 32",
        ({"who": "31", "what": "cull", "on": "2026-12-06"}, {"who": "32", "what": "cull", "on": "2026-12-06"}),
    ),
    Example("3 goes", ({"who": "3", "what": "cull"},)),
    Example("22 has to go", ({"who": "22", "what": "cull"},)),
    Example("14 stays", ({"who": "14", "what": "keep"},)),
    Example("14 and 9 stay", ({"who": "14", "what": "keep"}, {"who": "9", "what": "keep"})),
    Example("butcher R22 the week of the 7th", ({"who": "R22", "what": "cull", "on": "2026-12-07", "until": "2026-12-13"},)),
)
NOT_THIS: tuple[str, ...] = (
    "12's kits keep getting out of the nest",
    "no luck getting 22 to breed",
    "I think we'll butcher the three R's around christmas",
    "15 flagging her tail, ready to breed",
    "I might sell 31 someday",
    "sold 31 $55",
    "33 is so pretty it would be a shame to sell her",
    "thinking about keeping 33",
    "what if I sold 31?",
    "may replace Moss next year",
    "14 goes crazy for parsley",
    "14 stays in the nest box all day",
    "3 goes to the show on saturday",
)

OPENS: Final = ("plan",)
CUES: Final = {
    "plan:cull": "goes | go | has to go | have to go | must go | needs to go | got to go | planned culls | culls planned | planned cull | cull planned | cull list | butchering | processing | culling | slaughtering | cull | butcher | process | send to freezer camp | freezer camp | eat | slaughter | harvest | put in the freezer | dispatch",
    "plan:sell": "planned sales | sales planned | planned sale | sale planned | sell",
    "plan:keep": "stays | stay | keep | hold back | hang on to | hold on to | hold onto | keeping | keeper | keep back | holding back | hang onto | not selling | held back",
    "plan:breed": "breeding | breed her | breed | rebreed | breed back | put",
    "plan:retire": "retire | retiring | retired",
    "place_of": "place | spot",
    "plan:replace": "as replacement for | as a replacement for | as the replacement for | as her replacement for | replacement for | take the place of | taking the place of | replace | repl | replacing | swap out",
    "plan:review": "review | reevaluate | re-evaluate | look at again | decide on | reassess | revisit | recheck | take another look at",
    "plan": "planned culls | culls planned | planned cull | cull planned | cull list | planned sales | sales planned | planned sale | sale planned | cull | butcher | process | sell | keep | hold back | hang on to | breed | retire | replace | review | keeping | plan | plans | planning to | going to cull | retiring | repl | replacing | hold on to | hold onto | rebreed | keeper | reevaluate | slaughter | keep back | reassess",
    "intent": "will be | well be | planned | planned for | going to | gonna | plan to | planning to | want to | wanna | decided to | need to | will | ill | lets | have to | plan | intend to | were going to | i want | must | gotta | got to | time to | due to be | want | planning on",
    "until": "before | until | til | till | thru | through",
    "reason": "because | since | cause | cuz | for | due to",
}  # fmt: skip
LATE_ENTRY: Final = 60  # not a figure: days: an entry copied later than this is more likely a plan for next year


def read(c: Clause) -> None:
    """What is meant to be done with an animal; never what might be."""
    what = plan_told(c)
    if "luck" in c.words() and any(c.said(i) == "no" and c.said(i + 1) == "luck" for i in range(len(c.items) - 1)):
        return  # "no luck getting 16 to breed"
    if what is None or _only_wondered(c, what) or not (animal_places(c) or c.has("pronoun") or c.virtual or len(c.items) <= 3):
        return
    cue = c.first(f"plan:{what}")
    cue = cue if cue is not None else place_taken(c)
    if what == "keep" and cue is not None and c.said(cue) in {"keep", "keeps"} and c.said(cue + 1).split(" ")[0].endswith("ing"):
        return  # "16's kits keep getting out"
    if not animal_places(c) and not c.has("pronoun") and not c.virtual and any(breed_said(item) for item in c.items):
        c.take(Found(Planned, {"what": what}, list(c.items), Need("which_animal", "who", "Which animal is this about?")))
        return
    with_place = _with(c, what, cue)
    with_pick = c.pick(with_place) if with_place is not None else None
    if with_pick:
        c.used.update(id(item) for item in with_pick.items)
    until, until_items = _until(c)
    c.used.update(id(item) for item in until_items)
    picks = _subjects(c, cue, with_pick)
    reason = _reason(c, cue)
    found = [_planned(c, what, pick, with_pick, until, until_items, reason) for pick in picks]
    for each in found:
        c.take(each)


def _only_wondered(c: Clause, what: str) -> bool:
    """Whether it may be or is asked; a question word behind the verb only leads a phrase (`keeping 33 whatever you say, you know how ...`)."""
    cue = c.first(f"plan:{what}")
    return any(
        ("tentative" in item.marks and not (cue is not None and i > cue and item.said in CONDITIONS))
        or ("question" in item.marks and not (cue is not None and i > cue + 1))
        for i, item in enumerate(c.items)
    )


def _planned(
    c: Clause, what: str, pick: Pick | None, with_pick: Pick | None, until: Days | None, until_items: list[Item], reason: str | None
) -> Found:
    dates = c.dates()
    said = c.items[dates[0]].value if dates else c.header
    if said is c.header and _day_of_entry(c, said):
        said = None
    days = c.resolved(said, "plan") if said else Days(None)
    if dates and c.said(dates[0] - 1) == "after" and days.on is not None and days.until is None:
        days = Days(days.on + timedelta(1))  # "after christmas" begins on the day behind it
    used = [
        *until_items,
        *(c.items[i] for i in dates[:1]),
        *(item for item in c.items if any(mark.startswith("plan") for mark in item.marks) or item.marks & {"intent"}),
    ]
    found = Found(Planned, {"what": what, "on": days.on, "until": days.until if days.until != days.on else None, "reason": reason}, used)
    if until is not None:
        found.values["until"] = until.until or until.on
    if (said is not None and (days.on is None or days.on < c.today) and days.until is None) or (
        until is not None and (until.on is None or until.on < c.today)
    ):
        found.need = Need("when", "on", "For which day is that? It must lie ahead.")
    if pick is None:
        found.need = first_need(found.need, Need("which_animal", "who", "Which animal is this about?"))
    else:
        found.used.extend(pick.items)
        c.fill(found, pick, "who")
    if with_pick is not None:
        found.used.extend(with_pick.items)
        c.fill(found, with_pick, "with_")
    if what == "breed" and found.need is None:
        _doe_first(c, found)
    return found


def _day_of_entry(c: Clause, said: Said | None) -> bool:
    """Whether a heading's day is only when the note was made: `20 Nov: keep 33`, but `4 Dec: butcher R21`."""
    day = c.resolved(said, "past").on if said is not None else None
    return day is not None and 0 <= (c.today - day).days <= LATE_ENTRY


def _doe_first(c: Clause, found: Found) -> None:
    """The doe is `who`, the buck `with`."""
    who, other = c.herd.find(found.values["who"]), c.herd.find(found.values.get("with_") or "")
    if who and who.sex == "buck" and (other is None or other.sex == "doe"):
        found.values["who"], found.values["with_"] = (other.tag if other else None), who.tag
        if other is None:
            found.need = Need("which_animal", "who", "Which doe is he to be bred to?")


def _with(c: Clause, what: str, cue: int | None) -> int | None:
    """The other animal: behind `with`, `to`, `x`, `by`."""
    if what not in {"breed", "replace"}:
        return None
    places = [i for i in animal_places(c) if cue is None or i > cue or what == "replace"]
    newcomers = [i for i in places if cue is not None and i < cue]
    if newcomers and cue is not None and c.past_fillers(cue + 1, 1) in places:
        return newcomers[-1]  # "keeping 33 to replace Juno"
    led = [i for i in places if c.said(i - 1) in {"with", "to", "w", "x", "by", "and", "for"} or c.items[i - 1].marks & {"to"}]
    if led:
        return led[-1]
    return places[1] if len(places) > 1 else None


def _until(c: Clause) -> tuple[Days | None, list[Item]]:
    for i in c.each("until"):
        place = c.past_fillers(i + 1, 1)
        if place < len(c.items) and c.items[place].sort == "date":
            return c.resolved(c.items[place].value, "plan"), [c.items[place], c.items[i]]
    return None, []


def _subjects(c: Clause, cue: int | None, with_pick: Pick | None) -> list[Pick | None]:
    places = [i for i in animal_places(c) if not c.taken(i) and not (with_pick and c.items[i] in with_pick.items)]
    if not places:
        if cue is not None and c.whole(cue + 1) is not None and not c.counted(cue + 1):
            return [c.pick(cue + 1)]
        return [c.spoken_of()]
    before = [i for i in places if cue is not None and i < cue]
    after = [i for i in places if cue is None or i > cue]
    chosen = after or before
    if len(chosen) > 1 and _listed(c, chosen):
        return [c.pick(i) for i in chosen]
    return [c.pick(chosen[0])]


def _listed(c: Clause, places: list[int]) -> bool:
    """Whether the animals stand in a list: `cull 31, 32 and 33`."""
    return all(all(item.said in {",", "and", "&"} for item in c.items[a + 1 : b]) for a, b in pairwise(places))


def _reason(c: Clause, cue: int | None) -> str | None:
    """The words behind `because`, or behind `until` where no date is."""
    for i in range((cue or 0) + 1, len(c.items)):
        if c.said(i) in {"because", "since", "cuz", "cause"} or (
            c.items[i].marks & {"until"} and not (i + 1 < len(c.items) and c.items[i + 1].sort == "date")
        ):
            c.use(range(i, len(c.items)))
            return " ".join(item.said for item in c.items[i + (c.said(i) in {"because", "since", "cuz", "cause"}) :]) or None
    return None


def check(fact: Planned, herd: Herd, today: date) -> Problem | None:
    """An animal that is there, a day to come, and for a breeding a doe and a buck."""
    doe, buck = ("doe", "buck") if fact.what == "breed" else (None, None)
    return worst(
        already_past(fact.until if fact.until is not None else fact.on, today),
        animal_problem(herd, fact.who, today, doe),
        animal_problem(herd, fact.with_, today, buck) if fact.with_ is not None else None,
    )


def apply(fact: Planned, herd: Herd) -> Herd:
    """One more intention; the last word on its stay holds, and one that is to be kept is no longer for sale."""
    animal = herd.find(fact.who)
    if animal is None:
        return herd
    other = herd.find(fact.with_) if fact.with_ is not None else None
    told_on = herd.day or fact.on or fact.until or date.min
    with_ = other.key if other else fact.with_
    plan = Intention(fact.what, told_on, on=fact.on, until=fact.until, with_=with_, reason=fact.reason)
    listing = None if fact.what == "keep" else animal.listing
    return herd.with_animal(replace(animal, intentions=(*animal.intentions, plan), listing=listing))


def reply(fact: Planned, before: Herd, after: Herd) -> tuple[str, ...]:
    """The plan with its days, and a caution where it ends on the table."""
    link = "to" if fact.what == "breed" else "with"
    other = f" {link} {fact.with_}" if fact.with_ is not None else ""
    day = f" on {words.full_day(fact.on)}" if fact.on and not fact.until else ""
    until = f" until {words.full_day(fact.until)}" if fact.until else ""
    line = f"Planned: {fact.what} {fact.who}{other}{day}{until}" + (f" ({fact.reason})" if fact.reason else "")
    remind = "I will remind you then." if fact.on or fact.until else None
    caution = withdrawal_caution(before, fact.who, fact.on or after.day or date.min) if fact.what == "cull" else None
    slaughter = health.SLAUGHTER if fact.what == "cull" else None
    return tuple(each for each in (words.sentence(line), remind, caution, slaughter) if each)


WRITTEN = ("plan to {what:WORD} {who:TAG}(?: with {with:TAG})?(?: on {on:DAY})?(?: until {until:DAY})?(?: because {reason:TEXT})?",)


def show(fact: Planned, _herd: Herd) -> str:
    """`plan to breed 7 with 14 on 2027-01-01 until 2027-01-31 because "she is ready"`."""
    other = f" with {fact.with_}" if fact.with_ is not None else ""
    on = f" on {fact.on.isoformat()}" if fact.on else ""
    until = f" until {fact.until.isoformat()}" if fact.until else ""
    return f"plan to {fact.what} {fact.who}{other}{on}{until}" + (f" because {quoted(fact.reason)}" if fact.reason is not None else "")


KIND = Kind(
    fact=Planned,
    examples=EXAMPLES,
    not_this=NOT_THIS,
    check=check,
    apply=apply,
    chores=plan_chores,
    reply=reply,
    show=show,
    written=WRITTEN,
)
