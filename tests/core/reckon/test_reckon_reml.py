"""A herd's own variances: where the answer is known in closed form, where they are held back, where they can't be told."""

from __future__ import annotations

from statistics import fmean, variance

import numpy as np
import pytest

from core.reckon.mixed_model import Record, Variances
from core.reckon.pedigree import Pedigree, pedigree
from core.reckon.reml import Published, estimated

START = Variances(1.0, 1.0)


def book(animals: int) -> Pedigree:
    """So many that are not related."""
    found = pedigree([(f"a{at}", None, None) for at in range(animals)])
    assert isinstance(found, Pedigree)
    return found


def repeated(animals: int, times: int, between: float, seed: int = 3) -> list[list[float]]:
    """Each animal measured so many times."""
    rng = np.random.default_rng(seed)
    return [(10 + rng.normal(0, between) + rng.normal(0, 1, times)).tolist() for _ in range(animals)]


def records(values: list[list[float]]) -> list[Record]:
    """The measurements as records."""
    return [Record(f"a{at}", value) for at, each in enumerate(values) for value in each]


def of_analysis(values: list[list[float]]) -> tuple[float, float]:
    """Between and within variance by the analysis of variance: in a balanced table that is what REML gives."""
    times = len(values[0])
    within = fmean(variance(each) for each in values)
    return (variance([fmean(each) for each in values]) * times - within) / times, within


def test_a_balanced_table_gives_the_analysis_of_variance() -> None:
    """Mean squares between less within, over the records of each; and the rest."""
    values = repeated(30, 5, 1.5)
    found = estimated(book(30), records(values), START)
    between, within = of_analysis(values)
    assert found.settled
    assert found.records == 150
    assert found.variances.animal == pytest.approx(between, rel=1e-4)
    assert found.variances.residual == pytest.approx(within, rel=1e-4)
    assert found.shares["animal"] == pytest.approx(between / (between + within), rel=1e-4)


def test_a_further_effect_in_a_balanced_table() -> None:
    """Litters as the repeated thing and unrelated kits: what kits differ by is the kit's own and the rest together."""
    values = repeated(24, 4, 1.2, seed=5)
    told = [Record(f"a{at * 4 + kit}", value, {}, {"litter": str(at)}) for at, each in enumerate(values) for kit, value in enumerate(each)]
    found = estimated(book(96), told, Variances(0.2, 0.5, {"litter": 0.3}), {"animal": Published(0.25, 0.01)})
    between, within = of_analysis(values)
    assert found.variances.others["litter"] == pytest.approx(between, rel=0.02)
    assert found.variances.animal + found.variances.residual == pytest.approx(within, rel=0.02)
    assert found.shares["animal"] == pytest.approx(0.25, abs=0.02)


def test_the_published_share_holds_few_records_and_gives_way_to_many() -> None:
    """Ten animals hardly move it, four hundred do."""
    published = {"animal": Published(0.2, 0.05)}
    few, many = (estimated(book(n), records(repeated(n, 4, 1.5)), START, published).shares["animal"] for n in (8, 400))
    assert 0.2 < few < 0.4
    assert many > 0.55


def test_nothing_that_differs_between_animals_does_not_settle() -> None:
    """Means that differ less than chance makes them: the likelihood runs to the edge, and the published variances serve."""
    values = [[1.0, 3.0], [3.0, 1.0], [2.0, 2.1], [2.1, 2.0]]
    assert not estimated(book(4), records(values), START).settled


def test_no_more_records_than_fixed_effects_tell_nothing() -> None:
    """Refused, with the count."""
    told = [Record("a0", 1.0, {"sex": "buck"}), Record("a1", 2.0, {"sex": "doe"})]
    with pytest.raises(ValueError, match="2 records"):
        estimated(book(2), told, START)


def test_records_that_do_not_vary_tell_nothing() -> None:
    """Every litter of the same size: not settled, and what was believed stands."""
    found = estimated(book(30), records([[7.0] * 4] * 30), START)
    assert not found.settled
    assert found.variances == START
