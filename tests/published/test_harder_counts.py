"""Harder cases of survival, growth and coat genes, answered by exact fractions, by definition or by trying everything.

Beta and binomial sums are exact for whole numbers; Kaplan-Meier is multiplied out; the logistic line is found by Newton's steps in plain
Python; curves are made from known numbers; hidden genes are summed over every genotype of every animal of a small family with loops.
"""

from __future__ import annotations

import itertools
import math
from datetime import date, timedelta
from fractions import Fraction
from random import Random
from typing import Any

import numpy as np
import pytest
from scipy.optimize import minimize

from tests.published.genetics_cases import misses


def case(kind: str, told: dict[str, Any], expected: dict[str, Any], tolerance: float = 1e-8) -> dict[str, Any]:
    """A case as files hold them."""
    return {"id": "harder", "kind": kind, "input": told, "expected": expected, "tol": {"abs": tolerance}}


# --- survival -------------------------------------------------------------------------------------------------------


def beta(a: int, b: int) -> Fraction:
    """The beta function of whole numbers."""
    return Fraction(math.factorial(a - 1) * math.factorial(b - 1), math.factorial(a + b - 1))


def below(x: float, a: int, b: int) -> float:
    """The chance that a Beta(a, b) is below x: that of a + b - 1 throws at least a succeed."""
    n = a + b - 1
    return sum(math.comb(n, k) * x**k * (1 - x) ** (n - k) for k in range(a, n + 1))


def quantile(p: float, a: int, b: int) -> float:
    """Where a Beta(a, b) has that chance below it, by halving."""
    low, high = 0.0, 1.0
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if below(middle, a, b) < p else (low, middle)
    return low


@pytest.mark.parametrize(
    ("prior", "litters", "born", "at_least"),
    [
        ((1, 1), [], 1, 1),
        ((8, 2), [(0, 0), (0, 0)], 8, 0),
        ((1, 1), [(12, 0)], 12, 12),
        ((2, 3), [(1, 1)], 14, 15),
        ((9, 2), [(8, 8), (7, 7), (9, 9), (10, 10)], 9, 9),
        ((41, 9), [(8, 1), (12, 12)], 10, 7),
    ],
)
def test_posterior_of_a_doe(prior: tuple[int, int], litters: list[tuple[int, int]], born: int, at_least: int) -> None:
    """No litter, empty litters, all lost, all kept, more wanted than born."""
    a = prior[0] + sum(kept for _, kept in litters)
    b = prior[1] + sum(alive - kept for alive, kept in litters)
    tail = sum(math.comb(born, k) * beta(a + k, b + born - k) / beta(a, b) for k in range(at_least, born + 1))
    expected = {
        "alpha": a,
        "beta": b,
        "mean": a / (a + b),
        "sd": math.sqrt(a * b / (a + b + 1)) / (a + b),
        "ci90": [quantile(0.05, a, b), quantile(0.95, a, b)],
        "ci80": [quantile(0.1, a, b), quantile(0.9, a, b)],
        "p_at_least": float(tail),
        "expected": born * a / (a + b),
    }
    told = {"prior": list(prior), "litters_born_weaned": litters, "next_litter": {"born": born, "at_least": at_least}}
    assert misses(case("survival_posterior", told, expected)) == []


@pytest.mark.parametrize("doe", [(1, 1), (2, 9), (45, 8), (60, 3)])
@pytest.mark.parametrize("other", [(1, 1), (30, 10), (8, 45)])
def test_one_doe_against_another(doe: tuple[int, int], other: tuple[int, int]) -> None:
    """The exact chance for whole numbers: a sum of beta functions."""
    (a, b), (c, d) = doe, other
    chance = sum(beta(c + i, b + d) / ((b + i) * beta(1 + i, b) * beta(c, d)) for i in range(a))
    assert misses(case("survival_compare", {"doe1": list(doe), "doe2": list(other)}, {"p_better": float(chance)}, 1e-10)) == []


def test_kaplan_meier_with_ties_and_all_gone() -> None:
    """Deaths and sales on one day, a day nobody died, before the first and after the last."""
    told = {"time": [3, 3, 3, 5, 8, 8, 8, 9], "died": [1, 1, 0, 0, 1, 0, 1, 1], "ask": [0, 2.5, 3, 4, 5, 8, 9, 40]}
    after_3, after_8 = Fraction(6, 8), Fraction(6, 8) * Fraction(2, 4)
    expected = {
        "0": 1.0,
        "2.5": 1.0,
        "3": float(after_3),
        "4": float(after_3),
        "5": float(after_3),
        "8": float(after_8),
        "9": 0.0,
        "40": 0.0,
    }
    assert misses(case("survival_km", told, {"S": expected})) == []
    assert misses(case("survival_km", {"time": [4, 6], "died": [0, 0], "ask": [6]}, {"S": {"6": 1.0}})) == []


