"""Animal note: an animal comes on the book, or its details are completed.

Over 300 lines: a new animal is told in more ways than anything else, and its note completes or contradicts what the book has.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from itertools import pairwise, takewhile
from typing import ClassVar, Final

from core import words
from core.handbook.breeds import breed
from core.herd.changes import ancestor, joined
from core.herd.questions import breed_on_book, same_tag
from core.herd.settings import breed_name, target_weight
from core.herd.state import Animal, Herd
from core.notes.checking import not_born, not_yet, worst, wrong_sex
from core.notes.clauses.clause import Clause
from core.notes.clauses.newcomers import (
    birth_told,
    described_newcomer,
    name_behind,
    name_told,
    price_paid,
    sex_told,
    tag_place,
)
from core.notes.clauses.parentage import parents_told
from core.notes.clauses.scene import Found, Need, first_need, unknown_animal, when
from core.notes.clauses.typed import as_typed
from core.notes.fact import Cents, Sex, Tag
from core.notes.kind import Example, Kind
from core.notes.layout.text import cleaned
from core.notes.slots.animals import Mention
from core.notes.slots.dates import Days
from core.notes.slots.items import Item, breed_said, color_said
from core.notes.telling import breed_written, by_key, called, color_written, grams, money, parts, quoted, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class AnimalNoted:
    """Animal note: an animal comes on the book, or its details are completed."""

    kind: ClassVar[str] = "animal"

    tag: Tag
    name: str | None = None
    sex: Sex | None = None
    breed: str | None = None
    color: str | None = None
    born: date | None = None
    sire: Tag | None = None
    dam: Tag | None = None
    origin: str | None = None
    price: Cents | None = None
    on: date | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("new doe KT-19 mini rex", ({"tag": "KT19", "sex": "doe", "breed": "Mini Rex"},)),
    Example("new doe 43 nice castor one", ({"tag": "43", "sex": "doe", "color": "castor"},)),
    Example(
        "the neighbor gave us a new buck, a New Zealand, red, called Rusty, tag 51",
        ({"tag": "51", "sex": "buck", "breed": "New Zealand", "color": "red", "name": "Rusty", "origin": "given"},),
    ),
    Example("R21 NZW red? no wht", ({"tag": "R21", "breed": "New Zealand", "color": "white"},)),
    Example("new doe 44 satin, calling her Fern", ({"tag": "44", "name": "Fern", "sex": "doe", "breed": "Satin"},)),
    Example("Buck 43, Satin, born 2 May 2026.", ({"tag": "43", "sex": "buck", "breed": "Satin", "born": "2026-05-02"},)),
    Example("new doe 42 mini rex blue brn 7/4", ({"tag": "42", "sex": "doe", "breed": "Mini Rex", "color": "blue", "born": "2026-07-04"},)),
    Example(
        "new doe 40 mini rex opal born 3/4", ({"tag": "40", "sex": "doe", "breed": "Mini Rex", "color": "opal", "born": "2026-03-04"},)
    ),
    Example(
        "new buck 41 Anvil new zealand white born 2024-05-19",
        ({"tag": "41", "name": "Anvil", "sex": "buck", "breed": "New Zealand", "color": "white", "born": "2024-05-19"},),
    ),
    Example("new doe 42 Magpie, satin, black", ({"tag": "42", "name": "Magpie", "sex": "doe", "breed": "Satin", "color": "black"},)),
    Example("new buck sixty new zealand white", ({"tag": "60", "sex": "buck", "breed": "New Zealand", "color": "white"},)),
    Example(
        "New doe: tag 41, Clementine, New Zealand, white, born 3/14/26.",
        ({"tag": "41", "name": "Clementine", "sex": "doe", "breed": "New Zealand", "color": "white", "born": "2026-03-14"},),
    ),
    Example("nwe doe 41 nz white", ({"tag": "41", "sex": "doe", "breed": "New Zealand", "color": "white"},)),
    Example("new buck 48 breed Moonlace", ({"tag": "48", "sex": "buck", "breed": "Moonlace"},)),
    Example("new doe 47, breed: Bright Lace, born 3/1", ({"tag": "47", "sex": "doe", "breed": "Bright Lace", "born": "2026-03-01"},)),
    Example("add doe 42 californian", ({"tag": "42", "sex": "doe", "breed": "Californian"},)),
    Example(
        "new doe 43 Bramble. Satin. Born um june 4th",
        ({"tag": "43", "name": "Bramble", "sex": "doe", "breed": "Satin", "born": "2026-06-04"},),
    ),
    Example("15 is named Ivy", ({"tag": "15", "name": "Ivy"},)),
)
NOT_THIS: tuple[str, ...] = (
    "the fellow with the black truck bought 32 today",
    "new gate on the barn",
    "14 kindled 8",
    "sold 31 $55",
    "The girl next door has picked out a name for Clover's next baby",
    "The school class named every one of Thistle's babies",
)

OPENS: Final = ("new",)
CUES: Final = {
    "new": "new | bought a | bought | picked up a | got a | brought home | added | new animal | new rabbit | paid | picked up | purchased | got a new | traded for | adding | add",
    "came": "bought | purchased | paid | from the auction | at auction",
    "sire": "sire | by | sired by | dad | father",
    "dam_word": "dam | out of | ex | mother | mom",
    "born_word": "born | brn | b | dob | birthday | birthdate | birth date | bday | date of birth",
    "name_word": "named | name | called | call her | call him | calling her | calling him | naming her | naming him",
    "gift": "given | gift | free | gifted | gave us | gave me",
}  # fmt: skip

#: The answer for a birth day that nobody knows.
LEFT_OUT: Final = "leave it out"
SEX_SAID: Final = 5  # not a figure: items: `turns out R22 is a doe`


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"breed_name", "buck_word", "doe_word"})


def read(c: Clause) -> None:
    """A new animal with what is known of it, or a detail of one on the book (`R22 is a doe`, `rename`)."""
    new = c.first("new")
    row = _row_of_new(c) if new is not None or c.has("gift", "came") or c.says(GOT) else []
    if row:
        _new(c, row)
        return
    if new is None and not _newcomer(c):
        if not _parents_only(c):
            _detail(c)
        return
    if new is not None and _bought_off_us(c, new):
        return
    if c.has("feed", "bag", "cage_word", "remind") or not (
        c.has("buck_word", "doe_word", "breed_name")
        or any(breed_said(item) for item in c.items)
        or any(item.sort == "animal" and item.value.sex for item in c.items)
    ):
        return
    _new(c)


WORDS_OF_BREED: Final = 3  # not a figure: words: no breed's name has more
GOT: Final = frozenset({"got", "brought"})


def _row_of_new(c: Clause) -> list[int]:
    """`got two does from my aunt, 41 and 42`: tags that nobody has, in a row, as many as are told of, or behind `new does`."""
    if not c.has("doe_word", "buck_word", "does_word", "bucks_word") or c.has("feed", "bag", "cage_word", "falls", "dead", "kits"):
        return []
    unknown = [i for i in (*c.sorted_as("num"), *c.explicit()) if c.known(i) is None and not c.counted(i) and not _priced(c, i)]
    row = [i for i in sorted(unknown) if c.mention(i) is not None]
    listed = len(row) > 1 and all(all(item.said in {",", "and", "&"} for item in _behind_name(c, a, b)) for a, b in pairwise(row))
    told = [c.whole(i) for i in c.sorted_as("num") if c.counted(i)]
    return row if listed and (told == [len(row)] or c.said(row[0] - 1) in {"does", "bucks"}) else []


def _behind_name(c: Clause, tag: int, end: int) -> list[Item]:
    """What stands between a tag with its name, if it has one, and the next: `new does L2 poppy and L3 tulip`."""
    named = tag + 1 < end and name_behind(c, tag) is not None
    return c.items[tag + 1 + named : end]


def _priced(c: Clause, i: int) -> bool:
    """Whether the number is what was paid."""
    return c.said(i - 1) in {"paid", "for", "at", "@"} or (i + 1 < len(c.items) and "each" in c.items[i + 1].marks)


def _bought_off_us(c: Clause, cue: int) -> bool:
    """`the lady with the truck bought 32`: an animal on the book, bought by somebody else."""
    animal = c.known(cue + 1)
    first = c.opening() or 0
    told = first < cue and c.items[first].said not in {"i", "we", "just", "finally"} and c.said(cue - 1) not in {"i", "we"}
    return c.said(cue) == "bought" and animal is not None and animal.living and told


def _newcomer(c: Clause) -> bool:
    """`animal 40: born 5/2/2026, doe, Mini Rex`, `N4 red satin doe`: a tag that nobody has, with what a new animal is known by."""
    if described_newcomer(c) is not None:
        return True
    if not c.has("born_word"):
        return False
    opening = c.opening() or 0
    first = c.mention(opening) if c.items[opening].sort == "animal" else None
    if first is not None and not first.tags and first.sex and any(breed_said(item) for item in c.items):
        return True  # "doe 40, Mini Rex, born 5/2/2026"
    place = next(
        (
            i
            for i in range(1, len(c.items))
            if c.said(i - 1) in {"animal", "rabbit", "tag"} or (c.items[i].sort == "animal" and c.said(i).startswith(("animal", "rabbit")))
        ),
        0 if c.items[0].sort == "animal" and c.said(0).startswith(("animal", "rabbit")) else None,
    )
    mention = c.mention(place) if place is not None else None
    return mention is not None and not mention.tags and (c.has("doe_word", "buck_word") or any(breed_said(item) for item in c.items))


def _new(c: Clause, row: Sequence[int] = ()) -> None:
    parents, used = parents_told(c)
    c.used.update(id(item) for item in used)
    born, born_items = birth_told(c)
    price, price_items = price_paid(c)
    c.used.update(id(item) for item in (*born_items, *price_items))
    place = row[0] if row else tag_place(c)
    sex = sex_told(c, place)
    name, name_items = name_told(c, place) if not row else (None, [])
    values: dict[str, object] = {
        **parents,
        "sex": sex,
        "born": born.on if born else None,
        "price": Cents(price) if price is not None else None,
        "name": name,
    }
    values["breed"] = next((breed for item in c.items if (breed := breed_said(item))), None) or _breed_as_typed(c)
    values["color"] = next(
        (
            color
            for item in c.items
            if item not in name_items and (color := color_said(item)) and color.lower() != str(values["breed"]).lower()
        ),
        None,
    )
    values["origin"] = "given" if c.has("gift") else ("bought" if price is not None or c.has("came") else None)
    used += [*born_items, *price_items, *name_items, *(item for item in c.items if item.sort == "word")]
    used += [c.items[i] for i in c.sorted_as("num") if c.whole(i) == len(row) and c.counted(i)]
    need = _no_birth_day(c, born)
    if price is not None and len(row) > 1 and not c.has("each"):
        need = first_need(
            need, Need("which_number", "", "Is the price for each of them, or for all together? Please send each as its own note.")
        )
    for found in _founds(c, row or [place], values, used, need):
        c.take(found)


def _breed_as_typed(c: Clause) -> str | None:
    """`new doe 40 breed Moonlace`: one that the handbook does not know, as the person spells it."""
    place = next((i + 1 for i in range(1, len(c.items)) if c.said(i) == "breed"), len(c.items))
    place += c.said(place) in {":", "is"}
    words = list(
        takewhile(lambda item: item.sort == "word" and not item.marks and item.said.isalpha(), c.items[place : place + WORDS_OF_BREED])
    )
    return as_typed(Clause(words, c.scene), cleaned(c.scene.text)) if words else None


def _founds(c: Clause, places: Sequence[int | None], values: dict[str, object], used: list[Item], need: Need | None) -> list[Found]:
    """One reading a tag; without one it is asked for."""
    days, items, said = c.days("past")
    if items:
        values = {**values, "on": days.on}
        need = first_need(need, when(said)) if days.on is None or days.on > c.today else need
        used = [*used, *items]
    founds = []
    for place in places:
        if place is None:
            unknown = first_need(need, Need("which_animal", "tag", "What tag does the new one have?"))
            founds.append(Found(AnimalNoted, {**values, "tag": None}, used, unknown))
        else:
            mention = c.mention(place) or Mention((), "")
            told = {**values, "tag": mention.tag or mention.said.upper()}
            if len(places) > 1 and (name := name_behind(c, place)) is not None:
                told["name"] = name.said.title()
            founds.append(Found(AnimalNoted, told, [*used, *c.pick(place).items], need))
    return founds


def _parents_only(c: Clause) -> bool:
    """`C4 out of C2 and C1`, `33's sire is 3`, `33 sire 3 dam 14`: an animal, its parents, and nothing else."""
    if not c.has("sire", "dam_word"):
        return False
    parents, used = parents_told(c)
    child = c.opening()
    if not parents or child is None or c.mention(child) is None or c.items[child] in used or c.taken(child):
        return False
    rest = [item for item in c.items if item not in used and item is not c.items[child] and item.sort not in {"mark", "break"}]
    if any(item.said not in BETWEEN_PARENTS for item in rest) or c.counted(child):
        return False
    pick = c.pick(child)
    need = None if pick.tag is not None else unknown_animal(pick.mention, "tag", c.scene.words)
    c.take(Found(AnimalNoted, {"tag": pick.tag, **parents}, [*pick.items, *used, *rest], need, pick.mention))
    return True


#: What may stand between an animal and its parents.
BETWEEN_PARENTS: Final = frozenset({"is", "was", "and", "the", "'s", "s", "is the", "comes", "came"})


def _detail(c: Clause) -> None:
    """`R22 is a doe`, `15 is named Ivy`, `33 born 7/19`."""
    if not c.has("name_word", "born_word", "doe_word", "buck_word", "breed_name"):
        return
    places = c.explicit() or [i for i in c.sorted_as("num") if c.known(i) and (i == c.opening() or c.said(i - 1) == "animal")]
    if len(places) != 1 or c.found:
        return
    place = places[0]
    if _only_looks(c, place):
        return
    name, name_items = name_told(c, place)
    born, born_items = birth_told(c) if c.has("born_word") and c.dates() and not c.has("kits", "alive") else (None, [])
    sex = None
    sexed = c.first("doe_word", "buck_word")
    if (
        sexed is not None
        and sexed == _without_denied(c) - 1
        and c.said(sexed - 1) in {"a", "is", "is a", "actually a"}
        and sexed <= SEX_SAID
    ):
        sex = "doe" if "doe_word" in c.items[sexed].marks else "buck"
    if not (name or born or sex):
        return
    pick = c.pick(place)
    if pick.tag is None:
        return
    values = {"tag": pick.tag, "name": name, "sex": sex, "born": born.on if born else None}
    used = [*pick.items, *name_items, *born_items, *([c.items[sexed]] if sexed is not None else [])]
    c.take(Found(AnimalNoted, values, used, _no_birth_day(c, born)))


def _without_denied(c: Clause) -> int:
    """How many items there are before `not a buck` at the end, which only says the same again."""
    end = len(c.items)
    if end > SEX_SAID // 2 and c.items[-1].marks & {"doe_word", "buck_word"} and c.said(end - 2) in {"a", "the", "not"}:
        end -= 2 if c.said(end - 2) == "not" else 3
        return end if c.said(end) == "not" else len(c.items)
    return end


def _no_birth_day(c: Clause, born: Days | None) -> Need | None:
    """The question about a birth day that can't be; where its month is told, with the first of the month to choose."""
    if born is None or (born.on is not None and born.on <= c.today):
        return None
    told = next((item.value for item in c.items if item.sort == "date" and item.value.shape == "month"), None)
    first = c.resolved(told, "born").on if told is not None and born.on is None else None
    if first is None or first > c.today:
        return Need("when", "born", "When was it born? I can't make a day of it that fits. For example: 4 march 2025.", (LEFT_OUT,))
    day = f"{first.day} {first:%B %Y}"
    return Need("when", "born", f"Which day was it born? Say yes for {day}, send another day, or leave it out.", (day, LEFT_OUT))


