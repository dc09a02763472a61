"""What is due: the chores of the coming days, overdue ones first, and the morning's reminder."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Any

from core.handbook import flags, health, reproduction
from core.herd.calendar import all_chores
from core.herd.chore import Chore
from core.herd.matings import overdue_does
from core.herd.state import Herd
from core.reply import Choice, Reply
from core.reports.wording import begun, tag_of, when
from core.words import count

#: Lines that a phone shows without scrolling.
LINES = 12  # not a figure: lines on a phone
#: Of these at least so many go to what is late, the latest of it.
LATE_TOLD = 4
#: What asks for the whole list: `core.reports.answers` looks for its last word.
ALL = "due all"


@dataclass(frozen=True, slots=True)
class Due:
    """Chores to do by a day, overdue ones first, and does so late that a vet should know."""

    today: date
    until: date
    chores: tuple[Chore, ...]
    late_does: tuple[str, ...] = ()
    empty: bool = False  # nobody is on the book

    @property
    def overdue(self) -> tuple[Chore, ...]:
        """Those whose day has passed."""
        return tuple(chore for chore in self.chores if chore.on < self.today)

    def of(self, tag: str) -> Due:
        """The chores of one animal."""
        chores = tuple(chore for chore in self.chores if chore.tag == tag)
        return replace(self, chores=chores, late_does=tuple(late for late in self.late_does if late == tag))

    def reply(self, *, whole: bool = False) -> Reply:
        """The chores day by day, as many as a phone shows; all of them where the whole list is wanted."""
        if not self.chores:
            return Reply((self._nothing(),))
        coming = [chore for chore in self.chores if chore.on >= self.today]
        shown = [*self.overdue[-max(LATE_TOLD, LINES - len(coming)) :], *coming][:LINES]
        shown = list(self.chores) if whole else shown
        lines = [chore_line(chore, self.today) for chore in shown]
        more = len(self.chores) - len(shown)
        rest = (f"And {more} more. To see them all: {ALL}",) if more else ()
        return Reply((self._head(), *lines, *rest, *self.cautions()))

    def _head(self) -> str:
        """How many there are until which day, and how many of them are late."""
        late = len(self.overdue)
        if self.until > self.today:
            return f"{count(len(self.chores), 'chore')} until {when(self.until, self.today)}" + (f", {late} overdue." if late else ".")
        if late == len(self.chores):
            return f"{count(late, 'chore')} overdue, none for today."
        return f"{count(len(self.chores) - late, 'chore')} today" + (f", {late} overdue." if late else ".")

    def _nothing(self) -> str:
        """That nothing is due, and until when."""
        if self.empty:
            return "Nothing is due yet."
        return "Nothing is due today." if self.until <= self.today else f"Nothing is due until {when(self.until, self.today)}."

    def cautions(self) -> tuple[str, ...]:
        """What to heed when a doe is past her time."""
        return tuple(f"Doe {tag}: {health.LONG_KINDLING}" for tag in self.late_does)

    def document(self) -> dict[str, Any]:
        """The contract's `due` object."""
        return {"chores": [chore_document(chore, self.today) for chore in self.chores]}


def chore_line(chore: Chore, today: date) -> str:
    """A chore with its day: `Late, Sat 31 Oct: Nest box in for doe 14`."""
    time = f" {chore.time}" if chore.time else ""
    return f"{begun(_days(chore, today))}{time}: {chore.text}"


def _days(chore: Chore, today: date) -> str:
    """The day of a chore in words. A doe within her window is not late: any day now."""
    if chore.on >= today:
        return when(chore.on, today)
    window = reproduction.KINDLING_WINDOW_LAST.whole - reproduction.GESTATION_DAYS.whole
    if chore.chore == "kindling" and (today - chore.on).days <= window:
        return "any day now"
    return f"late, {when(chore.on, today)}"


def chore_document(chore: Chore, today: date) -> dict[str, Any]:
    """One chore of the contract."""
    return {
        "on": chore.on.isoformat(),
        "chore": chore.chore,
        "tag": chore.tag,
        "text": chore.text,
        "key": chore.key,
        "overdue": chore.on < today,
        "time": chore.time,
    }


def due(herd: Herd, today: date, days: int | None = None) -> Due:
    """Every chore that is neither done nor moot and due within so many days, overdue ones first."""
    until = today + timedelta(days=flags.DUE_AHEAD_DAYS.whole if days is None else days)
    return Due(today, until, in_order(all_chores(herd, today), today, until), _late_does(herd, today), empty=not herd.animals)


def in_order(chores: Iterable[Chore], today: date, until: date) -> tuple[Chore, ...]:
    """Each chore once, those due by that day: overdue ones first, then by day."""
    once = {chore.key: chore for chore in chores if chore.on <= until}
    return tuple(sorted(once.values(), key=lambda chore: (chore.on >= today, chore.on, chore.time or "", chore.key)))


def _late_does(herd: Herd, today: date) -> tuple[str, ...]:
    """Does past the day from which a vet should know."""
    late = (mating for mating in overdue_does(herd, today) if (today - mating.on).days >= reproduction.VET_DAY.value)
    return tuple(tag_of(herd, mating.doe) or "" for mating in late)


def reminder(chore: Chore, today: date) -> Reply:
    """One chore as it is sent on its day, with what can be answered."""
    late = f" (since {when(chore.on, today)})" if chore.on < today else ""
    choices = (
        Choice("Done", "done"),
        Choice("Later today", "later today"),
        Choice("Tomorrow", "tomorrow"),
        Choice("Skip", "skip"),
    )
    return Reply((f"{chore.text}{late}.",), choices)


def morning(herd: Herd, today: date) -> tuple[Chore, ...]:
    """The chores to remind of today: those of today and those overdue."""
    return due(herd, today, 0).chores
