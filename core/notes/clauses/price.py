"""What was paid or is asked for an animal that leaves."""

from __future__ import annotations

from typing import Final

from core.notes.clauses.amounts import cents
from core.notes.clauses.clause import Clause
from core.notes.slots.items import Item

PRICE_LEADS: Final = frozenset({"for", "at", "@", "price", "paid", "asking", ":", ","})
WHERE_FROM: Final = frozenset({"from", "of", "out of", "off", "off of", "under"})  # `2 bucks from 16` are no dollars


def price_told(c: Clause, cue: int | None) -> tuple[int | None, list[Item]]:
    """Money; `40 bucks`; else a bare number behind `for`, `at`, or behind the animal at the end."""
    money = c.sorted_as("money")
    if money:
        item = c.items[money[0]]
        extra = [c.items[money[0] + 1]] if money[0] + 1 < len(c.items) and "each" in c.items[money[0] + 1].marks else []
        return cents(c, money[0]), [item, *extra]
    numbers = c.sorted_as("num")
    animals = _animals_besides(c, numbers)
    for i in reversed(numbers):
        behind = c.items[i + 1].marks if i + 1 < len(c.items) else frozenset()
        dollars, each = "bucks_word" in behind, "each" in behind
        if dollars and animals and c.said(i - 1) != "of" and c.said(i + 2) not in WHERE_FROM:
            return cents(c, i), [c.items[i], c.items[i + 1]]
        if c.counted(i) and not dollars and not each:
            continue
        led = c.said(i - 1) in PRICE_LEADS or each or (c.said(i - 1) == "to" and cue is not None and "price" in c.said(cue))
        decimal = c.items[i].value != int(c.items[i].value) or "." in c.items[i].said
        if (led and animals) or decimal or (animals and i == numbers[-1] and _at_the_end(c, i, cue, numbers)):
            return cents(c, i), [c.items[i]]  # "dropped the price on 32 to 45"
    return None, []


def _animals_besides(c: Clause, numbers: list[int]) -> bool:
    """Whether a price would leave an animal to be sold: one named, another number, or the one spoken of."""
    spoken_of = c.subject is not None or (bool(c.scene.context.subject) and c.has("pronoun"))
    lone = numbers[0] if spoken_of and len(numbers) == 1 else None
    priced = lone is not None and c.said(lone - 1) == "for" and c.said(lone - 2) in {"him", "her", "it"}
    return bool(c.explicit()) or len(numbers) > 1 or priced or (lone is not None and c.known(lone) is None)


def _at_the_end(c: Clause, i: int, cue: int | None, numbers: list[int]) -> bool:
    """`sold 31 40`: the last number, behind the verb and the animal."""
    return (
        c.said(i + 1) != "of"
        and (cue is None or i > cue)
        and c.said(i - 1) not in {"out", "of", "from", "and", "to", "with", "out of", "outta", "off of", "off", "under"}
        and (
            (bool(c.explicit()) and c.explicit()[0] < i)
            or (c.subject is not None and len(numbers) == 1 and c.known(i) is None)
            or (len(numbers) > 1 and not c.explicit())
        )
    )