def _only_looks(c: Clause, place: int) -> bool:
    """`R21 NZW white`: an animal, its breed and its colour, and no other word."""
    told = [item for i, item in enumerate(c.items) if i != place and item.sort not in {"mark", "break"}]
    breed = next((breed for item in told if (breed := breed_said(item))), None)
    pick = c.pick(place)
    if breed is None or pick.tag is None or any(not item.marks & {"breed_name", "color"} for item in told):
        return False
    colors = [color for item in told if "breed_name" not in item.marks and (color := color_said(item))]
    if len(colors) > 1:
        return False
    colors += [color for item in told if (color := color_said(item))]  # `NZW` says both
    values = {"tag": pick.tag, "breed": breed, "color": next(iter(colors), None)}
    c.take(Found(AnimalNoted, values, [*pick.items, *told]))
    return True


_CONTRADICT = ("sex", "breed", "color", "born")


def check(fact: AnimalNoted, herd: Herd, today: date) -> Problem | None:
    """Dates and parents must be possible; what contradicts the animal of that tag is confirmed."""
    known = herd.find(fact.tag)
    return worst(
        _young_ones_name(fact.name) if fact.name else None,
        not_yet(fact.born, today) if fact.born else None,
        not_yet(fact.on, today) if fact.on else None,
        *(_parent_problem(fact, herd, tag, sex) for tag, sex in ((fact.sire, "buck"), (fact.dam, "doe")) if tag is not None),
        _contradiction(fact, herd, known) if known is not None and known.living else None,
    )


