"""An animal, or untagged weaned kits, die."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.handbook import health
from core.herd.changes import gone, lost
from core.herd.litters import the_litter
from core.herd.state import Animal, Herd
from core.notes.checking import leaver_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.kinds.sale import Sold
from core.notes.telling import called, dated, kits_after, motherless, noted, of_kits, parts, quoted, said, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Died:
    """An animal, or untagged weaned kits, die."""

    kind: ClassVar[str] = "died"

    on: date
    who: Tag | None = None
    litter_of: Tag | None = None
    count: int | None = None
    cause: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("R23 is dead, he looked perfectly healthy yesterday", ({"who": "R23", "on": "2026-11-25"},)),
    Example("R22 died, bloat", ({"on": "2026-11-25", "who": "R22", "cause": "bloat"},)),
    Example("R21 died. bloat.", ({"on": "2026-11-25", "who": "R21", "cause": "bloat"},)),
    Example("7 died", ({"on": "2026-11-25", "who": "7"},)),
    Example("found Sorrel dead this morning", ({"on": "2026-11-25", "who": "12"},)),
    Example("had to put 5 down", ({"on": "2026-11-25", "who": "5"},)),
    Example("Moss passed away last night", ({"on": "2026-11-24", "who": "5"},)),
    Example("Came home to find R21 dead in her cage, I think it was the heat", ({"on": "2026-11-25", "who": "R21", "cause": "heat"},)),
    Example("We had to put 33 down today", ({"on": "2026-11-25", "who": "33"},)),
    Example("R21 died heat", ({"on": "2026-11-25", "who": "R21", "cause": "heat"},)),
    Example("thirty three died", ({"on": "2026-11-25", "who": "33"},)),
    Example("Deaths: R22 (24 Nov).", ({"on": "2026-11-24", "who": "R22"},)),
    Example("R22 DOA", ({"on": "2026-11-25", "who": "R22"},)),
)
NOT_THIS: tuple[str, ...] = (
    "nothing dead, nothing born. 14 due, 9 due sat",
    "the radio by the scale died",
    "lost 33, found her in the hay",
    "lost R22 yesterday. they found him in the barn",
    "31 looks sharp now that his scruffy fur is gone",
    "doe 14 kindled 8, 3 dead",
    "sorrel scattered her kits, lost 5",
    "14 chickens died",
    "the battery died",
    "scale died before I got to 33",
    "the generator died last night",
    "Moss looks dead tired",
    "31 played dead on the table",
    "12 lost 2 kits",
    "the fan died",
)

OPENS: Final = ("die",)
CUES: Final = {
    "die": "doa | found expired | was found dead | euthanised | was euthanized | humanely euthanized | found cold | stiff as a board | has died | has passed | is no more | didnt make it through | succumbed | passed in the night | rip | stiff | found stiff | cold and stiff | died | found dead | dead | passed away | passed | put down | had to put down | euthanized | ded | dies | death | deaths | passed on | kicked the bucket | was dead | deceased | bit the dust"
    " | didnt make it | keeled over | croaked | is gone | had to euthanize | put to sleep | gone over the rainbow bridge",
    "took_kits": "got | took | killed | grabbed | carried off | dragged off",
    "found": "found",
    "put": "put",
    "lose": "lost | lose",
}  # fmt: skip


#: Things that may die without ever having lived.
LIFELESS: Final = frozenset(
    """battery batteries scale scales phone truck car van tractor generator heater fan freezer fridge flashlight light lights bulb lamp headlamp
    mower motor engine pump charger laptop computer camera radio clock watch clippers clipper dryer power wifi internet line signal waterer plant plants
    tree garden grass conversation party deal""".split()  # noqa: SIM905 - a table of words
)
LITTLE: Final = 4  # items: `patches died`, and hardly more


def read(c: Clause) -> None:
    """An animal that died; kits without a tag belong to their doe."""
    cue = c.first("die")
    if cue is None:
        cue = _put_down(c)
    carried = _carried_off(c) if cue is None else None
    if cue is None:
        cue = carried
    if cue is None:
        cue = c.first("lose")
        if cue is None and "die" not in c.virtual:
            return
        if cue is not None and _to_a_buyer(c, cue):
            return
        if cue is not None and _a_fight(c, cue):
            c.use([cue, *c.tags()])
            return
    if cue is not None and _nobody_died(c, cue):
        return
    others = () if carried is not None or _to_a_predator(c, cue) else ("other_species",)
    if c.has("kindle", "kits", "litter", "battery", *others) and not c.has("adult"):
        return
    places = c.explicit() or [i for i in c.sorted_as("num") if c.whole(i) is not None and not c.counted(i) and c.said(i + 1) != "of"]
    if not places:
        spoken = c.spoken_of()
        unknown = spoken is not None and spoken.tag is None and bool(spoken.items) and len(c.items) <= LITTLE
        if spoken and cue is not None and (c.has("pronoun") or unknown):
            c.take(c.past(Died, spoken, "who", {"cause": cause_of_death(c, cue)}, [c.items[cue]]))
        return
    used = [item for item in c.items if item.marks & {"die", "lose", "found", "dead", "took_kits"}]
    if not c.explicit():
        places = [i for i in places if c.known(i) or (cue is not None and abs(i - cue) == 1)]
    listed = c.listed_subjects(-1)
    cause = cause_of_death(c, cue)
    named = {pick.mention.tags or pick.mention.said: pick for pick in map(c.pick, places if c.explicit() else places[:1])}
    for pick in listed if len(listed) > 1 else named.values():
        c.take(c.past(Died, pick, "who", {"cause": cause}, used))


def _nobody_died(c: Clause, cue: int) -> bool:
    """`her first fur is gone`, `the radio died`: the words are explained."""
    if c.said(cue) == "is gone" and _a_part_of_it(c, cue):
        c.use([cue])
        return True
    if c.said(cue - 1) in LIFELESS or (c.said(0) in {"the", "my", "our"} and c.said(1) in LIFELESS):
        c.use([cue, cue - 1])
        return True
    return False


def _a_part_of_it(c: Clause, cue: int) -> bool:
    """`33 is black now that her first fur is gone`: something of the animal's went, and not the animal."""
    noun = c.items[cue - 1] if cue else None
    if noun is None or noun.sort != "word" or noun.marks & {"buck_word", "doe_word", "pronoun"} or noun.said in {"rabbit", "bunny"}:
        return False
    return "ail" in noun.marks or any(
        c.said(i) in {"her", "his", "its"} or c.items[i].unit == "possessive" for i in range(max(cue - LITTLE, 0), cue - 1)
    )


