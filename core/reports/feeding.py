"""Who eats what: each animal's feed a day, by the farm's own ration or the handbook's, and what is left in the bin."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from functools import cache
from typing import Any

from core.handbook import breeds, feeding, growth, reproduction
from core.herd.litters import alive_now, nursed_litter
from core.herd.matings import open_mating
from core.herd.questions import age_days, stage
from core.herd.settings import cup_weight, feed_bag, feed_price
from core.herd.state import Animal, Herd, Litter, Mating, Ration
from core.herd.weights import expected_weight
from core.reckon.curve import carried
from core.reckon.feed import FeedFigures, Mouth, daily_need
from core.words import grams_of


@dataclass(frozen=True, slots=True)
class Eater:
    """One animal, or a litter's untagged kits, at the dish.

    told   what the farm said it gets [g a day, all of them]; None where it said nothing
    mouth  what the handbook expects it to need; None for kits that still live on milk
    """

    key: str
    told: float | None
    mouth: Mouth | None

    def need(self) -> float:
        """What the handbook expects it to need [g a day]."""
        return daily_need(self.mouth, figures()) if self.mouth else 0.0

    def grams(self) -> float:
        """What it eats today [g]."""
        return self.need() if self.told is None else self.told


@cache
def figures() -> FeedFigures:
    """The handbook's figures of feeding, as the reckoning takes them."""
    return FeedFigures(
        dry_share=feeding.RATION_DRY.value,
        pregnant_share=feeding.RATION_PREGNANT.value,
        lactating_share=feeding.RATION_NURSING.value,
        kit_g=feeding.KIT_FEED_G.value,
        kits_eat_from_day=feeding.KIT_FEED_FROM_DAYS.whole,
        grower_g=feeding.GROWER_DRY_MATTER_G.value / feeding.FEED_DRY_MATTER.value,
        metabolic_power=feeding.METABOLIC_POWER.value,
        level_from_day=feeding.GROWER_LEVEL_FROM_DAYS.value,
        curve_b=growth.GOMPERTZ_B.value,
        curve_k=growth.GOMPERTZ_K.value,
        cold_below_c=feeding.COLD_FEED_BELOW_C.value,
        cold_share=feeding.COLD_FEED_A_DEGREE.value,
    )


def weight_of(animal: Animal, today: date) -> float:
    """What it weighs [g]: as last weighed and grown on since, else as its breed's adults do."""
    known = expected_weight(animal, today)
    if known is not None:
        return known
    breed = breeds.breed(animal.breed)
    return breed.maximum_g(animal.sex) * feeding.ADULT_SHARE_OF_MAXIMUM.value if breed else feeding.ADULT_WEIGHT_UNKNOWN_G.value


def in_grams(ration: Ration, herd: Herd) -> float:
    """A ration in grams a day."""
    match ration.unit:
        case "cup":
            return ration.amount * cup_weight(herd.settings)
        case "oz" | "lb":
            amount = Decimal(str(ration.amount))
            return float(grams_of(0, amount) if ration.unit == "oz" else grams_of(amount))
        case "kg":
            return ration.amount * 1000
        case _:
            return ration.amount


def ration_of(herd: Herd, animal: Animal, at_stage: str) -> Ration | None:
    """What the farm said this animal gets: its own word, else the newest for its kind, else for all."""
    if animal.ration is not None:
        return animal.ration
    scope = {"grow-out": "grow-outs"}.get(at_stage) or (f"{animal.sex}s" if animal.sex else "")
    return herd.rations.get(scope) or herd.rations.get("all")


def eater(herd: Herd, animal: Animal, today: date) -> Eater | None:
    """A living animal at the dish; None for a kit, who eats from its dam's."""
    at_stage = stage(herd, animal, today)
    if at_stage == "kit":
        return None
    ration = ration_of(herd, animal, at_stage)
    return Eater(animal.key, None if ration is None else in_grams(ration, herd), _mouth(herd, animal, at_stage, today))


def in_kindle(herd: Herd, doe: str, today: date) -> Mating | None:
    """The mating that she may carry from; None where none is open, or the day of its litter is long past."""
    mating = open_mating(herd, doe, today)
    return mating if mating is not None and (today - mating.on).days < reproduction.ASK_KINDLING_DAY.whole else None


