"""Settings as they are told: one, or a list of them parted by semicolons or lines, and whether a word of a setting is one at all."""

from __future__ import annotations

from typing import Final

from core.notes.clauses.asked import PLACES_OF_QUESTION
from core.notes.clauses.clause import Clause
from core.notes.kinds import setting
from core.notes.slots.items import Item

NAMED_BY: Final = 2  # not a figure: items: `our feed bag is`, `my yearly aim is`


def read_settings(whole: Clause) -> None:
    """One setting, or a list of them parted by semicolons or lines: `settings: feed bag, 40 lb; feed price, $17.50 a bag`."""
    clauses = pieces_of(whole, frozenset({";"}))
    for clause in clauses if len(clauses) > 1 else ():
        setting.read(clause)
    found = [found for clause in clauses for found in clause.found]
    if len(found) == len(clauses) > 1 and all(each.need is None for each in found):
        for each in found:
            whole.take(each)
    else:
        setting.read(whole)


def pieces_of(whole: Clause, ends: frozenset[str]) -> list[Clause]:
    """The message cut at its lines and at these marks."""
    parts: list[list[Item]] = [[]]
    for item in whole.items:
        if item.said in ends or item.sort == "break":
            parts.append([])
        else:
            parts[-1].append(item)
    return [Clause(part, whole.scene) for part in parts if part]


HAVING: Final = ("we have", "we've", "we got", "i have", "i've", "i got", "there are", "there's", "theres")

#: What may stand before a bare count of cages.
BEFORE: Final = frozenset({"no", "sorry", "actually", "only", "just", "about", ","})


def is_setting(whole: Clause) -> bool:
    place = whole.first("setting") or 0
    if any("negation" in item.marks for item in whole.items[:place]):
        return False  # "don't keep two bucks a breed"
    if (whole.has("buy", "purchase") and whole.has("bag")) or whole.said(place + 1) == "what":
        return False
    if whole.said(place) in {"winter", "spring"} and whole.dates() and not whole.explicit() and len(whole.items) <= PLACES_OF_QUESTION:
        return True
    if whole.said(place) in {"weights in", "weights"} and len(whole.sorted_as("num", "weight", "pair")) > 1:
        return False
    if any(item.said in {"left", "remaining", "remains", "opened"} for item in whole.items) or (
        any(item.said == "down to" for item in whole.items) and not whole.has("each") and not whole.sorted_as("money", "temp")
    ):
        return False
    return (
        len(whole.said(place).split()) > 1
        or place == whole.opening()
        or whole.said(whole.opening() or 0) in {"setting", "settings", "set"}
        or (
            whole.said(place) == "cages"
            and whole.whole(place - 1) is not None
            and all(item.sort == "mark" for item in whole.items[place + 1 :])
            and (
                {item.said for item in whole.items[: place - 1]} <= BEFORE or (place <= NAMED_BY + 1 and whole.text().startswith(HAVING))
            )  # "24 cages", and nothing else
        )
        or (whole.said(whole.opening() or 0) in {"our", "my"} and place - (whole.opening() or 0) <= NAMED_BY)
    )
