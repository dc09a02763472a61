"""One rabbit on the scale.

Over 300 lines: weights come in lists and tables, in three notations, with and without a verb.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core import words
from core.handbook import breeds, growth, stages
from core.herd.calendar import weigh_chores
from core.herd.changes import weighed
from core.herd.questions import age_days, ever_mated
from core.herd.settings import target_weight
from core.herd.state import Animal, Herd
from core.herd.weights import gain_since, last_weight, odd_weight
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need, Pick
from core.notes.clauses.weights import Weight, may_be_weights, use_earlier_weights, weights_told
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.items import Item
from core.notes.talk.dotted import what_is_the_dot
from core.notes.telling import called, change, dated, grams, noted
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """One rabbit on the scale."""

    kind: ClassVar[str] = "weighed"

    who: Tag
    grams: int
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example("R23 5 even", ({"who": "R23", "grams": 2268, "on": "2026-11-25"},)),
    Example(
        "31 4-5 bcs 3",
        ({"kind": "condition", "who": "31", "score": 3, "on": "2026-11-25"}, {"who": "31", "grams": 1956, "on": "2026-11-25"}),
    ),
    Example(
        "tattooed R32 from 16, doe. she weighs 2-1",
        (
            {"kind": "tagged", "tag": "R32", "litter_of": "16", "sex": "doe", "on": "2026-11-25"},
            {"who": "R32", "grams": 936, "on": "2026-11-25"},
        ),
    ),
    Example(
        "new buck 44 satin. 44 weighed 8-2",
        ({"kind": "animal", "tag": "44", "sex": "buck", "breed": "Satin"}, {"who": "44", "grams": 3685, "on": "2026-11-25"}),
    ),
    Example("32 4-1 on 11/20", ({"who": "32", "grams": 1843, "on": "2026-11-20"},)),
    Example("weighed a few and only caught the one, 31 at four pounds six", ({"who": "31", "grams": 1984, "on": "2026-11-25"},)),
    Example("31 4-2", ({"who": "31", "grams": 1871, "on": "2026-11-25"},)),
    Example(
        "weighed 31 3-15, 32 4-1",
        (
            {"who": "31", "grams": 1786, "on": "2026-11-25"},
            {"who": "32", "grams": 1843, "on": "2026-11-25"},
        ),
    ),
    Example("Moss 10 lb 4", ({"who": "5", "grams": 4649, "on": "2026-11-25"},)),
    Example("33 weighs 1.7 kg", ({"who": "33", "grams": 1700, "on": "2026-11-25"},)),
    Example(
        "Weighed the three grow outs: 31 is 3 pounds 14, 32 is 4 pounds even and 33 is 3 pounds 9 ounces",
        (
            {"who": "31", "grams": 1758, "on": "2026-11-25"},
            {"who": "32", "grams": 1814, "on": "2026-11-25"},
            {"who": "33", "grams": 1616, "on": "2026-11-25"},
        ),
    ),
    Example(
        "r21 4lb 15oz, r22 5lb 1oz",
        (
            {"who": "R21", "grams": 2240, "on": "2026-11-25"},
            {"who": "R22", "grams": 2296, "on": "2026-11-25"},
        ),
    ),
    Example("31=3-14", ({"who": "31", "grams": 1758, "on": "2026-11-25"},)),
    Example("31: 4.6", ({"who": "31", "grams": 2087, "on": "2026-11-25"},)),
    Example(
        "wts: 31 3-12; 32 3-15; 33 3-9",
        (
            {"who": "31", "grams": 1701, "on": "2026-11-25"},
            {"who": "32", "grams": 1786, "on": "2026-11-25"},
            {"who": "33", "grams": 1616, "on": "2026-11-25"},
        ),
    ),
    Example("R22 s/o Moss 5-6", ({"who": "R22", "grams": 2438, "on": "2026-11-25"},)),
    Example(
        "Doe 14: 4 lb 12. R-22 5 lb 1",
        ({"who": "14", "grams": 2155, "on": "2026-11-25"}, {"who": "R22", "grams": 2296, "on": "2026-11-25"}),
    ),
    Example(
        "R21, R22 and R23: weights 5-0, 5-2, 5-1",
        (
            {"who": "R21", "grams": 2268, "on": "2026-11-25"},
            {"who": "R22", "grams": 2325, "on": "2026-11-25"},
            {"who": "R23", "grams": 2296, "on": "2026-11-25"},
        ),
    ),
)
NOT_THIS: tuple[str, ...] = (
    "9 ivermectin .3",
    "14 kindled 6 weighing 11 oz",
    "32 is 3 oz short",
    "33 under 4-2",
    "33 must be close to four pounds by now",
    "need to weigh 31",
    "12 litter 3-9",
    "16 3 2",
    "33 type 4 fur 5",
    "moss gets 6 oz a day",
    "120 lb feed left",
)

OPENS: Final = ("weigh",)
CUES: Final = {
    "weigh": "body weight | body wt | bw | live weight | weighed | weighs | weigh | weighing | weight | weights | wt | wts | wgt | weighd | wghd | on the scale | to the scale | scale | tipped the scale | tips the scale"
    " | tipped the scales at | came in at | is up to | weighed in at | weigh in | weighins | weighed in | metric | wghs | weighted | put on the scale",
}  # fmt: skip


OTHERS: Final = ("another", "the other", "other one", "next", "the next", "one more")  # not the animal spoken of


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"animal", "clock", "code", "num", "pair", "weight"})


def read(c: Clause) -> None:
    """Animals and their weights in pairs, in the order said; a weight beside an animal needs no verb."""
    if not c.has("weigh") and (c.has("litter", "feed", "bag", "per_day", "drug") or (c.has("ration") and _of_feed(c))):
        return
    cue = c.first("weigh")
    if _nobody_on_it(c, cue):
        return
    told = cue is not None or "weigh" in c.virtual
    if not told and not c.holds("weight", "pair", "clock") and not may_be_weights(c, c.places("num")):
        return
    if not c.found and len(c.explicit()) + sum(1 for i in c.sorted_as("num") if c.known(i)) <= 1:
        use_earlier_weights(c)
    weights = weights_told(c, told=told)
    if not weights:
        if told and (c.explicit() or c.sorted_as("num")) and not c.has("negation", "kits"):
            _no_weight(c, cue)
        return
    animals = _animals(c, weights, told=told, cue=cue) or _spoken_of(c, weights, told=told)
    if animals is not None:
        _weighed(c, animals, weights, cue)


def _nobody_on_it(c: Clause, cue: int | None) -> bool:
    """Whether no animal was weighed: feed was, or what it ate, or it only lost or gained some."""
    if cue is None:
        return c.says({"gave", "ate", "eats", "eating"})
    if c.has("bin") and c.has("feed_left"):
        c.use([cue])
        return True  # "weighed the bin, 60 lb left"
    return (c.said(cue) == "is up to" and c.has("per_day", "hay")) or (  # "Moss is up to 6 oz a day"
        c.said(cue) == "weight" and c.said(cue - 1) in CHANGED and not c.holds("weight", "pair", "clock")
    )  # "Flint lost weight, I'd call him a 2"


def _spoken_of(c: Clause, weights: list[Weight], *, told: bool) -> list[Pick] | None:
    """The animal spoken of before, where this names none; empty where it is to be asked, None where no animal was weighed."""
    spoken = None if c.text().startswith(OTHERS) else c.spoken_of()
    if not told and (spoken is None or (c.found and not _judged_too(c, weights))):
        return None
    return [spoken] if spoken else []


def _weighed(c: Clause, animals: list[Pick], weights: list[Weight], cue: int | None) -> None:
    """Each animal with its weight, or all with one: `31 and 32 both 4 lb`."""
    if len(weights) == 1 and len(animals) > 1 and any(item.said in {"both", "each", "all"} for item in c.items):
        heavy, items = weights[0]
        for one in animals:
            c.take(c.past(Weighed, one, "who", {"grams": heavy}, items, None if heavy else _no_such_weight(items[0])))
        return
    if len(animals) != len(weights) and not (len(animals) <= 1 and len(weights) == 1):
        return
    for n, (heavy, items) in enumerate(weights):
        pick = animals[n] if n < len(animals) else None
        need = None if heavy else _no_such_weight(items[0])
        used = [*items, *([c.items[cue]] if cue is not None else [])]
        if pick is not None and len(animals) == 1 and (parent := _parent(c, pick)) is not None:
            c.take(c.past(Weighed, None, "who", {"grams": heavy}, [*used, *pick.items], parent))
        else:
            c.take(c.past(Weighed, pick, "who", {"grams": heavy}, used, need))


def _judged_too(c: Clause, weights: list[Weight]) -> bool:
    """`33 3-14 type 4 fur 4`, `31 4-5 bcs 3`: the weight beside the animal's scores."""
    opening = c.opening()
    beside = len(weights) == 1 and opening is not None and c.items[opening + 1 : opening + 2] == weights[0][1]
    return (
        beside
        and all(found.fact.kind in {"scored", "condition"} for found in c.found)
        and len({found.values.get("who") for found in c.found}) == 1
    )


