"""Kits die in the nest or at the doe's foot."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from itertools import pairwise
from typing import ClassVar, Final

from core import words
from core.handbook import health
from core.handbook.reproduction import LARGEST_LITTER
from core.herd.changes import lost
from core.herd.litters import alive_now, litter_meant, the_litter
from core.herd.state import Herd
from core.notes.checking import nest_problem, not_yet, too_many, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.losses import doe_of_the_lost, loss_cue, lost_count, number_left, nursing
from core.notes.clauses.scene import Need, Pick
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.kinds.death import Died
from core.notes.kinds.kit_count import KitsCounted
from core.notes.kinds.nest_manners import NestManners
from core.notes.slots.items import Item
from core.notes.telling import dated, kits_left, noted, parts, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class KitsLost:
    """Kits die in the nest or at the doe's foot."""

    kind: ClassVar[str] = "kits_lost"

    doe: Tag
    count: int
    on: date
    cause: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("Litter 12: 2 kits died.", ({"doe": "12", "count": 2, "on": "2026-11-25"},)),
    Example(
        "12 down to 5, one trampled",
        (
            {"kind": "kit_count", "doe": "12", "count": 5, "on": "2026-11-25"},
            {"doe": "12", "count": 1, "cause": "crushed", "on": "2026-11-25"},
            {"kind": "nest_manners", "doe": "12", "sign": "stepped_on", "on": "2026-11-25"},
        ),
    ),
    Example("Found a kit of Sorrel's on the wire, stone cold", ({"doe": "12", "count": 1, "on": "2026-11-25", "cause": "out_of_box"},)),
    Example("lost 2 kits from sorrel's litter", ({"doe": "12", "count": 2, "on": "2026-11-25"},)),
    Example(
        "sorrel scattered her kits, lost 2",
        (
            {"doe": "12", "count": 2, "cause": "scattered", "on": "2026-11-25"},
            {"kind": "nest_manners", "doe": "12", "sign": "scattered", "on": "2026-11-25"},
        ),
    ),
    Example(
        "We lost one of Sorrel's kits overnight, it had gotten out of the box",
        ({"doe": "12", "count": 1, "on": "2026-11-24", "cause": "out_of_box"},),
    ),
    Example("Sorrel's down two kits this morning, found them cold", ({"doe": "12", "count": 2, "on": "2026-11-25", "cause": "cold"},)),
    Example(
        "Found a dead kit under Sorrel this morning, no idea why",
        ({"doe": "12", "count": 1, "on": "2026-11-25", "cause": "unknown"},),
    ),
    Example("12 lost 3, pred", ({"doe": "12", "count": 3, "on": "2026-11-25", "cause": "predator"},)),
    Example("sorrel lost for kits they got cold", ({"doe": "12", "count": 4, "on": "2026-11-25", "cause": "cold"},)),
    Example("lost too out of twelves litter", ({"doe": "12", "count": 2, "on": "2026-11-25"},)),
    Example("twelve lost a kit this morning", ({"doe": "12", "count": 1, "on": "2026-11-25"},)),
    Example("the red doe lost two", ({"doe": "12", "count": 2, "on": "2026-11-25"},)),
    Example("12 lost 2 kits overnight, plenty left", ({"doe": "12", "count": 2, "on": "2026-11-24"},)),
    Example("a flattened baby under 12 this morning", ({"doe": "12", "count": 1, "cause": "crushed", "on": "2026-11-25"},)),
    Example(
        "Sorrel lost two more overnight, so five of the kits left",
        ({"doe": "12", "count": 2, "on": "2026-11-24"}, {"kind": "kit_count", "doe": "12", "count": 5, "on": "2026-11-24"}),
    ),
)
NOT_THIS: tuple[str, ...] = (
    "12 nest clean\nwater frozen in 6 crocks",
    "12's kits keep losing their way",
    "lost some kits from sorrel's litter",
    "lost my keys",
    "R21 lost weight",
    "Clover lost two claws",
    "12 lost some fur",
    "Sorrel hasn't lost any",
    "12 no losses",
    "12 lost no kits",
    "12 0 lost this week",
    "no kits lost under 12, 7 still there",
    "16 without a single loss",
)

