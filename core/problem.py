"""Misunderstandings as values: what could not be recorded safely, and what to do about it.

Nothing here is raised. A `Problem` is handed back, shown to the person as a question, and answered by them.
"""

from __future__ import annotations

from dataclasses import dataclass

#: Why a message could not be recorded, in the order in which one is chosen when several apply.
WHY = (
    "which_animal",
    "wrong_sex",
    "when",
    "how_many",
    "which_number",
    "what",
    "impossible",
    "confirm",
    "duplicate",
)


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that stands in the way.

    code     one of WHY (reading a note), or a code of the shells' own list (`no_book`, `no_animal`, ...)
    text     the question or the reason, as the person sees it
    choices  at most five answers that would settle it, the likeliest first
    remedy   what to do next, with an example that would work
    """

    code: str
    text: str
    choices: tuple[str, ...] = ()
    remedy: str = ""


def first(problems: tuple[Problem, ...]) -> Problem | None:
    """The problem to ask about, by the order of WHY; None when there is none."""
    return min(problems, key=lambda problem: WHY.index(problem.code), default=None)