def logistic(litters: list[tuple[int, int]]) -> dict[str, float]:
    """Line and standard error over litters 1, 2, 3 ... by Newton's steps."""
    at, slope = 0.0, 0.0
    for _ in range(60):
        chances = [1 / (1 + math.exp(-(at + slope * x))) for x in range(1, len(litters) + 1)]
        g0 = sum(kept - n * p for (n, kept), p in zip(litters, chances, strict=True))
        g1 = sum(x * (kept - n * p) for x, ((n, kept), p) in enumerate(zip(litters, chances, strict=True), 1))
        w = [n * p * (1 - p) for (n, _), p in zip(litters, chances, strict=True)]
        h0, h1, h2 = (sum(x**k * each for x, each in enumerate(w, 1)) for k in range(3))
        size = h0 * h2 - h1**2
        at, slope = at + (h2 * g0 - h1 * g1) / size, slope + (h0 * g1 - h1 * g0) / size
    error = math.sqrt(h0 / size)
    z = slope / error
    return {"logit_slope_per_litter": slope, "intercept": at, "se_slope": error, "z": z, "p_two_sided": math.erfc(abs(z) / math.sqrt(2))}


@pytest.mark.parametrize(
    "litters",
    [
        [(8, 4), (8, 4), (8, 4), (8, 4)],
        [(1, 1), (12, 3), (2, 1), (9, 8)],
        [(10, 9), (10, 9), (10, 8), (10, 6), (10, 2), (10, 1)],
        [(7, 7), (6, 1), (9, 9), (5, 0), (8, 6)],
    ],
)
def test_survival_over_her_litters(litters: list[tuple[int, int]]) -> None:
    """Level, steep and ragged lines."""
    assert misses(case("survival_trend", {"litters_born_weaned": litters}, logistic(litters), 1e-6)) == []


def likeliest_beta(units: list[tuple[int, int]]) -> tuple[float, float]:
    """The Beta under which these counts are likeliest: a simplex search from six places, no slopes, factorials multiplied out."""

    def against(guess: np.ndarray) -> float:
        a, b = (float(one) for one in np.exp(guess))
        rising = ((a, k, 1) for _, k in units), ((b, n - k, 1) for n, k in units), ((a + b, n, -1) for n, _ in units)
        return -sum(sign * math.log(start + step) for start, steps, sign in itertools.chain(*rising) for step in range(steps))

    starts = [(math.log(weight * mean), math.log(weight * (1 - mean))) for weight in (2, 20, 200) for mean in (0.3, 0.8)]
    found = (minimize(against, start, method="Nelder-Mead", options={"xatol": 1e-9, "fatol": 1e-11, "maxiter": 4000}) for start in starts)
    best = np.exp(min(found, key=lambda one: float(one.fun)).x)
    return float(best[0]), float(best[1])


@pytest.mark.parametrize(("seed", "groups", "weight"), [(1, 6, 1.0), (2, 15, 5.0), (3, 25, 20.0), (4, 40, 3.0)])
def test_prior_of_few_and_of_many_groups(seed: int, groups: int, weight: float) -> None:
    """Groups alike or unlike, few or many: the prior is the one that makes what was seen likeliest."""
    drawn = np.random.default_rng(seed)
    born = drawn.integers(3, 30, groups)
    kept = drawn.binomial(born, drawn.beta(0.7 * weight, 0.3 * weight, groups))
    units = [(int(n), int(k)) for n, k in zip(born, kept, strict=True)]
    alpha, beta_ = likeliest_beta(units)
    told = {"units_n_k": [list(one) for one in units]}
    assert (
        misses(
            {"id": "harder", "kind": "empirical_bayes", "input": told, "expected": {"alpha": alpha, "beta": beta_}, "tol": {"rel": 1e-4}}
        )
        == []
    )


def test_a_line_that_would_be_infinitely_steep_is_no_line() -> None:
    """All kept, then none: complete separation has no slope."""
    told = {"litters_born_weaned": [(8, 8), (8, 8), (8, 0), (8, 0)]}
    assert misses(case("survival_trend", told, {"too_few": True, "logit_slope_per_litter": None})) == []