def _mouth(herd: Herd, animal: Animal, at_stage: str, today: date) -> Mouth:
    weight = weight_of(animal, today)
    age = age_days(animal, today)
    if at_stage == "grow-out" and age is not None:
        known = expected_weight(animal, today)
        return Mouth(state="growing", weight_g=known, age_days=age, adult_g=breeds.growth_ceiling_g(animal.breed, animal.sex))
    litter = nursed_litter(herd, animal.key, today) if animal.sex == "doe" else None
    pregnant = animal.sex == "doe" and in_kindle(herd, animal.key, today) is not None
    if litter is None:
        return Mouth(state="pregnant" if pregnant else "dry", weight_g=weight)
    kits_age = (today - litter.born_on).days
    return Mouth(state="both" if pregnant else "lactating", weight_g=weight, kits=alive_now(litter), kits_age_days=kits_age)


def litter_eater(herd: Herd, key: str, count: int, today: date) -> Eater:
    """A weaned litter's untagged kits at the dish."""
    litter = herd.litters[key]
    dam = herd.animals.get(litter.dam)
    age = (today - litter.born_on).days
    ration = herd.rations.get("grow-outs") or herd.rations.get("all")
    adult = breeds.growth_ceiling_g(dam.breed if dam else None)
    return Eater(
        key,
        None if ration is None else in_grams(ration, herd) * count,
        Mouth(state="growing", weight_g=kit_weight(herd, litter, today), age_days=age, adult_g=adult, count=count),
    )


def kit_weight(herd: Herd, litter: Litter, today: date) -> float | None:
    """What a kit of the litter weighs [g], by the last time that all were weighed, once the curve holds; None where they never were."""
    since = litter.born_on + timedelta(growth.CURVE_FROM_DAYS.whole)
    weighed = [(on, grams, kits or alive_now(litter, on)) for on, grams, kits in litter.weighings if since <= on <= today]
    if not weighed or not weighed[-1][2]:
        return None
    on, grams, kits = weighed[-1]
    dam = herd.animals.get(litter.dam)
    mean, age, breed = grams / kits, (on - litter.born_on).days, dam.breed if dam else None
    ceiling = max(breeds.growth_ceiling_g(breed), mean)
    return carried(mean, age, age + (today - on).days, ceiling, growth.GOMPERTZ_B.value, breeds.growth_rate(breed).value)


def grams_a_day(eaters: Iterable[Eater]) -> float:
    """What all of them eat a day [g]."""
    return sum(one.grams() for one in eaters)


@dataclass(frozen=True, slots=True)
class Stock:
    """The feed in the bin: what was there on a day that somebody looked, what came since, what was eaten since [g]."""

    counted_on: date
    counted: float
    bought: float
    eaten: float

    @property
    def left(self) -> float:
        """What should be there now [g]."""
        return max(self.counted + self.bought - self.eaten, 0.0)


def stock(herd: Herd, a_day: float, today: date) -> Stock | None:
    """What is in the bin, by the last look at it; None where nobody ever told."""
    told = sorted((event for event in herd.feed if event.on <= today), key=lambda event: event.on)
    looks = [at for at, event in enumerate(told) if event.what == "feed_left"]
    if not looks:
        return None
    last, since = told[looks[-1]], told[looks[-1] + 1 :]  # of one day, what was bought after the look comes on top
    eaten = a_day * (today - last.on).days
    return Stock(last.on, float(last.detail["grams"]), sum(bought_grams(herd, event.detail) for event in since), eaten)


def bought_grams(herd: Herd, detail: Mapping[str, Any]) -> float:
    """The feed of a purchase [g]: as said, else the bags at the farm's bag weight."""
    if detail.get("grams") is not None:
        return float(detail["grams"])
    return float((detail.get("bags") or 1) * feed_bag(herd.settings))


def cents_a_gram(herd: Herd) -> tuple[float, bool]:
    """What feed costs [cents a g], and whether the farm told it: its own price a bag, else its last purchase, else a common price."""
    told = feed_price(herd.settings)
    if told is not None:
        return told / feed_bag(herd.settings), True
    bought = [event for event in herd.feed if event.what == "feed_bought" and bought_grams(herd, event.detail)]
    priced = [event for event in bought if event.detail.get("price") is not None]
    if priced:
        last = max(priced, key=lambda event: event.on)
        return float(last.detail["price"]) / bought_grams(herd, last.detail), True
    return feeding.FEED_PRICE_CENTS.value / feed_bag(herd.settings), False
