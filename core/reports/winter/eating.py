"""The feed until spring, day by day: every mouth, its grams, bags and money, and the day the bin is empty; with everybody, or without some."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta
from functools import lru_cache
from typing import Any

import numpy as np

from core.herd.settings import feed_bag, spring
from core.reckon.eating import Floats, Table, eaten
from core.reports.evidence import Evidence
from core.reports.feeding import cents_a_gram, figures
from core.reports.winter.dishes import coming_litters, diners
from core.reports.winter.weather import Air, air

#: How far ahead feed is counted.
LOOK_AHEAD = 365  # not a figure: days in a year
#: Whose feed is told apart.
GROUPS = ("buck", "doe", "grow-out")


@dataclass(frozen=True, slots=True)
class WinterFeed:
    """What is eaten from today until the day before spring.

    days      each day: the day, mouths at a dish of their own (kits to come as an expectation), grams of all
    groups    grams of bucks, does and grow-outs
    total_g   the sum of the days [g];  bags, cents  the same at the farm's bag and price, `priced` where the farm told that price
    runs_out  the first day that what is in the bin can't feed; None where nobody told what is there, or it outlasts a year
    litters   litters to come that are counted in, each by its chance
    """

    spring: date
    days: tuple[tuple[date, float, float], ...] = field(repr=False)
    groups: Mapping[str, float]
    total_g: float
    bags: float
    cents: float
    priced: bool
    runs_out: date | None
    air: Air = field(repr=False)
    litters: int

    def document(self) -> dict[str, Any]:
        """The feed as numbers."""
        return {
            "spring": self.spring.isoformat(),
            "grams": self.total_g,
            "bags": self.bags,
            "cents": self.cents,
            "price_told": self.priced,
            "runs_out": self.runs_out.isoformat() if self.runs_out else None,
            "groups": dict(self.groups),
            "cold_days": self.air.cold_days,
            "cold_by": self.air.by,
            "litters_to_come": self.litters,
        }


def days_to_spring(barn: Evidence) -> int:
    """Whole days until spring, today among them."""
    return max((spring(barn.herd.settings, barn.today) - barn.today).days, 0)


@lru_cache(maxsize=4)
def air_of(barn: Evidence) -> Air:
    """The air of the days until spring."""
    return air(barn.herd, barn.today, days_to_spring(barn))


@lru_cache(maxsize=4)
def table(barn: Evidence) -> Table:
    """What every dish takes, day by day for a year, or until spring where that is later, if nobody leaves."""
    return eaten(diners(barn), max(LOOK_AHEAD, days_to_spring(barn)), figures(), air_of(barn).celsius)


@lru_cache(maxsize=4)
def rows(barn: Evidence) -> Mapping[str, int]:
    """Which row of the table is whose."""
    return {key: row for row, key in enumerate(table(barn).keys)}


@lru_cache(maxsize=4)
def _eaten_from(barn: Evidence) -> Floats:
    """What each dish takes from each day on until spring [g]; nothing from spring on."""
    grams = table(barn).grams[:, : days_to_spring(barn)]
    left = np.cumsum(grams[:, ::-1], axis=1)[:, ::-1]
    return np.hstack([left, np.zeros((len(grams), 1))])


def until_spring_g(barn: Evidence, key: str, since: date | None = None) -> float:
    """What a dish takes until spring [g]: an animal's by its key, a litter's by its own; `since` a day that is not today. 0 for no dish.

    A doe's is her own, with her kits at it until they are weaned: from then on they eat under the litter's key.
    """
    row = rows(barn).get(key)
    if row is None:
        return 0.0
    first = max((since - barn.today).days, 0) if since else 0
    return float(_eaten_from(barn)[row, min(first, days_to_spring(barn))])


def a_day_g(barn: Evidence) -> float:
    """What the whole barn eats today [g]."""
    return float(np.sum(table(barn).grams[:, 0]))


def _staying(barn: Evidence, leaving: Mapping[str, date]) -> Floats:
    """1 for the days on which each dish is there, 0 from the day its animal leaves. A doe that goes before her day brings no litter."""
    told = table(barn)
    here = np.ones(told.grams.shape)
    of = rows(barn)
    for key, on in leaving.items():
        if key in of:
            here[of[key], max((on - barn.today).days, 0) :] = 0.0
    for come in coming_litters(barn):
        if come.dam in leaving and leaving[come.dam] <= come.on:
            here[of[come.key]] = 0.0
    return here


@lru_cache(maxsize=4)
def _groups(barn: Evidence) -> Mapping[str, Floats]:
    """Which part of each dish, day by day, is a buck's, a doe's or a grow-out's (an adult of unknown sex counts as a doe)."""
    told = table(barn)
    dishes, days = diners(barn), np.arange(told.grams.shape[1])
    young = np.array([days < (one.grown_from or 0) for one in dishes], dtype=bool).reshape(told.grams.shape)
    animals = barn.herd.animals
    male = np.array([one.key in animals and animals[one.key].sex == "buck" for one in dishes], dtype=bool).reshape(-1, 1)
    return {"buck": (~young & male).astype(float), "doe": (~young & ~male).astype(float), "grow-out": young.astype(float)}


