"""A doe gives birth.

Over 300 lines: a birth is told in the most ways, and three numbers must agree however they are told.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core import words
from core.handbook import reproduction as figures
from core.herd.calendar import litter_chores
from core.herd.changes import joined, of_sex, with_outcome
from core.herd.litters import litter_born, newest_litter, the_litter
from core.herd.matings import fitting_matings, open_mating, open_matings, possible_sires, unused_matings
from core.herd.state import Herd, Litter
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.birth_counts import birth_counts, count_need, reckoned
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Pick
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import by_key, by_tag, chores_of_litter, dated, noted, parts, to_come, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Kindled:
    """A doe gives birth."""

    kind: ClassVar[str] = "kindled"

    doe: Tag
    on: date
    born: int | None = None
    alive: int | None = None
    dead: int | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("Juno: 6 alive, 1 dead, 1 runt", ({"doe": "14", "born": 7, "alive": 6, "dead": 1, "on": "2026-11-25"},)),
    Example("14 kindled 9, 2 dead, 7 look good", ({"doe": "14", "born": 9, "alive": 7, "dead": 2, "on": "2026-11-25"},)),
    Example("Doe: 14\nDate: 11/24/26\nBorn: 9\nAlive: 8", ({"doe": "14", "born": 9, "alive": 8, "dead": 1, "on": "2026-11-24"},)),
    Example(
        "KINDLING\nDoe: 14\nSire: 3\nBorn: 8\nAlive: 7\nDead: 1", ({"doe": "14", "on": "2026-11-25", "born": 8, "alive": 7, "dead": 1},)
    ),
    Example(
        "Juno finally did it, eight little ones and all of them squirming in a big pile of fur.",
        ({"doe": "14", "on": "2026-11-25", "born": 8},),
    ),
    Example("doe 14 kindled 8, 3 dead", ({"doe": "14", "born": 8, "alive": 5, "dead": 3, "on": "2026-11-25"},)),
    Example("14 k8 2d", ({"doe": "14", "born": 8, "alive": 6, "dead": 2, "on": "2026-11-25"},)),
    Example(
        "Juno had her kits overnight! Seven total, looks like one was stillborn but the other six are fat and happy",
        ({"doe": "14", "on": "2026-11-24", "born": 7, "alive": 6, "dead": 1},),
    ),
    Example(
        "Well Clover finally did it, nine babies and every single one alive when I checked at 6am",
        ({"doe": "9", "on": "2026-11-25", "born": 9, "alive": 9},),
    ),
    Example("Juno kept us up three nights running but she kindled seven this morning", ({"doe": "14", "on": "2026-11-25", "born": 7},)),
    Example("My husband says Juno kindled four last night", ({"doe": "14", "on": "2026-11-24", "born": 4},)),
    Example(
        "Well, Clover finally did it! I went out there at six and there were eight in the nest, seven of them warm and one stillborn",
        ({"doe": "9", "on": "2026-11-25", "born": 8, "alive": 7, "dead": 1},),
    ),
    Example(
        "I didn't expect it so soon but Juno had five this morning, one of them born dead",
        ({"doe": "14", "on": "2026-11-25", "born": 5, "alive": 4, "dead": 1},),
    ),
    Example("14 k9, 3 doa", ({"doe": "14", "on": "2026-11-25", "born": 9, "alive": 6, "dead": 3},)),
    Example("9 k8 all dead", ({"doe": "9", "on": "2026-11-25", "born": 8, "alive": 0, "dead": 8},)),
    Example("14 k 5 live", ({"doe": "14", "on": "2026-11-25", "born": 5, "alive": 5},)),
    Example("juno had seven kits all alive", ({"doe": "14", "on": "2026-11-25", "born": 7, "alive": 7},)),
    Example("14 kindled 6 lastnight, 1 ded", ({"doe": "14", "born": 6, "alive": 5, "dead": 1, "on": "2026-11-24"},)),
    Example("23 Nov, 6:15: doe 14, 7 born, 2 dead", ({"doe": "14", "born": 7, "alive": 5, "dead": 2, "on": "2026-11-23"},)),
)
NOT_THIS: tuple[str, ...] = (
    "22 is close to kindling",
    "9 gets a bit more until she kindles",
    "Sorrel is a good mother whenever she kindles",
    "14 hasn't kindled yet",
    "14 no kits yet",
    "14 may kindle friday",
    "14 had 2 cups of feed",
    "when did 14 kindle?",
    "R22 5 lb 1",
)

OPENS: Final = ("kindle", "newborn", "had")
CUES: Final = {
    "kindle": "into the world | have give birth | give birth | gives birth | has give birth | parturition | parturition complete | gave birth to | surprised us with | made babies | produced | had little ones | had her little ones | born to | kindled | kindle | kindles | kindling | kindl | kendled | kendall | findled | gave birth | had her babies | had babies | had her kits"
    " | had her litter | had em | had them | popped | birthed | delivered | had a litter | had kits | had a baby | k | kd | knd | dropped her litter"
    " | dropped kits | dropped a litter | littered | had bunnies | had her bunnies | can build | new litter | popped out | had babies again"
    " | kindlings | had her kids | birth | births | pushed out | gave us | litter born | litter arrived | litter is here | babies are here",
    "newborn": "new ones in the box | new ones in the nest | new ones in there | new ones in her box | pink ones | pinks | pinkies | newborns | new babies | new kits | jellybeans | pink babies | pink kits | pink jellybeans | fresh babies"
    " | little pink ones | brand new babies | new bunnies | pink wigglers",
    "all_alive": "pink and warm | pink and wiggly | pink and plump | pink and healthy | warm and wiggly | warm and pink | warm and full | all good | all fine | all ok | all okay | all well | all healthy | all doing well | all doing good | all happy | all look good | all looking good",
    "had": "threw | whelped | dropped out | finally did it | went and did it | dropped | had | has had | shes had | just had",
}  # fmt: skip


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"alive", "born", "kits"})


def read(c: Clause) -> None:
    """The doe, and how many were born, live and are dead; each number by the word beside it."""
    cue = _cue(c)
    if cue is None or _yet_to_be(c, cue):
        return
    pick = _doe(c, cue)
    if pick:
        c.used.update(id(item) for item in pick.items)
    counts, used = birth_counts(c)
    if not counts and c.said(cue) == "kindles":
        return  # "raises every one she kindles" is her habit
    values = {name: counts.get(name) for name in ("born", "alive", "dead")}
    _use_sire(c, pick)
    if cue >= 0:
        used.append(c.items[cue])
    used += [item for item in c.items if item.marks & {"alive", "dead", "born", "kits"}]
    c.take(c.past(Kindled, pick, "doe", reckoned(values), used, count_need(values)))


def _use_sire(c: Clause, pick: Pick | None) -> None:
    """`SIRE: 3` in a form only repeats what the book knows of the mating."""
    animal = c.herd.find(pick.tag) if pick and pick.tag else None
    if animal is None:
        return
    for i, item in enumerate(c.items):
        if item.sort == "word":
            continue
        led = i > 0 and (
            c.items[i - 1].marks & {"sire", "buck_word"}
            or (c.said(i - 1) == ":" and i > 1 and c.items[i - 2].marks & {"sire", "buck_word"})
        )
        sire = c.known(i) if led or item.sort == "animal" else None
        if sire is not None and any(mating.doe == animal.key and mating.buck == sire.key for mating in c.herd.matings):
            c.use([i])


def _cue(c: Clause) -> int | None:
    """The word that tells of a birth; -1 where an earlier statement's word holds on."""
    cue = c.first("kindle")
    if cue is not None:
        return cue
    if "kindle" in c.virtual:
        return -1
    newborn = c.first("newborn")
    if newborn is not None and (c.number_for(newborn) is not None or c.has("alive")):
        return newborn
    had = c.first("had")
    if had is not None and c.said(had) in DONE and c.has("nest_place", "alive", "dead", "kits") and c.sorted_as("num"):
        return had
    if had is not None and not c.has("lose", "left_over", "ail", "treat") and (_birth_number(c, had) or _had_litter(c, had)):
        return had
    return _born_and_kits(c) or _live_and_dead(c) or _born_and_dead(c)


