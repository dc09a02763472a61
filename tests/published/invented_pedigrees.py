"""Large invented pedigrees from a seed, as arrays of parents' places (-1 unknown, parents first).

numpy promises a stable stream of `default_rng` only within a family of versions: the sums of the parents' places are
checked before anything else.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

Places = npt.NDArray[np.int64]


def deep(n: int, seed: int, does: int = 64, litter: int = 8, share_new: float = 0.25) -> tuple[Places, Places]:
    """A closed herd of fixed size: each round every doe has a litter, then some breeders give way to kits of that round."""
    rng = np.random.default_rng(seed)
    bucks = max(1, does // 8)
    sires, dams = np.full(n, -1, np.int64), np.full(n, -1, np.int64)
    breeding_does, breeding_bucks, at = np.arange(does), np.arange(does, does + bucks), does + bucks
    new_does, new_bucks = max(1, int(does * share_new)), max(1, int(bucks * share_new))
    while at < n:
        mates = breeding_bucks[rng.integers(0, bucks, does)]
        born = min(does * litter, n - at)
        sires[at : at + born] = np.repeat(mates, litter)[:born]
        dams[at : at + born] = np.repeat(breeding_does, litter)[:born]
        if born == does * litter:
            kept = at + rng.choice(born, new_does + new_bucks, replace=False)
            breeding_does, breeding_bucks = breeding_does.copy(), breeding_bucks.copy()
            breeding_does[rng.choice(does, new_does, replace=False)] = kept[:new_does]
            breeding_bucks[rng.choice(bucks, new_bucks, replace=False)] = kept[new_does:]
        at += born
    return sires, dams


def wide(n: int, seed: int) -> tuple[Places, Places]:
    """About 24 rounds whatever the number of animals."""
    return deep(n, seed, does=max(8, n // (8 * 24) // 8 * 8))


def hard(n: int, seed: int, window: int = 1000, founders: int = 100) -> tuple[Places, Places]:
    """Nearly every animal becomes a parent."""
    rng = np.random.default_rng(seed)
    sires, dams = np.full(n, -1, np.int64), np.full(n, -1, np.int64)
    kits = np.arange(founders, n)
    oldest = np.maximum(0, kits - window)
    one = oldest + (rng.random(len(kits)) * (kits - oldest)).astype(int)
    other = oldest + (rng.random(len(kits)) * (kits - oldest)).astype(int)
    other = np.where(one == other, np.where(one > oldest, one - 1, one + 1), other)
    sires[founders:], dams[founders:] = one, other
    return sires, dams
