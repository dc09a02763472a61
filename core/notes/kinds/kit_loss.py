"""Kits die in the nest or at the doe's foot.

Over 300 lines: losses have eleven causes, told before, after and without their verb.
"""

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
from core.herd.state import Herd, Litter
from core.notes.checking import nest_problem, not_yet, too_many, worst
from core.notes.clauses.clause import Clause
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
    "took_kits": "took | get | take | getting | got into | got | killed | grabbed | dragged off | carried off | rat got | cat got | dog got | snake got | coon got | hawk got | got at | raided | nabbed",
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


STILL_THERE: Final = frozenset({"makes", "leaves", "leaving", "making", "now", "down to", "now at"})


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"dead", "die"})


def read(c: Clause) -> None:
    """Kits of a doe that died, how many and of what. Kits that are eaten or stepped on tell of the doe's manners as well."""
    cue = _cue(c)
    if cue is None or _of_its_body(c, cue) or (c.has("froze") and c.says(WATERS) and not c.has("lose", "kits", "litter", "dead", "die")):
        return
    marks = c.items[cue].marks if cue >= 0 else c.virtual
    pick = _doe(c, cue)
    if _of_nobody(c, cue, pick):
        return
    if pick is None and not c.has("kits", "litter"):
        return
    if pick is not None and pick.tag is None and not c.has("kits", "litter") and not c.sorted_as("num"):
        return  # "lost daisy"
    animal = c.herd.find(pick.tag) if pick and pick.tag else None
    if pick and animal is not None and not _nursing(c, pick) and not (c.has("kits", "litter") or _kit_number(c, cue, pick)):
        return
    if pick:
        c.used.update(id(item) for item in pick.items)
    litter = the_litter(c.herd, animal.key, c.today) if animal else None
    weaned = litter is not None and litter.weaned_on is not None
    left = _left(c)
    count, used, need = _count(c, cue, litter, left)
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


#: What kits eat: then nobody eats them.
EATEN_BY_KITS: Final = frozenset({"hay", "grass", "solid", "solids", "well", "good", "like", "oats", "on", "out"})


def _cue(c: Clause) -> int | None:
    """The word that tells of a loss; -1 where an earlier statement's verb holds on."""
    for mark in ("step", "eat", "lose"):
        cue = c.first(mark)
        if cue is not None and not _of_no_kits(c, cue, mark):
            return cue
    for way in (_fewer, _carried_off, _dead):
        cue = way(c)
        if cue is not None:
            return cue
    return -1 if "lose" in c.virtual else None


def _of_no_kits(c: Clause, cue: int, mark: str) -> bool:
    """`lots of hay`, `stepped out`, `eating well`, `lost weight`: the word, and no kits."""
    said, after, kits = c.said(cue), c.said(cue + 1), c.has("kits", "litter")
    behind = c.items[cue + 1 : cue + 3]
    return (
        (said == "lots" and c.whole(cue + 1) is None and not (behind and behind[0].marks & {"no_count", "all", "pronoun"}))
        or (mark == "step" and after in {"herself", "himself", "out", "out of", "in", "into", "over", "themselves"})
        or (mark == "eat" and not kits and c.number_for(cue) is None)
        or (mark == "eat" and any(item.marks & {"feed"} or item.said in EATEN_BY_KITS for item in behind))
        or (mark == "lose" and said in {"lost", "lose"} and after in {"weight", "her", "his", "fur", "a"} and not kits)
    )


def _fewer(c: Clause) -> int | None:
    """`Sorrel's down two kits`."""
    fewer = c.first("fewer")
    if fewer is None or not c.has("kits", "litter"):
        return None
    one = c.said(fewer) == "down" and c.said(fewer + 1) in {"a", "another", "one"}
    return fewer if one or c.whole(fewer + 1) is not None else None


def _carried_off(c: Clause) -> int | None:
    """`a rat took two`, `something got into 12's litter`."""
    taken = c.first("took_kits")
    if taken is None or not c.has("cause:predator"):
        return None
    return taken if c.has("litter", "kits") or c.whole(taken + 1) is not None else None


def _dead(c: Clause) -> int | None:
    """`found a dead kit`, `12 2 dead`, `two froze`."""
    dead = c.first("dead", "die", "froze", "cause:cold", "cause:sick", "cause:starved")
    if dead is None or c.said(dead - 1) in {"no", "none", "zero"}:
        return None
    starved = c.said(dead) == "starved" and c.whole(dead - 1) is not None
    if not starved and c.items[dead].marks.isdisjoint({"dead", "die", "froze"}):
        return None
    return dead if c.has("kits", "litter") or _of_a_doe(c, dead) else None


