"""The feed: what the herd eats a day and by spring, with and without those advised to go, who eats most, and what is left in the bin."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from math import ceil
from typing import Any

from core.herd.state import Animal, Herd
from core.reply import Reply
from core.reports.digest import FeedLeft, feed_left
from core.reports.evidence import Evidence, evidence
from core.reports.flags import heavy_feeder
from core.reports.holding import held, held_lines, unheld_lines
from core.reports.keep_or_cull import keep_or_cull
from core.reports.winter.eating import WinterFeed, series, today_by_group, until_spring_g, winter_feed
from core.reports.wording import called, grams, price, short, when
from core.words import count

#: How many does that get too little for their kits are told.
HUNGRY_TOLD = 3  # not a figure: what fits on a phone


@dataclass(frozen=True)
class Feed:
    """What is eaten, a day and until spring."""

    barn: Evidence
    left: FeedLeft

    @property
    def spring(self) -> date:
        """Until when it is counted."""
        return self.all.spring

    @cached_property
    def all(self) -> WinterFeed:
        """The feed until spring if nobody leaves."""
        return winter_feed(self.barn, {})

    @cached_property
    def leaving(self) -> Mapping[str, date]:
        """Those who are advised to go, each with the day that the plan gives it."""
        told = keep_or_cull(self.barn.herd, self.barn.today)
        return {one.key: one.leaves(self.barn.today) for one in told.verdicts if one.going}

    @cached_property
    def planned(self) -> WinterFeed:
        """The feed until spring if they go."""
        return winter_feed(self.barn, self.leaving)

    def series(self) -> dict[str, list[Any]]:
        """The winter as a chart takes it: each day's mouths and grams, with everybody and with the plan."""
        return series(self.barn, self.leaving)

    def groups(self) -> dict[str, float]:
        """What bucks, does and grow-outs eat today [g]."""
        return today_by_group(self.barn)

    def reply(self) -> Reply:
        """The feed in a few lines."""
        settings, today = self.barn.herd.settings, self.barn.today
        told = [f"{count(2, name)[2:]} {grams(settings, eaten)}" for name, eaten in self.groups().items() if eaten]
        by_group = f": {', '.join(told)}" if told else ""
        lines = [self._bin(), f"The herd eats about {grams(settings, self.left.a_day)} a day{by_group}."]
        lines.append(f"Until {when(self.spring, today)}, if nobody leaves: {self._need(self.all)}.")
        lines += [*self._plan(), *self._counted(), *self._hungry()]
        greedy = [(one, heavy_feeder(self.barn, one)) for one in self.barn.living]
        lines += [f"{called(one)}: {found.text}" for one, found in greedy if found]
        fared = [(one, held(self.barn.herd, one, today)) for one in self.barn.living]
        lines += [f"{called(one)}: {' '.join(held_lines(self.barn.herd, found))}" for one, found in fared if found and found.frugal]
        return Reply(tuple(lines))

    def _bin(self) -> str:
        settings, left = self.barn.herd.settings, self.left
        if left.grams is None:
            return "I don't know what is in the bin. Tell me: 120 lb feed left"
        out = self.all.runs_out
        until = f", empty on {when(out, self.barn.today)}" if out and left.days else ""
        return f"About {grams(settings, left.grams)} left: {left.lasts}{until}."

    def _need(self, fed: WinterFeed) -> str:
        """So much feed in the farm's weights, bags and money."""
        settings = self.barn.herd.settings
        about = "" if fed.priced else " at a common price; tell me yours: feed is 22 a bag"
        return f"{grams(settings, fed.total_g)}, {bags(fed)}, {price(settings, fed.cents)}{about}"

    def _plan(self) -> list[str]:
        """What it saves if those go who are advised to; and how long the bin lasts then."""
        saved = self.all.total_g - self.planned.total_g
        if saved <= 0:
            return []
        settings, out = self.barn.herd.settings, self.planned.runs_out
        worth = price(settings, self.all.cents - self.planned.cents)
        last = f" The bin is then empty on {when(out, self.barn.today)}." if out and out != self.all.runs_out else ""
        fewer = f"{bags(self.planned)} instead of {ceil(self.all.bags)}"
        return [f"Without those I would let go: {fewer}; that saves {grams(settings, saved)}, {worth}.{last}"]

    def _counted(self) -> list[str]:
        """What of the winter is counted in, and what is not known of it."""
        air, litters = self.all.air, self.all.litters
        if not self.all.days:
            return []
        told = [f"{count(litters, 'litter')} that may come, by how likely each is"] if litters else []
        by = {"setting": "as you told me", "notes": "by your notes"}
        told += [f"{count(air.cold_days, 'cold day')}, {by[air.by]}"] if air.by else []
        lines = [f"Counted in: {'; '.join(told)}."] if told else []
        return lines if air.by else [*lines, "No cold is counted in. Tell me how cold your nights get: winter nights are 10F"]

    def _hungry(self) -> list[str]:
        """Does whose own ration is far less than their kits ask for."""
        settings, told = self.barn.herd.settings, []
        for key, eater in self.barn.eaters.items():
            mouth = eater.mouth
            if mouth is None or eater.told is None or mouth.state not in {"lactating", "both"} or eater.told >= eater.need() / 2:
                continue
            name, kits = called(self.barn.herd.animals[key]), count(mouth.kits, "kit")
            told.append(f"{name} nurses {kits} on {grams(settings, eater.told)} a day; about {grams(settings, eater.need())} is usual.")
        return told[:HUNGRY_TOLD]

    def document(self) -> dict[str, Any]:
        """The feed as numbers."""
        return self.left.document() | {
            "spring": self.spring.isoformat(),
            "grams_until_spring": self.all.total_g,
            "groups": self.groups(),
            "winter": self.all.document(),
            "winter_with_plan": self.planned.document(),
            "series": self.series(),
        }


def bags(fed: WinterFeed) -> str:
    """Whole bags that must be there: 1.1 bags are two."""
    return count(ceil(fed.bags), "bag")


def feed(herd: Herd, today: date) -> Feed:
    """The feed of the herd."""
    barn = evidence(herd, today)
    return Feed(barn, feed_left(barn))


def feed_of(herd: Herd, today: date, animal: Animal) -> Reply:
    """What one animal eats."""
    barn = evidence(herd, today)
    eater = barn.eaters.get(animal.key)
    if eater is None:
        return Reply((f"{called(animal)} has no dish of its own.",))
    settings = herd.settings
    told = "as you feed it" if eater.told is not None else "as the handbook expects"
    need = f"; {grams(settings, eater.need())} would be expected" if eater.told is not None else ""
    fed = until_spring_g(barn, animal.key)
    until = f"until spring {grams(settings, fed)}, {price(settings, fed * barn.cents_a_gram)}"
    first = f"{short(animal)} eats about {grams(settings, eater.grams())} a day, {told}{need}; {until}."
    found = held(herd, animal, today)
    return Reply((first, *(held_lines(herd, found) if found else unheld_lines(herd, animal, today))))