def _of_feed(c: Clause) -> bool:
    """Whether a word of feeding is more than the `on` before a day."""
    return any(
        "ration" in item.marks
        and (item.said, c.items[i + 1].sort if i + 1 < len(c.items) else "") not in {("on", "date"), ("up to", "pair"), ("down to", "pair")}
        for i, item in enumerate(c.items)
    )


def _no_such_weight(item: Item) -> Need:
    """A dotted number in a farm that has not said what its dot means, or ounces that can't be."""
    return what_is_the_dot(item) or Need(
        "which_number", "grams", f"\u201c{item.said}\u201d is no weight I know: ounces go up to 15. What did the scale say?"
    )


def _no_weight(c: Clause, cue: int | None) -> None:
    if cue is not None and (
        c.said(cue) in {"is up to", "came in at", "on the scale", "to the scale", "scale", "metric"}
        or c.said(cue - 1) == "to"
        or c.has("intent")
    ):
        return
    numbers = c.sorted_as("num")
    if len(numbers) <= 1:
        pick = c.subject_of(cue)
        c.take(
            c.past(
                Weighed,
                pick,
                "who",
                {"grams": None},
                [c.items[cue]] if cue is not None else [],
                Need("how_many", "grams", "What did the scale say? Send the weight, for example 4-6."),
            )
        )


