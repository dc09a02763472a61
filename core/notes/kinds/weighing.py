"""One rabbit on the scale."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core import words
from core.handbook import breeds, growth, stages
from core.herd.calendar import weigh_chores
from core.herd.changes import weighed
from core.herd.questions import age_days, ever_mated
from core.herd.settings import target_weight
from core.herd.state import Animal, Herd
from core.herd.weights import gain_since, last_weight, odd_weight
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import called, change, dated, grams, noted
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """One rabbit on the scale."""

    kind: ClassVar[str] = "weighed"

    who: Tag
    grams: int
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


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


def show(fact: Weighed, _herd: Herd) -> str:
    """`2026-11-25: 31 weighed 1984 g`: to the gram, whatever the farm's unit."""
    return noted(fact.on, f"{fact.who} weighed {fact.grams} g")


KIND = Kind(fact=Weighed, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, chores=weigh_chores, reply=reply, show=show)
