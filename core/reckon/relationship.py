"""The inverse of the relationship matrix, built straight from the family book: what ties the breeding values of relatives together.

Reference: Henderson 1976 and Quaas 1976 (the rules, from memory); Mrode, Linear Models for the Prediction of Animal Breeding
Values, 2014, sec. 2.4 (values).
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt
from scipy import sparse

from core.reckon.pedigree import Pedigree

Floats = npt.NDArray[np.float64]


def relationship_inverse(pedigree: Pedigree, inbred: Floats) -> sparse.csc_matrix:
    """The inverse of A [n x n], directly: T' D^-1 T with T = I - half sire - half dam. `inbred`: F in the book's order."""
    n = len(pedigree)
    own = mendelian(pedigree, inbred)
    rows, columns, halves = [np.arange(n)], [np.arange(n)], [np.ones(n)]
    for told in (pedigree.sires, pedigree.dams):
        parents = np.array(told, dtype=np.int64)
        known = np.flatnonzero(parents >= 0)
        rows.append(known)
        columns.append(parents[known])
        halves.append(np.full(len(known), -0.5))
    flow = sparse.csr_matrix((np.concatenate(halves), (np.concatenate(rows), np.concatenate(columns))), shape=(n, n))
    return sparse.csc_matrix(flow.T @ sparse.diags_array(1 / own) @ flow)


def mendelian(pedigree: Pedigree, inbred: Floats) -> Floats:
    """D of each animal [share of the animal variance]: its own sampling of its parents' genes.

    What it does not have from its known parents: 1 - (1 + F_sire)/4 - (1 + F_dam)/4.
    """
    own = np.ones(len(pedigree))
    for told in (pedigree.sires, pedigree.dams):
        parents = np.array(told, dtype=np.int64)
        known = parents >= 0
        own[known] -= (1 + inbred[parents[known]]) / 4
    return own