#: Words for any young one: with an animal called so, "14 lost a bunny" would be about two animals.
_YOUNG: Final = frozenset({"kit", "bunny", "baby", "kid", "pup"})


def _young_ones_name(name: str) -> Problem | None:
    """A name by which no note could tell the animal from any kit."""
    if name.lower() not in _YOUNG:
        return None
    text = f"I take “{name.lower()}” for any young one, so I couldn't tell when you mean this animal."
    return Problem("what", text, (), "Send it again with another name, or with the tag alone.")


def _parent_problem(fact: AnimalNoted, herd: Herd, tag: str, sex: str) -> Problem | None:
    """A parent of the wrong sex, or born after its child; one not on the book is from elsewhere."""
    parent = herd.find(tag)
    if parent is None:
        return None
    return worst(wrong_sex(parent, sex), not_born(parent, fact.born) if fact.born else None)


def _contradiction(fact: AnimalNoted, herd: Herd, known: Animal) -> Problem | None:
    changes = [(name, getattr(known, name), getattr(fact, name)) for name in _CONTRADICT]
    changes += [(name, _tag(herd, getattr(known, name)), getattr(fact, name)) for name in ("sire", "dam")]
    told = [f"{name} {old}, not {new}" for name, old, new in changes if None not in {old, new} and not _same(name, old, new)]
    if not told:
        return None
    text = f"{known.tag} is on the book with {words.listed(told)}. Change it?"
    return Problem("confirm", text, ("yes", "no"), "Answer yes to change it. If it is another animal, give it a tag of its own.")


