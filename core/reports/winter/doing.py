"""The plan as notes: each animal that goes as a plan of the person's own, once they say `do it`. The animals stay until somebody writes that they are gone."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from core.herd.state import Herd
from core.notes.kinds.plan import Planned, show
from core.reports.keep_or_cull import keep_or_cull
from core.reports.verdict import Verdict

#: Whose idea it was; the reason of the day follows, for the plan no longer asks about an animal that is decided.
OF_THE_PLAN = "winter plan"


@dataclass(frozen=True, slots=True)
class Orders:
    """What the plan would have done.

    notes     one for every tagged animal that it lets go, in the order told; none for what the person decided already
    untagged  those of whom no plan can be noted: `5 kits of 23`
    """

    notes: tuple[str, ...]
    untagged: tuple[str, ...]


def orders(herd: Herd, today: date) -> Orders:
    """The plan of that day as notes."""
    told = keep_or_cull(herd, today)
    going = [one for word in ("cull", "sell") for one in told.of(word) if not one.pinned]
    notes = tuple(show(_planned(one), herd) for one in going if one.tag is not None)
    return Orders(notes, tuple(one.called for one in going if one.tag is None))


def _planned(one: Verdict) -> Planned:
    on = one.course.on if one.course else None
    cull, what = one.verdict == "cull", one.verdict
    why = one.reasons[0].brief
    reason = f"{OF_THE_PLAN}, {why[:1].lower()}{why[1:]}"
    return Planned(who=one.tag or "", what=what, on=on if cull else None, until=None if cull else on, reason=reason)
