"""Where closeness comes from: the ancestors that two animals have in common, and whose blood a herd still carries.

A COI is a bare number. A breeder asks "through whom?": through each common ancestor by Wright's rule, (1/2)^(n1 + n2 + 1) (1 + F_A)
over the paths that meet in it and in nobody younger. The shares of all common ancestors add up to the kinship of the two.

Reference: Wright 1922, American Naturalist 56:330 (the rule, from memory); Lacy 1989, Zoo Biology 8:111 (founder equivalents, founder
genome equivalents, from memory).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from core.reckon.kinship import inbreeding_array, kinship
from core.reckon.pedigree import Pedigree

Floats = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class CommonAncestor:
    """An ancestor of both, or one of the two where it is the other's ancestor.

    through    what it adds to the kinship of the two, and so to the COI of their kits [share]; all add up to it
    of_one, of_other   its share of the blood of each: 1/2 for a parent, 1 for the animal itself
    """

    animal: str
    through: float
    of_one: float
    of_other: float


@dataclass(frozen=True, slots=True)
class Founders:
    """Whose blood a group carries.

    shares      founder -> its share of the group's genes, the largest first; with those of unknown parents they add up to 1
    unknown     the part that comes from parents that nobody noted
    effective   founders of equal shares that would be as diverse: 1 / sum of squared shares, each unknown parent a founder of its own
    genomes     founder genomes that are left after what drift lost: 1 / (2 mean kinship)
    """

    shares: Mapping[str, float]
    unknown: float
    effective: float
    genomes: float


def common_ancestors(pedigree: Pedigree, one: str, other: str) -> tuple[CommonAncestor, ...]:
    """The ancestors in which the two animals' lines meet, the weightiest first; empty for strangers."""
    book = pedigree.only((one, other))
    inbred = inbreeding_array(book)
    meets = _meetings(book, book.place[one], book.place[other])
    blood = [_blood(book, book.place[animal]) for animal in (one, other)]
    found = [
        CommonAncestor(book.ids[at], float(meets[at] * (1 + inbred[at]) / 2), float(blood[0][at]), float(blood[1][at]))
        for at in np.flatnonzero(meets)
    ]
    return tuple(sorted(found, key=lambda each: (-each.through, each.animal)))


def founders(pedigree: Pedigree, group: Iterable[str]) -> Founders | None:
    """The founders behind a group of animals; None for an empty group."""
    members = tuple(dict.fromkeys(group))
    if not members:
        return None
    book = pedigree.only(members)
    left = np.zeros(len(book))
    left[[book.place[animal] for animal in members]] = 1 / len(members)
    blood = _handed_up(book, left)
    shares = {}
    strangers: list[float] = []
    for at, parents in enumerate(zip(book.sires, book.dams, strict=True)):
        missing = sum(1 for parent in parents if parent < 0)
        if missing == len(parents):
            shares[book.ids[at]] = float(blood[at])
        else:
            strangers += [float(blood[at]) / 2] * missing
    squares = sum(share * share for share in (*shares.values(), *strangers))
    mean = kinship(book, members).mean()
    ordered = dict(sorted(shares.items(), key=lambda each: (-each[1], each[0])))
    return Founders(ordered, sum(strangers), 1 / squares, 1 / (2 * mean))


def _meetings(book: Pedigree, one: int, other: int) -> Floats:
    """The chance that a gene's way up from one and a gene's way up from the other first meet in each animal."""
    ways = np.zeros((len(book), len(book)))
    ways[one, other] = 1.0
    for at in range(len(book) - 1, -1, -1):  # the youngest first: who is left behind is never come back to
        here = ways[at, :at] + ways[:at, at]
        for parent in (book.sires[at], book.dams[at]):
            if parent >= 0:
                ways[parent, :at] += here / 2
    return np.diagonal(ways).copy()


def _blood(book: Pedigree, at: int) -> Floats:
    """Each ancestor's share of one animal's blood; 1 for itself."""
    own = np.zeros(len(book))
    own[at] = 1.0
    return _handed_up(book, own)


def _handed_up(book: Pedigree, shares: Floats) -> Floats:
    """Shares of the book's animals with half of each handed on to each known parent."""
    for at in range(len(book) - 1, -1, -1):
        for parent in (book.sires[at], book.dams[at]):
            if parent >= 0:
                shares[parent] += shares[at] / 2
    return shares