def _same(name: str, old: object, new: object) -> bool:
    if name == "breed":
        return breed_name(str(old)) == breed_name(str(new))
    return same_tag(str(old), str(new)) if name in {"sire", "dam"} else str(old).lower() == str(new).lower()


def _tag(herd: Herd, key: str | None) -> str | None:
    animal = herd.animals.get(key or "")
    return animal.tag if animal else key


def apply(fact: AnimalNoted, herd: Herd) -> Herd:
    """A new animal, or details of a living one; a kit of a recorded litter joins it, unknown parents become ancestors."""
    herd, sire = ancestor(herd, fact.sire, "buck") if fact.sire else (herd, None)
    herd, dam = ancestor(herd, fact.dam, "doe") if fact.dam else (herd, None)
    known = herd.find(fact.tag)
    told = {name: getattr(fact, name) for name in ("name", "sex", "breed", "color", "born", "origin", "price")} | {"sire": sire, "dam": dam}
    told = {name: value for name, value in told.items() if value is not None}
    if known is None or not (known.living or _comes_home(known, fact)):
        animal = Animal(key=herd.free_key(fact.tag), tag=fact.tag, came_on=fact.on or herd.day, **told)
    else:
        here = {} if known.living else {"origin": fact.origin, "came_on": fact.on or herd.day}
        animal = replace(known, **(here | told | ({"came_on": fact.on} if fact.on else {})))
    return joined(herd, animal)


