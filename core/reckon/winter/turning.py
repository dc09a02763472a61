"""Whose place turns when its worth moves by what one more litter may bring, without a new choice for each animal.

The ceiling tells of most animals that no choice with their place turned comes near enough; a swap with another near the margin, or a
set already found, tells of others that one does. Only those in between are chosen for anew, with all that can't matter held fixed;
in a large herd they are left at that.
"""

from __future__ import annotations

import numpy as np

from core.reckon.winter.programme import Numbers, Programme
from core.reckon.winter.solving import TINY, Ceiling, Solved, solved
from core.reckon.winter.swaps import Swaps
from core.reckon.winter.types import Candidate


def flips(order: tuple[Candidate, ...], whole: Programme, found: Solved, top: Ceiling) -> tuple[str, ...]:
    """The animals whose place changes when their worth moves by `one_more`, in the order told. Pins don't flip."""
    moves = np.array([one.one_more if one.pin is None else 0.0 for one in whole.asked.animals]) / whole.scale
    if not (moves > TINY).any():
        return ()
    turned = {whole.asked.animals[at].key for at in _Turning(whole, found, moves, top).found()}
    return tuple(one.key for one in order if one.key in turned)


class _Turning:
    """The search for those that turn; each new choice is kept, for it may answer for others."""

    def __init__(self, whole: Programme, found: Solved, moves: Numbers, top: Ceiling) -> None:
        self.whole, self.best, self.moves, self.ceiling = whole, found, moves, top
        self.low, self.high = whole.bounds()
        self.swaps = Swaps(whole, found, top)
        self.others: list[Solved] = []

    def found(self) -> list[int]:
        """The places of all that turn, those that move furthest asked first."""
        near = np.flatnonzero((self.moves > TINY) & (self._reach() > self.best.objective - self.moves + TINY))
        return [int(at) for at in sorted(near, key=lambda each: -self.moves[each]) if self._turns(int(at))]

    def _reach(self) -> Numbers:
        """What no choice with it turned can go over."""
        animals = len(self.moves)
        as_chosen = np.abs(self.ceiling.at[:animals] - self.best.kept) < 1 / 2
        reach: Numbers = self.ceiling.height - np.where(as_chosen, self.ceiling.to_move[:animals], 0.0) + TINY
        return reach

    def _turns(self, at: int) -> bool:
        needed = self.best.objective - float(self.moves[at]) + TINY
        turned = not bool(self.best.kept[at])
        if any(bool(one.kept[at]) == turned and one.objective > needed for one in self.others):
            return True
        other = self.swaps.turned(at, needed)
        if (other is None or other.objective <= needed) and not self.whole.large:
            low, high = self.ceiling.fixed_for(needed, self.low, self.high)
            low[at] = high[at] = float(turned)
            other = solved(self.whole, low, high)
        if other is None:
            return False
        self.others.append(other)
        return other.objective > needed
