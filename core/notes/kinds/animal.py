"""Animal note: an animal comes on the book, or its details are completed."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar

from core import words
from core.herd.changes import ancestor, joined
from core.herd.questions import same_tag
from core.herd.settings import breed_name
from core.herd.state import Animal, Herd
from core.notes.checking import not_born, not_yet, worst, wrong_sex
from core.notes.fact import Cents, Sex, Tag
from core.notes.kind import Example, Kind
from core.notes.telling import by_key, called, parts, told
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


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


_CONTRADICT = ("sex", "breed", "color", "born")


def check(fact: AnimalNoted, herd: Herd, today: date) -> Problem | None:
    """Dates and parents must be possible; what contradicts the animal of that tag is confirmed."""
    known = herd.find(fact.tag)
    return worst(
        not_yet(fact.born, today) if fact.born else None,
        not_yet(fact.on, today) if fact.on else None,
        *(_parent_problem(fact, herd, tag, sex) for tag, sex in ((fact.sire, "buck"), (fact.dam, "doe")) if tag is not None),
        _contradiction(fact, herd, known) if known is not None and known.living else None,
    )


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
    born = f"born {words.full_day(animal.born)}" if animal.born else None
    price = f"paid {words.money(animal.price)}" if animal.price is not None else None
    told = parts(animal.name, animal.breed, animal.color, born, parents, animal.origin and animal.origin.replace("_", " "), price)
    litter = after.litters.get(animal.litter or "")
    of = (f"One of {by_key(after, litter.dam)}'s litter of {words.full_day(litter.born_on)}.",) if litter else ()
    new_ones = [tag for tag in (fact.sire, fact.dam) if tag and before.find(tag) is None]
    outside = (f"{words.listed(new_ones)} wasn't on the book: kept as an ancestor from elsewhere.",) if new_ones else ()
    return (words.sentence(f"{called(after, fact.tag)} {how}" + (f": {told}" if told else "")), *of, *outside)


def show(fact: AnimalNoted, _herd: Herd) -> str:
    """`new doe 40, name Clover, breed Mini Rex, color opal, born 2026-03-04, sire 3, dam 14, bought, price 50.00, on 2026-11-25`."""
    return parts(
        f"new {fact.sex or 'rabbit'} {fact.tag}",
        told("name ", fact.name),
        told("breed ", fact.breed),
        told("color ", fact.color),
        told("born ", fact.born),
        told("sire ", fact.sire),
        told("dam ", fact.dam),
        fact.origin and fact.origin.replace("_", " "),
        told("price ", None if fact.price is None else words.money(fact.price)),
        told("on ", fact.on),
    )


KIND = Kind(fact=AnimalNoted, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
