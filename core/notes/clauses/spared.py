"""`no losses`, `12 lost none`, `no deaths`, `0 lost`: words of a loss by which nothing was lost.

They are no verb of what happened; what else the statement says (`she still has all 7`) stands.
"""

from __future__ import annotations

from typing import Final

from core.notes.clauses.clause import Clause
from core.notes.slots.items import NO_MARKS, marks_of

LOSSES: Final = frozenset({"lose", "die"})
NO_LOSS: Final = frozenset({"no", "none", "zero", "without", "nary", "nary a", "not a", "not a single", "not one", "nothing", "nobody"})
#: Nouns: behind `no` they are denied, whatever stands between.
NOUNS: Final = frozenset({"loss", "losses", "losing", "death", "deaths"})
BETWEEN: Final = frozenset({"a", "any", "more", "further", "new", "single", "other", "others", "to", "report", "have", "been", "has", "were", "was", "had"})  # fmt: skip


def spare(c: Clause) -> None:
    """Take their meaning from words of a loss that nothing befell."""
    births = not c.marks.isdisjoint({"kindle", "had"})
    spared = [i for i, item in enumerate(c.items) if not item.marks.isdisjoint(LOSSES) and _none(c, i, births=births)]
    for i in spared:
        c.items[i].marks = NO_MARKS
    if spared:
        c.use(spared)
        c.marks = marks_of(c.items, c.virtual)


def _none(c: Clause, i: int, *, births: bool) -> bool:
    """Whether the loss at an index is denied by what stands before or behind it; of a birth `2 lost` and `0 dead` are counts."""
    noun = c.said(i) in NOUNS
    if births and not noun:
        return False
    before = i - 1
    while before >= 0 and not _nothing(c.said(before)) and (c.said(before) in BETWEEN or "kits" in c.items[before].marks):
        before -= 1
    if before >= 0 and c.whole(before) == 0:
        c.use([before])
        return True
    if _nothing(c.said(before)):
        return noun or before < i - 1 or c.said(i) == "lost"
    return not noun and "lose" in c.items[i].marks and (_nothing(c.said(i + 1)) or c.whole(i + 1) == 0)


def _nothing(said: str) -> bool:
    return said in NO_LOSS or said.startswith("no ")
