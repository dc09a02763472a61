"""Animals that leave, or are offered: one by one with their tags, or so many kits of a doe."""

from __future__ import annotations

import re
from typing import Any, Final

from core.herd.litters import alive_now, the_litter, untagged
from core.notes.clauses.clause import Clause
from core.notes.clauses.price import PRICE_LEADS, price_told
from core.notes.clauses.scene import Found, Need, Pick
from core.notes.clauses.with_animals import LOOKS
from core.notes.fact import Cents, Fact
from core.notes.slots.items import Item

_RECIPIENT: Final = re.compile(r"\bto ((?:a|an|the|my|our|her|his|some|mr|mrs|ms|dr)\b.*|[a-z'-]+(?: [a-z'-]+){0,3})$")
_SINGLE: Final = frozenset(
    {"runt", "one", "kit", "baby", "buck", "doe", "male", "female", "smallest", "biggest", "littlest", "bunny", "kid"}
)
_THEM: Final = frozenset({"them", "those", "these"})
_NOT_PEOPLE: Final = frozenset({"cage", "pen", "eat", "death", "b", "the freezer", "freezer"})


def leaving(c: Clause, fact: type[Fact], cue: int | None, *, to: bool, money: bool) -> list[Found]:
    """One reading an animal, or one for the kits; the price and the recipient go with each."""
    if cue and c.said(cue - 1).split(" ")[-1] == "be":
        return []  # "first in line to be culled"
    used = [item for item in c.items if item.marks & {"sell", "list", "cull", "give", "each", "bought_by"}]
    price, price_items = price_told(c, cue) if money else (None, [])
    c.used.update(id(item) for item in price_items)
    used += price_items
    values: dict[str, Any] = {"price": Cents(price)} if price is not None else {}
    if to and (recipient := _recipient(c)):
        values["to"] = recipient
    if (kits := _kits_leave(c, fact, values, used)) is not None:
        return [c.take(_all_paid(c, kits))]
    picks = _picks(c, cue)
    if money and cue is not None and not c.explicit() and _something_else(c, cue):
        picks = [pick for pick in picks if not any(c.said(i - 1) in PRICE_LEADS for i, item in enumerate(c.items) if item in pick.items)]
        if not picks and not c.strangers():
            return []  # "sold eggs for 5"
    if not c.explicit() and not any(pick.tag for pick in picks) and c.strangers():
        picks = []  # "sold patches for 40": the name is nobody's, the number no animal
    if len(picks) == 1 and (of := _out_of(c, picks[0])) is not None:
        return [c.take(_one_leaves(c, fact, picks[0], of, values, used))]
    return [c.take(each) for each in _each_leaves(c, fact, picks or _spoken_of(c), values, used)]


def _kits_leave(c: Clause, fact: type[Fact], values: dict[str, Any], used: list[Item]) -> Found | None:
    """`two of Thistle's kits`, `two of them`, `the whole litter`: those that have no tag."""
    part = c.part_of()
    if part is not None and _untagged(c, part[1]):
        return _part_leaves(c, fact, part, values, used)
    if (some := _of_them(c)) is not None:
        return _some_leave(c, fact, some, values, used)
    kits = _kits(c)
    return None if kits is None else _litter_leaves(c, fact, kits, values, used[:])


def _all_paid(c: Clause, kits: Found) -> Found:
    """`sold 2 of 16's kits, 20 each`: a sale brings the money of all of them; an offer keeps the price of each."""
    price, count = kits.values.get("price"), kits.values.get("count")
    if kits.fact.kind == "sold" and c.has("each") and price is not None and count:
        kits.values["price"] = Cents(price * count)
    return kits


def _spoken_of(c: Clause) -> list[Pick]:
    """The animal spoken of before, where none is named."""
    spoken = c.spoken_of() if not c.has("kits", "litter") or c.has("pronoun") else None
    return [spoken] if spoken else []


