"""Flesh over the backbone, felt by hand: 1 bony to 5 fat."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from typing import ClassVar, Final

from core.handbook import feeding
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need, decimal_text
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.dates import Said
from core.notes.slots.items import Item
from core.notes.telling import called, dated, noted
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class ConditionScored:
    """Flesh over the backbone, felt by hand: 1 bony to 5 fat."""

    kind: ClassVar[str] = "condition"

    who: Tag
    score: float
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example("bcs 3 on 14", ({"who": "14", "score": 3, "on": "2026-11-25"},)),
    Example(
        "bcs 2 for 9 and 3 for 5",
        ({"who": "9", "score": 2.0, "on": "2026-11-25"}, {"who": "5", "score": 3.0, "on": "2026-11-25"}),
    ),
    Example("22 bcs 4", ({"who": "22", "score": 4, "on": "2026-11-25"},)),
    Example(
        "bcs biscuit 3 thistle 2.5",
        ({"who": "22", "score": 3, "on": "2026-11-25"}, {"who": "16", "score": 2.5, "on": "2026-11-25"}),
    ),
    Example("Juno body condition 3.5", ({"who": "14", "score": 3.5, "on": "2026-11-25"},)),
    Example("condition 9: 2", ({"who": "9", "score": 2, "on": "2026-11-25"},)),
    Example("buck 7 bcs 1.5", ({"who": "7", "score": 1.5, "on": "2026-11-25"},)),
    Example("Flint's condition is about a 3", ({"who": "3", "score": 3, "on": "2026-11-25"},)),
    Example(
        "bcs: 3 3, 5 4",
        (
            {"who": "3", "score": 3, "on": "2026-11-25"},
            {"who": "5", "score": 4, "on": "2026-11-25"},
        ),
    ),
    Example(
        "BCS: 3 - 3; 5 - 3.5; 7 - 3",
        (
            {"who": "3", "score": 3, "on": "2026-11-25"},
            {"who": "5", "score": 3.5, "on": "2026-11-25"},
            {"who": "7", "score": 3, "on": "2026-11-25"},
        ),
    ),
    Example("biscuit bcs3", ({"who": "22", "score": 3, "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "R21 5-2",
    "33 type 3",
    "bcs moss 7 clover 9",
    "the hay is in good condition",
)

BARE: Final = 2  # not a figure: items: the word and its score, and nothing else
OPENS: Final = ("condition",)
CUES: Final = {
    "condition": "bcs | body condition | condition | condition score | body condition score | bc | condition scores | body score | cond | body condition of | body",
}  # fmt: skip


def read(c: Clause) -> None:
    """A score for flesh, halves allowed."""
    cue = c.first("condition")
    if (cue is None and "condition" not in c.virtual) or _out_of_five(c, cue) or _in_row(c, cue):
        return
    numbers = c.sorted_as("num")
    given = next((i for i in numbers if c.said(i - 1) in {"for", "on"} and c.known(i) is not None and i - 2 in numbers), None)
    place = _score(c, cue, numbers) if given is None else given - 2  # "bcs 2 for 22"
    if place is None:
        return
    c.used.add(id(c.items[place]))
    pick = c.subject_of(cue) if given is None else c.pick(given)
    score = c.items[place].value
    c.take(c.past(ConditionScored, pick, "who", {"score": decimal_text(score)}, [c.items[place], *_head(c, cue)], _no_score(score)))


def _head(c: Clause, cue: int | None) -> list[Item]:
    return [c.items[cue]] if cue is not None else []


def _no_score(score: Decimal) -> Need | None:
    """What to ask of a number that is no score."""
    if 1 <= score <= 5 and score * 2 == int(score * 2):
        return None
    return Need("which_number", "score", "Condition goes from 1 (bony) to 5 (fat), halves allowed. Which is it?")


def _out_of_five(c: Clause, cue: int | None) -> bool:
    """`bcs 3/5`: it looks like a day."""
    place = next((i for i in c.sorted_as("date") if _over_five(c.items[i].value) and (cue is None or i > cue)), None)
    if place is None or c.items[place].value.year is not None:
        return False
    c.use([place])
    score = decimal_text(Decimal(c.items[place].value.a))
    c.take(c.past(ConditionScored, c.subject_of(cue), "who", {"score": score}, [c.items[place], *_head(c, cue)]))
    return True


def _over_five(said: Said) -> bool:
    return said.shape == "numeric" and said.b == int(feeding.CONDITION_HIGHEST.value)


def _in_row(c: Clause, cue: int | None) -> bool:
    """`bcs moss 2.5 clover 3.5`: animals, each with its score right behind it."""
    named = [i for i in c.explicit() if cue is None or i > cue]
    scores = [i + 2 if c.said(i + 1) in {":", "=", "-"} else i + 1 for i in named]
    low, high = feeding.CONDITION_LOWEST.value, feeding.CONDITION_HIGHEST.value
    if len(named) < BARE or len(scores) != len(c.sorted_as("num")) or scores != c.sorted_as("num"):
        return False
    if not all(low <= c.items[i].value <= high and c.items[i].value * 2 == int(c.items[i].value * 2) for i in scores):
        return False
    for place, score in zip(named, scores, strict=True):
        used = [c.items[score], *_head(c, cue)]
        c.take(c.past(ConditionScored, c.pick(place), "who", {"score": decimal_text(c.items[score].value)}, used))
    return True


def _score(c: Clause, cue: int | None, numbers: list[int]) -> int | None:
    """The number that scores: the last one behind the word, since the animal comes first."""
    behind = [i for i in numbers if cue is None or i > cue]
    if not behind:
        before = [i for i in numbers if cue is not None and i < cue]
        return before[-1] if before and (c.explicit() or len(before) > 1) else None
    if (
        len(behind) == 1
        and not c.explicit()
        and not any(cue is not None and i < cue for i in numbers)
        and c.spoken_of() is None
        and len(c.items) > BARE
    ):
        return None
    return behind[-1]


def check(fact: ConditionScored, herd: Herd, today: date) -> Problem | None:
    """An animal that is there; a score from 1 to 5, in halves."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on), _score_problem(fact))


def _score_problem(fact: ConditionScored) -> Problem | None:
    low, high = feeding.CONDITION_LOWEST.value, feeding.CONDITION_HIGHEST.value
    if low <= fact.score <= high and float(fact.score * 2).is_integer():
        return None
    text = f"Condition goes from {low:g} to {high:g}, in halves; {fact.score:g} is not one of them. Which is it?"
    return Problem("which_number", text, (), f'Send it again: "{fact.who} condition 3".')


def apply(fact: ConditionScored, herd: Herd) -> Herd:
    """One more score."""
    animal = herd.find(fact.who)
    if animal is None:
        return herd
    return herd.with_animal(replace(animal, conditions=(*animal.conditions, (fact.on, float(fact.score)))))


def reply(fact: ConditionScored, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The score in words."""
    return (dated(f"{called(after, fact.who)}: condition {fact.score:g}, {flesh(fact.score)}", fact.on, after),)


def flesh(score: float) -> str:
    """A score in a word."""
    if score < feeding.CONDITION_THIN_BELOW.value:
        return "thin"
    return "fat" if score > feeding.CONDITION_FAT_ABOVE.value else "good"


WRITTEN = ("{who:TAG} condition {score:DEC}",)


def show(fact: ConditionScored, _herd: Herd) -> str:
    """`2026-11-25: 5 condition 2.5`."""
    return noted(fact.on, f"{fact.who} condition {fact.score:g}")


KIND = Kind(fact=ConditionScored, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
