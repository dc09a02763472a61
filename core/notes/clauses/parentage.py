"""Whose kit an animal is, said in passing: `R21 d/o Clover 5-3`.

A dam or sire that the book knows already says nothing new; any other one is left to be asked about.
"""

from __future__ import annotations

from core.notes.clauses.clause import Clause


def repeats_parents(c: Clause) -> None:
    """Mark a parent behind `daughter of`, `son of` as explained where the book has it so, or where no kit is named: then whose it is is asked."""
    for i in c.each("child_of"):
        child, parent = c.known(i - 1), c.known(i + 1)
        if parent is not None and (child is None or parent.key in {child.dam, child.sire}):
            c.use([i, i + 1])
