"""Which plan a statement tells, and of which animals."""

from __future__ import annotations

from typing import Final

from core.notes.clauses.clause import Clause

PLANS: Final = ("replace", "retire", "review", "cull", "sell", "keep", "breed")
TAKING: Final = frozenset({"take", "takes", "taking", "will take"})
#: Verbs of staying and going that mean a plan only where nothing else is said: `3 goes`, `14 and 9 stay`.
BARE: Final = frozenset({"goes", "go", "has to go", "have to go", "must go", "needs to go", "got to go", "stays", "stay"})
#: `hard to keep`, `a shame to sell`: what such words judge is not decided.
JUDGED: Final = frozenset(
    {"cruel", "hard", "easy", "silly", "foolish", "sad", "shame", "pity", "wrong", "tough", "expensive", "crazy", "idea", "cheaper"}
)


def plan_told(c: Clause) -> str | None:
    """The plan by its verb, the narrow before the broad; else the heading's."""
    if place_taken(c) is not None:
        return "replace"
    for what in PLANS:
        cue = c.first(f"plan:{what}")
        if cue is None or (c.said(cue) in {"put", "eat"} and not c.has("intent")):
            continue
        if c.said(cue) in BARE and not _says_only(c, cue):
            continue
        if c.said(cue) in {"butchering", "processing", "culling", "slaughtering"} and not (
            c.has("intent") or c.ahead() or c.planned_for(cue) or c.to_come(cue)
        ):
            continue
        if c.said(cue) == "breeding" and (not c.to_come(cue) or c.has("falls", "times_word")):
            continue
        if (c.said(cue) == "keep" and c.said(cue + 1).endswith("ing")) or (c.said(cue - 1) == "to" and c.said(cue - 2) in JUDGED):
            continue
        if what == "breed" and (
            c.said(cue) == "put" or (c.said(cue - 1) == "to" and c.said(cue - 2) in {"ready", "eager", "willing", "enough", "young", "old"})
        ):
            continue
        if c.said(cue) == "retired" or (c.said(cue) == "process" and c.said(cue - 1) in {"the", "in"}):
            return what if c.said(cue) == "retired" else None
        return what
    return next((mark.removeprefix("plan:") for mark in sorted(c.virtual) if mark.startswith("plan:")), None)


def place_taken(c: Clause) -> int | None:
    """`33 is to take Juno's place`: the verb before the one whose place it is."""
    if not c.has("place_of"):
        return None
    return next(
        (
            i
            for i in range(1, len(c.items) - 2)
            if c.said(i) in TAKING
            and c.said(i - 1) not in {"may", "might", "could", "would"}
            and c.items[i + 1].unit == "possessive"
            and "place_of" in c.items[i + 2].marks
        ),
        None,
    )


def _says_only(c: Clause, cue: int) -> bool:
    """Whether the verb ends a sentence of animals alone."""
    places = set(animal_places(c))
    named = [i for i in range(cue) if i in places]
    link = {",", "and", "&", "doe", "buck"}
    ends = all(item.said in {".", "!"} or item.sort == "date" for item in c.items[cue + 1 :])
    return bool(named) and ends and all(i in places or c.said(i) in link for i in range(cue))


def animal_places(c: Clause) -> list[int]:
    """Where its animals stand: those named, and numbers that are somebody's tag."""
    return sorted(
        {
            *c.explicit(),
            *(i for i in c.sorted_as("num") if c.whole(i) is not None and not c.counted(i) and (c.known(i) or i == c.opening())),
        }
    )
