"""How a doe raises her kits: what she was given, what she weaned, and what the weather, a fox or a bad night took.

Kits count where they were nursed: those fostered to her are hers to raise, those fostered away are not; what became of all she
bore is told beside it. Losses laid to cold, heat, a predator or a power cut are not held against her, nor those of a night that
hit the whole barn, noted or not. The dead-born are a matter of their own. A few kits say little, so her share leans on the herd's.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from typing import Any

from core.handbook import reproduction
from core.handbook import survival as figures
from core.herd.litters import alive_now, live_born
from core.herd.settings import lowest_survival
from core.herd.state import Herd, Litter, Loss
from core.reckon.bad_nights import BadNight, Band, Nest, bad_nights, hit_on
from core.reckon.does_together import Belief, does_together
from core.reckon.survival import Survival, litters_to_be_sure

#: Causes of loss that lie with the weather or with what got in, not with the doe.
NOT_HERS = frozenset({"cold", "heat", "predator"})
#: What a loss is laid to where somebody wrote of a power cut, and where nobody wrote anything but the whole barn was hit.
POWER, BAD_NIGHT = "power cut", "bad night"


@dataclass(frozen=True, slots=True)
class Raised:
    """One litter as it was nursed.

    given     live-born, less those fostered away, plus those fostered in, less those that left alive before weaning
    excused   of them lost to what is not her fault, by what that was
    kept      of them weaned, or alive past weaning age
    """

    litter: Litter
    given: int
    excused_by: tuple[tuple[str, int], ...]
    kept: int

    @property
    def excused(self) -> int:
        """Kits lost to what is not her fault."""
        return min(sum(kits for _, kits in self.excused_by), self.given)

    @property
    def alive(self) -> int:
        """The kits that count: given less excused."""
        return max(self.given - self.excused, self.kept)


@dataclass(frozen=True, slots=True)
class DamSurvival:
    """A doe's record of raising kits, litter by litter, and what it says of her.

    share            her chance to bring a kit to weaning
    line             the farm's line [share]
    bore, bore_kept  kits she bore alive in these litters less what nobody's fault took, and of them raised, in whatever nest: a
                     fostered kit fares as its nest did, so these need not be whole
    births           her chance that a kit is born alive, by her kindlings; None where nobody counted the dead
    nights           nights that hit the whole barn and her nest
    """

    doe: str
    litters: tuple[Raised, ...]
    share: Survival
    line: float
    bore: float
    bore_kept: float
    births: Survival | None = None
    nights: tuple[BadNight, ...] = ()

    @property
    def alive(self) -> int:
        """Live-born in finished litters, less losses laid to weather, predators or a bad night."""
        return self.share.alive

    @property
    def kept(self) -> int:
        """Of them weaned."""
        return self.share.kept

    @property
    def excused(self) -> int:
        """Kits lost to what is nobody's fault."""
        return sum(one.excused for one in self.litters)

    @property
    def excused_by(self) -> Mapping[str, int]:
        """The same by what took them."""
        told: dict[str, int] = {}
        for cause, kits in (each for one in self.litters for each in one.excused_by):
            told[cause] = told.get(cause, 0) + kits
        return told

    @property
    def enough(self) -> bool:
        """Whether she has raised enough to be judged."""
        return len(self.litters) >= figures.JUDGED_FROM_LITTERS.value or self.alive >= figures.JUDGED_FROM_LIVE_BORN.value

    @property
    def chance_below(self) -> float:
        """The chance that her true survival is below the farm's line."""
        return self.share.chance_below(self.line)

    @property
    def to_be_sure(self) -> int | None:
        """Litters still needed until it is sure on which side of the line she is; None where she is too near it."""
        kits = sum(one.alive for one in self.litters) / len(self.litters)
        sure, most = figures.SURE.value, figures.SURE_WITHIN_LITTERS.whole
        return litters_to_be_sure(self.share, self.line, born=max(kits, 1.0), sure=sure, at_most=most)

    def document(self) -> dict[str, Any]:
        """The contract's `survival` object, and what stands behind it."""
        share = self.share
        return {
            "alive": share.alive,
            "kept": share.kept,
            "estimate": share.estimate,
            "low": share.low,
            "high": share.high,
            "litters": len(self.litters),
            "line": self.line,
            "chance_below": self.chance_below,
            "litters_to_be_sure": self.to_be_sure,
            "excused": self.excused,
            "excused_by": dict(self.excused_by),
            "bore_alive": self.bore,
            "bore_kept": self.bore_kept,
            "stillborn": stillborn_document(self.births) if self.births else None,
        }


