"""Whose place turns when its worth moves by what one more litter may bring: exactly, but without a new choice for each animal.

The ceiling tells of most animals that no choice with their place turned comes near enough; sets already found tell of others that
one does. Only those in between are chosen for anew, with all that can't matter held fixed.
"""

from __future__ import annotations

import numpy as np

from core.reckon.winter.programme import Numbers, Programme
from core.reckon.winter.solving import TINY, Ceiling, Solved, ceiling, solved
from core.reckon.winter.types import Candidate


def flips(order: tuple[Candidate, ...], whole: Programme, found: Solved) -> tuple[str, ...]:
    """The animals whose place changes when their worth moves by `one_more`, in the order told. Pins don't flip."""
    moves = np.array([one.one_more if one.pin is None else 0.0 for one in whole.asked.animals]) / whole.scale
    if not (moves > TINY).any():
        return ()
    turned = {whole.asked.animals[at].key for at in _Turning(whole, found, moves).found()}
    return tuple(one.key for one in order if one.key in turned)


class _Turning:
    """The search for those that turn; each new choice is kept, for it may answer for others."""

    def __init__(self, whole: Programme, found: Solved, moves: Numbers) -> None:
        self.whole, self.best, self.moves = whole, found, moves
        self.low, self.high = whole.bounds()
        self.ceiling: Ceiling = ceiling(whole, self.low, self.high)
        self.narrow = self.ceiling.fixed_for(found.objective - float(moves.max()), self.low, self.high)
        self.others: list[Solved] = []

    def found(self) -> list[int]:
        """The places of all that turn, the likeliest asked first."""
        near = np.flatnonzero((self.moves > TINY) & (self._reach() > self._needed()))
        return [int(at) for at in sorted(near, key=lambda each: -self.moves[each]) if self._turns(int(at))]

    def _needed(self) -> Numbers:
        """What a choice with it turned must be worth more than."""
        needed: Numbers = self.best.objective - self.moves + TINY
        return needed

    def _reach(self) -> Numbers:
        """What no choice with it turned can go over."""
        animals = len(self.moves)
        there = self.ceiling.at[:animals]
        as_chosen = np.abs(there - self.best.kept) < 1 / 2
        reach: Numbers = self.ceiling.height - np.where(as_chosen, self.ceiling.to_move[:animals], 0.0) + TINY
        return reach

    def _turns(self, at: int) -> bool:
        needed = self.best.objective - float(self.moves[at]) + TINY
        turned = not bool(self.best.kept[at])
        if any(bool(one.kept[at]) == turned and one.objective > needed for one in self.others):
            return True
        low, high = (each.copy() for each in self.narrow)
        low[at] = high[at] = float(turned)
        other = solved(self.whole, low, high)
        if other is None:
            return False
        self.others.append(other)
        return other.objective > needed
