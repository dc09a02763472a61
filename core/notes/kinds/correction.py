"""Putting a field of an earlier note right.

Over 300 lines: each field has its own way of being put right, and the table of them is most of the file.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import ClassVar, Final

from core.herd.state import Herd
from core.notes.clauses.amounts import age_in_days
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Found, Need
from core.notes.fact import Fields, Json, Tag, to_json
from core.notes.kind import Example, Kind
from core.notes.slots.animals import Mention
from core.notes.slots.items import Item, pair_grams
from core.words import pounds_and_ounces


@dataclass(frozen=True, slots=True, kw_only=True)
class Correct:
    """Putting a field of an earlier note right."""

    kind: ClassVar[str] = "correct"

    set: Fields
    who: Tag | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("no, 16 not 15", ({"set": {"who": "16"}},)),
    Example("make that 6", ({"set": {"count": 6}},)),
    Example("oh and while you are writing, make that 4-9", ({"set": {"grams": 2070}},)),
    Example("i meant 32", ({"set": {"who": "32"}},)),
    Example("born 7, not 8", ({"set": {"born": 7}},)),
    Example("that was 3-12", ({"set": {"grams": 1701}},)),
    Example("Oops, that was Thistle not Sorrel", ({"set": {"who": "16"}},)),
    Example("Sorry, I meant 7 kits", ({"set": {"count": 7}},)),
    Example("wrong rabbit, should have been 15", ({"set": {"who": "15"}},)),
    Example("wrong buck. it should be 5", ({"set": {"buck": "5"}},)),
    Example("31 not 32", ({"set": {"who": "31"}},)),
    Example("no sixteen not fifteen", ({"set": {"who": "16"}},)),
)
NOT_THIS: tuple[str, ...] = (
    "somebody ought to make that hutch roof tight",
    "no kits yet",
    "14 not bred",
    "wrong doe in the wrong cage",
    "that was a long day",
)

OPENS: Final = ()
CUES: Final = {
    "correct": "i goofed | my mistake | my bad | change | that was for | that last weight was for | the last weight was for | last weight was for | i mean | i meant | meant | make that | correction | that was | it was | should be | should have been | should say | sorry it was | change that to | change it to | was supposed to be | not | actually | oops | no | sorry | i said | make it | it should be"
    " | that should be | typo | wrong | was actually | no wait | wait | its | it's | changed to | nope | correct that | fix that | fix",
    "field:born": "born",
    "field:alive": "alive",
    "field:dead": "dead",
    "field:on": "date | day",
    "field:bucks": "bucks",
    "field:does": "does",
    "field:buck": "buck | sire",
    "field:price": "price",
    "field:cage": "cage | pen",
    "field:result": "open | bred | pregnant",
    "field:falls": "falls",
}  # fmt: skip
STARTS: Final = frozenset({"i goofed", "my mistake", "my bad",
    "i mean", "i meant", "meant", "make that", "correction", "that was", "it was", "should be", "should have been", "sorry it was", "sorry", "oops", "no", "actually", "change that to",
    "change it to", "no wait", "wait", "it should be", "that should be", "should say", "typo", "make it", "nope", "fix", "fix that", "correct that", "was supposed to be", "that was for", "that last weight was for", "the last weight was for", "last weight was for",
})  # fmt: skip
STRONG: Final = frozenset(
    {
        "that was for", "that last weight was for", "the last weight was for", "last weight was for", "i mean", "i meant", "meant",
        "make that", "correction", "that was", "should be", "should have been", "change that to", "change it to", "it should be",
        "that should be", "should say", "sorry it was", "make it", "was supposed to be",
    }
)  # fmt: skip


def read(c: Clause) -> None:
    """`no, 15 not 14`, `make that 7`, `born 8, not 7`, `the date was 22 November`."""
    opening = c.opening()
    begin = 2 if _wrong_animal(c) else 0
    first = _by_the_way(c) or next((item for item in c.items[begin:] if item.sort != "mark" and item.said != "and"), None)
    negated = c.first("negation")
    if _of_animal(c):
        return
    if first is None or not (
        (first.said in STARTS and "correct" in first.marks) or (negated is not None and opening is not None and _x_not_y(c))
    ):
        return
    strong = any(item.said in STRONG for item in c.items)
    if not strong and not _x_not_y(c) and not _bare_tail(c) and c.said(c.items.index(first) + 1) not in {"it was", "that was"}:
        return
    values = _set(c)
    if not values and any(item.sort == "date" for item in c.items):
        c.take(
            Found(
                Correct,
                {},
                list(c.items),
                Need("when", "", "Which day is that? I can't make a day of it that fits. Send it again, for example: no, 24 nov."),
            )
        )
    if not values:
        return
    who = values.pop("who") if len(values) > 1 and "who" in values else None  # `correction to 14: born 8`
    c.take(Found(Correct, {"set": Fields(tuple(values.items())), "who": who}, list(c.items)))


def day_alone(c: Clause) -> None:
    """`yesterday`, `saturday`, `on the 20th` and nothing else: the day of what was just told."""
    told = [item for item in c.items if item.sort != "mark" and item.said not in {"on", "it was", "that was"}]
    dated = [fact for fact in c.scene.context.last if "on" in to_json(fact)]
    if len(told) == 1 and told[0].sort == "date" and dated and (values := _set(c)):
        c.take(Found(Correct, {"set": Fields(tuple(values.items()))}, list(c.items)))


#: Nothing but a correction begins so, whatever small talk leads to it.
OUTRIGHT: Final = frozenset({"make that", "change that to", "change it to"})
PREAMBLE: Final = 9  # not a figure: items


def _by_the_way(c: Clause) -> Item | None:
    """`and while I'm at it make that 3-13`: the words before tell nothing."""
    place = next((i for i, item in enumerate(c.items[:PREAMBLE]) if item.said in OUTRIGHT), None)
    if place is None:
        return None
    behind = c.items[place + 1 : place + 2]
    if not behind or behind[0].sort in {"word", "mark"} or any(item.sort not in {"word", "mark"} for item in c.items[:place]):
        return None
    return c.items[place]


def fewer(c: Clause) -> None:
    """`only lost 1` behind a note of two: the same loss told again, smaller, and not a second one."""
    last = c.scene.context.last
    if (
        len(last) != 1
        or last[0].kind != "kits_lost"
        or c.explicit()
        or c.dates()
        or not any(item.said in {"only", "just"} for item in c.items)
    ):
        return
    told = to_json(last[0])
    numbers = [i for i in c.sorted_as("num") if c.said(i) != told["doe"]]
    count = c.whole(numbers[0]) if len(numbers) == 1 else None
    before = told["count"]
    if count is not None and isinstance(before, int) and count < before and c.said(numbers[0] + 1) not in {"more", "another"}:
        c.take(Found(Correct, {"set": Fields((("count", count),))}, list(c.items)))


def _of_animal(c: Clause) -> bool:
    """`31 should be 3-12`: which animal's fact, and what it should say."""
    place = next(
        (i for i, item in enumerate(c.items) if item.said in {"should be", "should have been", "was supposed to be", "should say"}), None
    )
    if place is None and c.said(0) == "change" and c.said(2) == "to":
        place = 2
    subject = c.mention(place - 1) if place else None
    if place is None or subject is None or subject.tag is None or place > 2:
        return False
    rest = Clause(c.items[place + 1 :], c.scene)
    values = _set(rest)
    if not values:
        return False
    c.take(Found(Correct, {"set": Fields(tuple(values.items())), "who": subject.tag}, list(c.items)))
    return True


