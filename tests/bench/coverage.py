"""How often the 80 % intervals hold the truth, in simulated herds: `python -m tests.bench.coverage [HERDS]` (default 1,000).

Survival: does' true chances, litters that share their fate, herds that differ in mean, in how alike their does are, and in how
alike the kits of a litter fare; the same herds again with each of these held far from what is believed. Raw shares stand beside
the estimates. Growth: breeds whose animals depart from the handbook's curve, weighed at odd ages; true weight at 16 weeks and true
day of the target. Litters: a doe's own level, trend and next litter. Holding: an adult's true need from ration and scores.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from core.reckon.curve import age_at_weight, weight_at_age
from core.reckon.does_together import Belief, does_together
from core.reckon.feed import HoldingFigures, need_to_hold
from core.reckon.growing_together import GrowthBelief, Young, growing_together
from core.reckon.interval import LEVEL, reach
from core.reckon.trend import size_trend
from core.reports.growing import _belief as growth_belief
from core.reports.survival import belief

Floats = npt.NDArray[np.float64]
LOW, HIGH = (1 - LEVEL) / 2, (1 + LEVEL) / 2


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
    for doe, found in does_together(litters, told).does.items():
        chance = truth[int(doe)]
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


def growth_breed(rng: np.random.Generator, told: GrowthBelief, unlike: float, tallies: tuple[Tally, Tally]) -> None:
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
    target = 2268.0
    for key, curve in truth.items():
        weight = weight_at_age(112, *curve)
        tallies[0].inside.append(LOW <= found.animals[key].chance_by(112, weight) <= HIGH)
        tallies[0].off.append(float(np.log(found.animals[key].weight_at(112) / weight)))
        age = age_at_weight(target, *curve)
        early, late = (found.animals[key].age_when(target, chance, until=400) for chance in (LOW, HIGH))
        reached = np.inf if age is None or age > 400 else np.ceil(age)
        tallies[1].inside.append((np.inf if early is None else early) <= reached <= (np.inf if late is None else late))


def litters_of_a_doe(rng: np.random.Generator, tallies: tuple[Tally, Tally]) -> None:
    """One doe of 1 to 8 litters: her slope, and her next litter."""
    within, between, steep = 2.35, 1.1, 0.7
    many = int(rng.integers(1, 9))
    usual = [6.5, 7.1, *([7.4] * 7)][: many + 1]
    level, slope = rng.normal(0, between), rng.normal(0, steep)
    number = np.arange(many + 1) - (many - 1) / 2
    sizes = np.array(usual) + level + slope * number + rng.normal(0, within, many + 1)
    found = size_trend(list(sizes[:-1]), usual, within_sd=within, between_sd=between, slope_sd=steep)
    assert found is not None
    tallies[0].inside.append(bool(abs(found.slope - slope) <= reach(LEVEL) * found.deviation))
    tallies[1].inside.append(bool(abs(found.following - sizes[-1]) <= reach(LEVEL) * found.following_sd or found.following == 0))


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


def report(herds: int, seed: int = 20261125) -> Iterator[str]:
    """The report, line by line."""
    rng = np.random.default_rng(seed)
    told, all_ = belief(), Tally()
    for _ in range(herds):
        survival_herd(rng, believed_herd(rng, told), told, all_)
    yield all_.line("survival, herds as believed")
    for name, herd in ODD_HERDS.items():
        tally = Tally()
        for _ in range(herds // len(ODD_HERDS)):
            survival_herd(rng, herd, told, tally)
        yield tally.line(f"survival, {name}")
    for name, unlike in (("as believed", 1.0), ("animals much alike", 0.6), ("animals unlike", 1.5)):
        both = (Tally(), Tally())
        for _ in range(max(herds // 10, 5)):
            growth_breed(rng, growth_belief(), unlike, both)
        yield both[0].line(f"weight at 16 weeks, {name}")
        yield both[1].line(f"day of the target, {name}")
    both = (Tally(), Tally())
    for _ in range(herds):
        litters_of_a_doe(rng, both)
    yield both[0].line("slope of litter size")
    yield both[1].line("her next litter")
    tally = Tally()
    for _ in range(herds):
        adult(rng, tally)
    yield tally.line("need of an adult")


if __name__ == "__main__":
    for line in report(int(sys.argv[1]) if len(sys.argv) > 1 else 1000):
        print(line, flush=True)