OPENS: Final = ("lose", "step", "eat")
CUES: Final = {
    "lose": "lost | lose | loses | losing | loss | losses | lots",
    "step": "trod on | trodden on | stepped on | stepped | sat on | squashed | crushed | squished | laid on | trampled | smothered | flattened | stomped | stomped on | stepping on | sat down on",
    "eat": "ate | eating | eaten | cannibalized | chewed up | chewed on | eats | chewed | munched | munched on | gobbled | gobbled up | devoured",
    "took_kits": "taken by | took | get | take | getting | got into | got | killed | grabbed | dragged off | carried off | rat got | cat got | dog got | snake got | coon got | hawk got | got at | raided | nabbed",
    "fewer": "down | short | minus",
    "froze": "froze | frozen | frozen solid | freezing",
    "cause:cold": "cold | froze | frozen | chilled | hypothermia | frozen solid | froze to death | too cold | got cold | the cold",
    "cause:heat": "heat | overheated | too hot | heat stroke | heatstroke | the heat | hot",
    "cause:starved": "starved | starve | starving | not fed | didnt feed | no milk | empty bellies | empty belly | unfed | wasnt fed | werent fed | not nursing | runt",
    "cause:scattered": "scattered | scattered out | scattered her kits | scattered the kits | scattered kits | all over the cage | strewn",
    "cause:out_of_box": "out of the box | out of box | crawled out | fell out | out of the nest | outside the box | out of nest | out of the nest box"
    " | fell out of the box | crawled out of the box | crawled out of the nest box | crawled out of the next box | on the wire | out of the next box | left the nest | fell out of the nest",
    "cause:predator": "rat got | cat got | dog got | snake got | coon got | hawk got | predator | pred | raccoon | racoon | coon | rat | rats | snake | weasel | hawk | fox | possum | opossum | coyote | dog | cat | owl | mink",
    "cause:sick": "sick | sickness | disease | diarrhea | enteritis | infection | ill",
    "cause:deformed": "deformed | deformity | malformed | born wrong",
    "cause:unknown": "no idea why | not sure why | dont know why | unknown | cause unknown | no reason | not sure what happened | dont know what happened | unknown cause | idk why",
    "cause:crushed": "stomped | trod on | trodden on | stepped on | sat on | squashed | crushed | squished | laid on | trampled | smothered | flattened | stomped on",
    "cause:eaten": "ate | eaten | eating | cannibalized | chewed up | chewed on | munched | munched on | gobbled | gobbled up | devoured",
}  # fmt: skip
TROD: Final = frozenset(
    {"stepped on", "stepped", "sat on", "laid on", "trampled", "stomped", "stomped on", "stepping on", "sat down on", "sat"}
)
CAUSES: Final = ("eaten", "crushed", "predator", "cold", "heat", "starved", "out_of_box", "deformed", "sick", "scattered", "unknown")


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"dead", "die"})


def read(c: Clause) -> None:
    """Kits of a doe that died, how many and of what. Kits that are eaten or stepped on tell of the doe's manners as well."""
    cue = loss_cue(c)
    if cue is None or _of_its_body(c, cue) or (c.has("froze") and c.says(WATERS) and not c.has("lose", "kits", "litter", "dead", "die")):
        return
    marks = c.items[cue].marks if cue >= 0 else c.virtual
    pick = doe_of_the_lost(c, cue)
    if _of_nobody(c, cue, pick):
        return
    if pick is None and not c.has("kits", "litter"):
        return
    if pick is not None and pick.tag is None and not c.has("kits", "litter") and not c.sorted_as("num"):
        return  # "lost daisy"
    animal = c.herd.find(pick.tag) if pick and pick.tag else None
    if pick and animal is not None and not nursing(c, pick) and not (c.has("kits", "litter") or _kit_number(c, cue, pick)):
        return
    if pick:
        c.used.update(id(item) for item in pick.items)
    litter = the_litter(c.herd, animal.key, c.today) if animal else None
    weaned = litter is not None and litter.weaned_on is not None
    left = number_left(c)
    count, used, need = lost_count(c, cue, litter, left)
    cause = cause_of(c)
    if "eat" in marks or "eat" in c.marks:
        cause = "eaten" if not c.has("cause:predator") else "predator"
    used.extend(item for item in c.items if item.marks & {"lose", "step", "eat", "die", "dead", "took_kits", "froze"})
    used.extend(item for item, after in pairwise(c.items) if "wean" in item.marks and after.marks & {"kits", "litter"})
    if weaned and not marks & {"step", "eat"}:
        _died(c, pick, count, cause, used, need)
        return
    c.take(c.past(KitsLost, pick, "doe", {"count": count, "cause": cause}, used, need))
    if left is not None and litter is not None and count is not None and alive_now(litter) - count == c.whole(left):
        c.take(c.past(KitsCounted, pick, "doe", {"count": c.whole(left)}, [c.items[left]]))
    trod = any(item.said in TROD for item in c.items)
    manners = "ate_kits" if cause == "eaten" else ("stepped_on" if cause == "crushed" and trod else None)
    if manners:
        c.take(c.past(NestManners, pick, "doe", {"sign": manners}))


