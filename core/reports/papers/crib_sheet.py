"""The notes crib for the barn wall: what to text when."""

from __future__ import annotations

from core.notes.crib_page import FOOT
from core.notes.situations import SITUATIONS, Situation
from core.reports.papers.leaf import HARD_SPACE, Leaf, Row, Section, unbroken

BETWEEN = f"{HARD_SPACE}\u00b7 "


def crib_sheet() -> Leaf:
    """One page: the situations, each with its notes. A note is never broken."""
    rows = tuple(_row(one) for one in SITUATIONS)
    return Leaf("What to text when", (Section(rows=rows),), foot=(" ".join(FOOT.splitlines()),))


def _row(one: Situation) -> Row:
    return one.name.capitalize(), BETWEEN.join(unbroken(saying) for saying in one.sayings)
