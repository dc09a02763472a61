"""How common a form of a gene is among founders."""

from __future__ import annotations

import pytest

from core.reckon.founders import founder_shares, must_carry

DENSE, DILUTE = ("D/D", "D/d"), ("d/d",)
TWO = ("D", "d")


def test_what_a_coat_cannot_do_without() -> None:
    """A dense coat needs D, a dilute one d; one that leaves everything or nothing needs none."""
    assert must_carry([DENSE, DENSE, DILUTE]) == {"D", "d"}
    assert must_carry([DENSE]) == {"D"}
    assert must_carry([("D/D", "D/d", "d/d"), ()]) == frozenset()


def test_a_form_that_no_coat_shows_is_rare() -> None:
    """Only the plain form is common; where both were shown and no founder tells, they are alike."""
    assert founder_shares("D", TWO, frozenset("D"), ())["d"] == pytest.approx(0.02)
    assert founder_shares("D", TWO, frozenset(), ())["d"] == pytest.approx(0.02)
    assert founder_shares("En", ("En", "en"), frozenset(), ())["En"] == pytest.approx(0.02)
    assert founder_shares("D", TWO, frozenset("Dd"), ()) == {"D": pytest.approx(0.5), "d": pytest.approx(0.5)}


def test_founders_coats_are_counted_gene_by_gene() -> None:
    """One dilute founder and three dense ones: the share at which expected genes come back to themselves (quadratic, by hand).

    q = (2 * 1/2 + 2 + 6 q / (1 + q)) / 10, for a dense founder carries d with 2q / (1 + q).
    """
    q = founder_shares("D", TWO, frozenset("Dd"), ((DENSE, 3), (DILUTE, 1)))["d"]
    assert q == pytest.approx((3 + 6 * q / (1 + q)) / 10, abs=1e-8)
    assert 0.4 < q < 0.6


def test_many_founders_outweigh_the_first_guess() -> None:
    """A hundred dense founders: d is rare whatever was shown once."""
    assert founder_shares("D", TWO, frozenset("Dd"), ((DENSE, 100),))["d"] < 0.1
    assert founder_shares("D", TWO, frozenset("Dd"), ((DENSE, 10**7),))["d"] < 0.01