def _comes_home(known: Animal, fact: AnimalNoted) -> bool:
    """An ancestor from elsewhere that is now bought: the same animal, unless its sex says otherwise."""
    return known.origin == "outside" and known.gone is None and fact.sex in {None, known.sex}


def reply(fact: AnimalNoted, before: Herd, after: Herd) -> tuple[str, ...]:
    """The animal as it now stands on the book."""
    animal = after.find(fact.tag)
    if animal is None:
        return (f"Noted {fact.tag}.",)
    old = before.find(fact.tag)
    how = "changed" if old is not None and old.living else "on the book"
    parents = parts(fact.sire and f"sire {fact.sire}", fact.dam and f"dam {fact.dam}")
    born = f"born {words.full_day(animal.born)}{_by_its_age(fact, after)}" if animal.born else None
    price = f"paid {money(after, animal.price)}" if animal.price is not None else None
    told = parts(animal.name, animal.breed, animal.color, born, parents, animal.origin and animal.origin.replace("_", " "), price)
    litter = after.litters.get(animal.litter or "")
    of = (f"One of {by_key(after, litter.dam)}'s litter of {words.full_day(litter.born_on)}.",) if litter else ()
    new_ones = [tag for tag in (fact.sire, fact.dam) if tag and before.find(tag) is None]
    which = "wasn't on the book: kept as an ancestor" if len(new_ones) == 1 else "weren't on the book: kept as ancestors"
    outside = (f"{words.listed(new_ones)} {which} from elsewhere.",) if new_ones else ()
    return (words.sentence(f"{called(after, fact.tag)} {how}" + (f": {told}" if told else "")), *of, *outside, *_no_standard(fact, before))


