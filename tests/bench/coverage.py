"""How often the 80 % intervals hold the truth, in simulated herds: `python -m tests.bench.coverage [HERDS]` (default 1,000).

Survival: does' true chances, litters that share their fate, herds that differ in mean, in how alike their does are, and in how
alike the kits of a litter fare; the same herds again with each of these held far from what is believed. Raw shares stand beside
the estimates. Growth: breeds whose animals depart from the handbook's curve, weighed at odd ages; true weight at 16 weeks and true
day of the target, and how often it comes true what is said to be likely. Litters: a doe's own level, trend and next litter, farms
and does and litters as believed and unlike. Holding: an adult's true need from ration and scores.

An interval of the day has two ends only where it is likely enough that the target is made at all: those are counted as intervals,
the others under the chances: of all that were said to be so likely, as many should come true.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, timedelta

import numpy as np
import numpy.typing as npt

from core.reckon.curve import age_at_weight, weight_at_age
from core.reckon.does_together import Belief, does_together
from core.reckon.feed import HoldingFigures, need_to_hold
from core.reckon.growing_together import GrowthBelief, Young, growing_together
from core.reckon.interval import LEVEL, reach
from core.reckon.litters_together import _SCATTER_SD, _SPREAD_SD, LittersTold, SizeBelief, litters_together
from core.reports.growing import CHANCES, days_told
from core.reports.growing import _belief as growth_belief
from core.reports.litter_size import _by_parity, _size_belief
from core.reports.survival import belief

Floats = npt.NDArray[np.float64]
LOW, HIGH = (1 - LEVEL) / 2, (1 + LEVEL) / 2
TARGET = 2700.0  # g: so high that many make it late or never, and every chance occurs
STEPS = 5
SLOPES = 1.0


@dataclass
class Tally:
    """How many truths were inside, and how far off the estimates were."""

    inside: list[bool] = field(default_factory=list)
    off: list[float] = field(default_factory=list)
    raw_off: list[float] = field(default_factory=list)

    def line(self, name: str) -> str:
        """One line of the report."""
        raw = f", raw {np.sqrt(np.mean(np.square(self.raw_off))):.3f}" if self.raw_off else ""
        off = f", off by {np.sqrt(np.mean(np.square(self.off))):.3f}{raw}" if self.off else ""
        return f"{name:<58} {np.mean(self.inside):6.1%} of {len(self.inside):6d} inside{off}"


def beta_binomial(rng: np.random.Generator, born: int, chance: float, likeness: float) -> int:
    """Kits kept of a litter whose kits share its fate."""
    firm = (1 - likeness) / likeness
    return int(rng.binomial(born, rng.beta(max(chance * firm, 1e-9), max((1 - chance) * firm, 1e-9))))


def survival_herd(rng: np.random.Generator, herd: tuple[float, float, float], told: Belief, tally: Tally) -> None:
    """One herd of 4 to 20 does with 1 to 6 litters each; `herd`: true mean, weight and likeness."""
    mean, weight, likeness = herd
    truth = rng.beta(mean * weight, (1 - mean) * weight, rng.integers(4, 21)).clip(1e-6, 1 - 1e-6)
    litters = {}
    for doe, chance in enumerate(truth):
        born = np.clip(np.rint(rng.normal(7.4, 2.3, rng.integers(1, 7))), 1, 14).astype(int)
        litters[str(doe)] = [(int(n), beta_binomial(rng, int(n), float(chance), likeness)) for n in born]
    for key, found in does_together(litters, told).does.items():
        chance = truth[int(key)]
        tally.inside.append(bool(found.low <= chance <= found.high))
        tally.off.append(found.estimate - chance)
        tally.raw_off.append(found.kept / found.alive - chance)


def believed_herd(rng: np.random.Generator, told: Belief) -> tuple[float, float, float]:
    """A herd as it is believed to be."""
    log_odds = np.log(told.likeness / (1 - told.likeness)) + told.likeness_spread * rng.standard_normal()
    return (
        float(rng.beta(told.mean * told.mean_weight, (1 - told.mean) * told.mean_weight)),
        float(told.weight * np.exp(told.weight_spread * rng.standard_normal())),
        float(1 / (1 + np.exp(-log_odds))),
    )


#: Herds unlike what is believed: mean, weight, likeness.
ODD_HERDS = {
    "does much alike": (0.82, 30.0, 0.08),
    "does unlike": (0.82, 5.0, 0.08),
    "litters lost whole": (0.80, 10.0, 0.30),
    "kits fare each for itself": (0.82, 12.0, 0.001),
    "a good herd": (0.92, 12.0, 0.05),
    "a poor herd": (0.60, 10.0, 0.10),
}


@dataclass
class Chances:
    """What was said to be so likely, and whether it came true."""

    said: list[float] = field(default_factory=list)
    came: list[bool] = field(default_factory=list)

    def line(self, name: str) -> str:
        """One line of the report: what was said and what came, in five steps of likelihood; the mean gap between them."""
        said, came = np.array(self.said), np.array(self.came, dtype=float)
        step = np.minimum((said * STEPS).astype(int), STEPS - 1)
        told = [f"{said[step == one].mean():.2f}/{came[step == one].mean():.2f}" for one in range(STEPS) if (step == one).any()]
        return f"{name:<58} said/came {' '.join(told)}, gap {self.gap():.3f} of {len(said)}"

    def gap(self) -> float:
        """The mean distance of said and came over the steps, each by its number."""
        said, came = np.array(self.said), np.array(self.came, dtype=float)
        step = np.minimum((said * STEPS).astype(int), STEPS - 1)
        return float(sum(abs((said - came)[step == at].sum()) for at in range(STEPS)) / len(said))


@dataclass
class Growing:
    """What is counted of growing animals."""

    weight: Tally = field(default_factory=Tally)
    age: Tally = field(default_factory=Tally)
    day: Tally = field(default_factory=Tally)
    by_16_weeks: Chances = field(default_factory=Chances)
    ever: Chances = field(default_factory=Chances)


#: Litters unlike what is believed: how many times the spread of farms, does and litters.
ODD_LITTERS = {
    "does much alike": (1.0, 0.6, 1.0),
    "does unlike": (1.0, 1.5, 1.0),
    "litters even": (1.0, 1.0, 0.65),
    "litters wild": (1.0, 1.0, 1.4),
    "a farm far off": (2.0, 1.0, 1.0),
}


def growth_breed(rng: np.random.Generator, told: GrowthBelief, unlike: float, counted: Growing) -> None:
    """One breed of 3 to 40 animals weighed 1 to 4 times at odd ages; `unlike`: how many times the believed spread its animals have."""
    handbook = {"buck": (3300.0, 3.9, 0.0264), "doe": (3400.0, 3.9, 0.0264)}
    breed = rng.standard_normal(3) * told.herd
    sexes = {kind: rng.standard_normal(3) * told.kind for kind in handbook}
    young, truth = [], {}
    for at in range(int(rng.integers(3, 41))):
        kind = "buck" if rng.random() < 0.5 else "doe"
        logs = np.log(handbook[kind]) + breed + sexes[kind] + rng.standard_normal(3) * np.array(told.own) * unlike
        curve = tuple(float(one) for one in np.exp(logs))
        ages = np.sort(rng.choice(np.arange(28, 100), rng.integers(1, 5), replace=False)).astype(float)
        seen = [(age, weight_at_age(age, *curve) * float(np.exp(told.weighing * rng.standard_normal()))) for age in ages]
        young.append(Young(str(at), kind, tuple(seen)))
        truth[str(at)] = curve
    found = growing_together(young, handbook, told)
    for key, curve in truth.items():
        own, weight = found.animals[key], weight_at_age(112, *curve)
        counted.weight.inside.append(LOW <= own.chance_by(112, weight) <= HIGH)
        counted.weight.off.append(float(np.log(own.weight_at(112) / weight)))
        counted.by_16_weeks.said.append(own.chance_by(112, TARGET))
        counted.by_16_weeks.came.append(weight >= TARGET)
        counted.ever.said.append(own.chance_ever(TARGET))
        counted.ever.came.append(curve[0] > TARGET)
        early, late = own.ages_when(TARGET, (LOW, HIGH), until=400)
        if early is not None and late is not None:
            age = age_at_weight(TARGET, *curve)
            counted.age.inside.append(age is not None and early <= age <= late)
            first, _, last = days_told(date.min, 1, own.ages_when(TARGET, CHANCES, until=400))
            day = None if age is None else date.min + timedelta(int(np.ceil(age)))
            counted.day.inside.append(day is not None and first is not None and last is not None and first <= day <= last)


@dataclass
class Sizes:
    """What is counted of litters."""

    level: Tally = field(default_factory=Tally)
    best: Tally = field(default_factory=Tally)
    slope: Tally = field(default_factory=Tally)
    following: Tally = field(default_factory=Tally)
    falls: Chances = field(default_factory=Chances)


def litters_of_a_breed(rng: np.random.Generator, told: SizeBelief, unlike: tuple[float, ...], counted: Sizes) -> None:
    """One farm's 2 to 15 does of a breed with up to 8 litters each, counted in whole kits.

    unlike   how many times the believed spread the farm, its does and its litters have; none: as it is believed that they vary
    """
    farm, does, litters = unlike or (1.0, *np.exp((_SPREAD_SD, _SCATTER_SD) * rng.standard_normal(2)))
    breed = rng.normal(told.usual, told.farm_sd * farm)
    sizes, truth = {}, {}
    for doe in range(int(rng.integers(2, 16))):
        many = int(rng.integers(0, 9))
        expected = tuple(_by_parity(number) for number in range(many + 1))
        level, slope = rng.normal(0, told.level_sd * does), rng.normal(0, told.slope_sd * SLOPES)
        number = np.arange(many + 1) - max(many - 1, 0) / 2
        born = np.array(expected) * breed + level + slope * number + rng.normal(0, told.litter_sd * litters, many + 1)
        kits = np.maximum(np.rint(born), 0)
        sizes[str(doe)] = LittersTold(tuple(float(one) for one in kits[:-1]), expected)
        truth[str(doe)] = (level, breed + level, slope, float(kits[-1]), float(np.mean(kits[:-1])) if many else None)
    for key, found in litters_together(sizes, told).does.items():
        level, best, slope, following, mean = truth[key]
        counted.level.inside.append(abs(found.level - level) <= reach(LEVEL) * found.level_sd)
        counted.best.inside.append(abs(found.at_best - best) <= reach(LEVEL) * found.at_best_sd)
        if mean is not None:
            counted.best.off.append(found.at_best - best)
            counted.best.raw_off.append(mean - best)
        if found.litters > 1:
            counted.slope.inside.append(abs(found.slope - slope) <= reach(LEVEL) * found.slope_sd)
            counted.falls.said.append(found.chance_of_fall)
            rise = float(np.polyfit(np.arange(found.litters), np.maximum.accumulate(sizes[key].expected[:-1]), 1)[0])
            counted.falls.came.append(slope + rise * (best - level) < 0)
        counted.following.inside.append(abs(found.following - following) <= reach(LEVEL) * found.following_sd)


def adult(rng: np.random.Generator, tally: Tally) -> None:
    """One buck of 4.5 kg on a ration for 3 to 20 weeks, scored before and after."""
    figures = HoldingFigures(need_cv=0.15, ration_cv=0.10, point_share=0.08, feed_a_gram=3.0)
    expected, weight, days = 148.0, 4500.0, int(rng.integers(21, 140))
    need = expected * (1 + 0.15 * rng.standard_normal())
    said = need * rng.uniform(0.7, 1.3)
    eaten = said * (1 + 0.10 * rng.standard_normal())
    points = (eaten - need) * days / (weight * 0.08 * 3.0) + rng.normal(0, 0.4 * 2**0.5)
    found = need_to_hold(expected, said, weight, points=points, points_sd=0.4 * 2**0.5, days=days, figures=figures)
    tally.inside.append(bool(found.low <= need <= found.high))
    tally.off.append((found.need - need) / expected)


def survival_as_believed(rng: np.random.Generator, herds: int) -> Tally:
    """Does' survival in so many herds."""
    told, tally = belief(), Tally()
    for _ in range(herds):
        survival_herd(rng, believed_herd(rng, told), told, tally)
    return tally


