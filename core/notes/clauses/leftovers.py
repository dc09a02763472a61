"""What no reading explains: the numbers, weights, days and animals of a statement that must be asked about.

A number that only repeats a fact, an age that agrees with the book, and a time of day are explained.
"""

from __future__ import annotations

from datetime import date
from typing import Final

from core.herd.litters import alive_now, the_litter
from core.herd.state import Animal
from core.notes.clauses.amounts import age_in_days
from core.notes.clauses.clause import Clause
from core.notes.clauses.with_animals import COUNTED_THINGS
from core.notes.slots.animals import Mention
from core.notes.slots.dates import MONTHS
from core.notes.slots.items import Item
from core.notes.slots.measures import clock_time

ASKED: Final = frozenset(
    {
        "num", "weight", "pair", "clock", "money", "temp", "date", "span", "dose", "cup", "percent", "sum", "code", "animal", "cage",
        "ordinal",
    }
)  # fmt: skip
PRONOUNS: Final = frozenset(
    {"this", "that", "the", "no", "which", "good", "big", "little", "another", "last", "first", "other", "each", "every", "any", "only"}
)
OWNERS: Final = frozenset({"her", "his", "its", "their", "my", "our", "the", "a", "for the", "is her", "was her"})
NEAR_DAYS: Final = {"day": 1, "week": 4, "month": 16, "year": 183}  # not a figure: how far an age in such units may be off


def unexplained(c: Clause, facts: int = 0) -> list[Item]:
    """The items that would be dropped; `facts` is how many the whole message gives (`the three`)."""
    left = [c.items[i] for i in c.placed(ASKED) if not c.taken(i) and not explained(c, i)]
    left += _headed(c)
    return [item for item in left if not (item.sort == "num" and facts > 1 and item.value == facts and _all_of_them(c, item))]


def _all_of_them(c: Clause, item: Item) -> bool:
    """`the three`, `all 3`, `3 rabbits`: so many animals as the message tells of."""
    i = c.items.index(item)
    return c.said(i - 1) in {"the", "all", "those", "these", "my", "our", "total", ":"} or c.said(i + 1) in {
        "total",
        "rabbits",
        "animals",
        "in",
    }


def _headed(c: Clause) -> list[Item]:
    """`day 47, 9 kindled 6`: the count of days that heads a statement alone, or beside a day, where it isn't that of its animal."""
    head = c.before
    if head is None or head.found or any(item.sort not in {"span", "date", "mark", "break"} and item.said != "and" for item in head.items):
        return []
    return [item for item in head.items if item.sort == "span" and not _agrees(c, item)]


def explained(c: Clause, i: int) -> bool:
    """Whether an item that no fact took says nothing new."""
    item = c.items[i]
    if item.sort == "num":
        if c.said(i - 1) in MONTHS or c.said(i + 1) in MONTHS:
            return False  # "nov 47" is no day, and no tag
        if c.said(i + 1) == "nights" and c.said(i + 2) in {"running", "straight", "in"}:
            return True  # "kept me up three nights running"
        if c.said(i + 1) in COUNTED_THINGS and not c.found:
            return True  # "water frozen in 6 crocks"
        if c.said(i + 1) == "times" and c.found and all(found.fact.kind != "bred" for found in c.found):
            return True  # "refused two times"
        return _repeats(c, item) or _left_alive(c, i) or (item.spoken and item.value == 1 and _pronoun(c, i)) or _is_animal_of(c, i)
    if item.sort in {"animal", "code"}:
        return _is_animal_of(c, i) or (not c.found and bool((c.mention(i) or Mention((), "")).tags))
    if item.sort == "span":
        return item.value[1] in {"minute", "hour"} or c.said(i + 1) in {"early", "late", "overdue", "over", "later"} or _agrees(c, item)
    if item.sort == "clock":
        return c.said(i - 1) in {"at", "around"} and clock_time(item.value) is not None
    if item.sort == "ordinal":
        return _counts_off(c, i)
    if item.sort == "cage":
        return any(animal.cage is not None and animal.cage.lower() == str(item.value).lower() for animal in _animals(c))
    if item.sort == "date":
        return (not c.found and _can_be(c, item)) or c.told_due(i) or _same_day(c, item)
    return False


