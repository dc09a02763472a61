"""Breeding values against the truth in simulated herds: `python -m tests.bench.bucks [HERDS]` (default 1,000).

Small herds over two years: bucks that are used at different times and on different does, litters of two to ten kits, good and poor
quarters, first litters, does with more or less milk, young stock kept by its raw weight. Told are
- how breeding values of bucks with kits go with the truth, and how the raw averages of their kits' weights do (both within herds),
- how often the 80 % interval of a breeding value holds the true one: bucks with kits, does, young ones,
- of two bucks of which one is said to be the better one so many times in 10, how often he truly is.
Herds that vary as published, herds that stray from that as herds are believed to, and, as a hard trial, herds whose shares of variance
lie anywhere in the published ranges, and that vary half or twice as much. Everything goes through the reports' own model: shares of variance, total, and REML where records are many.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from math import sqrt

import numpy as np

from core.handbook import genetics, growth
from core.reckon.mixed_model import Record
from core.reckon.pedigree import Pedigree, Row, pedigree
from core.reports.merit import REARING, WEIGHTS, Trait, _Spread, _trait
from core.reports.traits import quarter, season

#: Shares of variance of weight at ten weeks.
SHARES = {**WEIGHTS[70], **REARING}
DAYS = [date(2024 + at // 4, 1 + 3 * (at % 4), 15) for at in range(8)]


@dataclass
class Simulated:
    """A herd with its truth. `sired` and `raised`: kits by parent; `young`: bucks and does of the last quarters without kits."""

    book: Pedigree
    records: list[Record]
    born: list[date]
    truth: dict[str, float]
    sires: dict[str, str]
    dams: dict[str, str]


@dataclass
class _Herd:
    """A herd while it grows."""

    rng: np.random.Generator
    sizes: Mapping[str, float]
    rows: list[Row] = field(default_factory=list)
    truth: dict[str, float] = field(default_factory=dict)
    milk: dict[str, float] = field(default_factory=dict)
    litters: dict[str, int] = field(default_factory=dict)
    records: list[Record] = field(default_factory=list)
    born: list[date] = field(default_factory=list)

    def founder(self, name: str) -> str:
        """An animal bought."""
        self.rows.append((name, None, None))
        self.truth[name] = self.rng.normal(0, sqrt(self.sizes["animal"]))
        return name

    def litter(self, buck: str, doe: str, day: date, fared: float) -> list[tuple[str, str, float]]:
        """A litter weighed at ten weeks: kits with sex and raw weight, as a share of the breed's."""
        rng, sizes = self.rng, self.sizes
        number = self.litters.get(doe, 0)
        self.litters[doe] = number + 1
        milk = self.milk.setdefault(doe, rng.normal(0, sqrt(sizes["dam"])))
        nest = int(rng.integers(2, 11))
        common = rng.normal(0, sqrt(sizes["litter"])) + milk + fared - 0.01 * (nest - 6) - 0.05 * (number == 0)
        common += {"winter": -0.03, "spring": 0.04, "summer": -0.04, "autumn": 0.02}[season(day)]
        kits = []
        for at in range(nest):
            kit, sex = f"{doe}.{number}.{at}", "bd"[int(rng.integers(2))]
            self.rows.append((kit, buck, doe))
            self.truth[kit] = (self.truth[buck] + self.truth[doe]) / 2 + rng.normal(0, sqrt(sizes["animal"] / 2))
            weight = 1 + common + 0.02 * (sex == "b") + self.truth[kit] + rng.normal(0, sqrt(sizes["residual"]))
            fixed = {"sex": sex, "season": season(day), "parity": "later" if number else "first"}
            random = {"litter": f"{doe}.{number}", "dam": doe, "quarter": quarter(day)}
            self.records.append(Record(kit, weight, fixed, random, {"nest": nest - 6.0}))
            self.born.append(day)
            kits.append((kit, sex, weight))
        return kits