#: Said of a doe that is due: the number may follow in the next breath.
DONE: Final = frozenset({"finally did it", "went and did it"})


def _born_and_kits(c: Clause) -> int | None:
    """`rabbit 14 born yesterday 7 kits`: of a doe that is due."""
    born, kits = c.first("born"), c.first("kits")
    if (
        born is None
        or not born
        or c.said(born) not in {"born", "birthed"}
        or kits is None
        or c.number_for(kits, behind=False) is None
        or c.has("new", "tag", "plan")
    ):
        return None
    animal = c.known(born - 1)
    return born if animal is not None and animal.sex == "doe" and open_mating(c.herd, animal.key, c.today) is not None else None


def _had_litter(c: Clause, had: int) -> bool:
    """`had her fourth litter`."""
    return any("litter" in item.marks for item in c.items[had + 1 : had + 4])


def _birth_number(c: Clause, had: int) -> bool:
    """`had 8`, `had six babies`; not `had 2 cups`, `had 7 kits left`."""
    number = c.past_fillers(had + 1, 1)
    if c.whole(number) is None:
        return False
    after = number + 1
    following = c.items[after] if after < len(c.items) else None
    return (
        following is None
        or following.sort in {"mark", "break", "date", "num"}
        or bool(following.marks & {"kits", "alive", "dead", "all", "born", "negation"})
        or following.said
        in {"of", "and", "no", "this", "in", "um", "well", "but", "already", "so", "so far", "little", "pink", "more", "tiny", "healthy"}
    )


