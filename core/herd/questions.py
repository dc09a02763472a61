"""Questions that the herd book answers about animals: who lives, how old, at which stage, out of whom, safe to eat or not."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta

from core.handbook import reproduction, stages
from core.herd.litters import litters_of, litters_sired
from core.herd.matings import last_mating
from core.herd.settings import breed_name, junior_age
from core.herd.state import Animal, Event, Herd, folded

STAGES = ("kit", "grow-out", "junior", "senior")


def living(
    herd: Herd, *, stage_is: str | None = None, sex: str | None = None, breed: str | None = None, today: date | None = None
) -> tuple[Animal, ...]:
    """The animals on the farm, by tag; asked for a stage, `today` must be told."""
    found = [
        animal
        for animal in herd.animals.values()
        if animal.living
        and (sex is None or animal.sex == sex)
        and (breed is None or (animal.breed is not None and breed_name(animal.breed) == breed_name(breed)))
        and (stage_is is None or (today is not None and stage(herd, animal, today) == stage_is))
    ]
    return tuple(sorted(found, key=lambda animal: _by_number(animal.tag)))


def breed_on_book(herd: Herd, text: str) -> str | None:
    """The breed of some animal of the herd that the text, in lower case, names; None where it names none."""
    return next((one.breed for one in herd.animals.values() if one.breed and f" {one.breed.lower()} " in f" {text} "), None)


def _by_number(tag: str) -> tuple[str, int, str]:
    """Tags in the order a breeder reads them: 9 before 14, R9 before R21."""
    letters = tag.rstrip("0123456789")
    return letters, int(tag[len(letters) :] or 0), tag


def age_days(animal: Animal, today: date) -> int | None:
    """Age in days; None where the birth date is not known."""
    return (today - animal.born).days if animal.born else None


def weaned_day(herd: Herd, animal: Animal) -> date | None:
    """When the animal was weaned, as its own note or its litter's says."""
    litter = herd.litters.get(animal.litter or "")
    return animal.weaned_on or (litter.weaned_on if litter else None)


def stage(herd: Herd, animal: Animal, today: date) -> str:
    """`kit`, `grow-out`, `junior` or `senior` on that day. One that came without a birth date counts as grown."""
    age = age_days(animal, today)
    if age is None or age >= stages.SENIOR_FROM_DAYS.whole or senior_since(herd, animal, today):
        return STAGES[3]
    if age >= junior_age(herd.settings):
        return STAGES[2]
    return STAGES[1] if _is_weaned(herd, animal, age, today) else STAGES[0]


def _is_weaned(herd: Herd, animal: Animal, age: int, today: date) -> bool:
    """Weaned on the book; with its litter on the book still unweaned, past the age at which anybody weans."""
    day = weaned_day(herd, animal)
    if day is not None:
        return day <= today
    nursing = animal.litter in herd.litters
    return age >= (reproduction.WEAN_DAY.high if nursing else reproduction.WEAN_DAY.value)


def senior_since(herd: Herd, animal: Animal, today: date) -> date | None:
    """The day it became a senior: first kindling, first litter sired, or by age; None while it is none."""
    births = [litter.born_on for litter in (*litters_of(herd, animal.key), *litters_sired(herd, animal.key))]
    by_age = [animal.born + timedelta(stages.SENIOR_FROM_DAYS.whole)] if animal.born else []
    return min((day for day in (*births, *by_age) if day <= today), default=None)


def ever_mated(herd: Herd, animal: Animal) -> bool:
    """Whether it was ever put to another."""
    return last_mating(herd, animal.key) is not None


def pedigree(herd: Herd) -> Mapping[str, tuple[str | None, str | None]]:
    """Sire and dam (keys) of every animal on the book, living, gone or from elsewhere."""
    return {animal.key: (animal.sire, animal.dam) for animal in herd.animals.values()}


def events(animal: Animal, what: str) -> tuple[Event, ...]:
    """What was seen of it of one kind, by day."""
    return tuple(sorted((event for event in animal.events if event.what == what), key=lambda event: event.on))


def in_withdrawal(animal: Animal, today: date) -> date | None:
    """The last day on which it must not be eaten, by the days that the farm noted; None where none is running."""
    ends = [
        days_later(event.on, event.detail["withdrawal_days"])
        for event in animal.events
        if event.what == "treated" and event.detail.get("withdrawal_days") is not None and event.on <= today
    ]
    return max((end for end in ends if end >= today), default=None)


def days_later(day: date, days: int) -> date:
    """The day so many days later; the last one there is, if somebody wrote a number beyond the calendar."""
    return day + timedelta(min(days, (date.max - day).days))


def withdrawal_untold(animal: Animal, today: date) -> Event | None:
    """The last treatment for which nobody gave a withdrawal time."""
    untold = [event for event in events(animal, "treated") if event.detail.get("withdrawal_days") is None and event.on <= today]
    return untold[-1] if untold else None


def leaving(animal: Animal) -> str | None:
    """What is meant to end its stay: `cull`, `sell`, `replace` or `retire`, where the last word on it was not to keep it."""
    said = [plan.what for plan in animal.intentions if plan.what in {"cull", "sell", "replace", "retire", "keep"}]
    return said[-1] if said and said[-1] != "keep" else None


def fitting(herd: Herd, said: str) -> tuple[Animal, ...]:
    """The animals that a tag, a name or a description ("opal doe") fits: the living one of that tag, else by name, else as described."""
    of_tag = herd.find(said)
    if of_tag is not None:
        return (of_tag,)
    named = [animal for animal in herd.animals.values() if animal.name and animal.name.lower() == said.strip().lower()]
    living_ones = tuple(animal for animal in named if animal.living)
    return living_ones or tuple(named) or _described(herd, said)


def _described(herd: Herd, said: str) -> tuple[Animal, ...]:
    """Living animals of which every word is true."""
    words = said.lower().removeprefix("the ").split()
    return tuple(animal for animal in living(herd) if words and all(word in _words_for(animal) for word in words))


def _words_for(animal: Animal) -> set[str]:
    said = " ".join(part for part in (animal.sex, animal.color, animal.breed) if part)
    return set(said.lower().split())


def same_tag(one: str, other: str) -> bool:
    """Whether two tags are the same, however they are typed."""
    return folded(one) == folded(other)
