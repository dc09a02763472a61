"""What a statement tells of a new animal: its tag, sex, parents, birth, price and name."""

from __future__ import annotations

from calendar import monthrange
from datetime import date
from typing import Final

from core.notes.clauses.amounts import cents
from core.notes.clauses.clause import Clause
from core.notes.clauses.parentage import parents_told, plain_name
from core.notes.clauses.with_animals import LOOKS
from core.notes.slots.common_words import COMMON
from core.notes.slots.dates import Days, days_from
from core.notes.slots.items import Item, breed_said

#: Between `born` and the day.
BEFORE_BIRTH: Final = frozenset({".", "in", "on", "around", "uh", "um", "er", "about", "like"})
#: What tells of a new animal without a word that says it is new.
TELLS_LOOKS: Final = frozenset({"breed_name", "color", "buck_word", "doe_word", "born_word", "sire", "dam_word", "name_word", "tag"})
AGES: Final = frozenset({"old", "older", "younger", "new", "another", "other", "same", "that", "this", "his", "her"})
SMALL_WORDS: Final = frozenset(
    {"is", "a", "is a", "my", "our", "an", "is an", "is my", "and", "the", "of", "was", "on", "in", "x", "tag", "about"}
)


def described_newcomer(c: Clause) -> list[Item] | None:
    """`N4 olive nz red doe born 3/12`, `mabel C4 cal doe`: the words of the name, perhaps none; None where it tells of no new animal, or of more than one.

    A code that nobody has, with a sex, and a breed or birth; every word must tell of it, since a code may be a cage as well.
    """
    parents = {id(item) for item in parents_told(c)[1]}
    codes = [i for i in c.explicit() if id(c.items[i]) not in parents and unknown_tag(c, i)]
    told = any(breed_said(item) for item in c.items) or (c.has("born_word") and bool(c.dates()))
    if len(codes) != 1 or not told or sex_told(c, codes[0]) is None or _of_a_cage(c, codes[0]):
        return None
    told_already = parents | c.used
    rest = [i for i, item in enumerate(c.items) if not _tells_looks(item) and id(item) not in told_already and i != codes[0]]
    names = [i for i in rest if c.items[i].sort == "word" and not c.items[i].marks and c.said(i).isalpha()]
    if rest != names or len(names) > 1 or (names and not _names_it(c, names[0], codes[0])):
        return None
    return [c.items[i] for i in names]


def _tells_looks(item: Item) -> bool:
    plain = item.sort in {"mark", "date", "span", "break"} or item.said in SMALL_WORDS or item.said in LOOKS
    return plain or bool(item.marks & TELLS_LOOKS)


def unknown_tag(c: Clause, i: int) -> str | None:
    """The tag said at a place, letters and a number, where nobody has it."""
    mention = c.mention(i)
    unknown = mention is not None and not mention.tags and any(sign.isdigit() for sign in mention.said)
    return mention.said.upper() if mention is not None and unknown else None


def _of_a_cage(c: Clause, code: int) -> bool:
    """Whether somebody lives in a cage of that name, or it is said as one."""
    said = unknown_tag(c, code)
    return c.has("cage_word", "into") or any((animal.cage or "").upper() == said for animal in c.scene.words.living())


def _names_it(c: Clause, name: int, code: int) -> bool:
    """Whether the word stands where a name does: right behind the tag, or at the head if it is no everyday one."""
    if name == code + 1:
        return c.said(name) not in AGES
    return name == c.opening() and (c.said(name) not in COMMON or c.said(name).capitalize() in c.scene.text.split())


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
    if not ages:
        return None, []
    count, period = c.items[ages[0]].value
    return _by_age(count, period, c.today), [c.items[ages[0]]]


def _by_age(count: int, period: str, today: date) -> Days | None:
    """The birth day that an age leads back to: `8 weeks old`, `2 years old`."""
    if period in {"day", "week"}:
        return Days(days_from(today, -count * {"day": 1, "week": 7}[period]))
    if period not in {"month", "year"}:
        return None
    months = today.year * 12 + today.month - 1 - count * {"month": 1, "year": 12}[period]  # not a figure: months in a year
    if months < 12:  # not a figure: the calendar's first year
        return Days(None)
    year, month = months // 12, months % 12 + 1  # not a figure: months in a year
    return Days(date(year, month, min(today.day, monthrange(year, month)[1])))


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
        sexed = c.first("doe_word", "buck_word") if c.has("new") else None
        return _name_behind_tag(c, sexed) if sexed is not None else (None, [])  # "new doe Dotty, mini lop"
    described = described_newcomer(c)
    if described:
        return described[0].said.title(), described
    bracketed = _name_in_brackets(c, place)
    return bracketed if bracketed[0] or not (c.has("new") or described is not None) else _name_behind_tag(c, place)


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


def name_behind(c: Clause, place: int) -> Item | None:
    """The word right behind a tag in a list that can only be a name: nothing else in a note, and no everyday word without its capital."""
    item = c.items[place + 1] if place + 1 < len(c.items) else None
    return item if item is not None and plain_name(c, place + 1) else None


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