def _live_and_dead(c: Clause) -> int | None:
    """`6 live 2 dead` of a doe that is due."""
    alive = c.first("alive")
    if alive is None or c.number_for(alive) is None:
        return _kits_and_fate(c)
    if c.has("has_kits", "count", "left_over", "cull", "wean", "sell"):
        return None
    pick = c.subject_of(None, lead=False)
    animal = c.herd.find(pick.tag) if pick and pick.tag else None
    if animal is None or animal.sex != "doe" or not (c.has("dead") or c.has("born")):
        return None
    return -1


def _born_and_dead(c: Clause) -> int | None:
    """`doe 14, 8 born, 1 dead` of a doe that is due."""
    born, dead = c.first("born"), c.first("dead")
    if born is None or dead is None or c.number_for(born, behind=False) is None or c.number_for(dead, behind=False) is None:
        return None
    pick = c.subject_of(None)
    animal = c.herd.find(pick.tag) if pick and pick.tag else None
    due = animal is not None and open_mating(c.herd, animal.key, c.today) is not None
    return -1 if due and not c.has("new", "tag", "plan", "wean", "count") else None


def _kits_and_fate(c: Clause) -> int | None:
    """`14 - 8 kits, 1 DOA` of a doe that is due and nurses no litter."""
    kits, dead = c.first("kits"), c.first("dead")
    if kits is None or c.number_for(kits, behind=False) is None or (dead is not None and c.number_for(dead, behind=False) is None):
        return None
    if (dead is None and not c.has("alive")) or c.has("count", "cull", "wean", "sell"):
        return None
    pick = c.subject_of(None)
    animal = c.herd.find(pick.tag) if pick and pick.tag else None
    due = animal is not None and open_mating(c.herd, animal.key, c.today) is not None
    return -1 if due and animal is not None and the_litter(c.herd, animal.key, c.today) is None else None


def _doe(c: Clause, cue: int) -> Pick | None:
    place = cue if cue >= 0 else None
    opening = c.opening()
    if c.explicit():
        does = [i for i in c.explicit() if (animal := c.known(i)) and animal.sex == "doe"]
        first = c.led("doe") if opening is None or c.items[opening].sort != "num" else opening
        if not does and first is not None and (animal := c.known(first)) and animal.sex == "doe" and not c.counted(first):
            does = [first]  # `14 kindled 8 by Flint`
        return c.pick(does[0]) if len(does) == 1 else c.subject_of(place)
    if opening is not None and opening != cue and c.whole(opening) is not None and (cue < 0 or opening < cue) and not c.counted(opening):
        return c.pick(opening)
    if cue >= 0:
        if c.whole(cue - 1) is not None and c.known(cue - 1) and (not c.counted(cue - 1) or "born" in c.items[cue].marks):
            return c.pick(cue - 1)
        behind = c.past_fillers(cue + 1, 1)
        named = c.said(cue + 1) == ":" or c.said(behind + 1) in {":", "\n"}
        due = (animal := c.known(behind)) is not None and open_mating(c.herd, animal.key, c.today) is not None and c.spoken_of() is None
        others = [i for i in c.sorted_as("num") if i != behind and not c.counted(i)]
        if c.known(behind) and not c.counted(behind) and (named or (others and (due or c.has("born") or c.has("alive")))):
            return c.pick(behind)
    led = c.led()
    return c.pick(led) if led is not None and led != cue + 1 else c.spoken_of()


