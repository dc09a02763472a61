"""What happened while a note was read: the calls that tell how it was understood, in order.

The reader itself is run, as it stands, and watched from outside; so it pays nothing when nobody watches, and what is told can't drift from what it does.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import dataclass
from types import FrameType
from typing import Any, Final, TypeVar

Result = TypeVar("Result")

NOTES: Final = "core.notes."
KINDS: Final = "core.notes.kinds."
#: Parts of a kind's reading that have a file of their own: their steps are kept like the kind's.
PARTS: Final = frozenset(
    {f"clauses.{part}" for part in ("asked_about", "birth_counts", "losses", "newcomers", "partners", "planned", "weights", "wished")}
)
#: Beside the files of the kinds, whose every step is kept: what is worth telling of the road of a note, by the function's own name.
WORTH_TELLING: Final = frozenset(
    {
        "read", "tokens", "Scan.run", "without_taken_back", "_foreign", "whole_message", "_ticked", "written_fact", "receipt_read", "statements", "is_tentative",
        "is_denied", "counts_others", "Marked.take", "unexplained", "unread_verb", "misheard",
    }
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Step:
    """A function of the reader that began (`call`) or ended (`return`).

    room    its module, without `core.notes.`
    name    its name, with its class
    line    where it began, or where it ended
    args    what it was called with
    result  what it gave; None when it begins
    caller  who called it: file, line and name
    """

    event: str
    room: str
    name: str
    line: int
    args: tuple[Any, ...]
    result: Any
    caller: tuple[str, int, str]

    @property
    def ends(self) -> bool:
        """Whether this is its end."""
        return self.event == "return"


def watched(act: Callable[[], Result]) -> tuple[Result, list[Step]]:
    """What the act gave, and its steps. Only this thread is watched; another watcher, such as a profiler, is put back afterwards."""
    steps: list[Step] = []

    def see(frame: FrameType, event: str, result: Any) -> None:  # pragma: no cover - coverage can't see into what sees
        module = frame.f_globals.get("__name__", "")
        code = frame.f_code
        if event not in {"call", "return"} or not (
            module.startswith(KINDS)
            or module.removeprefix(NOTES) in PARTS
            or (module.startswith(NOTES) and (code.co_qualname in WORTH_TELLING or "plausible" in module))
        ):
            return
        back = frame.f_back
        caller = (back.f_code.co_filename, back.f_lineno, back.f_code.co_qualname) if back else ("", 0, "")
        args = tuple(frame.f_locals.get(name) for name in code.co_varnames[: code.co_argcount])
        given = result if event == "return" else None
        steps.append(Step(event, module.removeprefix(NOTES), code.co_qualname, frame.f_lineno, args, given, caller))

    before = sys.getprofile()
    sys.setprofile(see)
    try:
        result = act()
    finally:
        sys.setprofile(before)
    return result, steps
