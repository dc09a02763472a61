"""What a person's word costs: for each pin the best choice without it, beside the one with it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from core.reckon.winter.programme import Asked, Programme
from core.reckon.winter.solving import TINY, Ceiling, Solved, solved
from core.reckon.winter.swaps import Swaps
from core.reckon.winter.types import Candidate, Price

#: The best choice of what is asked.
Chosen = Callable[[Asked], tuple[Programme, Solved] | None]


def prices(order: tuple[Candidate, ...], whole: Programme, found: Solved, top: Ceiling, chosen: Chosen) -> Mapping[str, Price]:
    """What each pin costs; none for a pin that changes nothing. In a large herd by swaps with those near the margin."""
    of = whole.asked
    pinned = [of.at[one.key] for one in order if one.pin is not None]
    if not pinned:
        return {}
    lifting = _Lifting(whole, found, top, chosen)
    kept = lifting.keys(found)
    told = {}
    for at in pinned:
        without = lifting.without(at)
        if without is not None and without.kept[at] != found.kept[at]:
            free = lifting.keys(without)
            told[of.animals[at].key] = _price(order, of.animals[at], kept, free, of.worth(free) - of.worth(kept))
    return told


def _price(order: tuple[Candidate, ...], pinned: Candidate, kept: set[str], free: set[str], worth: float) -> Price:
    feed = {one.key: one.feed_g for one in order}
    others = [one.key for one in order if one.key != pinned.key]
    go, stay = free - kept, kept - free
    return Price(
        worth=worth,
        feed_g=pinned.feed_g,
        more_feed_g=sum(feed[key] for key in stay) - sum(feed[key] for key in go),
        go=tuple(key for key in others if key in go),
        stay=tuple(key for key in others if key in stay),
    )


class _Lifting:
    """The choice with one pin lifted at a time."""

    def __init__(self, whole: Programme, found: Solved, top: Ceiling, chosen: Chosen) -> None:
        self.of, self.whole, self.found, self.chosen = whole.asked, whole, found, chosen
        self.low, self.high = whole.bounds()
        self.ceiling = top
        self.swaps = Swaps(whole, found, top)
        self.lets_down = whole.most[-1] > 0

    def keys(self, of: Solved) -> set[str]:
        """Who is kept."""
        return {one.key for one, stays in zip(self.of.animals, of.kept, strict=True) if stays}

    def without(self, at: int) -> Solved | None:
        """The best choice without that pin; None where the ceiling says that it is the same."""
        if self.whole.large:
            return self._near(at)
        if self.lets_down:  # without the pin a breed more may be able to breed on: that is another question
            free = tuple(replace(one, pin=None) if place == at else one for place, one in enumerate(self.of.animals))
            again = self.chosen(replace(self.of, animals=free))
            return None if again is None else again[1]
        slope = float(self.ceiling.slope[at])
        gain = max(-slope if self.found.kept[at] else slope, 0.0)
        if self.ceiling.height + gain < self.found.objective + TINY:
            return None
        low, high = self.ceiling.fixed_for(self.found.objective - gain, self.low, self.high)
        low[at], high[at] = 0.0, 1.0
        return solved(self.whole, low, high)

    def _near(self, at: int) -> Solved | None:
        """The best neighbour with that place turned, where it is the better one: in a large herd a wholly new choice says little."""
        other = self.swaps.turned(at)
        return other if other is not None and other.objective > self.found.objective + TINY else None