def _of_nobody(c: Clause, cue: int, pick: Pick | None) -> bool:
    """`lost one this morning`, `2 dead`, `lost three`, of no doe: kits, whose is asked; or an animal of that tag, which is asked too."""
    beside = [i for i in (cue + 1, cue - 1) if cue >= 0 and c.whole(i) is not None]
    words = [item for i, item in enumerate(c.items) if i not in {cue, *beside} and item.sort not in {"date", "mark"}]
    if len(beside) != 1 or words or (pick is not None and pick.items and pick.items != [c.items[beside[0]]]) or "eat" in c.items[cue].marks:
        return False
    count, known = c.whole(beside[0]) or 0, c.known(beside[0])
    if (pick is not None and not pick.items) or not 0 < count <= LARGEST_LITTER.value:
        return False
    used = [c.items[cue], c.items[beside[0]]]
    if known is not None:
        text = f"Did {known.tag} die, or were {count} kits lost? Send \u201c{known.tag} died\u201d, or the doe as well: \u201c16 lost {count} kits\u201d."
        c.take(c.past(KitsLost, None, "", {"count": count}, used, Need("which_number", "", text)))
    else:
        need = Need("which_animal", "doe", "Whose kits were they? Send the doe's tag or name.")
        c.take(c.past(KitsLost, None, "", {"count": count, "cause": cause_of(c)}, used, need))
    return True


#: What freezes in a barn and is no kit.
WATERS: Final = frozenset(
    {"water", "waters", "bottles", "bottle", "crocks", "crock", "waterers", "lines", "pipes", "pipe", "hose", "buckets"}
)
#: Parts of an animal that it may lose and live.
OF_A_BODY: Final = frozenset(
    {
        "toenail", "toenails", "nail", "nails", "toe", "toes", "claw", "claws", "tooth", "teeth", "whisker", "whiskers", "patches",
        "tufts", "clumps",
    }
)  # fmt: skip


def _of_its_body(c: Clause, cue: int) -> bool:
    """`12 lost 2 toenails`: no kits, and no death; the number is explained."""
    if cue < 0 or c.whole(cue + 1) is None or not any(item.said in OF_A_BODY for item in c.items[cue + 2 : cue + 4]):
        return False
    c.use([cue, cue + 1])
    return True


def _died(c: Clause, pick: Pick | None, count: int | None, cause: str | None, used: list[Item], need: Need | None) -> None:
    """Weaned kits without a tag."""
    found = c.past(Died, pick, "litter_of", {"count": count, "cause": cause}, used, need)
    c.take(found)


def cause_of(c: Clause) -> str | None:
    """What they died of, by the first word for it in the order of what it can hardly be mistaken for."""
    found = {mark.removeprefix("cause:") for mark in c.marks if mark.startswith("cause:")}
    if "froze" in c.marks:
        return "cold"
    return next((cause for cause in CAUSES if cause in found), None)


def _kit_number(c: Clause, cue: int, pick: Pick) -> bool:
    return (
        any(c.items[i] not in pick.items and c.whole(i) is not None for i in c.sorted_as("num"))
        and cue >= 0
        and bool(c.items[cue].marks & {"step", "eat", "lose"})
    )


def check(fact: KitsLost, herd: Herd, today: date) -> Problem | None:
    """No more kits can be lost than are alive."""
    doe = herd.find(fact.doe)
    if doe is None or doe.sex == "buck":
        return worst(not_yet(fact.on, today), nest_problem(herd, fact.doe, fact.on))
    fewer = too_many(herd, litter_meant(herd, doe.key, fact.on), fact.doe, fact.count, fact.on, "lost")
    return worst(not_yet(fact.on, today), nest_problem(herd, fact.doe, fact.on), fewer)


def apply(fact: KitsLost, herd: Herd) -> Herd:
    """Fewer kits under her."""
    doe = herd.find(fact.doe)
    litter = litter_meant(herd, doe.key, fact.on) if doe else None
    return herd.with_litter(lost(litter, fact.on, fact.count, fact.cause)) if litter else herd


def reply(fact: KitsLost, before: Herd, after: Herd) -> tuple[str, ...]:
    """What was lost to what, and how many are left."""
    cause = f" ({fact.cause.replace('_', ' ')})" if fact.cause else ""
    line = dated(f"Doe {fact.doe} lost {words.count(fact.count, 'kit')}{cause}", fact.on, after)
    doe = before.find(fact.doe)
    litter = litter_meant(before, doe.key, fact.on) if doe else None
    left = kits_left(after, after.litters.get(litter.key) if litter else None, fact.doe)
    care = {"cold": health.COLD, "heat": health.HEAT, "sick": health.CALL_A_VET}.get(fact.cause or "")
    return tuple(each for each in (line, left, care) if each)


WRITTEN = ("doe {doe:TAG} lost {count:NUM} kits?(?:, cause {cause:CODE})?",)


def show(fact: KitsLost, _herd: Herd) -> str:
    """`2026-11-25: doe 12 lost 2 kits, cause cold`."""
    cause = told("cause ", fact.cause.replace("_", " ") if fact.cause else None)
    return noted(fact.on, parts(f"doe {fact.doe} lost {words.count(fact.count, 'kit')}", cause))


KIND = Kind(fact=KitsLost, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
