"""Somebody else's rabbits: what befell a neighbour's litter is no fact of this farm.

A person of no tag at the head of a statement (`my sister's doe`, `my friend Carol`, `the neighbor told me she`) owns what follows, unless an
animal of the book is named there too.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from core.notes.slots.items import Item

PEOPLE: Final = frozenset(
    """sister brother neighbor neighbour friend aunt uncle cousin mother mom father dad grandmother grandma grandpa niece nephew lady man fellow
    guy woman boss teacher judge breeder buddy coworker gal sister-in-law""".split()  # noqa: SIM905 - a table of words
)
#: People of the house: what they did was done on the farm.
HOUSEHOLD: Final = frozenset("husband wife daughter son kids boy girl grandson granddaughter".split())  # noqa: SIM905 - a table of words
NAMED_PERSONS: Final = PEOPLE | HOUSEHOLD
SAID_OF_PERSONS: Final = NAMED_PERSONS | {f"{person}'s" for person in NAMED_PERSONS}
POINTERS: Final = frozenset({"my", "our", "the", "a", "her", "his", "that", "this", "another", "one", "some"})
#: What of a person's may be spoken of: `my sister's doe`.
OWNED: Final = frozenset({"doe_word", "buck_word", "litter", "kits", "does_word", "bucks_word"})
TOLD: Final = frozenset({"told", "says", "said", "say", "tells", "swears", "hollered", "called", "texted", "thinks", "asked"})
#: Between a person and an ailment.
FALLING: Final = frozenset(
    {
        "have", "has", "had", "got", "is", "was", "been", "has been", "came", "down", "with", "feeling", "all", "really", "so", "a", "the",
        "bad",
    }
)  # fmt: skip
OPENING: Final = 6  # not a figure: items: as far as the head of a statement is looked at
#: What a person of no tag may be told to have had befall them.
BEFALLEN: Final = frozenset({"lose", "had", "kindle", "die", "eat", "step", "newborn"})


def ill_person(items: Sequence[Item]) -> bool:
    """`my husband came down with a cold`: whether a person is what ails, with no animal between."""
    ill = next((i for i, item in enumerate(items) if "ail" in item.marks), 0)
    person = next((i for i in range(1, ill) if items[i].said in NAMED_PERSONS and items[i - 1].said in POINTERS), None)
    return person is not None and all(FALLING.issuperset(item.said.split()) for item in items[person + 1 : ill])


#: Where a breeder goes, and when they are open.
PLACES: Final = frozenset({"vet", "store", "shop", "mill", "processor", "butcher", "auction", "co-op", "bank"})
OPEN_OR_NOT: Final = frozenset({"is", "isnt", "isn't", "was", "wasnt", "wasn't", "opens", "closes", "are", "will"})
LEADING_IN: Final = frozenset({",", "and", "but", "so", "of", "course", "naturally", "because", "since", "though", "-"})


def shop_or_vet(items: Sequence[Item]) -> bool:
    """`and of course the vet is closed until Monday`: of a place that is none of the barn's, with no animal and no remedy."""
    begin = 0
    while begin < len(items) and items[begin].said in LEADING_IN:
        begin += 1
    opening = [item.said.rpartition(" ")[2] for item in items[begin : begin + OPENING // 2]]
    if PLACES.isdisjoint(opening):
        return False
    place = begin + next(i for i, word in enumerate(opening) if word in PLACES)
    return (
        place + 1 < len(items)
        and items[place + 1].said in OPEN_OR_NOT
        and all(
            item.sort in {"word", "mark", "date", "time", "clock"} and item.marks.isdisjoint({"drug", "treat"}) for item in items[begin:]
        )
    )


def of_somebody_else(items: Sequence[Item], *, spoken_of: bool) -> bool:
    """Whether a piece tells of other people's animals; words only reported may be of the animal `spoken_of` before."""
    for i, item in enumerate(items[:OPENING]):
        if item.said in SAID_OF_PERSONS and i and items[i - 1].said in POINTERS:
            if any(each.sort in {"animal", "code"} for each in items):
                return False
            person = item.said.removesuffix("'s")
            owned = item.said.endswith("'s") and any(after.marks & OWNED for after in items[i + 1 : i + 4])
            if person in HOUSEHOLD:
                return owned and not spoken_of
            return owned or not (spoken_of and any(after.said in TOLD for after in items[i + 1 : i + 4]))
    return False
