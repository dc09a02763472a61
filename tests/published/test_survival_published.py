"""Kit survival against worked answers; each case of cases.json names its source (survival_*, empirical_bayes)."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from core.reckon.survival import Prior, Survival, chance_better, herd_prior, log_likelihood, moment_prior, survival
from core.reckon.trend import survival_trend
from tests.published.worked_cases import named, of_kind

DEFAULT = Prior(1.0, 1.0)


@pytest.mark.parametrize("case", of_kind("survival_posterior"), ids=named)
def test_a_does_survival_is_the_worked_posterior(case: dict[str, Any]) -> None:
    """Posterior Beta, its mean, spread and 90 % interval."""
    told, expected = case["input"], case["expected"]
    found = survival([tuple(litter) for litter in told["litters_born_weaned"]], Prior(*told["prior"]), level=0.9)
    assert (found.alpha, found.beta, found.estimate, found.deviation, found.low, found.high) == pytest.approx(
        (expected["alpha"], expected["beta"], expected["mean"], expected["sd"], *expected["ci90"]), abs=1e-6
    )


@pytest.mark.parametrize("case", of_kind("survival_posterior"), ids=named)
def test_the_next_litter_is_the_worked_prediction(case: dict[str, Any]) -> None:
    """Beta-binomial tail and mean of the next litter."""
    told, expected = case["input"], case["expected"]
    found = survival([tuple(litter) for litter in told["litters_born_weaned"]], Prior(*told["prior"]))
    following = told["next_litter"]
    assert found.chance_at_least(following["born"], following["at_least"]) == pytest.approx(expected["p_at_least"], abs=1e-6)
    assert found.expected(following["born"]) == pytest.approx(expected["expected"], abs=1e-6)


@pytest.mark.parametrize("case", of_kind("survival_compare"), ids=named)
def test_the_chance_that_one_doe_is_better_is_the_worked_one(case: dict[str, Any]) -> None:
    """P(p1 > p2) of two Beta posteriors."""
    one, other = (Survival(0, 0, 0, *case["input"][doe]) for doe in ("doe1", "doe2"))
    assert chance_better(one, other) == pytest.approx(case["expected"]["p_better"], abs=1e-7)


@pytest.mark.parametrize("case", of_kind("empirical_bayes"), ids=named)
def test_the_herds_prior_is_the_worked_maximum(case: dict[str, Any]) -> None:
    """Beta-binomial maximum likelihood and the shrunk means it leads to."""
    told, expected = [tuple(unit) for unit in case["input"]["units_n_k"]], case["expected"]
    found = herd_prior(told, DEFAULT)
    assert (found.alpha, found.beta, found.mean) == pytest.approx(
        (expected["alpha"], expected["beta"], expected["mean"]), rel=case["tol"]["rel"]
    )
    alive, kept = np.array(told, dtype=float).T
    assert log_likelihood(alive, kept, found.alpha, found.beta) == pytest.approx(expected["loglik"], abs=1e-6)
    shrunk = [survival([unit], found).estimate for unit in told[:5]]
    assert shrunk == pytest.approx(expected["posterior_mean_first5"], rel=case["tol"]["rel"])


def test_the_moment_fit_is_the_one_printed_for_the_rat_tumours() -> None:
    """Gelman et al., Bayesian Data Analysis, table 5.1: (1.4, 8.6) from the first 70 groups shrinks 4 of 14 to .223 (from memory)."""
    told = [tuple(unit) for unit in next(case for case in of_kind("empirical_bayes") if case["id"] == "eb-01")["input"]["units_n_k"]]
    found = moment_prior(told[:70])
    assert found is not None
    assert (round(found.alpha, 1), round(found.beta, 1)) == (1.4, 8.6)
    assert round(survival([told[70]], found).estimate, 3) == 0.223


@pytest.mark.parametrize("case", of_kind("survival_trend"), ids=named)
def test_the_trend_over_litters_is_the_worked_regression(case: dict[str, Any]) -> None:
    """Binomial logistic regression on the litter number, without the prior."""
    expected = case["expected"]
    found = survival_trend([tuple(litter) for litter in case["input"]["litters_born_weaned"]], prior_sd=0.5)
    assert found is not None
    assert found.fitted is not None
    line = found.fitted
    assert (line.slope, line.intercept, line.se_slope, line.z, line.p_two_sided) == pytest.approx(
        tuple(expected[key] for key in ("logit_slope_per_litter", "intercept", "se_slope", "z", "p_two_sided")), abs=case["tol"]["abs"]
    )