def _counts_off(c: Clause, i: int) -> bool:
    """Whether an ordinal says the how-manieth something is (`her 4th litter`, `the 4th`): alone at the end it may be a day."""
    after = c.items[i + 1] if i + 1 < len(c.items) else None
    if after is not None and after.said == "day" and c.found:
        return _of_that_age(c, int(c.items[i].value), NEAR_DAYS["day"])
    return (after is not None and after.sort == "word" and after.said not in {"and", "but"}) or (
        c.said(i - 1) in OWNERS and c.said(i - 2) != "on"
    )


def _repeats(c: Clause, item: Item) -> bool:
    """Whether a fact of the statement has this number already."""
    values = {
        value for found in c.found for name, value in found.values.items() if isinstance(value, int) and name not in {"price", "grams"}
    }
    return item.value == int(item.value) and int(item.value) in values and item.value > 1


def _left_alive(c: Clause, i: int) -> bool:
    """`lost another one, that makes six`: how many are left, where the book agrees."""
    if c.said(i - 1) not in {"other", "remaining", "makes", "leaves", "leaving", "making", "now", "down to", "now at"} and not (
        c.said(i - 1) in {"are", "is", "has"} and c.said(i - 2) == "now"
    ):
        return False
    for found in c.found:
        doe = c.herd.find(found.values.get("doe") or "")
        litter = the_litter(c.herd, doe.key, c.today) if doe and found.fact.kind == "kits_lost" else None
        if litter is not None and alive_now(litter) - (found.values.get("count") or 0) == c.items[i].value:
            return True
    return False


def _pronoun(c: Clause, i: int) -> bool:
    if (
        c.said(i + 1) == "of"
        and c.said(i + 2) in {"those", "them", "these"}
        and not any(item.marks & {"dead", "alive", "die", "lose"} for item in c.items[i + 1 :])
    ):
        return True
    counted = any(item.marks & {"dead", "alive", "die", "lose"} for item in c.items[i + 1 : i + 4])
    return c.said(i - 1) in PRONOUNS or not (c.counted(i) or counted)


def _is_animal_of(c: Clause, i: int) -> bool:
    """Whether it names an animal that a fact of the statement names."""
    mention = c.mention(i)
    if mention is None or not mention.tag:
        return False
    named = {
        value
        for found in c.found
        for name, value in found.values.items()
        if name in {"who", "doe", "buck", "with_", "from_", "to", "litter_of", "tag", "sire", "dam"}
    }
    return mention.tag in named


def _can_be(c: Clause, item: Item) -> bool:
    """Whether the calendar has such a day."""
    return any(c.resolved(item.value, direction).on for direction in ("past", "plan"))


def _same_day(c: Clause, item: Item) -> bool:
    days = c.resolved(item.value, "past").on, c.resolved(item.value, "plan").on
    said = {value for found in c.found for value in found.values.values() if isinstance(value, date)}
    return any(day in said for day in days if day)


def _agrees(c: Clause, item: Item) -> bool:
    """Whether an age or a count of days is that of the statement's animal, its litter or its breeding; of an animal without any day it passes."""
    return _of_that_age(c, age_in_days(item), NEAR_DAYS.get(item.value[1], 7))


def _of_that_age(c: Clause, days: int, slack: int) -> bool:
    animals = _animals(c)
    known = [age for animal in animals for age in _ages(c, animal)]
    known += [(c.today - born).days for found in c.found if isinstance(born := found.values.get("born"), date)]
    if not c.found:
        return c.marks.isdisjoint({"die", "dead"})  # of whose death was it the day?
    return (not known and bool(animals)) or any(abs(age - days) <= slack for age in known)


def _animals(c: Clause) -> list[Animal]:
    tags = {
        value
        for found in c.found
        for name, value in found.values.items()
        if name in {"who", "doe", "litter_of", "from_", "to", "tag"} and isinstance(value, str)
    }
    return [animal for tag in sorted(tags) if (animal := c.herd.find(tag))]


def _ages(c: Clause, animal: Animal) -> list[int]:
    """Days since its birth, its litters and its matings."""
    since = [litter.born_on for litter in c.herd.litters.values() if litter.dam == animal.key]
    since += [mating.on for mating in c.herd.matings if animal.key in {mating.doe, mating.buck}]
    if animal.born:
        since.append(animal.born)
    told = [value for found in c.found for value in to_json_days(found.values)]
    reference = told[0] if told else c.today
    return [(reference - day).days for day in since]


def to_json_days(values: dict[str, object]) -> list[date]:
    """The days among a reading's values."""
    return [value for value in values.values() if isinstance(value, date)]
