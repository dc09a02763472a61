"""What stands on a pedigree, as plain values."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Ancestor:
    """One animal of a pedigree.

    named   its tag and name
    told    what else is known: breed (where it is another than the animal's whose pedigree it is), colour, born, weight, COI
    """

    named: str
    told: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PedigreeTree:
    """A pedigree. `generations[0]` is sire and dam, each next one twice as long, in order from the top; None where nobody is known."""

    animal: Ancestor
    generations: tuple[tuple[Ancestor | None, ...], ...]
    lines: tuple[str, ...]
