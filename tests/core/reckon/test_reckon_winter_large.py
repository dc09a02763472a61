"""The winter's choice of a large herd: near the best, within limits and pins, and nothing said that is not so."""

from __future__ import annotations

import ctypes
import os
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from core.reckon.choose import Guess
from core.reckon.winter import solving
from core.reckon.winter.choose import NEARLY, best
from core.reckon.winter.programme import LARGE, asked, programme
from core.reckon.winter.solving import ceiling, solved, unheard
from core.reckon.winter.swaps import Swaps
from core.reckon.winter.types import Candidate, Choice, Limits, Unfit

BREEDS = "ABC"


@cache
def herd() -> tuple[Candidate, ...]:
    """Two hundred animals of three breeds, a few of them pinned."""
    chance = np.random.default_rng(5)
    return tuple(
        Candidate(
            f"{at:03d}",
            "buck" if at % 8 == 0 else "doe",
            BREEDS[at % len(BREEDS)],
            Guess(float(chance.normal(6000, 3000)), 1000.0),
            grown=at % 2 == 0,
            feed_g=float(chance.uniform(8000, 20000)),
            pin={30: "keep", 60: "go", 91: "go", 95: "keep", 97: "go", 101: "keep"}.get(at),  # type: ignore[arg-type]
            one_more=800.0,
        )
        for at in range(LARGE + 50)
    )


def kin(buck: str, doe: str) -> float:
    """Some are related."""
    return (int(buck) * 7 + int(doe) * 3) % 5 / 20


LIMITS = Limits(
    cages=90, feed_g=1_200_000.0, bucks=dict.fromkeys(BREEDS, 2), litters={"A": 5}, highest_coi=0.15, coi_cost=20000.0, unmated=3000.0
)


@cache
def choice() -> Choice:
    """The choice of that herd."""
    found = best(herd(), LIMITS, kin)
    assert isinstance(found, Choice)
    return found


def test_limits_and_pins_hold_and_no_choice_is_much_better() -> None:
    """Within limits and pins; the best to the last gram is no more than the tolerance above."""
    found = choice()
    kept = [one for one in herd() if one.key in found.kept]
    assert len(kept) <= 90
    assert sum(one.feed_g for one in kept) <= 1_200_000
    assert all(sum(one.sex == "buck" and one.grown and one.breed == breed for one in kept) <= 2 for breed in BREEDS)
    assert all((one.key in found.kept) == (one.pin == "keep") for one in herd() if one.pin)
    assert len({mating.doe for mating in found.matings if mating.doe in {one.key for one in kept if one.breed == "A"}}) >= 5
    whole = programme(asked(herd(), LIMITS, kin))
    exact = solved(whole, *whole.bounds())
    assert exact is not None
    top = whole.asked.worth({one.key for one, stays in zip(whole.asked.animals, exact.kept, strict=True) if stays})
    assert top * (1 - NEARLY) - 1 <= found.worth <= top + 0.1


def test_what_a_pin_is_said_to_cost_can_be_had() -> None:
    """Without the pin, with the swap that its price tells, the set is worth so much more, and fits."""
    found = choice()
    assert found.price_of_pin
    whole = programme(asked(tuple(replace(one, pin=None) for one in herd()), LIMITS, kin))
    top = ceiling(whole, *whole.bounds())
    exact = solved(whole, *whole.bounds())
    assert top is not None
    assert exact is not None
    swaps = Swaps(whole, exact, top)
    for key, price in found.price_of_pin.items():
        free = (set(found.kept) ^ {key}) - set(price.stay) | set(price.go)
        flags = np.array([one.key in free for one in whole.asked.animals])
        assert swaps.objective(flags) is not None
        assert whole.asked.worth(free) - found.worth == pytest.approx(price.worth)


def test_those_said_to_flip_do() -> None:
    """Moved by its `one_more`, an animal said to flip leaves its place in a choice that is worth more."""
    found = choice()
    assert found.flips
    whole = programme(asked(herd(), LIMITS, kin))
    kept = np.array([one.key in found.kept for one in whole.asked.animals])
    value = Swaps(whole, solving.Solved(0.0, kept), ceiling(whole, *whole.bounds())).objective(kept)  # type: ignore[arg-type]
    assert value is not None
    for key in found.flips[::10]:
        low, high = whole.bounds()
        at = whole.asked.at[key]
        low[at] = high[at] = float(not kept[at])
        other = solved(whole, low, high)
        assert other is not None
        assert other.objective > value - 800.0 / whole.scale


def test_nothing_fits_is_found_in_a_large_herd_too() -> None:
    """One cage, three pins: three cages are needed, and more for the breeds' pairs are not asked."""
    found = best(herd(), Limits(cages=1), kin)
    assert isinstance(found, Unfit)
    assert (found.change.limit, found.change.to) == ("cages", 3.0)


def test_the_swap_search_agrees_with_the_solver() -> None:
    """What a set is worth by itself is what the solver says of it."""
    whole = programme(asked(herd(), LIMITS, kin))
    exact, top = solved(whole, *whole.bounds()), ceiling(whole, *whole.bounds())
    assert exact is not None
    assert top is not None
    assert Swaps(whole, exact, top).objective(exact.kept) == pytest.approx(exact.objective)


def test_what_the_solver_writes_is_not_heard(capfd: pytest.CaptureFixture[str]) -> None:
    """A line written past Python stays out of standard output; before and after it is heard."""
    with unheard():
        ctypes.CDLL(None).puts(b"a line of the solver's own")
    os.write(1, b"an answer")
    assert capfd.readouterr().out == "an answer"


def test_no_standard_output_at_all(monkeypatch: pytest.MonkeyPatch) -> None:
    """With standard output closed nothing is silenced and nothing fails."""

    def closed(_: int) -> int:
        raise OSError

    monkeypatch.setattr(solving.os, "dup", closed)
    done = []
    with unheard():
        done.append(1)
    assert done == [1]


def test_two_at_once_leave_standard_output_as_it_was(capfd: pytest.CaptureFixture[str]) -> None:
    """Silence is one thread's at a time: after many, what is written is heard."""

    def quiet(_: int) -> None:
        with unheard():
            ctypes.CDLL(None).puts(b"a line of the solver's own")

    with ThreadPoolExecutor(4) as threads:
        list(threads.map(quiet, range(40)))
    os.write(1, b"an answer")
    assert capfd.readouterr().out == "an answer"
