"""The winter's choice as an integer programme: a column for each animal and each mating, a row for each limit.

Every row reads `at most`, every column is none or one.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import groupby

import numpy as np
import numpy.typing as npt
from scipy import sparse

from core.reckon.winter.types import Candidate, Kin, Limits

Numbers = npt.NDArray[np.float64]

#: Ties go by key: within this share of the greatest worth two sets count as equal.
TIE = 1e-7
#: The greatest gain as the solver sees it: its own tolerance is 1e-6, far below what breaks a tie.
HIGHEST = 1e5
#: The classes of mates that a doe has at most; beyond, her worst ones count alike. Only a breed of many unequally related bucks has more.
MATE_CLASSES = 16  # not a figure: columns a doe


@dataclass(frozen=True)
class Asked:
    """The candidates by key, and who may be mated with whom.

    coi    doe -> buck -> COI of their kits, of grown ones of a breed, within the limit or not
    """

    animals: tuple[Candidate, ...]
    limits: Limits
    coi: Mapping[str, Mapping[str, float]]

    def mates(self, doe: str) -> dict[str, float]:
        """The bucks within the COI limit, with what the kits' inbreeding takes off her [worth]; never more than no mate at all would."""
        most, unmated = self.limits.highest_coi, self.limits.unmated
        return {buck: min(self.limits.coi_cost * coi, unmated) for buck, coi in self.coi.get(doe, {}).items() if coi <= most}

    @cached_property
    def at(self) -> Mapping[str, int]:
        """Each animal's place, and column."""
        return {one.key: place for place, one in enumerate(self.animals)}

    @cached_property
    def values(self) -> Numbers:
        """What each adds by itself: worth less doubt, feed and, of a grown doe, what no mate costs."""
        return np.array([value(one, self.limits) for one in self.animals])

    def worth(self, kept: Collection[str]) -> float:
        """What a set is worth: of each its worth less doubt and feed, less what inbreeding or no mate takes off each grown doe."""
        by_themselves = sum(value(one, self.limits) for one in self.animals if one.key in kept)
        mates = (self.mates(doe) for doe in self.coi if doe in kept)
        alone = self.limits.unmated
        return by_themselves + sum(alone - min((cost for buck, cost in each.items() if buck in kept), default=alone) for each in mates)

    @cached_property
    def grown_of(self) -> Mapping[str, tuple[Candidate, ...]]:
        """The grown bucks and does of each breed."""
        told: dict[str, list[Candidate]] = {}
        for one in self.animals:
            if one.grown and one.sex is not None:
                told.setdefault(one.breed, []).append(one)
        return {breed: tuple(each) for breed, each in told.items()}

    @property
    def able(self) -> tuple[str, ...]:
        """The breeds that have a pair within the COI limit."""
        return tuple(breed for breed, grown in self.grown_of.items() if any(self.mates(one.key) for one in grown))


def value(one: Candidate, limits: Limits) -> float:
    """Worth less doubt and feed; of a grown doe less what no mate costs, which her mate gives back."""
    unmated = limits.unmated if one.grown and one.sex == "doe" else 0.0
    return one.worth.value - limits.caution * one.worth.deviation - limits.feed_worth * one.feed_g - unmated


def asked(candidates: Iterable[Candidate], limits: Limits, kin: Kin) -> Asked:
    """The candidates by key, each pair asked for its kinship once."""
    animals = tuple(sorted(candidates, key=lambda one: one.key))
    bare = Asked(animals, limits, {})
    coi: dict[str, dict[str, float]] = {}
    for grown in bare.grown_of.values():
        bucks = [one.key for one in grown if one.sex == "buck"]
        coi |= {doe.key: {buck: kin(buck, doe.key) for buck in bucks} for doe in grown if doe.sex == "doe"}
    return Asked(animals, limits, coi)


#: From so many animals on a choice nearly the best is good enough.
LARGE = 150  # not a figure: animals
#: The row that tells how many breeds with a pair may be left without one.
LET_DOWN = "let_down"


@dataclass(frozen=True)
class Row:
    """A limit: what it holds down, of which breed, and the sum of these columns that is at most `most`."""

    limit: str
    breed: str | None
    columns: Sequence[int]
    amounts: Sequence[float]
    most: float


@dataclass(frozen=True)
class Programme:
    """Columns: the animals, the matings, then one for each breed that could breed on and is let down.

    gains     what a column adds to the objective, the greatest brought to `HIGHEST`, with a trifle by key to break ties
    scale     what an objective of 1 is [worth]
    matrix    row by column; `most` its right side
    rows      what each row is
    let_down  the columns of breeds that are let down
    """

    asked: Asked
    gains: Numbers
    scale: float
    matrix: sparse.csr_array
    most: Numbers
    rows: tuple[Row, ...]
    let_down: tuple[int, ...]

    @property
    def columns(self) -> int:
        """How many."""
        return len(self.gains)

    @property
    def large(self) -> bool:
        """Whether it is too large for every question to be answered to the last gram."""
        return len(self.asked.animals) > LARGE

    def letting_down(self, breeds: int) -> Programme:
        """The same, with so many breeds left unable to breed on."""
        allowed = np.array([float(breeds) if row.limit == LET_DOWN else most for row, most in zip(self.rows, self.most, strict=True)])
        return replace(self, most=allowed)

    def bounds(self) -> tuple[Numbers, Numbers]:
        """The least and the most of each column, with the pins."""
        low, high = np.zeros(self.columns), np.ones(self.columns)
        for place, one in enumerate(self.asked.animals):
            low[place] = one.pin == "keep"
            high[place] = one.pin != "go"
        return low, high