def growing(rng: np.random.Generator, breeds: int, unlike: float = 1.0) -> Growing:
    """Growing animals of so many breeds."""
    counted = Growing()
    for _ in range(breeds):
        growth_breed(rng, growth_belief(), unlike, counted)
    return counted


def litter_sizes(rng: np.random.Generator, breeds: int, unlike: tuple[float, ...] = ()) -> Sizes:
    """Does' litters on so many farms."""
    counted = Sizes()
    for _ in range(breeds):
        litters_of_a_breed(rng, _size_belief("new zealand"), unlike, counted)
    return counted


def adults(rng: np.random.Generator, many: int) -> Tally:
    """Adults on their rations."""
    tally = Tally()
    for _ in range(many):
        adult(rng, tally)
    return tally


def report(herds: int, seed: int = 20261125) -> Iterator[str]:
    """The report, line by line: as believed over all herds, each odd kind over a quarter of them."""
    rng = np.random.default_rng(seed)
    few = max(herds // 4, 1)
    yield survival_as_believed(rng, herds).line("survival, herds as believed")
    for name, herd in ODD_HERDS.items():
        tally = Tally()
        for _ in range(few):
            survival_herd(rng, herd, belief(), tally)
        yield tally.line(f"survival, {name}")
    for name, unlike in (("as believed", 1.0), ("animals much alike", 0.6), ("animals unlike", 1.5)):
        grown = growing(rng, herds if unlike == 1 else few, unlike)
        yield grown.weight.line(f"weight at 16 weeks, {name}")
        yield grown.age.line(f"age at the target, {name}")
        yield grown.day.line(f"day of the target as it is told, {name}")
        yield grown.by_16_weeks.line(f"the target by 16 weeks, {name}")
        yield grown.ever.line(f"the target ever, {name}")
    for name, odd in {"as believed": (), **ODD_LITTERS}.items():
        sizes = litter_sizes(rng, few if odd else herds, odd)
        yield sizes.level.line(f"a doe's level, {name}")
        yield sizes.best.line(f"her best litters, {name}")
        yield sizes.slope.line(f"her slope, {name}")
        yield sizes.following.line(f"her next litter, {name}")
        yield sizes.falls.line(f"a fall, {name}")
    yield adults(rng, herds).line("need of an adult")


if __name__ == "__main__":
    for line in report(int(sys.argv[1]) if len(sys.argv) > 1 else 1000):
        print(line, flush=True)