def _to_a_buyer(c: Clause, cue: int) -> bool:
    """`lost 31 to a buyer in town`: somebody who pays has it now."""
    buyer = next((i for i, item in enumerate(c.items) if item.said in BUYERS and i > cue + 3), 0)
    to = next((i for i in range(buyer - 1, max(buyer - 4, cue + 1), -1) if c.said(i) == "to"), None)
    if to is None or c.known(cue + 1) is None or c.sorted_as("money"):
        return False
    c.take(c.past(Sold, c.pick(cue + 1), "who", {"to": " ".join(c.said(i) for i in range(to + 1, buyer + 1))}, [c.items[cue]]))
    return True


def _to_a_predator(c: Clause, cue: int | None) -> bool:
    """`lost R21 to a dog`: the animal right behind the verb, and what took it."""
    return (
        cue is not None
        and "lose" in c.items[cue].marks
        and c.known(cue + 1) is not None
        and c.said(cue + 2) == "to"
        and c.has("cause:predator")
    )


FOUGHT: Final = frozenset({"fought", "fight", "fighting", "scrap", "race", "bout", "scuffle", "tussle"})


def _a_fight(c: Clause, cue: int) -> bool:
    """`31 and 32 fought, 31 lost`: no life was."""
    return any(item.said in FOUGHT for item in c.items[:cue]) or (c.before is not None and c.before.says(FOUGHT))


