"""How large a doe's litters are: for her number of litter, beside the does of her breed here, with the one to expect next."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from statistics import fmean
from typing import Any

from core.handbook import breeds, genetics, reproduction, stages
from core.handbook import survival as figures
from core.herd.litters import litters_of, live_born
from core.herd.state import Animal, Litter
from core.reckon.interval import LEVEL, reach
from core.reckon.litters_together import LitterSize, LittersTold, SizeBelief, litters_together
from core.reports.evidence import Evidence
from core.reports.survival import litters_by_dam
from core.words import count

_SHARES = tuple(one.value for one in reproduction.LITTER_SIZE_BY_PARITY)
ALIKE = 0.25  # not a figure: a quarter of a kit is no difference to anybody


def told_litters(barn: Evidence, animal: Animal) -> list[Litter]:
    """Her litters whose size somebody told, the first one first."""
    return [one for one in litters_of(barn.herd, animal.key) if _size_told(one)]


def _size_told(litter: Litter) -> bool:
    return litter.alive is not None or litter.born is not None


def size_of(barn: Evidence, doe: Animal) -> LitterSize:
    """How large her litters are, against what the does of her breed have here at that number of litter."""
    return _sizes(barn, (doe.breed or "").lower())[doe.key]


def litters_of_her_breed(barn: Evidence, doe: Animal) -> int:
    """How many litters of her breed's does stand behind her expected size."""
    return sum(size.litters for size in _sizes(barn, (doe.breed or "").lower()).values())


@lru_cache(maxsize=16)
def _sizes(barn: Evidence, breed: str) -> Mapping[str, LitterSize]:
    """The litter sizes of all does of a breed that are, or were, on the farm; and of whoever else is told to have borne one."""
    born = litters_by_dam(barn.herd)
    of_breed = [one for one in barn.herd.animals.values() if (one.breed or "").lower() == breed]
    does = {one.key: _told(one, born.get(one.key, ())) for one in of_breed if one.sex != "buck" or one.key in born}
    return _together(breed, tuple(does.items()))


@lru_cache(maxsize=16)
def _together(breed: str, does: tuple[tuple[str, LittersTold], ...]) -> Mapping[str, LitterSize]:
    """The same by the litters alone, kept for the next notes: only a litter changes them."""
    return litters_together(dict(does), _size_belief(breed)).does


def _told(doe: Animal, litters: Iterable[Litter]) -> LittersTold:
    sizes = tuple(float(live_born(one)) for one in litters if _size_told(one))
    first = 0 if _came_young(doe) else _SHARES.index(max(_SHARES))
    return LittersTold(sizes, tuple(_by_parity(first + number) for number in range(len(sizes) + 1)))


def _came_young(doe: Animal) -> bool:
    """Whether her first litter on the book is her first. Of a doe that came grown it is not known: it counts as one of her best."""
    age = None if doe.came_on is None or doe.born is None else (doe.came_on - doe.born).days
    return doe.origin == "born_here" or (age is not None and age < stages.SENIOR_FROM_DAYS.value)


def _by_parity(number: int) -> float:
    """Live-born of her litter of that number, counted from 0, as a share of her best ones."""
    return _SHARES[min(number, len(_SHARES) - 1)]


def _size_belief(breed: str) -> SizeBelief:
    """What is believed of a breed's litters, in the measure of its size."""
    usual = breeds.usual_born_alive(breed).value
    of_usual = usual / reproduction.USUAL_BORN_ALIVE.value
    spread, own = of_usual * genetics.BORN_ALIVE_SD.value, genetics.BORN_ALIVE_H2.value + genetics.BORN_ALIVE_P2.value
    return SizeBelief(
        usual=usual / fmean(_SHARES),
        farm_sd=usual * reproduction.FARM_LITTER_CV.value,
        level_sd=spread * own**0.5,
        slope_sd=of_usual * figures.LITTER_TREND_PRIOR_SD.value,
        litter_sd=spread * (1 - own) ** 0.5,
    )


def next_litter(size: LitterSize) -> tuple[float, float]:
    """Within which numbers her next litter lies 8 times in 10 [kits]."""
    width = reach(LEVEL) * size.following_sd
    return max(size.following - width, 0.0), size.following + width


def size_document(size: LitterSize) -> dict[str, Any]:
    """A doe's litter size as numbers."""
    low, high = next_litter(size)
    return {
        "litters": size.litters,
        "level": size.level,
        "level_low": size.level - reach(LEVEL) * size.level_sd,
        "level_high": size.level + reach(LEVEL) * size.level_sd,
        "chance_of_fall": size.chance_of_fall if size.litters > 1 else None,
        "next_litter": {"estimate": size.following, "low": low, "high": high},
    }


def size_lines(barn: Evidence, doe: Animal) -> list[str]:
    """Her litters beside her breed's, and the next one; where they are few, what to note."""
    size = size_of(barn, doe)
    if not size.litters:
        return []
    low, high = next_litter(size)
    few = size.litters < figures.SHRINKING_FROM_LITTERS.value
    thin = " So few tell little of her: count each at kindling." if few else ""
    by = f"by {count(size.litters, 'litter')}, allowing for luck"
    return [f"Litter size: {level_said(size)} her breed's does here, {by}; the next likely {low:.0f} to {high:.0f} alive.{thin}"]


def level_said(size: LitterSize) -> str:
    """Her level in words: `1.2 kits a litter above`, `level with`."""
    if abs(size.level) < ALIKE:
        return "level with"
    return f"{abs(size.level):.1f} kits a litter {'above' if size.level > 0 else 'below'}"