def _wrong(c: Clause) -> list[int]:
    """What stands behind `not`: the value that was wrong."""
    found = []
    for i in c.each("negation"):
        place = c.past_fillers(i + 1, 1)
        if (
            place < len(c.items)
            and not (c.said(place - 1) == "a" and c.items[place].spoken)
            and c.items[place].sort in {"num", "animal", "pair", "weight", "date", "money", "code", "word"}
        ):
            found.append(place)
    return found


def _x_not_y(c: Clause) -> bool:
    """Two of a sort with `not` between: `15 not 14`."""
    for wrong in _wrong(c):
        sort = c.items[wrong].sort
        right = [i for i in range(len(c.items)) if i != wrong and c.items[i].sort in {sort, "num", "animal"} and sort != "word"]
        if right or (sort == "num" and _ounces_alone(c, wrong) is not None):
            return True
    return False


def _ounces_alone(c: Clause, wrong: int) -> int | None:
    """The weight [g] that `8 oz not 6` makes of the last one: its pounds stay; None where its ounces were others."""
    ounces = [item for item in c.items if item.sort == "weight" and item.unit == "oz"]
    last = [fact for fact in c.scene.context.last if fact.kind == "weighed"]
    if len(ounces) != 1 or len(last) != 1:
        return None
    pounds, said = pounds_and_ounces(int(str(to_json(last[0])["grams"])))
    return pair_grams(pounds, ounces[0].value[1]) if said == c.whole(wrong) else None


def _bare_tail(c: Clause) -> bool:
    """`no 15`, `sorry, 4-6`: nothing but the right value."""
    told = [
        item
        for item in c.items
        if item.sort != "mark"
        and not item.marks & {"correct", "field:dead", "field:alive", "field:born", "field:falls"}
        and item.said not in {"the", "a", "her", "his", "it", "kits", "falls"}
    ]
    if (
        len([item for item in told if "pronoun" not in item.marks]) == 1
        and "field:result" in told[-1].marks
        and any(fact.kind == "palpated" for fact in c.scene.context.last)
    ):
        return True
    return len(told) == 1 and told[0].sort in {"num", "pair", "weight", "animal", "date", "money"}