@dataclass
class _Building:
    """Columns and rows as they are added."""

    gains: list[float]
    rows: list[Row]
    matings: dict[str, list[int]]

    def column(self, gain: float) -> int:
        self.gains.append(gain)
        return len(self.gains) - 1

    def row(self, limit: str, breed: str | None, columns: Sequence[int], amounts: Sequence[float] | float, most: float) -> None:
        spread = [amounts] * len(columns) if isinstance(amounts, float) else amounts
        self.rows.append(Row(limit, breed, columns, spread, most))


def programme(of: Asked) -> Programme:
    """The integer programme of that herd and its limits."""
    building = _Building([float(each) for each in of.values], [], {})
    _whole_herd(building, of)
    for breed, grown in of.grown_of.items():
        for doe in (one for one in grown if one.sex == "doe"):
            _her_mates(building, of, doe)
        _heads(building, of, breed, grown)
    let_down = _litters(building, of)
    return _finished(building, of, let_down)


def _whole_herd(building: _Building, of: Asked) -> None:
    """Cages, mouths and feed, where the farm set them."""
    limits, everybody = of.limits, range(len(of.animals))
    if limits.cages is not None:
        building.row("cages", None, everybody, [float(one.places) for one in of.animals], float(limits.cages))
    if limits.mouths is not None:
        building.row("mouths", None, everybody, [float(one.mouths) for one in of.animals], float(limits.mouths))
    if limits.feed_g is not None:
        building.row("feed_g", None, everybody, [one.feed_g for one in of.animals], float(limits.feed_g))


def _her_mates(building: _Building, of: Asked, doe: Candidate) -> None:
    """A column for each class of equally good mates: open where one of them is kept; she takes one class at most."""
    mine = []
    for cost, bucks in _classes(of.mates(doe.key)):
        column = building.column(of.limits.unmated - cost)
        building.row("mate", None, [column, *(of.at[buck] for buck in bucks)], [1.0, *([-1.0] * len(bucks))], 0.0)
        mine.append(column)
    if mine:
        building.row("doe", None, [*mine, of.at[doe.key]], [*([1.0] * len(mine)), -1.0], 0.0)
    building.matings.setdefault(doe.breed, []).extend(mine)


def _classes(mates: Mapping[str, float]) -> list[tuple[float, list[str]]]:
    """Her mates by cost, the cheapest first; beyond the most classes the rest at the dearest's."""
    ordered = sorted(mates.items(), key=lambda each: (each[1], each[0]))
    told = [(cost, [buck for buck, _ in each]) for cost, each in groupby(ordered, key=lambda each: each[1])]
    near, far = told[: MATE_CLASSES - 1], told[MATE_CLASSES - 1 :]
    return [*near, (far[-1][0], [buck for _, each in far for buck in each])] if far else near


def _heads(building: _Building, of: Asked, breed: str, grown: Iterable[Candidate]) -> None:
    """The most bucks and does of a breed."""
    for limit, sex, most in (("bucks", "buck", of.limits.bucks.get(breed)), ("does", "doe", of.limits.does.get(breed))):
        if most is not None:
            building.row(limit, breed, [of.at[one.key] for one in grown if one.sex == sex], 1.0, float(most))


def _litters(building: _Building, of: Asked) -> tuple[int, ...]:
    """The does of a breed that must have a mate, as many as are wanted; and of each breed that has a pair, one doe, or it is let down."""
    for breed, wanted in of.limits.litters.items():
        building.row("litters", breed, building.matings.get(breed, []), -1.0, -float(wanted))
    let_down = []
    for breed, columns in building.matings.items():
        if columns:
            let_down.append(building.column(0.0))
            building.row("pair", breed, [*columns, let_down[-1]], -1.0, -1.0)
    building.row(LET_DOWN, None, let_down, 1.0, 0.0)
    return tuple(let_down)


def _finished(building: _Building, of: Asked, let_down: tuple[int, ...]) -> Programme:
    gains = np.array(building.gains)
    scale = (float(np.abs(gains).max(initial=0.0)) or 1.0) / HIGHEST
    gains = gains / scale
    animals = len(of.animals)
    gains[:animals] += TIE * HIGHEST * np.arange(animals, 0, -1) / max(animals, 1)
    kilo = [1000.0 if row.limit == "feed_g" else 1.0 for row in building.rows]
    entries = [
        (at, column, amount / kilo[at])
        for at, row in enumerate(building.rows)
        for column, amount in zip(row.columns, row.amounts, strict=True)
    ]
    at, columns, amounts = (np.array(each) for each in zip(*entries, strict=True)) if entries else (np.zeros(0), np.zeros(0), np.zeros(0))
    matrix = sparse.csr_array((amounts, (at.astype(int), columns.astype(int))), shape=(len(building.rows), len(gains)))
    most = np.array([row.most / by for row, by in zip(building.rows, kilo, strict=True)])
    return Programme(of, gains, scale, matrix, most, tuple(building.rows), let_down)