#: Before a doe and `kindles` they tell how long or when.
UP_TO: Final = frozenset({"til", "till", "until", "before", "once", "unless", "by the time", "as soon as"})


def _yet_to_be(c: Clause, cue: int) -> bool:
    """`til she kindles`, `until 14 kindles`: a birth to come."""
    present = c.said(cue) == "kindling" or (c.said(cue).startswith("kindle") and c.said(cue) != "kindled")
    close = c.said(cue - 1) == "to" and c.said(cue - 2) in {"close", "closer", "due"}  # "she's close to kindling"
    if not present or not (close or any(c.said(i) in UP_TO for i in range(max(cue - 3, 0), cue))):
        return False
    c.use([cue])
    return True


def check(fact: Kindled, herd: Herd, today: date) -> Problem | None:
    """A doe that is there and was bred long enough ago; numbers that add up to a litter."""
    doe = herd.find(fact.doe)
    timely = _breeding_problem(fact, herd, doe.key) if doe is not None and doe.sex != "buck" else None
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"), _count_problem(fact), timely)


def _count_problem(fact: Kindled) -> Problem | None:
    born, alive, dead = fact.born, fact.alive, fact.dead
    if born is None and alive is None:
        return Problem("how_many", f"How many did doe {fact.doe} have?", (), 'Send the number, for example "8" or "8, 2 dead".')
    total = born if born is not None else (alive or 0) + (dead or 0)
    if (dead or 0) > total or (alive or 0) > total:
        text = f"Doe {fact.doe}: {parts(f'{total} born', told('alive ', alive), told('dead ', dead))}. That can't be."
        return Problem("impossible", text, (), _AGAIN)
    if alive is not None and dead is not None and alive + dead != total:
        text = f"Doe {fact.doe}: {total} born, but {alive} alive and {dead} dead make {alive + dead}. Which number is wrong?"
        return Problem("which_number", text, (), _AGAIN)
    if total > figures.LARGEST_LITTER.value:
        return Problem("confirm", f"{total} is a very large litter. Did doe {fact.doe} have {total}?", ("yes", "no"), _AGAIN)
    return None


_AGAIN = 'Send it again, for example "14 kindled 8, 2 dead".'


def _breeding_problem(fact: Kindled, herd: Herd, doe: str) -> Problem | None:
    """Too early for every breeding on the book can't be; too late for all, or none at all, is confirmed."""
    matings = unused_matings(herd, doe, fact.on)
    days = [(fact.on - mating.on).days for mating in matings]
    remedy = f'Answer yes, or send the breeding that is missing: "bred {fact.doe} to 3 on 10/24".'
    if not days:
        earlier = newest_litter(herd, doe, fact.on)
        known = f" She kindled {words.full_day(earlier.born_on)}." if earlier else ""
        text = f"There is no breeding of doe {fact.doe} on the book that this litter could come from.{known} Did she kindle?"
        return Problem("confirm", text, ("yes", "no"), remedy)
    if max(days) < figures.EARLIEST_KINDLING_DAY.value:
        text = f"Doe {fact.doe} was bred {words.full_day(matings[0].on)}, only {words.count(max(days), 'day')} before. Is it another doe, or another day?"
        return Problem("impossible", text, (), f'Send the right doe or day, or the earlier breeding: "bred {fact.doe} to 3 on 10/24".')
    if fitting_matings(herd, doe, fact.on):
        return None
    late = min(day for day in days if day >= figures.EARLIEST_KINDLING_DAY.value)
    text = f"That is day {late} after her last breeding that fits: late for a litter. Did doe {fact.doe} kindle?"
    return Problem("confirm", text, ("yes", "no"), remedy)


def question_after(fact: Kindled, herd: Herd) -> Problem | None:
    """What is asked although the birth is recorded: whose kits they are, where several bucks fit. `herd`: before or after the note."""
    doe = herd.find(fact.doe)
    litter = litter_born(herd, doe.key, fact.on) if doe else None
    if doe is None:
        return None
    keys = litter.sires_possible if litter else possible_sires(herd, doe.key, fact.on)
    if len(keys) < 2:
        return None
    bucks = tuple(by_tag(herd, key) for key in keys)
    text = f"Two breedings fit this litter of doe {fact.doe}: buck {words.listed(bucks, 'or')}. Which is the sire? I left it open."
    remedy = f'Send the buck. If one breeding never happened: "undo the breeding of {fact.doe}" and note the right one.'
    return Problem("which_animal", text, bucks, remedy)