def today_by_group(barn: Evidence) -> dict[str, float]:
    """What bucks, does and grow-outs eat today [g]."""
    grams = table(barn).grams[:, 0]
    return {name: float((grams * share[:, 0]).sum()) for name, share in _groups(barn).items()}


def days_left(barn: Evidence) -> int | None:
    """Whole days that what is in the bin lasts; None where nobody told what is there, or it outlasts a year."""
    out = winter_feed(barn, {}).runs_out
    return None if out is None else (out - barn.today).days


def winter_feed(barn: Evidence, leaving: Mapping[str, date]) -> WinterFeed:
    """The feed until spring if these leave, each from its day on; with nobody leaving, the feed of all."""
    return _winter_feed(barn, tuple(sorted(leaving.items())))


@lru_cache(maxsize=16)
def _winter_feed(barn: Evidence, leaving: tuple[tuple[str, date], ...]) -> WinterFeed:
    told, here, until = table(barn), _staying(barn, dict(leaving)), days_to_spring(barn)
    grams, heads = told.grams * here, (told.heads * here).sum(axis=0)
    a_day = grams.sum(axis=0)
    total = float(a_day[:until].sum())
    cost, priced = cents_a_gram(barn.herd)
    return WinterFeed(
        spring=spring(barn.herd.settings, barn.today),
        days=tuple((barn.today + timedelta(day), float(heads[day]), float(a_day[day])) for day in range(until)),
        groups={name: float((grams * share)[:, :until].sum()) for name, share in _groups(barn).items()},
        total_g=total,
        bags=total / feed_bag(barn.herd.settings),
        cents=total * cost,
        priced=priced,
        runs_out=_runs_out(barn, a_day),
        air=air_of(barn),
        litters=sum(1 for one in coming_litters(barn) if here[rows(barn)[one.key]].any() and one.on < barn.today + timedelta(until)),
    )


def _runs_out(barn: Evidence, a_day: Floats) -> date | None:
    """The first day that the bin can't feed."""
    if barn.stock is None:
        return None
    short = np.flatnonzero(np.cumsum(a_day) > barn.stock.left)
    return barn.today + timedelta(int(short[0])) if len(short) else None


def series(barn: Evidence, leaving: Mapping[str, date]) -> dict[str, list[Any]]:
    """The winter as a chart takes it: the days, mouths and grams if all stay, and the same if these leave."""
    whole, plan = winter_feed(barn, {}), winter_feed(barn, leaving)
    return {
        "days": [on.isoformat() for on, _, _ in whole.days],
        "mouths": [mouths for _, mouths, _ in whole.days],
        "grams": [grams for _, _, grams in whole.days],
        "mouths_with_plan": [mouths for _, mouths, _ in plan.days],
        "grams_with_plan": [grams for _, _, grams in plan.days],
    }
