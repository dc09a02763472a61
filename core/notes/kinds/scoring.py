"""A mark for type, fur, colour, size or the whole animal."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.handbook import asking
from core.handbook.asking import SCORE_HIGHEST
from core.herd.changes import seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need, decimal_text
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import called, dated, noted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Scored:
    """A mark for type, fur, colour, size or the whole animal."""

    kind: ClassVar[str] = "scored"

    who: Tag
    trait: str
    score: float
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example("33 fur 4 no type 3 i mean", ({"who": "33", "trait": "type", "score": 3, "on": "2026-11-25"},)),
    Example(
        "31 type 4 fur 3",
        (
            {"who": "31", "trait": "type", "score": 4, "on": "2026-11-25"},
            {"who": "31", "trait": "fur", "score": 3, "on": "2026-11-25"},
        ),
    ),
    Example(
        "score 33: size 4, color 5",
        (
            {"who": "33", "trait": "size", "score": 4, "on": "2026-11-25"},
            {"who": "33", "trait": "color", "score": 5, "on": "2026-11-25"},
        ),
    ),
    Example("R21 overall 4", ({"who": "R21", "trait": "overall", "score": 4, "on": "2026-11-25"},)),
    Example("32 coat 3", ({"who": "32", "trait": "fur", "score": 3, "on": "2026-11-25"},)),
    Example("31 type 3", ({"who": "31", "trait": "type", "score": 3, "on": "2026-11-25"},)),
    Example("thirty one fur three", ({"who": "31", "trait": "fur", "score": 3, "on": "2026-11-25"},)),
    Example(
        "Evaluations: 33 - type 4, fur 5, color 3, overall 4.",
        (
            {"who": "33", "trait": "type", "score": 4, "on": "2026-11-25"},
            {"who": "33", "trait": "fur", "score": 5, "on": "2026-11-25"},
            {"who": "33", "trait": "color", "score": 3, "on": "2026-11-25"},
            {"who": "33", "trait": "overall", "score": 4, "on": "2026-11-25"},
        ),
    ),
)
NOT_THIS: tuple[str, ...] = (
    "31 3-14",
    "5 bcs 3",
    "sold 33 for 45",
)

OPENS: Final = ("trait",)
CUES: Final = {
    "trait:type": "type | body type | typ",
    "trait:fur": "fur | coat | fur quality",
    "trait:color": "color | colour",
    "trait:size": "size",
    "trait:overall": "overall | overall score | total score",
    "trait": "type | overall | scored | score | scores | fur | size | color | colour | graded | judged",
}  # fmt: skip


def read(c: Clause) -> None:
    """Marks for type, fur, colour, size or the whole, each with its number behind it."""
    marks = _marks(c)
    if not marks:
        return
    taken = {id(c.items[place]) for _, place, _ in marks}
    c.used.update(taken)
    pick = c.subject_of(marks[0][2])
    if pick is None and not _only_marks(c, marks):
        c.used.difference_update(taken)  # "color 31 castor": no mark, and its number is somebody's
        return
    for trait, place, label in marks:
        value = c.items[place].value
        need = (
            None
            if 0 <= value <= SCORE_HIGHEST.value
            else Need("which_number", "score", f"Scores go up to {SCORE_HIGHEST.whole}. What is its {trait}?")
        )
        c.take(
            c.past(
                Scored,
                pick,
                "who",
                {"trait": trait, "score": decimal_text(value)},
                [c.items[place], c.items[label], *(item for item in c.items if item.said in {"score", "scores", "scored"})],
                need,
            )
        )


def _only_marks(c: Clause, marks: list[tuple[str, int, int]]) -> bool:
    """Whether the statement is marks and nothing else: whose they are is asked."""
    places = {place for mark in marks for place in mark[1:]}
    return all(
        i in places or item.sort in {"mark", "date"} or item.said in {"and", "score", "scores", "scored"} for i, item in enumerate(c.items)
    )


def _marks(c: Clause) -> list[tuple[str, int, int]]:
    found = []
    claimed: set[int] = set()
    for i, item in enumerate(c.items):
        trait = next((mark.removeprefix("trait:") for mark in item.marks if mark.startswith("trait:")), None)
        if trait is None or c.taken(i):
            continue
        place = (
            i - 2
            if c.said(i - 1) in {"on", "for"} and c.whole(i - 2) is not None and i - 2 not in claimed
            else c.past_fillers(_past_animal(c, i + 1), 1)
        )
        if place < len(c.items) and c.items[place].sort == "num" and place not in claimed and not c.counted(place):
            if c.said(place + 1) in {"out of", "of"} and c.whole(place + 2) == SCORE_HIGHEST.whole:
                c.use([place + 2])  # "type 4 out of 5"
            claimed.add(place)
            found.append((trait, place, i))
    return found


def _past_animal(c: Clause, i: int) -> int:
    """Past `on 32` behind a trait: `fur on 32 is a 5`."""
    return i + 2 if c.said(i) in {"on", "of"} and c.known(i + 1) is not None and i + 2 < len(c.items) else i


def check(fact: Scored, herd: Herd, today: date) -> Problem | None:
    """An animal that is there; a score in range."""
    high = asking.SCORE_HIGHEST.value
    text = f"Scores go up to {high:g}; {fact.score:g} is not one. Which is it?"
    off = None if 0 <= fact.score <= high else Problem("which_number", text, (), f'Send it again: "{fact.who} {fact.trait} 4".')
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on), off)


def apply(fact: Scored, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: Scored, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The trait and its mark."""
    return (dated(f"{called(after, fact.who)}: {fact.trait} {fact.score:g}", fact.on, after),)


WRITTEN = ("{who:TAG} scored {trait:WORD} {score:DEC}",)


def show(fact: Scored, _herd: Herd) -> str:
    """`2026-11-25: 33 scored type 4`."""
    return noted(fact.on, f"{fact.who} scored {fact.trait} {fact.score:g}")


KIND = Kind(
    fact=Scored, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN, plain=True
)
