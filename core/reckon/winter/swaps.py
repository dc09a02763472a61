"""Sets near the best one: an animal's place turned and others put in or out for it, each set weighed by itself without the solver."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from core.reckon.winter.programme import Numbers, Programme
from core.reckon.winter.solving import Ceiling, Solved

Flags = npt.NDArray[np.bool_]
#: How many of those nearest to the margin are tried for one that turns, and how often.
TRIED, ROUNDS = 30, 3  # not a figure: neighbours tried
#: What a sum may go over its limit by the computer's own rounding.
NEAR = 1e-9


class Swaps:
    """The neighbours of a choice."""

    def __init__(self, whole: Programme, found: Solved, top: Ceiling) -> None:
        """`top`: the ceiling tells who is nearest to the margin."""
        of = whole.asked
        self.whole, self.found = whole, found
        many = len(of.animals)
        self.own = whole.gains[:many]
        low, high = whole.bounds()
        self.free: Flags = (low < high)[:many]
        self.nearest = np.argsort(np.where(self.free, top.to_move[:many], np.inf), kind="stable")[: int(self.free.sum())]
        self._limits(many)
        self._matings()

    def _limits(self, many: int) -> None:
        heads = [at for at, row in enumerate(self.whole.rows) if row.limit in {"cages", "mouths", "feed_g", "bucks", "does"}]
        self.amounts: Numbers = self.whole.matrix[heads].toarray()[:, :many] if heads else np.zeros((0, many))
        self.most = self.whole.most[heads]
        self.may_lack = round(float(self.whole.most[-1]))

    def _matings(self) -> None:
        """Who may be mated with whom, a row a doe and a column a buck: what a mate gives her, below 0 where he may not."""
        of = self.whole.asked
        self.does = np.array([of.at[doe] for doe in of.coi], dtype=int)
        bucks = sorted({of.at[buck] for mates in of.coi.values() for buck in mates})
        self.bucks = np.array(bucks, dtype=int)
        column = {place: at for at, place in enumerate(bucks)}
        self.gives = np.full((len(self.does), len(bucks)), -1.0)
        for row, doe in enumerate(of.coi):
            for buck, cost in of.mates(doe).items():
                self.gives[row, column[of.at[buck]]] = (of.limits.unmated - cost) / self.whole.scale
        breeds = [of.animals[place].breed for place in self.does]
        self.pairs = [np.array([each == breed for each in breeds]) for breed in of.able]
        self.wanted = [(np.array([each == breed for each in breeds], dtype=bool), number) for breed, number in of.limits.litters.items()]

    def objective(self, kept: Flags) -> float | None:
        """What a set is worth as the solver sees it; None for one that does not fit."""
        if (self.amounts @ kept > self.most + NEAR).any():
            return None
        given = self.gives[:, kept[self.bucks]].max(axis=1, initial=-1.0)
        mated = kept[self.does] & (given >= 0)
        if any((mated & of_breed).sum() < number for of_breed, number in self.wanted):
            return None
        if sum(not (mated & of_breed).any() for of_breed in self.pairs) > self.may_lack:
            return None
        return float(self.own @ kept + given[mated].sum())

    def turned(self, at: int, enough: float = np.inf) -> Solved | None:
        """The best set found with that animal's place turned; the first one above `enough`. None where none of those tried fits."""
        kept = self.found.kept.copy()
        kept[at] = not kept[at]
        best = self._as_told(kept)
        others = [int(each) for each in self.nearest if each != at]
        for _ in range(ROUNDS):
            if best is not None and best.objective > enough:
                break
            better = self._one_more(best.kept if best else kept, best, others, enough)
            if better is best:
                break
            best = better
        return best

    def _as_told(self, kept: Flags) -> Solved | None:
        objective = self.objective(kept)
        return None if objective is None else Solved(objective, kept)

    def _one_more(self, kept: Flags, best: Solved | None, others: list[int], enough: float) -> Solved | None:
        """The best of the sets that differ by one more animal: those nearest to the margin that stay, and those that go."""
        staying = [each for each in others if kept[each]][:TRIED]
        going = [each for each in others if not kept[each]][:TRIED]
        for each in (*going, *staying):
            kept[each] = not kept[each]
            told = self._as_told(kept.copy())
            kept[each] = not kept[each]
            if told is not None and (best is None or told.objective > best.objective):
                best = told
                if told.objective > enough:
                    break
        return best
