"""What a speaker takes back in the same breath: `seven no eight`, `Moss, I mean Flint`, `8 born, no, 9 born`."""

from __future__ import annotations

from typing import Final

from core.notes.grammar import ENDS, LEAST_BEFORE
from core.notes.slots.items import Item, color_said, pair_grams
from core.words import OUNCES_IN_POUND

CORRECTORS: Final = frozenset(
    {"no", "i mean", "i meant", "make that", "sorry", "er", "rather", "or rather", "wait no", "no wait", "scratch that", "oops", "i said"}
)
COUNTED_WORDS: Final = frozenset({"kits", "born", "alive", "dead", "bucks_word", "does_word", "bag", "falls"})
MOST_HESITATIONS: Final = 20  # not a figure: items: no correction has more of them
HESITATIONS: Final = frozenset({"um", "uh", "er", "erm", "uhm", "oh", "like", "wait"})
THAT_WAS: Final = frozenset({"that was", "it was", "thats", "that's", "that is", "its", "it's", "was"})


def without_taken_back(items: list[Item]) -> list[Item]:
    """The items without what the speaker took back at once: `seven no eight`, `Moss, I mean Flint`."""
    kept = list(items)
    i = 1
    while i < len(kept) - 1:
        if kept[i].said in CORRECTORS:
            before = i - 1
            while before > max(0, i - MOST_HESITATIONS) and (kept[before].said in HESITATIONS or kept[before].said in {",", "?"}):
                before -= 1
            after, most = i + 1, min(len(kept) - 1, i + MOST_HESITATIONS)
            while after < most and (
                kept[after].said in CORRECTORS or kept[after].said in HESITATIONS or kept[after].said in {",", "it's", "it was"}
            ):
                after += 1
            if kept[after].said == kept[before - 1].said and kept[after].said in {"to", "with", "for", "from"} and after < len(kept) - 1:
                after += 1  # "to Moss, scratch that, to Flint"
            if _animal_put_right(kept, i, after):
                continue
            if _count_put_right(kept, before, after):
                continue
            if _ounces_put_right(kept[before], kept[after]):
                kept[before + 1 : after + 1] = []
                continue
            if _alike(kept[before], kept[after]) and not (after + 1 < len(kept) and kept[after + 1].marks & {"negation"}):
                kept[before:after] = []
                i = max(before, 1)
                continue
        i += 1
    return _put_right_last(kept)


def _put_right_last(kept: list[Item]) -> list[Item]:
    """`type 4, fur 4. type 3 i mean`: the words behind the mark that is said again."""
    end = len(kept)
    while end and kept[end - 1].said in ENDS:
        end -= 1
    if end < LEAST_BEFORE or kept[end - 1].said not in {"i mean", "i meant"}:
        return kept
    label, number = kept[end - 3], kept[end - 2]
    if label.sort != "word" or not label.marks or number.sort != "num":
        return kept
    if end > LEAST_BEFORE * 2 and kept[end - 4].said == "no" and kept[end - 5].sort == "num" and kept[end - 6].marks & label.marks:
        return [*kept[: end - 6], *kept[end - 3 : end - 1], *kept[end:]]  # "fur 4 no type 3 i mean"
    earlier = [i for i in range(1, end - 3) if kept[i].sort == "num" and kept[i - 1].said == label.said]
    if len(earlier) != 1:
        return kept
    kept[earlier[0]] = number
    return kept[: end - 3]


def _animal_put_right(kept: list[Item], corrector: int, after: int) -> bool:
    """`Biscuit ten pounds, no wait, that was Clover`: the one animal of the statement was the wrong one."""
    right = after + 1 if kept[after].said in THAT_WAS else after
    if (
        right >= len(kept)
        or kept[right - 1].said not in THAT_WAS
        or not (right + 1 == len(kept) or kept[right + 1].sort in {"break", "mark"})
    ):
        return False
    begin = corrector
    while begin and kept[begin - 1].sort != "break" and kept[begin - 1].said not in ENDS:
        begin -= 1
    sorts = {"animal", "code"} if kept[right].sort == "animal" else {"num"}
    named = [place for place in range(begin, corrector) if kept[place].sort in sorts | {"animal", "code"}]
    if len(named) != 1 or kept[right].sort not in sorts or (sorts == {"num"} and named[0] != begin):
        return False
    kept[named[0]] = kept[right]
    kept[corrector : right + 1] = []
    return True


def _count_put_right(kept: list[Item], before: int, after: int) -> bool:
    """`weaned 16, 5 kits, i mean 4`, `8 born, no, 9 born`: the number before the word is said again, with or without the word."""
    label = kept[before]
    if (
        label.sort != "word"
        or label.marks.isdisjoint(COUNTED_WORDS)
        or not before
        or kept[before - 1].sort != "num"
        or kept[after].sort != "num"
    ):
        return False
    following = kept[after + 1] if after + 1 < len(kept) else None
    again = following is not None and following.said == label.said
    if not again and following is not None and following.sort not in {"mark", "break", "date"}:
        return False
    kept[before - 1] = kept[after]
    kept[before + 1 : after + 1 + again] = []
    return True


def _ounces_put_right(one: Item, other: Item) -> bool:
    """`three pounds fourteen, no, fifteen ounces`: the ounces alone are said again; the weight takes them."""
    if one.sort != "weight" or one.unit != "lb" or one.value[1] == int(one.value[1]):
        return False
    ounces = other.value[1] if other.sort == "weight" and other.unit == "oz" else (other.value if other.sort == "num" else None)
    if ounces is None or ounces != int(ounces) or not 0 <= ounces < OUNCES_IN_POUND:
        return False
    pounds = int(one.value[1])
    one.value = (pair_grams(pounds, ounces), pounds + ounces / OUNCES_IN_POUND)
    return True


def _alike(one: Item, other: Item) -> bool:
    named = {"num", "animal", "code"}
    if color_said(one) and color_said(other):
        return one.marks.isdisjoint({"breed_name"}) and other.marks.isdisjoint({"breed_name"})
    if one.sort == "num" and other.sort == "dose" and one.value != int(one.value):
        return True  # "ivermectin .2 no .3 ml"
    return (one.sort == other.sort and one.sort in {"num", "weight", "pair", "date", "money", "cage", "animal", "code"}) or (
        {one.sort, other.sort} <= named and other.sort != "num"
    )
