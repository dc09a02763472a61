"""What a statement does not say to be so: it only may be, it is denied, it was long ago, or it counts other animals."""

from __future__ import annotations

from typing import Final

from core.notes.clauses.clause import CONDITIONS, Clause
from core.notes.clauses.joints import BIRTHS
from core.notes.clauses.unreal import BEFORE_WHETHER, CONDITION, depends, ordered
from core.notes.grammar import OPENS


def is_tentative(clause: Clause) -> bool:
    """Whether the statement only says what may be. Words about a reminder, and `if` behind the fact, leave the fact."""
    place = clause.first("tentative") or 0
    told = [i for i, item in enumerate(clause.items) if item.marks & OPENS]
    said = clause.said(place)
    following = clause.items[place + 1] if place + 1 < len(clause.items) else None
    if said in CONDITION:
        return _conditional(clause, place, told)
    if (
        said in {"maybe", "perhaps", "possibly", "about to", "nearly", "almost"}
        and following is not None
        and following.sort in {"num", "weight", "pair"}
    ):
        return False
    if said in {"almost", "nearly", "about to"} and not any(i > place for i in told):
        return False
    if said in CONDITIONS and told and told[0] < place:
        return False  # "replace Juno with 33 once she's old enough"
    if said in {"hope", "hoping", "hopefully", "expecting", "expect", "maybe", "perhaps", "supposed to"} and told and told[0] < place:
        return False
    weather = clause.sorted_as("temp") or clause.has("degrees_verb")
    return not (said == "supposed to" and weather) and not clause.has("palpate")


def is_yet_to_come(clause: Clause) -> bool:
    """`when 14 kindles, ...`: what is told of the present begins a condition, what is told of the past does not."""
    opening = clause.opening()
    if opening is None or clause.said(opening) != "when":
        return False
    verb = next((item for item in clause.items[opening + 1 :] if item.marks & OPENS), None)
    return verb is not None and verb.said.split(" ")[0].endswith("s")


def _conditional(clause: Clause, place: int, told: list[int]) -> bool:
    """Whether an `if` leaves the statement undone; a hedge does not, nor one behind a deed that is told."""
    whether = clause.said(place - 1) in BEFORE_WHETHER
    if not whether and not depends(clause, place):
        return False
    clause.condition = place == clause.opening()
    if told and told[0] < place:
        clause.put_off = not whether and ordered(clause, place)
        return clause.put_off or not clause.sorted_as("num", "weight", "pair")
    clause.put_off = not whether
    return True


def of_an_earlier_time(clause: Clause) -> bool:
    """`9 had 6 last time`: what befell her before is no news; `two more than last time` only compares."""
    for i, item in enumerate(clause.items):
        if item.said in {".", ",", ";", "and", "but", "than", "as", "since", "from", "like", "unlike", "break"}:
            return False
        if item.said == "last time" or (item.said == "last" and clause.said(i + 1) == "time"):
            return True
    return False


UNDONE: Final = frozenset(
    {
        "haven't", "havent", "have not", "hasn't", "hasnt", "has not", "didn't", "didnt", "did not", "not", "never", "ain't", "aint",
        "can't", "cant",
    }
)  # fmt: skip
NOBODY: Final = frozenset({"none", "nobody", "neither", "no one", "nothing"})
YET: Final = frozenset({"yet", "more"})
NO_ONE: Final = frozenset({"nobody", "no one", "noone"})
DENYING: Final = NO_ONE | {"no"}
#: What the denying word tells itself: `won't lift`, `not sure`, `not a fault`.
TOLD_BY_DENYING: Final = frozenset({"refuse", "miss", "ail", "unsure", "open", "not_dq", "temper:bad"})
SHORT: Final = 5  # not a figure: items: `14 has no kits today`


def is_denied(clause: Clause) -> bool:
    """Whether the verb is denied: `hasn't kindled yet`, `no kits yet`, `not bred`, `none of them died`."""
    said = clause.words()
    if not NOBODY.isdisjoint(said) and _befell_nobody(clause):
        return True
    if "negation" not in clause.marks and DENYING.isdisjoint(said):
        return False
    last_yet = -1 if YET.isdisjoint(said) else max(i for i, item in enumerate(clause.items) if item.said in YET)
    for i, item in enumerate(clause.items):
        if item.said in NO_ONE and any(after.marks & OPENS - {"had"} for after in clause.items[i + 1 : i + 4]):
            return True
        if "negation" not in item.marks and (item.said != "no" or i + 1 == len(clause.items)):
            continue
        if item.said in UNDONE and i + 1 < len(clause.items) and "palpate" in clause.items[i + 1].marks:
            return "open" not in clause.items[i + 1].marks  # "didn't feel a thing in 22"
        if (item.said != "no" and item.marks & TOLD_BY_DENYING) or (clause.has("palpate") and clause.has("unsure")):
            continue
        if _there_is_no(clause, i, yet=i < last_yet) if item.said == "no" else _is_not(clause, i):
            return True
    return False


def _befell_nobody(clause: Clause) -> bool:
    """`none of them died`: a loss behind the word, and no number beside it."""
    nobody = next(i for i, item in enumerate(clause.items) if item.said in NOBODY)
    return not clause.sorted_as("num", "weight", "pair") and any(
        item.marks & {"die", "lose", "step", "eat", "dead"} for item in clause.items[nobody + 1 :]
    )


def _there_is_no(clause: Clause, i: int, *, yet: bool) -> bool:
    """`no palp yet`, `no kits`: whether what stands behind the `no` at that place is denied."""
    behind = clause.items[i + 1]
    if behind.sort == "num" and behind.spoken and behind.value == 1 and i + 2 < len(clause.items):
        return bool(clause.items[i + 2].marks & OPENS)  # "no one kindled last night"
    if yet and behind.marks & OPENS:
        return True
    return bool(behind.marks & {"kits", "litter"}) and (yet or (len(clause.items) <= SHORT and not clause.has("miss")))


def _is_not(clause: Clause, i: int) -> bool:
    """`box not in yet`, `hasn't kindled`: whether the verb behind the negation at that place is denied."""
    behind = clause.items[i + 1 : i + 5]
    if clause.has("box") and behind and behind[0].marks & {"box_in", "box_out"}:
        return True
    if clause.said(i + 1) == "using" and clause.has("lounge", "toilet"):
        return False  # "isn't using her box right, she lies in it"
    for after in behind:
        if after.sort in {"num", "weight", "pair"}:
            return False
        if after.marks & OPENS == {"count"} and any(item.marks & BIRTHS for item in clause.items[:i]):
            return False  # "she kindled! haven't counted yet" denies no birth
        if after.marks & OPENS or (after.marks & {"alive", "color", "pregnant"} and "dead" not in after.marks):
            return True
    return False


def counts_others(clause: Clause) -> bool:
    """Whether a number counts some other animal: `14 chickens died`."""
    for i, item in enumerate(clause.items):
        if (
            "other_species" in item.marks
            and i
            and (clause.items[i - 1].sort == "num" or (i > 1 and clause.items[i - 2].sort == "num" and clause.items[i - 1].sort == "word"))
        ):
            return not any(other.sort == "animal" for other in clause.items)
    return False
