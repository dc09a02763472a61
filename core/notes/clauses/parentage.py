"""Whose kit an animal is: told of it (`sire 3, dam 14`, `out of Juno`), or in passing (`R21 d/o Clover 5-3`).

In passing, a dam or sire that the book knows already says nothing new; any other one is left to be asked about.
"""

from __future__ import annotations

from typing import Final

from core.notes.clauses.clause import Clause
from core.notes.slots.common_words import COMMON
from core.notes.slots.items import Item

#: Behind these a name or tag is a parent's, on the book or not.
PARENT_WORDS: Final = frozenset({"sire", "dam", "sired by"})
#: Between a dam and a sire.
BETWEEN_PARENTS: Final = frozenset({"and", "&", "x", "by", "+", "sired by"})


def parents_told(c: Clause) -> tuple[dict[str, str], list[Item]]:
    """Its parents' tags or names, by field: `sire 3, dam 14`, `out of Juno`, `out of 14 and 3`."""
    pair = _pair_told(c)
    if pair is not None:
        return pair
    found: dict[str, str] = {}
    used: list[Item] = []
    for mark, name in (("sire", "sire"), ("dam_word", "dam")):
        for i in c.each(mark):
            place = c.past_fillers(i + 1, 1)
            named = c.said(i) in PARENT_WORDS or has_capital(c, place) or (name == "dam" and c.has("sire"))
            tag = _parent(c, place, named=named)
            if tag is not None:
                found[name] = tag
                used += [c.items[i], *(c.pick(place).items if c.mention(place) else [c.items[place]])]
                break
    return found, used


def _parent(c: Clause, place: int, *, named: bool) -> str | None:
    """The parent told at a place: one on the book, or where it is `named` so, from elsewhere."""
    mention = c.mention(place)
    if mention and (mention.tags or named):
        return mention.tag or mention.said.upper()
    return c.said(place).title() if named and place < len(c.items) and plain_name(c, place) else None


def _pair_told(c: Clause) -> tuple[dict[str, str], list[Item]] | None:
    """`out of 14 and 3`, `out of Poppy x Waffles`: both parents; the dam first, unless the book knows better."""
    for i in c.each("out_of"):
        if i + 3 >= len(c.items) or c.said(i + 2) not in BETWEEN_PARENTS:
            continue
        one, other = _parent(c, i + 1, named=True), _parent(c, i + 3, named=True)
        if one is None or other is None or c.counted(i + 1):
            continue
        sexes = [animal.sex if (animal := c.known(place)) else None for place in (i + 1, i + 3)]
        turned = sexes[0] == "buck" or sexes[1] == "doe"
        found = {"dam": other, "sire": one} if turned else {"dam": one, "sire": other}
        return found, c.items[i : i + 4]
    return None


def plain_name(c: Clause, place: int) -> bool:
    """Whether a word that does nothing else in a note stands there, an everyday one with its capital: the name of a parent from elsewhere."""
    said = c.said(place)
    if not said.isalpha() or c.items[place].sort != "word" or c.items[place].marks:
        return False
    return said not in COMMON or has_capital(c, place)


def has_capital(c: Clause, place: int) -> bool:
    """Whether the word there, if it is one, is spelled as a name is."""
    said = c.said(place)
    return said.isalpha() and said.capitalize() in {word.strip(",.;:") for word in c.scene.text.split()}


def repeats_parents(c: Clause) -> None:
    """Mark a parent behind `daughter of`, `son of` as explained where the book has it so, or where no kit is named: then whose it is is asked."""
    for i in c.each("child_of"):
        child, parent = c.known(i - 1), c.known(i + 1)
        if parent is not None and (child is None or parent.key in {child.dam, child.sire}):
            c.use([i, i + 1])