def stillborn_document(births: Survival) -> dict[str, Any]:
    """The dead-born as a value: of how many born, and her share with its interval."""
    return {
        "born": births.alive,
        "dead": births.alive - births.kept,
        "estimate": 1 - births.estimate,
        "low": 1 - births.high,
        "high": 1 - births.low,
    }


def finished(litter: Litter, today: date) -> bool:
    """Whether it was weaned, or is past weaning age."""
    return litter.weaned_on is not None or today > _weaning_day(litter)


def nursed(litter: Litter) -> int:
    """Kits that were hers to raise: live-born, less those fostered away, plus those fostered in."""
    return max(live_born(litter) + sum(one.count for one in litter.fostered_in) - sum(one.count for one in litter.fostered_out), 0)


def raised(litter: Litter, nights: Iterable[BadNight] = ()) -> Raised | None:
    """The litter as it was nursed; None where nobody told how many were born alive."""
    if litter.alive is None and litter.born is None:
        return None
    kept = litter.weaned if litter.weaned is not None else alive_now(litter, _weaning_day(litter))
    left_alive = litter.left_unweaned if litter.weaned_on is not None else 0
    bad = hit_on(nights, litter.key)
    laid: dict[str, int] = {}
    for loss in litter.losses:
        cause = laid_to(loss, bad)
        if cause is not None:
            laid[cause] = laid.get(cause, 0) + loss.count
    return Raised(litter, max(nursed(litter) - left_alive, 0), tuple(laid.items()), kept)


def laid_to(loss: Loss, bad: Mapping[int, BadNight]) -> str | None:
    """What a loss is laid to where it is not the doe's fault; None where it is hers, or nobody knows."""
    if loss.cause in NOT_HERS:
        return loss.cause
    if "power" in (loss.cause or ""):
        return POWER
    return BAD_NIGHT if _untold(loss) and loss.on.toordinal() in bad else None


def _untold(loss: Loss) -> bool:
    return loss.cause in {None, "unknown"}


def _weaning_day(litter: Litter) -> date:
    return litter.weaned_on or litter.born_on + timedelta(days=figures.FINISHED_DAYS.whole)


def litters_by_dam(herd: Herd) -> Mapping[str, tuple[Litter, ...]]:
    """Each doe's litters, the first one first."""
    found: dict[str, list[Litter]] = {}
    for litter in sorted(herd.litters.values(), key=lambda one: one.born_on):
        found.setdefault(litter.dam, []).append(litter)
    return {doe: tuple(litters) for doe, litters in found.items()}


def nights_of(herd: Herd, today: date) -> tuple[BadNight, ...]:
    """The nights that hit the whole barn, by the losses that nobody gave a cause for."""
    nests = [_nest(litter, today) for litter in herd.litters.values() if litter.born_on <= today]
    noted = [event.on.toordinal() for event in herd.weather]
    return bad_nights(nests, _bands(), sure=figures.BAD_NIGHT_CHANCE.value, noted=noted, sure_if_noted=figures.BAD_NIGHT_NOTED_CHANCE.value)


def _nest(litter: Litter, today: date) -> Nest:
    """A litter at risk until it was weaned or its last kit died."""
    emptied = [day for day, kits in litter.tally if kits == 0]
    until = min([_weaning_day(litter), today, *emptied[-1:]])
    losses = frozenset(loss.on.toordinal() for loss in litter.losses if _untold(loss))
    return Nest(litter.key, litter.born_on.toordinal(), until.toordinal(), losses)


