"""Checks that many kinds share: the day can't be, the animal can't be, there are fewer kits than that."""

from __future__ import annotations

from datetime import date

from core import words
from core.handbook import reproduction
from core.herd.litters import alive_now, nursed_litter, the_litter, untagged
from core.herd.state import Animal, Herd, Litter
from core.problem import Problem, first

LEFT = {"died": "died", "sold": "was sold", "culled": "was butchered", "given_away": "was given away"}
#: How the note of it is named when it is taken back.
UNDONE = {"died": "death", "sold": "sale", "culled": "butchering", "given_away": "gift"}


def worst(*found: Problem | None) -> Problem | None:
    """The problem to ask about; None where nothing was found."""
    problems = [problem for problem in found if problem is not None]
    return first(tuple(problems)) if problems else None


def not_yet(on: date, today: date) -> Problem | None:
    """What happened can't lie in the future."""
    if on <= today:
        return None
    return Problem("when", f"{words.full_day(on)} is still to come. When was it?", (), 'Send the day, for example "yesterday" or "11/20".')


def already_past(on: date | None, today: date) -> Problem | None:
    """A plan can't lie in the past."""
    if on is None or on >= today:
        return None
    text = f"{words.full_day(on)} is over. For which day is it meant?"
    return Problem("when", text, (), 'Send the day, for example "friday" or "12/20".')


def animal_problem(herd: Herd, tag: str, on: date, sex: str | None = None) -> Problem | None:
    """What is wrong with the animal of a note: unknown, of the wrong sex, gone by then, or not born yet."""
    animal = herd.find(tag)
    if animal is None:
        remedy = f'Send the note with the right tag, or first add it: "new {sex or "doe"} {tag} mini rex".'
        return Problem("which_animal", f"There is no {sex or 'animal'} {tag} on the book. Which one is it?", (), remedy)
    return worst(wrong_sex(animal, sex), was_gone(animal, on), not_born(animal, on))


def nest_problem(herd: Herd, tag: str, on: date) -> Problem | None:
    """The same for a note about a doe's kits: they may outlive her, or stay when she leaves."""
    doe = herd.find(tag)
    orphaned = doe is not None and doe.gone is not None and nursed_litter(herd, doe.key, on) is not None
    return None if orphaned else animal_problem(herd, tag, on, "doe")


def wrong_sex(animal: Animal, sex: str | None) -> Problem | None:
    """A buck where a doe is needed, or the other way round."""
    if sex is None or animal.sex in {None, sex}:
        return None
    remedy = f'Send the note with the right tag. If {animal.tag} is a {sex}: "{animal.tag} is a {sex}".'
    return Problem("wrong_sex", f"{animal.tag} is a {animal.sex} on the book. Which {sex} is it?", (), remedy)


def was_gone(animal: Animal, on: date) -> Problem | None:
    """An animal that had left by that day."""
    if animal.gone is None or on < animal.gone.on:
        return None
    text = f"{animal.tag} {LEFT.get(animal.gone.how, 'left')} {words.full_day(animal.gone.on)}. Is it another animal?"
    remedy = f'Send the note with the right tag. If {animal.tag} is still here: "undo the {UNDONE[animal.gone.how]} of {animal.tag}".'
    return Problem("impossible", text, (), remedy)


def not_born(animal: Animal, on: date) -> Problem | None:
    """A day before the animal's birth."""
    if animal.born is None or on >= animal.born:
        return None
    text = f"{animal.tag} was born {words.full_day(animal.born)}, after {words.full_day(on)}. Which is wrong?"
    return Problem("impossible", text, (), f'Send the note with the right day, or the birth: "{animal.tag} born 3/4".')


def kits_then(herd: Herd, litter: Litter | None, on: date) -> int:
    """Kits that the book knows of the litter on that day: in the nest, or once weaned those with no tag."""
    if litter is None:
        return 0
    if litter.weaned_on is None or litter.weaned_on > on:
        return alive_now(litter, on)
    return untagged(herd, litter)


def too_many(herd: Herd, litter: Litter | None, doe: str, count: int, on: date, done: str) -> Problem | None:
    """More kits lost, weaned, sold and so on than are alive."""
    known = kits_then(herd, litter, on)
    if count <= known:
        return None
    if litter is None:
        remedy = f'First note the kindling: "{doe} kindled 6 on 3/4".'
        return Problem("impossible", f"Doe {doe} has no litter on the book, so {count} can't be {done}.", (), remedy)
    right = f"{doe} has {words.count(count, 'kit')}"
    believable = count <= reproduction.LARGEST_LITTER.value
    remedy = f'Send the right number, or first put the count right: "{right}".' if believable else "Send the right number."
    return Problem("impossible", f"Doe {doe} has {words.count(known, 'kit')} on the book, so {count} can't be {done}.", (), remedy)


def leaver_problem(herd: Herd, who: str | None, litter_of: str | None, count: int | None, on: date, done: str) -> Problem | None:
    """The checks of a note that takes an animal, or untagged kits of a doe, off the farm (or offers them)."""
    if who is not None:
        return animal_problem(herd, who, on)
    if litter_of is None:
        return Problem("which_animal", f"Which one was {done}?", (), "Send the note again with its tag.")
    doe = herd.find(litter_of)
    if doe is None or doe.sex == "buck":
        return animal_problem(herd, litter_of, on, "doe")
    if count is None:
        return Problem("how_many", f"How many kits of doe {litter_of} were {done}?", (), "Send the number.")
    return too_many(herd, the_litter(herd, doe.key, on), litter_of, count, on, done)