def apply(fact: Kindled, herd: Herd) -> Herd:
    """A litter is born: its sire by the calendar, its dam's breedings closed, kits already on the book joined to it."""
    doe = herd.find(fact.doe)
    if doe is None:
        return herd
    herd = of_sex(herd, fact.doe, "doe")
    sires = possible_sires(herd, doe.key, fact.on)
    born, alive = _born_and_alive(fact)
    key = f"{doe.key}@{fact.on}"
    litter = Litter(
        key=key, dam=doe.key, sire=sires[0] if len(sires) == 1 else None, sires_possible=sires, born_on=fact.on,
        born=born, alive=alive, dead=fact.dead, tally=((fact.on, alive),),
    )  # fmt: skip
    herd = _breedings_closed(herd, doe.key, fact.on)
    if key in herd.litters:
        return herd
    herd = herd.with_litter(litter)
    for animal in [each for each in herd.animals.values() if each.dam == doe.key and each.litter is None and each.born]:
        herd = joined(herd, animal) if litter_born(herd, doe.key, animal.born or fact.on) == litter else herd
    return herd


def _born_and_alive(fact: Kindled) -> tuple[int | None, int]:
    """For the book, alive not said is born less dead, and born not said is alive and dead."""
    alive = fact.alive if fact.alive is not None else max(0, (fact.born or 0) - (fact.dead or 0))
    born = fact.born if fact.born is not None or fact.alive is None else fact.alive + (fact.dead or 0)
    return born, alive


def _breedings_closed(herd: Herd, doe: str, on: date) -> Herd:
    """The breedings that fit have kindled, else the last open one has; other open ones are over."""
    waiting = tuple(mating for mating in open_matings(herd, doe, on) if mating.on < on)
    took = fitting_matings(herd, doe, on) or waiting[-1:]
    herd = with_outcome(herd, took, "kindled", on)
    return with_outcome(herd, tuple(mating for mating in waiting if mating not in took), "rebred", on)


def reply(fact: Kindled, _before: Herd, after: Herd) -> tuple[str, ...]:
    """`Doe 14: 8 born, 6 alive, 2 dead.` with sire, day and what is due."""
    doe = after.find(fact.doe)
    litter = litter_born(after, doe.key, fact.on) if doe else None
    born, alive = _born_and_alive(fact)
    dead = f"{fact.dead} dead" if fact.dead is not None else None
    counted = None if born is None else f"{born} born"
    line = dated(f"Doe {fact.doe}: {parts(counted, f'{alive} alive', dead)}", fact.on, after)
    assumed = "Nobody said how many live, so I count them all." if fact.alive is None and fact.dead is None else None
    if litter is None:
        return tuple(each for each in (line, assumed) if each)
    sire = f"Sire: {by_key(after, litter.sire)}." if litter.sire else None
    ahead = to_come(chores_of_litter(after, litter, "check_nest", "nest_box_out"), after.day)
    return tuple(each for each in (line, assumed, sire, ahead) if each)


WRITTEN = (
    "doe {doe:TAG} kindled {born:NUM}(?:, (?P<alive>(?P=born)) alive)?",
    "doe {doe:TAG} kindled {born:NUM}, {alive:NUM} alive, {dead:NUM} dead",
    "doe {doe:TAG} kindled, {alive:NUM} alive(?:, {dead:NUM} dead)?",
)


def show(fact: Kindled, _herd: Herd) -> str:
    """`2026-11-24: doe 14 kindled 8, 6 alive, 2 dead`."""
    born = f" {fact.born}" if fact.born is not None else ""
    alive = None if fact.alive is None else f"{fact.alive} alive"
    dead = None if fact.dead is None else f"{fact.dead} dead"
    return noted(fact.on, parts(f"doe {fact.doe} kindled{born}", alive, dead))


KIND = Kind(
    fact=Kindled,
    examples=EXAMPLES,
    not_this=NOT_THIS,
    check=check,
    apply=apply,
    chores=litter_chores,
    reply=reply,
    show=show,
    written=WRITTEN,
)
