"""A doe is put to a buck.

Over 300 lines: doe, buck, falls and what came of it, and the three chores that follow.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core import words
from core.herd.calendar import mating_chores
from core.herd.changes import ancestor, mated_again, of_sex
from core.herd.kin import inbreeding_of_kits
from core.herd.matings import SERVICE_DAYS, open_mating, open_matings
from core.herd.settings import highest_coi
from core.herd.state import Animal, Herd, Mating
from core.notes.checking import animal_problem, not_born, not_yet, was_gone, worst, wrong_sex
from core.notes.clauses.clause import Clause
from core.notes.clauses.marked import FILLERS
from core.notes.clauses.partners import bucks_here, doe_and_buck, doe_spoken_of, partners, stud_elsewhere
from core.notes.clauses.scene import Need, Pick, first_need
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.animals import Mention
from core.notes.slots.items import Item
from core.notes.telling import by_key, chores_of_mating, dated, noted, parts, to_come, when
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Bred:
    """A doe is put to a buck."""

    kind: ClassVar[str] = "bred"

    doe: Tag
    buck: Tag
    on: date
    falls: int | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("flint got in with 16 by accident", ({"doe": "16", "buck": "3", "on": "2026-11-25"},)),
    Example("x 15 7 2f", ({"doe": "15", "buck": "7", "on": "2026-11-25", "falls": 2},)),
    Example("bred 15 to Flint, 2 falls", ({"doe": "15", "buck": "3", "falls": 2, "on": "2026-11-25"},)),
    Example("bred 15 to Flint, 3 falls", ({"doe": "15", "buck": "3", "falls": 3, "on": "2026-11-25"},)),
    Example("put Juno in with Moss, 1 fall", ({"doe": "14", "buck": "5", "falls": 1, "on": "2026-11-25"},)),
    Example("Put Flint in with Thistle on Monday, three falls", ({"doe": "16", "buck": "3", "on": "2026-11-23", "falls": 3},)),
    Example(
        "Took 16 over to Flint yesterday evening and got two good falls",
        ({"doe": "16", "buck": "3", "on": "2026-11-24", "falls": 2},),
    ),
    Example("Clover was bred to Moss back on October 28", ({"doe": "9", "buck": "5", "on": "2026-10-28"},)),
    Example(
        "bred 15 to Flint. 16 to Moss as well",
        ({"doe": "15", "buck": "3", "on": "2026-11-25"}, {"doe": "16", "buck": "5", "on": "2026-11-25"}),
    ),
    Example("bred 15/7", ({"doe": "15", "buck": "7", "on": "2026-11-25"},)),
    Example("bread sixteen to book seven this morning", ({"doe": "16", "buck": "7", "on": "2026-11-25"},)),
    Example("seven bred fifteen", ({"doe": "15", "buck": "7", "on": "2026-11-25"},)),
    Example("16x3 sat 1 fall", ({"doe": "16", "buck": "3", "falls": 1, "on": "2026-11-21"},)),
)
NOT_THIS: tuple[str, ...] = (
    "31 got in with 32",
    "16 visited the vet",
    "weaned 16 x5",
    "15 not bred",
    "palpated 22 bred",
    "might breed 15 to 7",
    "breed 15 to 7 in january",
    "15 x 7?",
)

OPENS: Final = ("breed",)
CUES: Final = {
    "breed": "got in with | broke in with | jumped in with | got loose with | mounted by | was mount by | was mounted by | got covered by | done his job with | did his job with | did his duty with | did his duty by | did the deed with | had a visit from | paid a visit to | got together with | hooked up with | spent time with | observed mating | mated with | mated to | was mated | went to visit | got her bred | bred | rebred | brd | breed her | put in with | put with | went in with | covered | serviced | mated | bred back | put to | x | ran with"
    " | took to | breeding | breedings | got bred | was bred | bred her | mating | matings | put together | introduced to | visited | went to see"
    " | dated | had a date with | did a breeding | re bred | had a visit with | visit with | visited with",
    "gave_to": "gave",
    "put": "put | stuck | took | tried | set",
    "in_with": "in with | in w | over to | in to see | together",
    "falls": "fell | falls | fall | fell off | fall offs | falloffs | fall off | good falls | good fall | solid falls | clean falls | times",
    "likewise": "too | as well | same for | same with",
    "times_word": "once | twice | thrice",
    "elsewhere": "neighbors buck | neighbours buck | friends buck | outside buck | borrowed buck | stud buck | another farms buck | their buck",
}  # fmt: skip


TIMES: Final = {"once": 1, "twice": 2, "thrice": 3}


def read(c: Clause) -> None:
    """Two animals and the word between them; who is the doe, their sexes tell."""
    cue = _cue(c)
    if cue is None or _no_mating(c, cue):
        return
    falls, used = _falls(c)
    places = partners(c, cue, used)
    picks = [c.pick(i) for i in places[:2]]
    if len(picks) < 2 and not c.has("elsewhere"):
        picks += [Pick(Mention((), c.said(i)), [c.items[i]]) for i in c.strangers()[: 2 - len(picks)]]
    doe, buck = doe_and_buck(c, picks)
    if cue >= 0:
        used.append(c.items[cue])
    outside = stud_elsewhere(c) if buck is None else None
    need = None
    if doe is None and buck is not None and not outside:
        doe = doe_spoken_of(c)
    values: dict[str, object] = {"falls": falls}
    if outside:
        values["buck"] = outside
    found = c.past(Bred, doe, "doe", values, used)
    if buck is not None:
        found.used.extend(buck.items)
        c.fill(found, buck, "buck")
    elif not outside:
        need = Need("which_animal", "buck", "Which buck was it? Send his tag or name.", bucks_here(c))
    found.need = first_need(found.need, need)
    c.take(found)


def _no_mating(c: Clause, cue: int) -> bool:
    """Whether the word tells of something else, or of a mating that was not or is yet to be."""
    said = c.said(cue)
    return (
        (c.has("box") and said.endswith("in with") and len({animal.tag for animal in _known(c)}) < 2)
        or (said == "x" and _by_so_many(c, cue))
        or (said.startswith("in ") and c.has("count"))  # "counted 7 in with Sorrel"
        or (said == "covered" and _kept_warm(c, cue))
        or (c.has("refuse") and any(found.fact.kind == "refused" for found in c.found))
        or (said == "breed her" and any(c.items[i].value.shape != "near" or c.items[i].value.a > 0 for i in c.dates()))
        or (c.to_come(cue) and not c.has("falls", "times_word"))
        or c.said(cue + 1) in {"attempted", "attempt", "failed", "unsuccessful"}
        or (said == "breeding" and (c.said(cue - 1) in NO_DEED or any(c.said(cue + 1 + n).endswith("take") for n in (0, 1))))
        or (said in MEETINGS and not c.has("elsewhere") and {animal.sex for animal in _known(c)} < {"doe", "buck"})
    )


def _by_so_many(c: Clause, x: int) -> bool:
    """`0.4 ml 2x day`, `4 x 50 lb`: times, and no mating; nor is it one beside a doe that missed."""
    return (
        c.has("miss", "drug", "treat", "purchase", "bag", "feed")
        or c.said(x + 1) in {"day", "daily", "a day", "week"}
        or (x + 1 < len(c.items) and c.items[x + 1].sort == "weight")
    )


def _known(c: Clause) -> list[Animal]:
    """The animals of the book in the statement, by whatever stands for them."""
    return [animal for i in range(len(c.items)) if (animal := c.known(i)) is not None]


#: What a doe covers in her nest.
NESTLINGS: Final = frozenset({"kits", "litter", "nest_place", "fur_word"})


def _kept_warm(c: Clause, cue: int) -> bool:
    """`16 covered her kits well`: what lies in her nest, and no mating."""
    behind = c.items[cue + 1 : cue + 4]
    return any(item.marks & NESTLINGS or item.said in {"nest", "them"} for item in behind) and all(
        animal.sex != "buck" for animal in _known(c)
    )


#: They tell of a mating only where a doe and a buck met.
MEETINGS: Final = frozenset(
    {"got in with", "broke in with", "jumped in with", "got loose with", "visited", "went to see", "went to visit", "dated"}
)
#: `keep 32 for breeding`, `keep breeding 12`: no mating is told behind these.
NO_DEED: Final = frozenset({"for", "before", "from", "keep", "quit", "stop", "start", "try"})


def _cue(c: Clause) -> int | None:
    cue = c.first("breed")
    if cue is not None:
        return cue
    if "breed" in c.virtual:
        return -1
    together = c.first("in_with")
    if together is None and c.first("put", "gave_to") is not None:
        together = next((i for i in c.each("to") if c.said(i) == "to" and c.known(i - 1) is not None and c.known(i + 1) is not None), None)
    if together is not None and c.said(together).startswith("in") and _side_by_side(c, together):
        return together
    if together is None and ((c.has("times_word") and _only_a_pair(c)) or _another_pair(c)):
        return -1
    if (
        together is None
        and any(c.said(i).endswith(("fall", "falls")) or c.said(i) in {"fell", "fell off"} for i in c.each("falls"))
        and _one_to_the_other(c)
    ):
        return -1
    if together is None or (c.first("put", "gave_to") is None and not c.has("falls")):
        return None
    if {c.said(together - 1), c.said(together - 2)} & {"her", "him"} and c.known(together + 1) is not None and c.spoken_of() is not None:
        return together  # "put her in with Moss"
    known = [c.known(i) for i in range(len(c.items))]
    sexes = {animal.sex for animal in known if animal}
    return together if {"doe", "buck"} <= sexes or c.has("falls") or (sexes and c.strangers()) else None


def _another_pair(c: Clause) -> bool:
    """`15 to Flint too` behind a mating: a doe, a buck, and no verb."""
    told = [fact.kind for fact in c.scene.context.last] if c.before is None else [found.fact.kind for found in c.before.found]
    words = (item for item in c.items if item.sort == "word" and item.marks.isdisjoint({"to", "likewise", "doe_word", "buck_word"}))
    return c.has("likewise") and set(told) == {"bred"} and _one_to_the_other(c) and all(item.said in FILLERS for item in words)


def _one_to_the_other(c: Clause) -> bool:
    """`15 to buck 3, 2 falls`: a doe, a buck, and only `to` between them."""
    between = next((i for i in c.each("to") if c.said(i) in {"to", "with", "w", "over to", "back to"}), 0)
    before = between - 1
    while before > 0 and c.said(before) in {"went", "back", "over", "in"}:
        before -= 1
    return {animal.sex for animal in (c.known(before), c.known(between + 1)) if animal} == {"doe", "buck"}


def _only_a_pair(c: Clause) -> bool:
    """`Flint 15, nov 20, twice`: a doe, a buck, how often, and no other word."""
    known = [animal.sex for i in range(len(c.items)) if (animal := c.known(i))]
    return sorted(str(sex) for sex in known) == ["buck", "doe"] and all(
        item.sort != "word" or "times_word" in item.marks or item.said in {"and", "with", "to"} for item in c.items
    )


def _side_by_side(c: Clause, together: int) -> bool:
    """`16 in with Flint`: a doe and a buck, and only where they are between them."""
    before = together - 2 if c.said(together - 1) in {"is", "was", "went", "now"} else together - 1
    sexes = {animal.sex for animal in (c.known(before), c.known(together + 1)) if animal}
    return sexes == {"doe", "buck"}


def _falls(c: Clause) -> tuple[int | None, list[Item]]:
    for i in c.each("falls"):
        times = {"once": 1, "twice": 2}.get(c.said(i + 1))
        if times:
            return times, [c.items[i]]
        label = (i == 0 or c.items[i - 1].sort == "mark") and (i + 2 >= len(c.items) or c.items[i + 2].sort == "mark")  # "; falls 2."
        place = c.number_for(i, behind=label or c.said(i + 1) in {":", "="})
        if place is None and i > 1 and c.whole(i - 2) is not None and c.items[i - 1].sort == "word":
            place = i - 2
        if place is not None:
            return c.whole(place), [c.items[place], c.items[i]]
    for i, item in enumerate(c.items):
        if item.said in TIMES and not c.taken(i):
            return TIMES[item.said], [item]
    for i in c.sorted_as("num"):  # "bred 15 to Flint 3x"
        if c.said(i + 1) == "x" and c.items[i + 1].glued and (i + 2 == len(c.items) or c.items[i + 2].sort in {"mark", "date"}):
            return c.whole(i), [c.items[i], c.items[i + 1]]
    return None, []


def check(fact: Bred, herd: Herd, today: date) -> Problem | None:
    """A doe and a buck that are there; a stud that is not on the book is from elsewhere."""
    buck = herd.find(fact.buck)
    return worst(
        not_yet(fact.on, today),
        animal_problem(herd, fact.doe, fact.on, "doe"),
        worst(wrong_sex(buck, "buck"), was_gone(buck, fact.on), not_born(buck, fact.on)) if buck else None,
    )


def apply(fact: Bred, herd: Herd) -> Herd:
    """One more mating; an earlier open one of another service has come to nothing."""
    doe = herd.find(fact.doe)
    if doe is None:
        return herd
    herd = mated_again(of_sex(herd, fact.doe, "doe"), doe.key, fact.on)
    herd, buck = ancestor(of_sex(herd, fact.buck, "buck"), fact.buck, "buck")
    return herd.with_mating(Mating(doe=doe.key, buck=buck, on=fact.on, falls=fact.falls))


def reply(fact: Bred, before: Herd, after: Herd) -> tuple[str, ...]:
    """The mating, and the days that count from it."""
    falls = f", {words.count(fact.falls, 'fall')}" if fact.falls is not None else ""
    line = dated(f"Doe {fact.doe} bred to {fact.buck}{falls}", fact.on, after)
    doe = after.find(fact.doe)
    if doe is None:
        return (line,)
    stranger = (f"{fact.buck} wasn't on the book: kept as a buck from elsewhere.",) if before.find(fact.buck) is None else ()
    earlier = open_mating(before, doe.key, fact.on)
    ended = earlier is not None and (fact.on - earlier.on).days > SERVICE_DAYS
    again = (f"Her breeding of {words.day(earlier.on)} counts as not taken.",) if earlier and ended else ()
    same = _same_service(fact, before, doe.key)
    ahead = to_come(chores_of_mating(after, doe.key, fact.on), after.day)
    return tuple(each for each in (line, _too_close(fact, doe.key, after), *stranger, *again, same, ahead) if each)


def _too_close(fact: Bred, doe: str, after: Herd) -> str | None:
    """The warning where their kits would be more inbred than the farm wants; it is told, and nothing is held back."""
    buck, most = after.find(fact.buck), highest_coi(after.settings)
    inbred = inbreeding_of_kits(after, buck.key, doe) if buck is not None else 0.0
    if inbred < most:
        return None
    return f"Close kin: their kits would be {inbred * 100:.1f} % inbred, and you want to be warned from {most * 100:.1f} % on."


def _same_service(fact: Bred, before: Herd, doe: str) -> str | None:
    """The breeding nearest in time that this one is counted with: the calendar goes by the first of them."""
    near = [mating for mating in open_matings(before, doe) if abs((mating.on - fact.on).days) <= SERVICE_DAYS]
    if not near:
        return None
    other = min(near, key=lambda mating: abs((mating.on - fact.on).days))
    return f"Counted as the same service as her breeding to {by_key(before, other.buck)} ({when(other.on, before.day)})."


WRITTEN = ("bred doe {doe:TAG} to buck {buck:TAG}(?:, {falls:NUM} falls?)?",)


def show(fact: Bred, _herd: Herd) -> str:
    """`2026-11-25: bred doe 15 to buck 3, 2 falls`."""
    falls = None if fact.falls is None else words.count(fact.falls, "fall")
    return noted(fact.on, parts(f"bred doe {fact.doe} to buck {fact.buck}", falls))


KIND = Kind(
    fact=Bred, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, chores=mating_chores, reply=reply, show=show, written=WRITTEN
)
