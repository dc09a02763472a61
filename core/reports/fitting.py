"""Before the winter's choice: no breed without a buck or a doe, and the young stock that comes on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from core.reports.bucks import worth
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.verdict import Verdict
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