CHANGED: Final = frozenset(
    {"lost", "losing", "lose", "loses", "gained", "gaining", "gain", "dropped", "dropping", "put on", "putting on", "some", "no"}
)


def _animals(c: Clause, weights: list[Weight], *, told: bool, cue: int | None) -> list[Pick]:
    """As many animals as weights, in order."""
    taken = {id(item) for _, items in weights for item in items}
    places = c.explicit()
    bare = [i for i in c.sorted_as("num") if c.whole(i) is not None and id(c.items[i]) not in taken and not c.counted(i)]
    bare = [i for i in bare if not (c.items[i].spoken and c.whole(i) == 1 and c.known(i) is None)]  # "wrote down the one, 33 at ..."
    bare = [i for i in bare if c.said(i - 1) != "not"]  # "8 oz not 7" tells what it isn't
    if not places or len(places) < len(weights):
        fitting = [i for i in bare if told or c.known(i) or _before_weight(c, i)]
        places = sorted([*places, *fitting]) if len(places) + len(fitting) <= len(weights) or not places else places
    picks = [c.pick(i) for i in places]
    distinct: list[Pick] = []
    for pick in picks:
        if not any(pick.mention.tags == other.mention.tags and pick.mention.tags for other in distinct):
            distinct.append(pick)
    if len(weights) == 1 and len(distinct) > 1 and cue is not None:
        before = [pick for pick in distinct if any(item.start < c.items[cue].start for item in pick.items)]
        return before[-1:] or distinct[:1]
    return distinct


