"""What a statement tells of a new animal: its tag, sex, parents, birth, price and name."""

from __future__ import annotations

from typing import Final

from core.notes.clauses.amounts import cents
from core.notes.clauses.clause import Clause
from core.notes.clauses.with_animals import LOOKS
from core.notes.slots.common_words import COMMON
from core.notes.slots.dates import Days, days_from
from core.notes.slots.items import Item

#: Behind these a name or tag is a parent's, on the book or not.
PARENT_WORDS: Final = frozenset({"sire", "dam", "sired by"})
#: Between `born` and the day.
BEFORE_BIRTH: Final = frozenset({".", "in", "on", "around", "uh", "um", "er", "about", "like"})


def sex_told(c: Clause, place: int | None) -> str | None:
    """By the word before its tag, else by any such word."""
    mention = c.mention(place) if place is not None else None
    if mention is not None and mention.sex:
        return mention.sex
    if c.has("doe_word", "does_word"):
        return "doe"
    return "buck" if c.has("buck_word", "bucks_word") else None


def tag_place(c: Clause) -> int | None:
    """The new tag: behind `doe`, `tag`, `#`; else the first number or code."""
    for i in c.explicit():
        return i
    numbers = [i for i in c.sorted_as("num") if c.whole(i) is not None]
    led = [i for i in numbers if c.said(i - 1) in {"tag", "#", "number", "doe", "buck", ":"}]
    return next(iter(led or numbers), None)


def parents_told(c: Clause) -> tuple[dict[str, str], list[Item]]:
    """Its parents' tags or names, by field: `sire 3, dam 14`, `out of Juno`."""
    found: dict[str, str] = {}
    used: list[Item] = []
    for mark, name in (("sire", "sire"), ("dam_word", "dam")):
        for i in c.each(mark):
            place = c.past_fillers(i + 1, 1)
            mention = c.mention(place)
            if mention and (mention.tags or c.said(i) in PARENT_WORDS):
                found[name] = mention.tag or mention.said.upper()
                used += [c.items[i], *c.pick(place).items]
                break
            if c.said(i) in PARENT_WORDS and _plain_name(c, place):
                found[name] = c.said(place).title()
                used += [c.items[i], c.items[place]]
                break
    return found, used


def _plain_name(c: Clause, place: int) -> bool:
    """Whether a word that does nothing else in a note stands there, an everyday one with its capital: the name of a parent from elsewhere."""
    said = c.said(place)
    if not said.isalpha() or c.items[place].sort != "word" or c.items[place].marks:
        return False
    return said not in COMMON or said.capitalize() in c.scene.text.split()


def birth_told(c: Clause) -> tuple[Days | None, list[Item]]:
    """The day behind `born`, or by its age; a month alone is no day, and is asked about."""
    for i in c.each("born_word", "born"):
        place = i + 1
        while c.said(place) in BEFORE_BIRTH:
            place += 1
        place = c.past_fillers(place, 1)
        if place < len(c.items) and c.items[place].sort == "date" and c.items[place].value.shape == "month":
            return Days(None), [c.items[place], c.items[i]]  # its day is not guessed
        if place < len(c.items) and c.items[place].sort == "date":
            return c.resolved(c.items[place].value, "born"), [c.items[place], c.items[i]]
    ages = c.sorted_as("span")
    if ages:
        count, period = c.items[ages[0]].value
        days = count * {"day": 1, "week": 7}.get(period, 0)
        if days:
            return Days(days_from(c.today, -days)), [c.items[ages[0]]]
        return None, [c.items[ages[0]]]
    return None, []


def price_paid(c: Clause) -> tuple[int | None, list[Item]]:
    """What was paid [cents]: money, or a number behind `paid` or before `bucks`."""
    for i in c.sorted_as("money"):
        return cents(c, i), [c.items[i]]
    for i in c.sorted_as("num"):
        paid = c.said(i - 1) in {"paid", "for"} or (i + 1 < len(c.items) and "bucks_word" in c.items[i + 1].marks)
        if paid and (len(c.sorted_as("num")) > 1 or c.explicit()):
            return cents(c, i), [c.items[i]]
    return None, []


def name_told(c: Clause, place: int | None) -> tuple[str | None, list[Item]]:
    """Its name: behind `named`, in brackets behind its tag, or the word behind its tag that is nothing else."""
    for i in c.each("name_word"):
        after = c.past_fillers(i + 1, 1)
        after += c.said(after) in {"him", "her", "it"}
        if c.said(i - 1) in {"a", "no", "the"} and c.said(i) == "name":
            continue  # "picked out a name for her first baby"
        if (
            after < len(c.items)
            and c.items[after].sort in {"word", "animal"}
            and not c.items[after].marks & {"condition", "palpate", "plan", "question", "list", "all", "each", "no_count", "pronoun"}
            and (
                "kits" not in c.items[after].marks or (after == i + 1 and not c.said(after).endswith("s"))
            )  # "named Bunny", not "named the kits"
            and after != place
        ):
            item = c.items[after]
            return item.said.title(), [c.items[i], item]
        if after == place and c.items[after].sort == "animal" and _newly_named(c, after + 1):
            return c.said(after + 1).title(), [c.items[i], c.items[after + 1]]  # "named the opal doe Ivy"
    if place is None:
        return None, []
    bracketed = _name_in_brackets(c, place)
    return bracketed if bracketed[0] or not c.has("new") else _name_behind_tag(c, place)


def _name_in_brackets(c: Clause, place: int) -> tuple[str | None, list[Item]]:
    """`tag 46 (Ash)`, `buck 41 "Gus"`."""
    if (c.said(place + 1), c.said(place + 3)) not in {("(", ")"), ('"', '"')}:
        return None, []
    item = c.items[place + 2]
    if item.sort not in {"word", "animal"} or (item.marks and c.said(place + 1) == "(") or not item.said.isalpha():
        return None, []
    return item.said.title(), [item]


def _newly_named(c: Clause, i: int) -> bool:
    """Whether a word with its capital stands there that is nothing else."""
    return i < len(c.items) and c.items[i].sort == "word" and not c.items[i].marks and c.said(i).capitalize() in c.scene.text.split()


def _name_behind_tag(c: Clause, place: int) -> tuple[str | None, list[Item]]:
    """`new buck 41 Anvil satin`: the word behind the tag that is nothing else; an everyday word only where it stands alone as a name does."""
    i = place + 1
    listed = c.said(i) == ","
    if listed:
        i += 1
    if not 0 < i < len(c.items):
        return None, []
    item = c.items[i]
    inexact = item.sort == "animal" and not item.value.exact
    if not inexact and (item.sort != "word" or item.marks or not item.said.isalpha()):
        return None, []
    following = c.items[i + 1] if i + 1 < len(c.items) else None
    stands_alone = (
        following is None
        or following.said in {",", "."}
        or following.sort == "break"
        or bool(following.marks & {"breed_name", "color", "born_word", "buck_word", "doe_word"})
    )
    if listed and (item.said in COMMON or not stands_alone):
        return None, []
    if item.said in LOOKS and following is not None:
        return None, []  # "new buck 41 nice opal one"
    if not inexact and item.said in COMMON and not stands_alone:
        return None, []
    return item.said.title(), [item]