# --- growth ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("curve", "ages", "target"),
    [
        ((1050.0, 3.2, 0.031), [20, 40, 60, 80, 100], 700.0),
        ((6800.0, 4.6, 0.0195), [28, 56, 84, 112, 140, 168], 4000.0),
        ((3600.0, 3.9, 0.0264), [30, 70, 110], 2268.0),
        ((2400.0, 3.6, 0.035), [14, 28, 42, 56, 70, 84], 2400.1),
        ((4200.0, 4.1, 0.024), [70, 21, 49, 35, 63, 56, 42], 1.0),
    ],
)
def test_growth_curves_of_all_sizes(curve: tuple[float, float, float], ages: list[int], target: float) -> None:
    """Dwarf and giant, three weighings, a target just out of reach, weighings in any order, over a leap day."""
    adult, b, k = curve
    weights = [adult * math.exp(-b * math.exp(-k * age)) for age in ages]
    age = -math.log(math.log(adult / target) / b) / k if target < adult else None
    born = date(2028, 1, 31)
    day = None if age is None or age < 0 else (born + timedelta(math.ceil(age))).isoformat()
    expected: dict[str, Any] = {
        "A": adult,
        "b": b,
        "k": k,
        "rss": 0.0,
        "inflection_age": math.log(b) / k,
        "max_gain_per_day": adult * k / math.e,
    }
    if age is None or age > 0:
        expected |= {"target_age_days": age, "target_date": day, "reachable": age is not None}
    told = {"age_days": ages, "weight_g": weights, "target_g": target, "born": born.isoformat()}
    assert misses({**case("gompertz", told, expected), "tol": {"rel": 1e-4, "days": 0.05}}) == []


# --- coat genes -----------------------------------------------------------------------------------------------------


def summed(rows: list[list[str | None]], allowed: dict[str, list[str]], shares: dict[str, Fraction], target: str) -> dict[str, str] | None:
    """The chances of the target's genotypes, over every genotype of everybody; None where nothing fits."""
    alleles = list(shares)
    genotypes = [f"{one}/{other}" for at, one in enumerate(alleles) for other in alleles[at:]]

    def gametes(parent: str | None, told: dict[str, str]) -> dict[str, Fraction]:
        if parent is None:
            return shares
        one, other = told[parent].split("/")
        return {allele: Fraction((one == allele) + (other == allele), 2) for allele in alleles}

    def chance(row: list[str | None], told: dict[str, str]) -> Fraction:
        one, other = told[str(row[0])].split("/")
        sire, dam = gametes(row[1], told), gametes(row[2], told)
        return sire[one] * dam[other] + (sire[other] * dam[one] if one != other else 0)

    names = [str(row[0]) for row in rows]
    totals: dict[str, Fraction] = {}
    for each in itertools.product(*(allowed.get(name, genotypes) for name in names)):
        told = dict(zip(names, each, strict=True))
        whole = math.prod((chance(row, told) for row in rows), start=Fraction(1))
        totals[told[target]] = totals.get(told[target], Fraction(0)) + whole
    everything = sum(totals.values())
    return None if not everything else {name: str(part / everything) for name, part in totals.items() if part}


@pytest.mark.parametrize("seed", range(14))
def test_hidden_genes_of_small_families_with_loops(seed: int) -> None:
    """Two and three alleles, unknown parents, sisters bred to their father, some coats never seen; impossible families say so."""
    random = Random(seed)
    three = seed % 2 == 0
    locus, shares = (
        ("A", {"A": Fraction(1, 2), "at": Fraction(1, 3), "a": Fraction(1, 6)})
        if three
        else ("D", {"D": Fraction(3, 5), "d": Fraction(2, 5)})
    )
    alleles = list(shares)
    shown = {one: [f"{one}/{other}" for other in alleles[at:]] for at, one in enumerate(alleles)}
    rows: list[list[str | None]] = []
    for at in range(5 if three else 8):
        born = [f"r{one}" for one in range(at)]
        parents = random.sample(born, 2) if len(born) > 1 and random.random() < 0.8 else [None, None]
        rows.append([f"r{at}", *(None if random.random() < 0.15 else parent for parent in parents)])
    allowed = {str(row[0]): shown[random.choice(alleles)] for row in rows if random.random() < 0.7}
    target = f"r{random.randrange(len(rows))}"
    found = summed(rows, allowed, shares, target)
    told = {
        "locus": locus,
        "founder_allele_freq": {name: str(part) for name, part in shares.items()},
        "pedigree": rows,
        "allowed_genotypes": allowed,
        "target": target,
    }
    kind, expected = ("colour_error", {"impossible": True}) if found is None else ("colour_posterior", {"posterior": found})
    assert misses(case(kind, told, expected)) == []