def simulated(rng: np.random.Generator, sizes: Mapping[str, float]) -> Simulated:
    """Two years of a herd of two to five bucks and four to twelve does; the heaviest young ones take the place of old ones."""
    herd = _Herd(rng, sizes)
    bucks = [herd.founder(f"B{at}") for at in range(int(rng.integers(2, 6)))]
    does = [herd.founder(f"D{at}") for at in range(int(rng.integers(4, 13)))]
    for day in DAYS:
        fared = rng.normal(0, sqrt(sizes["quarter"]))
        favours = rng.dirichlet(np.ones(len(bucks)) * 0.7, size=len(does))  # some bucks hardly work in some quarters, and not on all does
        born = []
        for doe, favour in zip(does, favours, strict=True):
            if rng.random() < 0.55:
                born += herd.litter(bucks[int(rng.choice(len(bucks), p=favour))], doe, day, fared)
        for sex, old in (("b", bucks), ("d", does)):
            best = max((kit for kit in born if kit[1] == sex), key=lambda kit: kit[2], default=None)
            if best is not None and rng.random() < 0.4:
                old[int(rng.integers(len(old)))] = best[0]
    book = pedigree(herd.rows)
    assert isinstance(book, Pedigree)
    sires = {animal: sire for animal, sire, _ in herd.rows if sire}
    dams = {animal: dam for animal, _, dam in herd.rows if dam}
    return Simulated(book, herd.records, herd.born, herd.truth, sires, dams)


@dataclass
class Tally:
    """What many herds came to."""

    inside: dict[str, list[bool]] = field(default_factory=lambda: {"bucks with kits": [], "does with kits": [], "young ones": []})
    bucks: list[tuple[float, float, float]] = field(default_factory=list)  # truth, breeding value, raw average, from the herd's means
    pairs: list[tuple[float, bool]] = field(default_factory=list)
    records: list[int] = field(default_factory=list)
    own: list[bool] = field(default_factory=list)

    def add(self, herd: Simulated) -> None:
        """One more herd."""
        kits: dict[str, list[float]] = {}
        for record in herd.records:
            for parent in (herd.sires[record.animal], herd.dams[record.animal]):
                kits.setdefault(parent, []).append(record.value)
        bucks = [one for one in kits if one in set(herd.sires.values())]
        young = [one.animal for one in herd.records[-12:] if one.animal not in kits]
        found = solved(herd, [*kits, *young])
        for name, group in (
            ("bucks with kits", bucks),
            ("does with kits", [one for one in kits if one not in bucks]),
            ("young ones", young),
        ):
            for one in group:
                low, high = found.solved.of(one).interval()
                self.inside[name].append(low <= herd.truth[one] <= high)
        told = np.array([(herd.truth[one], found.solved.values[one], np.mean(kits[one])) for one in bucks])
        if len(bucks) > 1:
            self.bucks += [(float(a), float(b), float(c)) for a, b, c in told - told.mean(axis=0)]
            chances = (
                (found.solved.better(one, other), herd.truth[one] > herd.truth[other]) for one in bucks for other in bucks if one < other
            )
            self.pairs += [(chance, truly) if chance >= 0.5 else (1 - chance, not truly) for chance, truly in chances]
        self.records.append(len(herd.records))
        self.own.append(found.own)

    @property
    def correlations(self) -> tuple[float, float]:
        """Of breeding values, and of raw averages, with the truth, over all bucks with kits, within herds."""
        truth, value, raw = np.array(self.bucks).T
        return float(np.corrcoef(truth, value)[0, 1]), float(np.corrcoef(truth, raw)[0, 1])

    @property
    def coverage(self) -> float:
        """How often the interval held the truth, over all animals."""
        return float(np.mean([each for group in self.inside.values() for each in group]))

    def lines(self, name: str) -> Iterator[str]:
        """The report of these herds."""
        value, raw = self.correlations
        many = (
            f"{len(self.records)} herds of {np.median(self.records):.0f} weighed kits, {np.mean(self.own):.0%} with variances of their own"
        )
        yield f"{name}: {many}"
        yield f"  bucks with kits: breeding values go with the truth at {value:.3f}, raw averages of kits at {raw:.3f} ({len(self.bucks)} bucks)"
        held = ", ".join(f"{group} {np.mean(each):.1%} of {len(each)}" for group, each in self.inside.items())
        yield f"  80 % intervals hold the truth: {self.coverage:.1%} of all; {held}"
        chances, truly = np.array([chance for chance, _ in self.pairs]), np.array([each for _, each in self.pairs])
        for low, high in ((0.5, 0.65), (0.65, 0.75), (0.75, 0.85), (0.85, 0.95), (0.95, 1.001)):
            some = (chances >= low) & (chances < high)
            if some.any():
                yield f"  said to be better {chances[some].mean():.1%}: truly better {truly[some].mean():.1%} of {some.sum()} pairs of bucks"


