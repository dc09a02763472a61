"""The feed: what the herd eats a day and by spring, who eats most, and what is left in the bin."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Any

from core.herd.settings import feed_bag, spring
from core.herd.state import Animal, Herd
from core.reply import Reply
from core.reports.digest import FeedLeft, feed_left
from core.reports.evidence import Evidence, evidence
from core.reports.feeding import cents_a_gram
from core.reports.flags import heavy_feeder
from core.reports.holding import held, held_lines, unheld_lines
from core.reports.wording import called, grams, price, short, when
from core.words import count

GROUPS = ("buck", "doe", "grow-out")


@dataclass(frozen=True, slots=True)
class Feed:
    """What is eaten, a day and until spring."""

    barn: Evidence
    left: FeedLeft

    @property
    def spring(self) -> date:
        """Until when it is counted."""
        return spring(self.barn.herd.settings, self.barn.today)

    @property
    def until_spring(self) -> float:
        """What the herd eats until spring [g]."""
        days = max((self.spring - self.barn.today).days, 0)
        return sum(one.over(days) for one in self.barn.eaters.values())

    def groups(self) -> dict[str, float]:
        """What bucks, does and grow-outs eat a day [g]."""
        told = dict.fromkeys(GROUPS, 0.0)
        for key, eater in self.barn.eaters.items():
            animal = self.barn.herd.animals.get(key)
            grown = animal is not None and self.barn.stages[key] != "grow-out"
            told[(animal.sex or "doe") if animal and grown else "grow-out"] += eater.grams()
        return told

    def reply(self) -> Reply:
        """The feed in a few lines."""
        settings, today = self.barn.herd.settings, self.barn.today
        lines = [self._bin(), f"The herd eats about {grams(settings, self.barn.feed_a_day)} a day."]
        told = [f"{count(2, name)[2:]} {grams(settings, eaten)}" for name, eaten in self.groups().items() if eaten]
        lines += [f"A day: {', '.join(told)}."] if told else []
        cost, priced = cents_a_gram(self.barn.herd)
        about = "" if priced else " at a common price; tell me yours: feed is 22 a bag"
        bags = self.until_spring / feed_bag(settings)
        need = f"{grams(settings, self.until_spring)}, {bags:.0f} bags, {price(settings, self.until_spring * cost)}{about}"
        lines.append(f"Until {when(self.spring, today)}, if nobody leaves: {need}.")
        greedy = [(one, heavy_feeder(self.barn, one)) for one in self.barn.living]
        lines += [f"{called(one)}: {found.text}" for one, found in greedy if found]
        fared = [(one, held(self.barn.herd, one, today)) for one in self.barn.living]
        lines += [f"{called(one)}: {' '.join(held_lines(self.barn.herd, found))}" for one, found in fared if found and found.frugal]
        return Reply(tuple(lines))

    def _bin(self) -> str:
        settings, left = self.barn.herd.settings, self.left
        if left.grams is None:
            return "I don't know what is in the bin. Tell me: 120 lb feed left"
        return f"About {grams(settings, left.grams)} left: {left.lasts}."

    def document(self) -> dict[str, Any]:
        """The feed as numbers."""
        return self.left.document() | {
            "spring": self.spring.isoformat(),
            "grams_until_spring": self.until_spring,
            "groups": self.groups(),
        }


def feed(herd: Herd, today: date) -> Feed:
    """The feed of the herd."""
    barn = evidence(herd, today)
    return Feed(barn, feed_left(barn))


def feed_of(herd: Herd, today: date, animal: Animal) -> Reply:
    """What one animal eats."""
    eater = evidence(herd, today).eaters.get(animal.key)
    if eater is None:
        return Reply((f"{called(animal)} has no dish of its own.",))
    settings = herd.settings
    told = "as you feed it" if eater.told is not None else "as the handbook expects"
    need = f"; {grams(settings, eater.need())} would be expected" if eater.told is not None else ""
    days = max((spring(settings, today) - today).days, 0)
    until = f"until spring {grams(settings, eater.over(days))}"
    first = f"{short(animal)} eats about {grams(settings, eater.grams())} a day, {told}{need}; {until}."
    found = held(herd, animal, today)
    return Reply((first, *(held_lines(herd, found) if found else unheld_lines(herd, animal, today))))