def _parent(c: Clause, pick: Pick) -> Need | None:
    """`the buck out of 14 weighed 4 lb`: an animal without a name of its own, told by its dam."""
    i = next((i for i, item in enumerate(c.items) if item in pick.items), 0)
    if c.said(i - 1) not in {"out of", "from", "off of"} or i < 2 or not c.items[i - 2].marks & {"buck_word", "doe_word"}:
        return None
    text = f"Which one out of {pick.tag or pick.mention.said} is that? Send its tag with the weight."
    return Need("which_animal", "who", text)


def _before_weight(c: Clause, i: int) -> bool:
    following = c.past_fillers(i + 1, 1)
    return following < len(c.items) and c.items[following].sort in {"weight", "pair", "clock"} and i == c.opening()


def check(fact: Weighed, herd: Herd, today: date) -> Problem | None:
    """A weight that a rabbit of its breed can have, and that the last one leads to."""
    animal = herd.find(fact.who)
    there = worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))
    if there or animal is None:
        return there
    return _too_heavy(fact, herd, animal) or _odd(fact, herd, animal)


def _too_heavy(fact: Weighed, herd: Herd, animal: Animal) -> Problem | None:
    if 0 < fact.grams <= breeds.heaviest_believable_g(animal.breed):
        return None
    text = f"{grams(herd, fact.grams)} can't be for {fact.who}, a {animal.breed or 'rabbit'}. What does it weigh?"
    return Problem("impossible", text, (), f'Send it again with its units: "{fact.who} 4 lb 6 oz".')


def _odd(fact: Weighed, herd: Herd, animal: Animal) -> Problem | None:
    expected, last = odd_weight(animal, fact.grams, fact.on), last_weight(animal, fact.on)
    if expected is None or last is None:
        return None
    text = (
        f"{fact.who} weighed {grams(herd, last.grams)} {words.full_day(last.on)}, so about {grams(herd, expected)} by now. "
        f"Is {grams(herd, fact.grams)} right?"
    )
    return Problem("confirm", text, ("yes", "no"), f'Answer yes, or send it again: "{fact.who} 4 lb 6 oz".')


def apply(fact: Weighed, herd: Herd) -> Herd:
    """One more weight, in its place by day."""
    animal = herd.find(fact.who)
    return weighed(herd, animal, fact.on, fact.grams) if animal else herd


def reply(fact: Weighed, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The weight, what it gained since the last one, and how it stands against the target."""
    animal = after.find(fact.who)
    line = dated(f"{called(after, fact.who)}: {grams(after, fact.grams)}", fact.on, after)
    if animal is None:
        return (line,)
    gained = gain_since(animal, fact.on)
    since = words.sentence(f"{change(after, gained[0])} in {words.count(gained[1], 'day')}") if gained and gained[1] else None
    return tuple(each for each in (line, since, _against_target(fact, after, animal)) if each)


def _against_target(fact: Weighed, herd: Herd, animal: Animal) -> str | None:
    """For a grow-out or junior that was never mated: the farm's target for its breed at sixteen weeks."""
    age = age_days(animal, fact.on)
    if age is None or age >= stages.SENIOR_FROM_DAYS.value or ever_mated(herd, animal):
        return None
    target = target_weight(herd.settings, animal.breed)
    goal = f"target {grams(herd, target)} at {growth.LIGHT_AGE_DAYS.whole} days"
    if fact.grams >= target:
        return words.sentence(f"day {age}: over the {goal}")
    short = f"{grams(herd, target - fact.grams)} under the {goal}"
    return words.sentence(f"day {age}: {short}")


WRITTEN = ("{who:TAG} weighed {grams:NUM} g",)


def show(fact: Weighed, _herd: Herd) -> str:
    """`2026-11-25: 31 weighed 1984 g`: to the gram, whatever the farm's unit."""
    return noted(fact.on, f"{fact.who} weighed {fact.grams} g")


KIND = Kind(
    fact=Weighed,
    examples=EXAMPLES,
    not_this=NOT_THIS,
    check=check,
    apply=apply,
    chores=weigh_chores,
    reply=reply,
    show=show,
    written=WRITTEN,
    plain=True,
)