def _of_a_doe(c: Clause, dead: int) -> bool:
    """`12 2 dead`, `found 2 dead under 12`, `one of Sorrel's was found dead`."""
    if c.part_of() is not None:
        return True
    number = c.number_for(dead, behind=False)
    if number is None and any(mark.startswith("cause:") for mark in c.marks):
        number = next((i for i in c.sorted_as("num") if c.whole(i) is not None and i != c.opening()), None)
    if number is None:
        number = next((i for i in c.sorted_as("num") if c.said(i + 1) == "of" and c.whole(i) is not None), None)
    pick = _doe(c, dead)
    if number is None or pick is None or pick.tag is None or c.items[number] in pick.items:
        return False
    return _nursing(c, pick)


def _nursing(c: Clause, pick: Pick) -> bool:
    animal = c.herd.find(pick.tag) if pick.tag else None
    if animal is None or animal.sex == "buck":
        return False
    litter = the_litter(c.herd, animal.key, c.today)
    return litter is not None and alive_now(litter) > 0


def _kit_number(c: Clause, cue: int, pick: Pick) -> bool:
    return (
        any(c.items[i] not in pick.items and c.whole(i) is not None for i in c.sorted_as("num"))
        and cue >= 0
        and bool(c.items[cue].marks & {"step", "eat", "lose"})
    )


def _doe(c: Clause, cue: int) -> Pick | None:
    explicit = c.explicit()
    if explicit:
        return c.subject_of(cue if cue >= 0 else None)
    opening = c.opening()
    if (
        opening is not None
        and c.whole(opening) is not None
        and opening != cue
        and not c.counted(opening)
        and c.said(opening + 1) != "of"
        and c.known(opening)
    ):
        return c.pick(opening)
    if (
        opening is not None
        and c.whole(opening) is not None
        and cue == opening + 1
        and not c.counted(opening)
        and (c.known(opening) is not None or c.spoken_of() is None)  # "12 down to 6, one smothered"
    ):
        return c.pick(opening)
    led = c.led("of", "from", "under", "in", "on", "with", "for", "litter")
    if led is not None:
        return c.pick(led)
    return c.spoken_of()


def _left(c: Clause) -> int | None:
    """Where the number of those stands that are left: `so that's six of them left now`, `six left`."""
    for i in c.each("left_over", "count"):
        if c.said(i) not in {"left", "remaining", "kits left"} or c.said(i + 1) in {"the", "her", "in", "on", "for"}:
            continue
        before = i - 1
        while before > 0 and (c.items[before].marks & {"kits", "alive", "pronoun"} or c.said(before) in {"of", "the", "those", "still"}):
            before -= 1
        if c.whole(before) is not None and not (before and "lose" in c.items[before - 1].marks):
            return before
    return None


def _count(c: Clause, cue: int, litter: Litter | None, left: int | None) -> tuple[int | None, list[Item], Need | None]:
    """How many: the number beside the verb, else any; `them all` is all that live."""
    every = [i for i in c.each("all", "none") if "all" in c.items[i].marks]
    numbers = [
        i
        for i in c.sorted_as("num")
        if c.whole(i) is not None
        and i != left
        and c.said(i - 1) not in STILL_THERE
        and not (c.said(i - 1) in {"are", "is", "has"} and c.said(i - 2) == "now")
    ]
    if numbers:
        nearest = min(numbers, key=lambda i: abs(i - cue) + (3 if i < cue else 0)) if cue >= 0 else numbers[0]
        kits = [i for i in numbers if c.counted(i)]
        chosen = kits[0] if kits else nearest
        return c.whole(chosen), [c.items[chosen]], None
    whole = bool(every) or (c.has("litter") and not c.has("from", "kits"))
    if whole and not c.has("no_count") and litter is not None and alive_now(litter):
        return alive_now(litter), [c.items[i] for i in every[:1]], None
    one = cue >= 0 and c.said(cue + 1) in {"a", "another", "one"} and cue + 2 < len(c.items) and bool(c.items[cue + 2].marks & {"kits"})
    if cue >= 0 and c.said(cue - 1) in {"a", "another"} and c.said(cue + 1) in {"kit", "baby", "bunny", "one"}:
        return 1, [], None  # "a squashed kit"
    if not one and ((cue >= 0 and c.items[cue].marks & {"eat", "step"}) or c.has("no_count")):
        return None, [], Need("how_many", "count", "How many kits were lost? Send the number.")
    singular = next((item for item in c.items if item.said in {"a kit", "kit", "a baby", "baby", "the runt", "runt"}), None)
    if singular is not None and any(
        item.unit == "possessive" or item.said in {"a", "another", "the"}
        for item in c.items[max(0, c.items.index(singular) - 3) : c.items.index(singular)]
    ):
        return 1, [], None
    return None, [], Need("how_many", "count", "How many kits were lost? Send the number.")


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