BUYERS: Final = frozenset({"buyer", "customer", "buyers", "customers"})


def _carried_off(c: Clause) -> int | None:
    """`a raccoon got R22`: a predator, and the animal right behind the verb."""
    took = next((i for i in c.each("took_kits") if c.known(i + 1) is not None), None)
    if took is None or not c.has("cause:predator", "other_species"):
        return None
    animal = c.known(took + 1)
    ends = took + 2 >= len(c.items) or c.items[took + 2].sort in {"mark", "date", "break"}
    return took if animal is not None and ends and c.items[took + 1].unit != "possessive" else None


def _put_down(c: Clause) -> int | None:
    """`had to put 33 down`."""
    put = next((i for i, item in enumerate(c.items) if item.said == "put"), None) if "put" in c.words() else None
    if put is None or c.mention(put + 1) is None or c.said(put + 2) != "down":
        return None
    return put


def cause_of_death(c: Clause, cue: int | None) -> str | None:
    """A word for the cause, else what is said behind `of` or `from`."""
    causes = sorted(mark for mark in c.marks if mark.startswith("cause:"))
    cause = next((mark.removeprefix("cause:") for item in c.items for mark in causes if mark in item.marks), None) if causes else None
    if cause:
        return cause
    start = next((i for i in range((cue or 0) + 1, len(c.items)) if c.said(i) in {"of", "from", "cause"}), None)
    if start is None:
        return None
    words = [item.said for item in c.items[start + 1 :] if item.sort == "word"]
    return " ".join(words[:4]) or None


def check(fact: Died, herd: Herd, today: date) -> Problem | None:
    """An animal that is there, or no more untagged kits than there are."""
    return worst(not_yet(fact.on, today), leaver_problem(herd, fact.who, fact.litter_of, fact.count, fact.on, "found dead"))


def apply(fact: Died, herd: Herd) -> Herd:
    """Gone; untagged kits are fewer."""
    if fact.who is not None:
        return gone(herd, fact.who, fact.on, fact.kind, said(fact))
    doe = herd.find(fact.litter_of or "")
    litter = the_litter(herd, doe.key, fact.on) if doe else None
    return herd.with_litter(lost(litter, fact.on, fact.count or 0, fact.cause)) if litter else herd


#: So many grown deaths within a week are no longer chance.
_SEVERAL = 3


def _died_lately(animal: Animal, on: date) -> bool:
    return animal.gone is not None and animal.gone.how == "died" and 0 <= (on - animal.gone.on).days <= 7


def _who(fact: Died, herd: Herd) -> str:
    return called(herd, fact.who) if fact.who is not None else of_kits(None, fact.litter_of, fact.count)


def reply(fact: Died, before: Herd, after: Herd) -> tuple[str, ...]:
    """Who died, how many kits are left, and what to do after several deaths."""
    cause = f" ({fact.cause})" if fact.cause else ""
    line = dated(f"{_who(fact, before)} died{cause}", fact.on, after)
    recent = sum(1 for animal in after.animals.values() if _died_lately(animal, fact.on))
    several = health.REPORTABLE if recent >= _SEVERAL else None
    return tuple(
        each for each in (line, kits_after(fact.litter_of, before, after, fact.on), motherless(before, fact.who, fact.on), several) if each
    )


WRITTEN = (
    "{who:TAG} died(?:, cause {cause:TEXT})?",
    "{count:NUM} kits? of doe {litter_of:TAG} died(?:, cause {cause:TEXT})?",
)


def show(fact: Died, _herd: Herd) -> str:
    """`2026-11-25: R22 died, cause "unknown"`, `2 kits of doe 12 died`."""
    return noted(fact.on, parts(f"{of_kits(fact.who, fact.litter_of, fact.count)} died", told("cause ", quoted(fact.cause))))


KIND = Kind(fact=Died, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