def _set(c: Clause) -> dict[str, Json]:
    wrong = set(_wrong(c))
    values: dict[str, Json] = {}
    for i, item in enumerate(c.items):
        if i in wrong:
            continue
        if item.sort == "date":
            ahead = any(fact.kind in {"remind", "planned", "for_sale"} for fact in c.scene.context.last)
            days = c.resolved(item.value, "plan" if ahead else "past")
            if days.on:
                values["on"] = days.on.isoformat()
        elif item.sort in {"animal", "code"}:
            mention = c.mention(i)
            values["buck" if _field(c, i) == "buck" else "who"] = (mention.tag or mention.said.upper()) if mention else item.said
        elif item.sort in {"weight", "pair"}:
            alone = next((grams for place in wrong if (grams := _ounces_alone(c, place)) is not None), None)
            values["grams"] = alone if alone is not None else c.grams(i)
        elif item.sort == "money":
            values["price"] = f"{item.value // 100}.{item.value % 100:02d}"
        elif item.sort == "cage":
            values["cage"] = item.value
        elif item.sort == "span":
            treated = any(fact.kind == "treated" for fact in c.scene.context.last)
            values["withdrawal_days" if treated else "age_days"] = age_in_days(item)
        elif item.sort == "num" and c.said(i - 1) in {"for", "on"} and values and c.known(i):
            values["who"] = (c.mention(i) or Mention((), "")).tag
        elif item.sort == "num" and c.whole(i) is not None:
            _number(c, i, wrong, values)
    if not values:
        result = next((item for j, item in enumerate(c.items) if "field:result" in item.marks and j not in wrong), None)
        if result is not None:
            values["result"] = "open" if result.said == "open" else "bred"
        cause = next((mark.removeprefix("cause:") for item in c.items for mark in sorted(item.marks) if mark.startswith("cause:")), None)
        if cause is not None and any("cause" in to_json(fact) or fact.kind in {"kits_lost", "died"} for fact in c.scene.context.last):
            values["cause"] = cause
    return values


def _number(c: Clause, i: int, wrong: set[int], values: dict[str, Json]) -> None:
    """A number goes to the field named beside it; else a tag for a tag, a count for a count."""
    number = c.whole(i) or 0
    name = _field(c, i)
    if name == "buck":
        values["buck"] = str(number)
    elif name:
        values[name] = number
    elif _is_tag(c, i, wrong):
        values["who"] = (c.mention(i) or Mention((), "")).tag or str(number)
    else:
        values.setdefault("count", number)


def _field(c: Clause, i: int) -> str | None:
    for j in (i - 1, i + 1, i - 2, i - 3):
        if 0 <= j < len(c.items):
            name = next((mark.removeprefix("field:") for mark in c.items[j].marks if mark.startswith("field:")), None)
            if name and name not in {"on", "result", "price", "cage"}:
                return name
            if "kits" in c.items[j].marks and j == i + 1:
                return "count"
            if not c.items[j].marks.isdisjoint({"lose", "die"}) and abs(j - i) == 1:
                return "dead"
    return None


def _is_tag(c: Clause, i: int, wrong: set[int]) -> bool:
    """Whether a number is an animal here: what it replaces tells, else the last facts do."""
    if any(c.items[place].sort == "animal" for place in wrong) or (_wrong_animal(c) and c.known(i) is not None):
        return True
    numbers = [c.whole(place) for place in wrong if c.whole(place) is not None]
    last = c.scene.context.last
    said = {str(value) for fact in last for value in to_json(fact).values()}
    counts = {
        value for fact in last for name, value in to_json(fact).items() if name in {"count", "born", "alive", "dead", "bucks", "does"}
    }
    if numbers:
        if str(numbers[0]) in said and numbers[0] not in counts:
            return True
        return c.known(i) is not None and (not counts or all(c.scene.words.tagged(str(number)) for number in numbers))
    if c.said(i - 1) in {"doe", "buck", "tag", "was", "it was", "that was"} and c.known(i):
        return not counts or c.said(i - 1) in {"doe", "buck", "tag"}
    if c.has("correct") and any(item.said in {"make that", "make it", "change that to", "change it to"} for item in c.items):
        return False
    return c.known(i) is not None and not counts


def _wrong_animal(c: Clause) -> bool:
    """`wrong doe, should be 9`: the animal is put right, whatever was counted of her."""
    return c.said(0) == "wrong" and c.said(1) in {"doe", "buck", "rabbit", "animal", "tag"}


def reply(_fact: Correct, _before: Herd, _after: Herd) -> tuple[str, ...]:
    """Nothing: the corrected note answers for itself."""
    return ()


WRITTEN = ("correct(?: {who:TAG})?: {set:REST}",)


def show(fact: Correct, _herd: Herd) -> str:
    """`correct 31: who "15", count 7`; the animal whose note it is stands only where it was said."""
    of = f" {fact.who}" if fact.who is not None else ""
    return f"correct{of}: " + ", ".join(f"{name} {json.dumps(value, ensure_ascii=False)}" for name, value in fact.set)


KIND = Kind(fact=Correct, examples=EXAMPLES, not_this=NOT_THIS, reply=reply, show=show, written=WRITTEN)
