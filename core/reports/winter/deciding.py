"""The verdicts after the choice: who goes for want of room or feed, and whose place one more litter could change."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from core.herd.settings import winter
from core.reckon.winter.types import Candidate
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.verdict import Verdict
from core.reports.winter.bringing import brought, likely
from core.reports.winter.timing import next_seen
from core.reports.winter.wanted import Asked, cautious
from core.reports.winter.worth import worths
from core.reports.wording import grams
from core.words import count

#: What speaks for selling one that nothing speaks against.
FOR_SALE = frozenset({"show_quality", "grows_well"})


def decided(barn: Evidence, verdicts: Sequence[Verdict], asked: Asked) -> list[Verdict]:
    """The verdicts as the choice makes them. A person's own word stays as it is, and so does what flags settled."""
    deciding = _Deciding(barn, asked)
    return [one if one.pinned or one.key in asked.others else deciding.verdict(one) for one in verdicts]


@dataclass(frozen=True)
class _Deciding:
    """One choice, with what its reasons are told from."""

    barn: Evidence
    asked: Asked

    @cached_property
    def of(self) -> Mapping[str, Candidate]:
        """The candidates by key."""
        return {one.key: one for one in self.asked.candidates}

    @property
    def kept(self) -> frozenset[str]:
        """Who stays."""
        return self.asked.kept

    @cached_property
    def close(self) -> frozenset[str]:
        """Whose place changes with one more litter, or weighing; nobody's while there is room for all."""
        return frozenset(self.asked.choice.flips) if self.asked.full else frozenset()

    @cached_property
    def places(self) -> Mapping[str, int]:
        """The rank of each by what it should bring, the best is 1."""
        order = sorted(self.asked.candidates, key=lambda one: (-self._brings(one), one.key))
        return {one.key: place for place, one in enumerate(order, 1)}

    def verdict(self, one: Verdict) -> Verdict:
        """The verdict on one that could stay or go."""
        if one.key not in self.kept:
            return self._gone(one)
        if one.key not in self.close:
            return one
        close = self._close(one, "cost it its place")
        first = () if one.verdict == "keep" else one.reasons[:1]  # a warning comes before it
        return replace(one, verdict="watch", reasons=(*first, close, *one.reasons[len(first) :]))

    def _gone(self, one: Verdict) -> Verdict:
        """One that goes for want of room; where more of it is seen before winter begins, that is waited for."""
        why = self._why(one)
        if one.key not in self.close:
            return replace(one, verdict=_way_out(one), reasons=(why, *one.reasons))
        close = self._close(one, "keep it")
        seen = next_seen(self.barn).get(one.tag or one.litter_of or "")
        waits = seen is not None and self.barn.today <= seen.on < winter(self.barn.herd.settings, self.barn.today)
        return replace(one, verdict="watch" if waits else _way_out(one), reasons=(why, close, *one.reasons))

    def _why(self, one: Verdict) -> Finding:
        """The limit that has no place for it, and what it should bring against the last that stays."""
        candidate = self.of[one.key]
        code, limit = self._limit(candidate)
        facts = self._facts(candidate)
        rivals = [self.of[key] for key in self.kept if self._rival(code, candidate, self.of[key])]
        least = min(rivals, key=lambda rival: (self._brings(rival), rival.key), default=None)
        measure = " for its breed" if len({other.breed for other in self.asked.candidates}) > 1 else ""
        text = f"{limit}: number {facts['rank']} of {facts['count']} by what it should bring{measure}, {self._worth(candidate)}"
        if least is not None and self._brings(least) > self._brings(candidate):
            last = worths(self.barn)[least.key].guess.value
            text += f"; the last of the breed that stays brings {self._grams(last)}"
            facts["last_that_stays_grams"] = last
        return Finding(one.key, one.tag or one.litter_of or "", code, f"{text}.", facts, heed=2)

    def _limit(self, one: Candidate) -> tuple[str, str]:
        """The first limit that the choice with it would go beyond."""
        limits, stay = self.asked.in_force, [self.of[key] for key in self.kept]
        same = [other for other in stay if other.grown and (other.breed, other.sex) == (one.breed, one.sex)]
        most = {"doe": limits.does, "buck": limits.bucks}.get(one.sex or "", {}).get(one.breed)
        if one.grown and most is not None and len(same) >= most:
            return f"excess_{one.sex}", f"You keep {count(most, one.sex or '')} a breed"
        if limits.cages is not None and sum(other.places for other in stay) + one.places > limits.cages:
            return "no_room", f"{count(limits.cages, 'cage')} for the winter"
        if limits.mouths is not None and sum(other.mouths for other in stay) + one.mouths > limits.mouths:
            return "no_room", f"{count(limits.mouths, 'mouth')} for the winter"
        return "no_feed", "The feed that you want to spend until spring does not reach"

    def _rival(self, code: str, one: Candidate, other: Candidate) -> bool:
        """Whether the other, of its breed, has a place that this one could have."""
        alike = (other.sex, other.grown) == (one.sex, True) or not code.startswith("excess")
        return other.pin is None and other.breed == one.breed and alike

    def _facts(self, one: Candidate) -> dict[str, Any]:
        worth = worths(self.barn)[one.key]
        low, high = likely(worth)
        return {
            "rank": self.places[one.key],
            "count": len(self.asked.candidates),
            "worth_grams": worth.guess.value,
            "worth_low": low,
            "worth_high": high,
        }

    def _worth(self, one: Candidate) -> str:
        return brought(self.barn.herd.settings, worths(self.barn)[one.key])

    def _close(self, one: Verdict, what: str) -> Finding:
        """A place that one more litter, or one more weighing, could change."""
        more = "weighing" if one.stage == "grow-out" else "litter"
        facts = self._facts(self.of[one.key]) | {"one_more_grams": self.of[one.key].one_more}
        return Finding(one.key, one.tag or one.litter_of or "", "close_call", f"A close call: one more {more} could {what}.", facts, heed=1)

    def _brings(self, one: Candidate) -> float:
        return cautious(one, self.asked.limits)

    def _grams(self, weight: float) -> str:
        return grams(self.barn.herd.settings, max(weight, 0.0))


def _way_out(one: Verdict) -> str:
    """What is worth selling finds a buyer."""
    return "sell" if any(found.code in FOR_SALE for found in one.reasons) else "cull"