@lru_cache(maxsize=1)
def _bands() -> tuple[Band, ...]:
    """How often a litter loses kits by itself, by age."""
    weight = figures.LOSS_NIGHT_WEIGHT.value
    return (
        Band(figures.NEWBORN_DAYS.whole, figures.LOSS_NIGHT_NEWBORN.value, weight),
        Band(figures.EARLY_LOSS_DAYS.whole, figures.LOSS_NIGHT_EARLY.value, weight),
        Band(figures.FINISHED_DAYS.whole, figures.LOSS_NIGHT_LATE.value, weight),
    )


def belief() -> Belief:
    """What is believed of a herd's does before their litters tell."""
    return _belief(figures.PRIOR_MEAN.value, figures.PRIOR_WEIGHT.value)


def birth_belief() -> Belief:
    """What is believed of kits being born alive."""
    return _belief(1 - reproduction.USUAL_STILLBORN.value, figures.STILLBORN_WEIGHT.value)


def _belief(mean: float, weight: float) -> Belief:
    return Belief(
        mean=mean,
        mean_weight=figures.PRIOR_MEAN_WEIGHT.value,
        weight=weight,
        weight_spread=figures.PRIOR_WEIGHT_SPREAD.value,
        likeness=figures.LITTER_SPREAD.value,
        likeness_spread=figures.LITTER_SPREAD_SPREAD.value,
    )


def dam_survivals(herd: Herd, today: date) -> Mapping[str, DamSurvival]:
    """Every doe with a finished litter, and what her litters say of her next to the herd's."""
    nights = nights_of(herd, today)
    told = {doe: _finished(litters, today, nights) for doe, litters in litters_by_dam(herd).items()}
    told = {doe: litters for doe, litters in told.items() if litters}
    counts = {doe: [(one.alive, one.kept) for one in litters] for doe, litters in told.items()}
    level = figures.INTERVAL.value
    shares = does_together(counts, belief(), level).does
    births = _births(herd, today, level)
    nests = {one.litter.key: one for litters in told.values() for one in litters}
    line = lowest_survival(herd.settings)
    return {doe: _dam(doe, told[doe], shares[doe], line, births.get(doe), nights, nests) for doe in told}


def _dam(  # noqa: PLR0913, PLR0917 - what is known of one doe, each from its own reckoning
    doe: str,
    litters: tuple[Raised, ...],
    share: Survival,
    line: float,
    births: Survival | None,
    nights: tuple[BadNight, ...],
    nests: Mapping[str, Raised],
) -> DamSurvival:
    bore = [_of_her_own(one, nests) for one in litters]
    hit = tuple(night for night in nights if any(one.litter.key in night.hit for one in litters))
    return DamSurvival(doe, litters, share, line, sum(alive for alive, _ in bore), sum(kept for _, kept in bore), births, hit)


def _of_her_own(one: Raised, nests: Mapping[str, Raised]) -> tuple[float, float]:
    """Of the kits she bore in a litter, those that count and those raised: in her nest, and in those they were fostered to."""
    litter = one.litter
    fostered = [(move.count, nests.get(move.other or "")) for move in litter.fostered_out]
    stayed = max(live_born(litter) - sum(count for count, _ in fostered) - litter.left_unweaned, 0)
    moved = [(min(stayed, one.given), one), *((count, nest) for count, nest in fostered if nest is not None)]
    shares = [(kits / nest.given, nest) for kits, nest in moved if nest.given]
    return sum(part * nest.alive for part, nest in shares), sum(part * nest.kept for part, nest in shares)


def _births(herd: Herd, today: date, level: float) -> Mapping[str, Survival]:
    """Each doe's chance that a kit is born alive, from the kindlings whose dead were counted."""
    counts: dict[str, list[tuple[int, int]]] = {}
    for litter in herd.litters.values():
        if litter.born and litter.dead is not None and litter.born_on <= today:
            counts.setdefault(litter.dam, []).append((litter.born, min(live_born(litter), litter.born)))
    return does_together(counts, birth_belief(), level).does


def _finished(litters: tuple[Litter, ...], today: date, nights: tuple[BadNight, ...]) -> tuple[Raised, ...]:
    each = (raised(litter, nights) for litter in litters if finished(litter, today))
    return tuple(one for one in each if one is not None)