def solved(herd: Simulated, ask: list[str]) -> Trait:
    """Their breeding values, as the reports reckon them."""
    mean = float(np.mean([record.value for record in herd.records]))
    spread = _Spread((growth.WEIGHT_CV.value * mean) ** 2, SHARES)
    return _trait(herd.book, herd.records, herd.born, spread, ask, {})


def sizes(rng: np.random.Generator, kind: Kind) -> dict[str, float]:
    """Variances of a herd of that kind."""
    total = growth.WEIGHT_CV.value**2 * kind.times
    shares = {effect: told.value for effect, told in SHARES.items()}
    if kind.shares == "strayed":
        away = genetics.PUBLISHED_RANGE_SPREADS.value
        shares = {effect: max(rng.normal(told.value, (told.high - told.low) / away), 0.01) for effect, told in SHARES.items()}
        total *= genetics.PUBLISHED_SPREAD_WORTH.value / rng.chisquare(genetics.PUBLISHED_SPREAD_WORTH.value)
    elif kind.shares == "anywhere":
        shares = {effect: rng.uniform(told.low, told.high) for effect, told in SHARES.items()}
    crowded = max(sum(shares.values()) / 0.9, 1.0)  # the rest is never nothing
    shares = {effect: share / crowded for effect, share in shares.items()}
    return {effect: share * total for effect, share in shares.items()} | {"residual": (1 - sum(shares.values())) * total}


@dataclass(frozen=True)
class Kind:
    """A kind of herd: its shares of variance `published`, `strayed` as herds are believed to do, or `anywhere` in the published ranges;
    how many times the published variance it shows; and whether its coverage is held to 75 to 85 %."""

    name: str
    shares: str
    times: float = 1.0
    held: bool = False


KINDS = (
    Kind("shares as published", "published", held=True),
    Kind("shares strayed from the published as herds are believed to", "strayed", held=True),
    Kind("shares anywhere in the published ranges", "anywhere"),
    Kind("the same, varying half as much", "anywhere", 0.5),
    Kind("the same, varying twice as much", "anywhere", 2.0),
)


def tally(herds: int, kind: Kind, seed: int = 20261125) -> Tally:
    """So many herds of a kind."""
    rng = np.random.default_rng(seed)
    told = Tally()
    while len(told.records) < herds:
        herd = simulated(rng, sizes(rng, kind))
        if len(herd.records) >= 20:
            told.add(herd)
    return told


def main() -> int:
    """The kinds that are held at full number, the others at a quarter of it."""
    herds = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    good = True
    for kind in KINDS:
        told = tally(herds if kind.held else max(herds // 4, 1), kind)
        for line in told.lines(kind.name):
            print(line, flush=True)
        value, raw = told.correlations
        good = good and value > raw and (not kind.held or 0.75 <= told.coverage <= 0.85)
    return int(not good)


if __name__ == "__main__":
    sys.exit(main())
