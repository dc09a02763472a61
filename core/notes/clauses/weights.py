"""The weights of a statement: with a unit, in two notations without one, and what was said of the weight before."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from core.notes.clauses.amounts import GRAMS_FROM, bare_weight
from core.notes.clauses.clause import Clause
from core.notes.slots.items import Item, pair_grams

ROUND_WEIGHT: Final = frozenset({"even", "flat"})
GRAMS_SAID: Final = frozenset({"grams", "gram"})
LEAST_OF_LIST: Final = 6  # not a figure: numbers: two animals, pounds and ounces each
BEFORE: Final = frozenset(
    {"was", "from", "prev", "previous", "previously", "prior", "last", "before", "formerly", "last time", "not", "wasnt", "used to be"}
)
CHANGES: Final = frozenset({"gained", "gain", "up", "put on", "lost", "down", "added", "dropped"})
Weight = tuple[int | None, list[Item]]


def use_earlier_weights(c: Clause) -> None:
    """`was 4-1`, `up from 4-1`, `gained 5 oz`: what it weighed before, or by how much it changed, is no weight of today."""
    places = [
        i
        for i in range(len(c.items))
        if not c.taken(i)
        and (c.items[i].sort in {"weight", "pair", "clock"} or (c.items[i].sort == "num" and c.items[i].value != int(c.items[i].value)))
    ]
    for i in places if len(places) > 1 else ():
        before = c.past_fillers(i - 1, -1, 1) if c.said(i - 1) not in BEFORE else i - 1
        if (
            (c.said(before) in BEFORE and places.index(i) > 0)
            or (c.said(before) in BEFORE - {"was", "not"})
            or (c.said(before) in CHANGES and c.items[i].sort == "weight")
        ):
            c.use([i])


def may_be_weights(c: Clause, numbers: Sequence[int]) -> bool:
    """Whether bare numbers may be weights where no word of weighing is said: grams, a fraction, `5 even`, or animals and pounds and ounces in a row."""
    return (
        len(numbers) >= LEAST_OF_LIST
        or any(c.items[i].value != int(c.items[i].value) or c.said(i + 1) in ROUND_WEIGHT for i in numbers)
        or _in_grams(c)
    )


def _in_grams(c: Clause) -> bool:
    """`weights in grams, 31: 1790, 32: 1850`."""
    return c.says(GRAMS_SAID) or (c.before is not None and c.before.says(GRAMS_SAID))


def weights_told(c: Clause, *, told: bool) -> list[Weight]:
    """The weights of the statement; in words about weighing also `4 6`, and a bare number in the farm's unit."""
    found: list[Weight] = [(c.grams(i), [c.items[i]]) for i in c.sorted_as("weight", "pair", "clock") if c.said(i - 1) not in CHANGES]
    if found:
        return found
    numbers = c.sorted_as("num")
    even = [i for i in numbers if c.said(i + 1) in ROUND_WEIGHT and (told or c.known(i - 1) is not None)]
    if even:
        return [bare_weight(c, i) for i in even]  # "R23 5 even"
    heavy = [i for i in numbers if c.whole(i) is not None and (c.whole(i) or 0) >= GRAMS_FROM and c.known(i) is None]
    if heavy and _in_grams(c):
        return [bare_weight(c, i) for i in heavy]
    if told:
        return _bare(c, numbers)
    if (
        len(numbers) >= LEAST_OF_LIST
        and len(numbers) % 3 == 0
        and len(numbers) == len(c.items)
        and all(c.known(numbers[n]) for n in range(0, len(numbers), 3))
    ):
        return _bare(c, numbers)
    decimals = [i for i in numbers if c.items[i].value != int(c.items[i].value) and not c.said(i).isalpha()]  # "half" is no weight
    lone = c.explicit() or [i for i in numbers if i not in decimals]
    if decimals and len(lone) == len(decimals) and len(c.items) <= 4 * len(decimals):
        return [bare_weight(c, i) for i in decimals]
    return []


def _bare(c: Clause, numbers: list[int]) -> list[Weight]:
    """Numbers without a unit behind the animals: a pair of whole numbers is pounds and ounces."""
    rest = list(numbers)
    if not c.explicit() and rest and (c.whole(rest[0]) is not None):
        if len(rest) == 1:
            return [bare_weight(c, rest[0])] if c.spoken_of() else []
        rest = rest[1:]
    if len(rest) == 1:
        return [] if c.known(rest[0]) and c.said(rest[0] - 1) in {"and", "&"} else [bare_weight(c, rest[0])]
    if len(rest) == 2 and c.whole(rest[0]) is not None and c.whole(rest[1]) is not None:
        from_pair = pair_grams(c.whole(rest[0]) or 0, c.whole(rest[1]) or 0)
        return [(from_pair, [c.items[i] for i in rest])]
    if not c.explicit() and len(numbers) % 3 == 0 and all(c.whole(i) is not None for i in numbers):
        return [
            (pair_grams(c.whole(numbers[i + 1]) or 0, c.whole(numbers[i + 2]) or 0), [c.items[numbers[i + 1]], c.items[numbers[i + 2]]])
            for i in range(0, len(numbers), 3)
        ]
    return []