def _by_its_age(fact: AnimalNoted, herd: Herd) -> str:
    """Beside a birth day just so many months ago, which may have been counted back from an age."""
    if fact.born is None or herd.day is None or fact.born.day != herd.day.day or fact.born >= herd.day:
        return ""
    months = (herd.day.year - fact.born.year) * 12 + herd.day.month - fact.born.month  # not a figure: months in a year
    years, rest = divmod(months, 12)  # not a figure: months in a year
    age = words.count(months, "month") if rest else words.count(years, "year")
    return f" ({age} ago to the day; about, if told by its age)"


def _no_standard(fact: AnimalNoted, before: Herd) -> tuple[str, ...]:
    """What a grow-out of a breed that the handbook does not know is held to: told with the first animal of it."""
    if fact.breed is None or breed(fact.breed) is not None or breed_on_book(before, fact.breed.lower()) is not None:
        return ()
    held_to = grams(before, target_weight(before.settings, fact.breed))
    say = f"\u201ctarget weight for {fact.breed.lower()} ...\u201d"
    return (f"I know no standard for that breed: its grow-outs are held to {held_to} at sixteen weeks. {say} changes that.",)


WRITTEN = (
    (
        "new (?:rabbit|(?P<sex>buck|doe)) {tag:TAG}(?:, name {name:TEXT})?(?:, breed {breed:BREED})?(?:, color {color:COLOR})?"
        "(?:, born {born:DAY})?(?:, sire {sire:TAG})?(?:, dam {dam:TAG})?(?:, {origin:ORIGIN})?(?:, price {price:MONEY})?(?:, on {on:DAY})?"
    ),
)


def show(fact: AnimalNoted, _herd: Herd) -> str:
    """`new doe 40, name "Clover", breed Mini Rex, color opal, born 2026-03-04, sire 3, dam 14, bought, price 50.00, on 2026-11-25`."""
    return parts(
        f"new {fact.sex or 'rabbit'} {fact.tag}",
        told("name ", quoted(fact.name)),
        told("breed ", breed_written(fact.breed)),
        told("color ", color_written(fact.color)),
        told("born ", fact.born),
        told("sire ", fact.sire),
        told("dam ", fact.dam),
        fact.origin and fact.origin.replace("_", " "),
        told("price ", None if fact.price is None else words.money(fact.price)),
        told("on ", fact.on),
    )


KIND = Kind(fact=AnimalNoted, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
