"""The herd as a whole: no breed without a buck or a doe, the young stock that comes on, and the room that the farm has."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from core.herd.settings import cages, does_a_breed, mouths
from core.reports.bucks import worth
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.verdict import Verdict, heads
from core.words import count


def lasting(barn: Evidence, verdicts: Sequence[Verdict]) -> list[Verdict]:
    """The verdicts with no breed left without a buck or a doe: the best of those going stays, unless the person said otherwise."""
    left = list(verdicts)
    for breed, sex in dict.fromkeys(((one.breed or "").lower(), one.sex) for one in left if one.sex):
        kin = [one for one in left if (one.breed or "").lower() == breed and one.sex == sex]
        free = [one for one in kin if one.going and not one.pinned]
        if any(not one.going for one in kin) or not free or not _bred_here(left, breed):
            continue
        best = max(free, key=lambda one: (one.stage != "grow-out", worth(barn, barn.herd.animals[one.key]), one.tag or ""))
        left[left.index(best)] = _kept_as_last(best)
    return left


def _bred_here(verdicts: Sequence[Verdict], breed: str) -> bool:
    """Whether the farm has breeding stock of that breed."""
    return any((one.breed or "").lower() == breed and one.stage in {"junior", "senior"} for one in verdicts)


def _kept_as_last(one: Verdict) -> Verdict:
    of_breed = f"The last {one.breed} {one.sex}" if one.breed else f"The last {one.sex} of no breed you named"
    text = f"{of_breed} here that would stay: replace first, then decide."
    why = Finding(one.key, one.tag or "", "last_of_breed", text, {"breed": one.breed, "sex": one.sex, "count": 1})
    return replace(one, verdict="keep", reasons=(why, *one.reasons))


def coming_on(barn: Evidence, verdicts: Sequence[Verdict]) -> list[Verdict]:
    """The verdicts with the best grow-out of each breed and sex kept where no junior is coming on."""
    left = list(verdicts)
    for breed, sex in dict.fromkeys(((one.breed or "").lower(), one.sex) for one in left if one.sex):
        kin = [one for one in left if (one.breed or "").lower() == breed and one.sex == sex]
        young = [one for one in kin if one.stage == "grow-out" and one.verdict == "watch" and not one.pinned and _weighed_enough(barn, one)]
        if not young or any(one.stage == "junior" and not one.going for one in kin) or not _bred_here(left, breed):
            continue
        best = max(young, key=lambda one: (worth(barn, barn.herd.animals[one.key]), one.tag or ""))
        text = f"The best of {count(len(young), f'young {sex}')} of the breed: no junior is coming on, so keep this one."
        why = Finding(best.key, best.tag or "", "replacement", text, {"count": len(young)}, heed=-1, kinds=("weighed",))
        left[left.index(best)] = replace(best, verdict="keep", reasons=(why, *best.reasons))
    return left


def _weighed_enough(barn: Evidence, one: Verdict) -> bool:
    """Old enough to be compared, weighed, and nothing flagged."""
    return one.key in barn.standard and all(reason.heed <= 0 for reason in one.reasons)


def fitted(barn: Evidence, verdicts: Sequence[Verdict], kits: Sequence[Verdict]) -> list[Verdict]:
    """The verdicts cut to the does a breed, the cages and the mouths that the farm set, the least promising first."""
    settings = barn.herd.settings
    left = list(verdicts)
    for breed in dict.fromkeys(one.breed for one in left):
        wanted = does_a_breed(settings, breed)
        does = [one for one in left if one.breed == breed and one.sex == "doe" and one.stage != "grow-out" and not one.going]
        if wanted is not None:
            left = _cut(barn, left, does, len(does) - wanted, ("excess_doe", f"You keep {count(wanted, 'doe')} a breed"))
    room = min((limit for limit in (cages(settings), mouths(settings)) if limit is not None), default=None)
    if room is not None:
        staying = [one for one in left if not one.going]
        kits_staying = heads(one for one in kits if not one.going) if mouths(settings) is not None else 0
        why = f"{count(room, 'place')} for the winter"
        left = _cut(barn, left, staying, len(staying) + kits_staying - room, ("no_room", why))
    return [*left, *kits]


def _cut(barn: Evidence, verdicts: list[Verdict], among: list[Verdict], over: int, why: tuple[str, str]) -> list[Verdict]:
    """The verdicts with the `over` least promising of these going. Those that a person pinned and a breed's last ones stay."""
    left = list(verdicts)
    order = sorted(among, key=lambda one: _promise(barn, one))
    for place, one in enumerate(order):
        if over <= 0:
            break
        if one.pinned or _is_last(left, one):
            continue
        text = f"{why[1]}: comes {len(order) - place} of {len(order)}."
        evidence_ = {"rank": len(order) - place, "count": len(order)}
        reason = Finding(one.key, one.tag or "", why[0], text, evidence_, heed=2)
        verdict = "sell" if any(found.code in {"show_quality", "grows_well"} for found in one.reasons) else "cull"
        left[left.index(one)] = replace(one, verdict=verdict, reasons=(reason, *one.reasons))
        over -= 1
    return left


def _promise(barn: Evidence, one: Verdict) -> tuple[int, float, str]:
    """How much there is to lose with it: its verdict, its stage, its worth."""
    steps = {"grow-out": 0, "junior": 1, "senior": 2}
    return (one.verdict == "keep") * len(steps) + steps[one.stage], worth(barn, barn.herd.animals[one.key]), one.tag or ""


def _is_last(verdicts: Sequence[Verdict], one: Verdict) -> bool:
    kin = [other for other in verdicts if other.sex == one.sex and (other.breed or "").lower() == (one.breed or "").lower()]
    return one.sex is not None and sum(1 for other in kin if not other.going) == 1
