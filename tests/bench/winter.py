"""How long the winter plan takes, by the size of the herd: `python -m tests.bench.winter`.

Invented herds of four breeds in families, twenty notes an animal, with half as many cages as animals, asked for verdicts and plan as
`keep` is. `fresh` with nothing reckoned before; `warm` after one more weighing, as the next question finds it; `choice` is the choice
alone, `unfit` the slower of two wishes that nothing fits, whose smallest change is named: a tenth of the cages with every fourth animal
held, and litters that an eighth of the cages can't hold with every third animal sent away. Processor time, the modules loaded. Under
five seconds is wanted for 1,000 animals, under half a second warm for 60.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from random import Random

from core.herd.settings import changed
from core.herd.state import Herd
from core.reckon.winter.choose import best
from core.reckon.winter.types import Candidate, Limits
from core.reports.evidence import Evidence
from core.reports.keep_or_cull import keep_or_cull
from core.reports.winter.worth import worths
from tests.farm import TODAY, ago, tell
from tests.herds import Barn

SIZES = (60, 120, 250, 500, 1000)
NOTES = 20  # an animal
BREEDS = ("New Zealand", "Mini Rex", "Rex", "Californian")
LITTERS = (520, 420, 320, 220, 110)  # days ago
KITS = 3
WANTED_S = {60: 0.5, 1000: 5.0}


@dataclass(frozen=True)
class Took:
    """How long each took [s]."""

    fresh: float
    warm: float
    choice: float
    unfit: float


def herd_of(animals: int) -> tuple[Herd, int]:
    """A herd of about so many living animals, and how many facts made it: does with five litters, of the last one three kits each."""
    chance, barn, told = Random(animals), Barn(), 0
    bucks = max(animals // 30, 2 * len(BREEDS))
    for at in range(bucks):
        barn.buck(f"B{at}", breed=BREEDS[at % len(BREEDS)])
    for at in range((animals - bucks) // (KITS + 1)):
        of = at % len(BREEDS)
        mine = range(of, bucks, len(BREEDS))
        barn.doe(f"D{at}", breed=BREEDS[of], sire=f"B{chance.choice(mine)}")
        for born_ago in LITTERS:
            alive = chance.randint(3, 10)
            barn.litter(f"D{at}", f"B{chance.choice(mine)}", born_ago + chance.randint(0, 20), alive, weaned=alive - chance.randint(0, 3))
        born_ago = (TODAY - barn.herd.litters[max(barn.herd.litters, key=_day_of(barn.herd, f"D{at}"))].born_on).days
        tags = " ".join(f"K{at * KITS + kit}" for kit in range(KITS))
        barn.kits(f"D{at}", tags, born_ago, {age: chance.randint(14, 26) * age for age in (42, 56, 70, 84)})
        told += 1 + 3 * len(LITTERS) + 5 * KITS
    while told < NOTES * animals:
        barn.say("temper", who=f"D{chance.randrange((animals - bucks) // (KITS + 1))}", grade="good", on=ago(chance.randint(1, 300)))
        told += 1
    return barn.herd, told + bucks


def _day_of(herd: Herd, doe: str) -> Callable[[str], tuple[bool, date]]:
    """How new a litter of that doe's is."""
    dam = herd.find(doe)
    return lambda key: (dam is not None and herd.litters[key].dam == dam.key, herd.litters[key].born_on)


def seconds(ask: Callable[[], object]) -> float:
    """Processor time of one answer."""
    began = time.process_time()
    ask()
    return time.process_time() - began


def crowded(herd: Herd, cages: int) -> Herd:
    """The same herd with so many cages."""
    return replace(herd, settings=changed(herd.settings, "cages", cages))


def took(herd: Herd) -> Took:
    """The plan of that herd, fresh and warm, and the choice by itself."""
    living = sum(one.living for one in herd.animals.values())
    first = crowded(herd, living // 2)
    fresh = seconds(lambda: keep_or_cull(first, TODAY))
    young = next(one for one in first.animals.values() if one.living and one.weights)
    weighed = tell(first, "weighed", who=young.tag, grams=young.weights[-1].grams + 10)
    warm = seconds(lambda: keep_or_cull(weighed, TODAY))
    barn = Evidence(first, TODAY)
    unfit = (choosing(barn, living // 10, held=4), choosing(barn, living // 8, sent=3, litters=living // 20))
    return Took(fresh, warm, seconds(choosing(barn, living // 2)), max(map(seconds, unfit)))


def choosing(barn: Evidence, cages: int, *, held: int = 0, sent: int = 0, litters: int = 0) -> Callable[[], object]:
    """The choice alone, worths and kinship at hand; each so-manieth animal held, or sent away, by a person's word."""
    told = worths(barn)
    candidates = [
        Candidate(
            one.key,
            one.sex,  # type: ignore[arg-type]
            one.breed or "",
            told[one.key].guess,
            grown=barn.stages[one.key] != "grow-out",
            one_more=told[one.key].one_more,
            pin="keep" if held and at % held == 0 else "go" if sent and at % sent == 0 else None,
        )
        for at, one in enumerate(barn.living)
        if one.key in told
    ]
    kin, breeds = barn.kinship.of, {one.breed for one in candidates}
    limits = Limits(cages=cages, bucks=dict.fromkeys(breeds, 2), highest_coi=0.125, caution=0.5, coi_cost=14000.0, unmated=7000.0)
    wished = replace(limits, litters=dict.fromkeys(breeds, litters)) if litters else limits
    return lambda: best(candidates, wished, kin)


def main() -> int:
    """Print the times of every size, and how they grow."""
    took(herd_of(20)[0])
    worst, last = 0.0, None
    for size in SIZES:
        herd, told = herd_of(size)
        now = took(herd)
        grown = "" if last is None else f", {now.fresh / last.fresh:.1f} times the fresh time before"
        living = sum(one.living for one in herd.animals.values())
        print(
            f"{living:>5} animals, {told:>6} facts: fresh {now.fresh:5.2f} s, warm {now.warm:5.2f} s, choice {now.choice:5.2f} s, unfit {now.unfit:5.2f} s{grown}"
        )
        wanted = WANTED_S.get(size)
        worst = max(worst, max(now.warm if size == SIZES[0] else now.fresh, now.unfit) / wanted if wanted else 0.0)
        last = now
    print(f"the slowest takes {worst * 100:.0f} % of what is wanted")
    return int(worst >= 1)


if __name__ == "__main__":
    sys.exit(main())