def _each_leaves(c: Clause, fact: type[Fact], picks: list[Pick], values: dict[str, Any], used: list[Item]) -> list[Found]:
    """One reading an animal, with its share of the price; one that lacks the animal where it isn't told."""
    price = values.get("price")
    if price is not None and len(picks) > 1 and price % len(picks) == 0 and c.has("born", "both_together"):
        values = {**values, "price": Cents(price // len(picks))}  # `for $80 total`
    elif price is not None and len(picks) > 1 and not c.has("each"):
        choices = (f"{price / 100:.2f} each", f"{price / 100:.2f} for all")
        need = Need("which_number", "price", f"Is {price / 100:.2f} for each of them, or for all together?", choices)
        unpriced = {name: value for name, value in values.items() if name != "price"}
        return [c.past(fact, pick, "who", unpriced, used, need) for pick in picks]
    if not picks or _one_of_them(c, len(picks)):
        return [c.past(fact, None, "who", values, used)]
    together = [item for item in c.items if item.said in {"total", "both", "together", "for both", "altogether"}]
    return [c.past(fact, pick, "who", values, [*used, *together]) for pick in picks]


def _one_of_them(c: Clause, named: int) -> bool:
    """`31 and 32 are ready, sold one of them`: fewer than were named, and nobody knows which."""
    return any(
        c.said(i + 1) == "of" and c.said(i + 2) in _THEM and c.whole(i) is not None and (c.whole(i) or 0) < named
        for i in c.sorted_as("num")
    )


_ARTICLES: Final = frozenset({"the", "a", "an", "my", "our", "some", "old", "few", "last", "more", "used"})
_OF_RABBITS: Final = frozenset(
    {
        "kits", "litter", "doe_word", "buck_word", "bucks_word", "does_word", "pronoun", "all", "breed_name", "color", "to", "each",
        "no_count", "sell", "list", "until", "reason", "scope:grow-outs",
    }
)  # fmt: skip


def _something_else(c: Clause, cue: int) -> bool:
    """Whether what is sold is a word that names no rabbit: `sold eggs for 5`, `sold the old cages for 40`."""
    i = cue + 1
    while c.said(i) in _ARTICLES:
        i += 1
    item = c.items[i] if i < len(c.items) else None
    return (
        item is not None
        and item.sort == "word"
        and item.marks.isdisjoint(_OF_RABBITS)
        and item.said not in {"for", "at", "to", "off", "out", "price", "number", "tag"}
    )


def _out_of(c: Clause, pick: Pick) -> int | None:
    """Index of a doe that something is only out of: `culled the runt from 12`."""
    places = [i for i, item in enumerate(c.items) if item in pick.items]
    animal = c.herd.find(pick.tag) if pick.tag else None
    if animal is None or animal.sex != "doe" or not places:
        return None
    return places[0] if c.said(places[0] - 1) in {"from", "out of", "outta", "off of"} else None


def _one_leaves(c: Clause, fact: type[Fact], pick: Pick, of: int, values: dict[str, Any], used: list[Item]) -> Found:
    """One kit where a single one is spoken of, else the number is asked."""
    single = any(c.said(i) in _SINGLE for i in range(of))
    need = None if single else Need("how_many", "count", "How many kits? Send the number.")
    return c.past(fact, pick, "litter_of", {**values, "count": 1 if single else None}, used, need)


def _of_them(c: Clause) -> int | None:
    """Index of the count in `sold two of them`, where a doe with kits was spoken of and no animal is named."""
    place = next((i for i in c.sorted_as("num") if c.said(i + 1) == "of" and c.said(i + 2) in _THEM and c.whole(i) is not None), None)
    pick = c.spoken_of() if place is not None and not c.explicit() else None
    doe = c.herd.find(pick.tag) if pick is not None and pick.tag else None
    return place if doe is not None and the_litter(c.herd, doe.key, c.today) is not None else None


def _some_leave(c: Clause, fact: type[Fact], place: int, values: dict[str, Any], used: list[Item]) -> Found:
    """`weaned 16, 5 kits, and sold one of them`."""
    return c.past(fact, c.spoken_of(), "litter_of", {**values, "count": c.whole(place)}, [*used, c.items[place]])


def _untagged(c: Clause, doe: int) -> bool:
    """Whether `two of 16` speaks of kits: 16 is a doe."""
    animal = c.known(doe)
    return animal is not None and animal.sex == "doe"


def _part_leaves(c: Clause, fact: type[Fact], part: tuple[int, int], values: dict[str, Any], used: list[Item]) -> Found:
    """`two of Thistle's kits`."""
    count = c.whole(part[0])
    used = [*used, c.items[part[0]], *(item for item in c.items if "kits" in item.marks)]
    return c.past(fact, c.pick(part[1]), "litter_of", {**values, "count": count}, used)


def _recipient(c: Clause) -> str | None:
    """The words behind `to`, up to the end or the next mark."""
    for i, item in enumerate(c.items):
        if item.said != "to" or i + 1 >= len(c.items) or c.items[i + 1].sort != "word" or c.items[i + 1].said in _NOT_PEOPLE:
            continue
        words = []
        for after in c.items[i + 1 :]:
            if after.sort != "word" or after.said in {"for", "and", "because", "so", "today", "at"}:
                break
            words.append(after.said)
        if words:
            return " ".join(words)
    return None


def _kits(c: Clause) -> int | None:
    """Index of what says that kits without tags leave."""
    for i in c.each("kits", "litter"):
        place = c.number_for(i, behind=False)
        one = c.items[i].said in {"kit", "baby", "bunny"} and c.said(i - 1) in {"a", "another", "the", "last"}
        owned = i > 0 and c.items[i - 1].unit == "possessive"
        if place is not None or one or owned or c.items[i].said in {"kits", "litter", "babies", "bunnies", "kids"}:
            return i
    for i in c.sorted_as("animal"):
        if c.items[i].unit == "possessive" and i + 1 < len(c.items) and c.items[i + 1].marks & {"bucks_word", "does_word"}:
            return i + 1  # "sold 16's bucks"
    for i in c.sorted_as("num"):
        if c.said(i + 1) == "of" and i + 2 < len(c.items) and c.items[i + 2].unit == "possessive":
            return i
        at = i + 2 if c.said(i + 1) in LOOKS else i + 1
        sexed = at < len(c.items) and c.items[at].marks & {"bucks_word", "does_word"}
        if sexed and c.said(at + 1) in {"from", "out of", "of"} and c.whole(i) is not None:
            return i  # "three little does from 16"
        if c.said(i + 1) in {"from", "out of", "off", "under"} and c.known(i + 2) and c.whole(i) is not None:
            return i
    return None


def _litter_leaves(c: Clause, fact: type[Fact], kits: int, values: dict[str, Any], used: list[Item]) -> Found:
    place = kits if c.whole(kits) is not None else c.number_for(kits, behind=False)
    if place is None:  # "the last of Thistle's bunch, all five of them"
        place = next((i for i in c.sorted_as("num") if c.whole(i) is not None and c.said(i + 1) == "of" and c.said(i + 2) == "them"), None)
    count = c.whole(place) if place is not None else None
    if place is not None:
        used.append(c.items[place])
        c.used.add(id(c.items[place]))
    used.append(c.items[kits])
    pick = _dam(c, kits)
    if count is None and (
        any(item.said in {"runt", "smallest", "biggest", "pick"} for item in c.items) or c.said(kits - 1) in {"a", "another"}
    ):
        count = 1
    if count is None:
        count = _whole_litter(c, pick)
    need = None if count is not None else Need("how_many", "count", "How many kits? Send the number.")
    return c.past(fact, pick, "litter_of", {**values, "count": count}, used, need)


def _dam(c: Clause, kits: int) -> Pick | None:
    if c.explicit():
        return c.subject_of(kits)
    led = c.led("of", "from", "out", "under", "off", "doe")
    if led is not None:
        return c.pick(led)
    opening = c.opening()
    if opening is not None and c.whole(opening) is not None and c.known(opening) and not c.counted(opening):
        return c.pick(opening)
    before = [i for i in c.sorted_as("num") if c.known(i) and not c.counted(i)]
    return c.pick(before[0]) if before else c.spoken_of()


def _whole_litter(c: Clause, pick: Pick | None) -> int | None:
    """All kits without tags, where a litter was said without a number."""
    animal = c.herd.find(pick.tag) if pick and pick.tag else None
    litter = the_litter(c.herd, animal.key, c.today) if animal else None
    if litter is None or not c.has("litter", "all"):
        return None
    return untagged(c.herd, litter) or alive_now(litter) or None


def _beside(c: Clause, explicit: list[int]) -> list[int]:
    """Bare numbers that are tags in one list with the animals named: `sold 31 and R22`."""
    near = [i for i in c.sorted_as("num") if c.known(i) and not c.counted(i)]
    ahead = [
        i for i in near if any(i + 1 < j and all(item.said in {",", "and", "&", "away"} for item in c.items[i + 1 : j]) for j in explicit)
    ]
    return ahead + [i for i in near if i - 2 in explicit and c.said(i - 1) in {"and", "&"}]


def _picks(c: Clause, cue: int | None) -> list[Pick]:
    """The animals: those named, else the numbers behind the verb or at the start."""
    explicit = c.explicit()
    if explicit:
        tags: list[Pick] = []
        for i in sorted({*explicit, *_beside(c, explicit)}):
            pick = c.pick(i)
            if not any(pick.mention.tags == other.mention.tags and pick.mention.tags for other in tags):
                tags.append(pick)
        return tags
    numbers = [i for i in c.sorted_as("num") if c.whole(i) is not None and not c.counted(i)]
    if cue is not None and any(c.known(i) for i in numbers):
        numbers = [i for i in numbers if c.known(i) or i in {cue - 1, cue + 1}]
    first = [i for i in numbers if c.said(i - 1) not in {"to", "for"}]  # "sold 31 to 32 main st"
    return [c.pick(i) for i in first or numbers]
