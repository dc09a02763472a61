"""Whatever a small farm holds and wishes: the plan keeps to the limits in force and to a person's word, and its parts agree."""

from __future__ import annotations

from random import Random

import pytest

from core.reports.keep_or_cull import keep_or_cull
from tests.farm import TODAY, ago
from tests.herds import Barn

WISHES = ("cages", "mouths", "does_a_breed", "litters_wanted", "bucks_a_breed")


def farm(seed: int) -> Barn:
    """Up to a dozen animals of up to three breeds, some with litters, some pinned, with some wishes."""
    chance, barn = Random(seed), Barn()
    for at, breed in enumerate(("New Zealand", "Mini Rex", None)[: chance.randint(1, 3)]):
        bucks = [f"B{at}{one}" for one in range(chance.randint(0, 2))]
        does = [f"D{at}{one}" for one in range(chance.randint(0, 3))]
        for buck in bucks:
            barn.buck(buck, age=chance.choice([700, 200, 90]), breed=breed)
        for doe in does:
            barn.doe(doe, age=chance.choice([700, 400, 200, 90]), breed=breed)
        for doe in (one for one in does if bucks and ago(400) >= (barn.find(one).born or TODAY)):
            alive = chance.randint(3, 9)
            barn.litter(doe, chance.choice(bucks), 100, alive, weaned=chance.randint(1, alive))
        for tag in (one for one in (*bucks, *does) if chance.random() < 0.25):
            barn.say("planned", who=tag, what=chance.choice(["keep", "cull", "sell", "review"]))
    for name in (one for one in WISHES if chance.random() < 0.5):
        barn.set(name, chance.randint(0, 6))
    return barn


@pytest.mark.parametrize("seed", range(40))
def test_limits_and_pins_hold(seed: int) -> None:
    """Those that stay fit the cages and mouths in force; what a person said stands; the heads add up; the words come."""
    barn = farm(seed)
    told = keep_or_cull(barn.herd, TODAY)
    asked, limits = told.winter.asked, told.winter.asked.in_force
    staying = [one for one in asked.candidates if one.key in asked.kept]
    assert limits.cages is None or sum(one.places for one in staying) <= limits.cages
    assert limits.mouths is None or sum(one.mouths for one in staying) <= limits.mouths
    for one in asked.candidates:
        assert one.pin is None or (one.key in asked.kept) is (one.pin == "keep")
    plan = told.document()["plan"]
    assert sum(plan[word] for word in ("keep", "sell", "cull", "watch")) == sum(one.count for one in told.verdicts)
    assert plan["fits"] is (not plan["changes"])
    assert told.winter_reply().lines[-1] == "This is advice from the notes. You decide." or not told.verdicts
