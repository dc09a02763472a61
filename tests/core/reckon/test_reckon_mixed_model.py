"""Breeding values: the sparse equations against the direct formula, and what a breeder may conclude."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.reckon.kinship import inbreeding_array, kinship
from core.reckon.mixed_model import Record, Variances, breeding_values, relationship_inverse
from core.reckon.pedigree import Pedigree, Row, pedigree
from tests.strategies import pedigree_rows

VARIANCES = Variances(20.0, 40.0, {"litter": 10.0})


def book(*rows: Row) -> Pedigree:
    found = pedigree(rows)
    assert isinstance(found, Pedigree)
    return found


FAMILY = book(("k1", "s", "d"), ("k2", "s", "d"), ("k3", "t", "d"), ("k4", "t", "e"))
RECORDS = [
    Record("k1", 105.0, {"sex": "buck", "season": "spring"}, {"litter": "d1"}),
    Record("k2", 111.0, {"sex": "doe", "season": "spring"}, {"litter": "d1"}),
    Record("k3", 96.0, {"sex": "doe", "season": "autumn"}, {"litter": "d2"}),
    Record("k4", 93.0, {"sex": "buck", "season": "autumn"}, {"litter": "e1"}),
]


@given(rows=pedigree_rows(), values=st.lists(st.floats(min_value=-50, max_value=50), min_size=14, max_size=14))
def test_the_sparse_equations_are_the_direct_formula(rows: list[Row], values: list[float]) -> None:
    """Generalised least squares with the full V matrix gives the same values and errors."""
    told = book(*rows)
    records = [Record(animal, values[at], {"sex": "ab"[at % 2]}, {"litter": str(at // 3)}) for at, animal in enumerate(told.ids)]
    found = breeding_values(told, records, VARIANCES)
    a = 2 * kinship(told, told.ids).table * VARIANCES.animal
    litter = np.array([[float(i // 3 == j // 3) for j in range(len(told))] for i in range(len(told))])
    v = a + litter * 10 + np.eye(len(told)) * 40
    x = np.array([[float(at % 2 == 0), float(at % 2 == 1)] for at in range(len(told))])
    weighed = np.linalg.inv(v)
    projector = weighed - weighed @ x @ np.linalg.pinv(x.T @ weighed @ x) @ x.T @ weighed
    y = np.array([record.value for record in records])
    assert list(found.values.values()) == pytest.approx(list(a @ projector @ y), abs=1e-6)
    assert found.error == pytest.approx(a - a @ projector @ a, abs=1e-6)


@given(rows=pedigree_rows())
def test_the_direct_inverse_is_the_inverse_of_twice_the_kinship(rows: list[Row]) -> None:
    """Two methods agree on every small book."""
    told = book(*rows)
    product = relationship_inverse(told, inbreeding_array(told)).toarray() @ (2 * kinship(told, told.ids).table)
    assert product == pytest.approx(np.eye(len(told)), abs=1e-9)


def test_asking_for_few_gives_the_same_errors() -> None:
    """Only the errors of those asked about are solved; values are told for all."""
    everyone, two = breeding_values(FAMILY, RECORDS, VARIANCES), breeding_values(FAMILY, RECORDS, VARIANCES, ["t", "s"])
    assert set(two.asked) == {"s", "t"}
    assert two.of("s").pev == pytest.approx(everyone.of("s").pev)
    assert two.covariance("s", "t") == pytest.approx(everyone.covariance("s", "t"))
    assert set(two.values) == set(FAMILY.ids)


def test_the_chance_to_be_better_uses_the_error_of_the_difference() -> None:
    """The two chances add up to one; of litter mates the heavier for its sex has the better one; nobody beats itself."""
    found = breeding_values(FAMILY, RECORDS, VARIANCES)
    assert found.better("k2", "k4") + found.better("k4", "k2") == pytest.approx(1)
    assert found.better("k2", "k1") > 0.5
    assert found.better("s", "s") == 0.5


def test_bucks_confounded_with_season_are_told_apart_no_better_than_before() -> None:
    """One buck's kits all in spring, the other's all in autumn: the records say nothing of the two."""
    found = breeding_values(
        book(("k1", "s", None), ("k2", "t", None)),
        [Record("k1", 105.0, {"season": "spring"}), Record("k2", 90.0, {"season": "autumn"})],
        Variances(20.0, 40.0),
    )
    assert found.better("s", "t") == pytest.approx(0.5)
    assert found.of("s").reliability == pytest.approx(0)


def test_values_can_be_told_against_a_group() -> None:
    """As deviations from its mean; an empty group changes nothing."""
    found = breeding_values(FAMILY, RECORDS, VARIANCES)
    beside = found.relative_to(["k1", "k2"])
    assert beside["k1"] + beside["k2"] == pytest.approx(0)
    assert found.relative_to([]) == dict(found.values)


def test_a_contrast_tells_the_difference_of_two_levels_or_nothing() -> None:
    """Known levels: a difference with its error. A level never seen: None."""
    found = breeding_values(FAMILY, RECORDS, VARIANCES)
    sexes = found.contrast("sex", "buck", "doe")
    assert sexes is not None
    assert sexes.standard_error > 0
    assert found.contrast("sex", "buck", "unknown") is None


def test_without_records_everybody_is_average_and_nothing_is_known() -> None:
    """Value 0, the whole variance as error."""
    found = breeding_values(FAMILY, [], Variances(20.0, 40.0))
    assert found.of("k1").value == 0
    assert found.of("k1").reliability == pytest.approx(0)
    assert found.of("k1").accuracy == pytest.approx(0, abs=1e-6)


def test_without_fixed_factors_there_is_one_mean() -> None:
    """Two unrelated animals, equal values: the mean is theirs."""
    told = book(("a", None, None), ("b", None, None))
    found = breeding_values(told, [Record("a", 12.0), Record("b", 12.0)], Variances(1.0, 2.0))
    assert found.fitted == pytest.approx((12.0, 12.0))


def test_the_interval_holds_the_value_at_its_middle() -> None:
    """80 % by default: 1.2816 standard errors to each side."""
    one = breeding_values(FAMILY, RECORDS, VARIANCES).of("k1")
    low, high = one.interval()
    assert ((low + high) / 2, (high - low) / 2) == pytest.approx((one.value, 1.2815516 * one.standard_error))


def test_a_slope_is_told_with_its_error_or_not_at_all() -> None:
    """What one more kit in the nest costs: least squares where nothing else varies much; unknown names and flat columns give nothing."""
    rows = [(f"k{at}", None, None) for at in range(12)]
    told = [Record(f"k{at}", 50.0 - 2.0 * (at % 4), {}, {}, {"nest": float(at % 4), "flat": 3.0}) for at in range(12)]
    found = breeding_values(book(*rows), told, Variances(1e-6, 1.0))
    slope = found.slope("nest")
    assert slope is not None
    assert slope.difference == pytest.approx(-2.0, abs=1e-6)
    assert slope.standard_error == pytest.approx((1.0 / 15.0) ** 0.5, rel=1e-3)
    assert found.slope("flat") is None
    assert found.slope("weather") is None


def test_a_nurse_has_values_of_her_own() -> None:
    """Kits of one dam raised by another: what they have of milk is their nurse's, and all of the variance adds up to a record's."""
    rows = [("kit1", "s", "d"), ("kit2", "s", "d"), ("kit3", "s", "e"), ("kit4", "s", "e")]
    told = [Record("kit1", 12.0, nurse="f"), Record("kit2", 12.0, nurse="f"), Record("kit3", 8.0), Record("kit4", 8.0), Record("s", 10.0)]
    variances = Variances(1.0, 1.0, {}, maternal=2.0, covariance=-0.5)
    found = breeding_values(book(("f", None, None), *rows), told, variances)
    assert variances.total == pytest.approx(3.5)
    assert found.maternal["f"].value > 0 > found.maternal["e"].value
    assert abs(found.maternal["d"].value) < found.maternal["f"].value / 4
    twice = variances.times(2.0)
    assert (twice.total, twice.covariance) == (7.0, -1.0)
