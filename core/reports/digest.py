"""The week's letter: what is due, who deserves a look and why, the herd in numbers, and how long the feed lasts."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from core.handbook import flags as figures
from core.herd.state import Herd
from core.reply import Choice, Reply
from core.reports.ailing import ailing_document, ailing_line, all_ailing
from core.reports.counts import Counts, counts
from core.reports.due import Due, chore_document, chore_line, due
from core.reports.evidence import Evidence, evidence
from core.reports.finding import Finding
from core.reports.flags import all_flags
from core.reports.winter.eating import a_day_g, days_left
from core.reports.wording import called, grams, when
from core.words import count, listed

WEEK = 7  # not a figure: days in a week
#: Lines of each part that a phone takes.
AILING_TOLD = 4
CHORES_TOLD = 6
LATE_TOLD = 2
FLAGS_TOLD = 6


@dataclass(frozen=True, slots=True)
class FeedLeft:
    """How long the feed lasts: what should be in the bin [g], what the herd eats a day [g], whole days; None where nobody told."""

    grams: float | None
    a_day: float
    days: int | None

    @property
    def lasts(self) -> str:
        """How long it lasts, in words."""
        if self.days is None:
            return "more than a year"
        return count(self.days, "day") if self.days else "less than a day"

    def document(self) -> dict[str, Any]:
        """The feed as numbers."""
        return {"grams": self.grams, "grams_a_day": self.a_day, "days": self.days}


@dataclass(frozen=True, slots=True)
class Digest:
    """One week's letter."""

    herd: Herd
    today: date
    chores: Due
    flags: tuple[Finding, ...]
    counts: Counts
    feed: FeedLeft
    ailing: tuple[Finding, ...] = ()

    @property
    def week_of(self) -> date:
        """The Monday of the week."""
        return self.today - timedelta(days=self.today.weekday())

    def document(self) -> dict[str, Any]:
        """The contract's `digest` object."""
        return {
            "week_of": self.week_of.isoformat(),
            "flags": [one.document() for one in self.flags],
            "chores": [chore_document(chore, self.today) for chore in self.chores.chores],
            "counts": self.counts.document(),
            "feed": self.feed.document(),
            "ailing": [ailing_document(one) for one in self.ailing],
        }

    def reply(self) -> Reply:
        """The letter as it is read on a phone."""
        late = len(self.chores.overdue)
        head = f"Week of {when(self.week_of, self.today)}: {count(len(self.chores.chores), 'chore')}" + (
            f", {late} overdue" if late else ""
        )
        seen = {one.animal for one in (*self.ailing, *self.flags)}
        lines = [f"{head}; {count(len(seen), 'animal')} to look at."]
        lines += self._ailing() + self._chores() + self._flags()
        lines.append(f"Herd: {self.counts.line()}.")
        lines.append(self.feed_line())
        why = next((one.tag for one in (*self.flags, *self.ailing)), None)
        choices = (Choice(f"Why {why}?", f"why {why}"),) if why else ()
        return Reply(tuple(lines), (*choices, Choice("Keep or cull", "who should I keep")))

    def _ailing(self) -> list[str]:
        """Who is not well, before everything else."""
        barn = evidence(self.herd, self.today)
        more = len(self.ailing) - AILING_TOLD
        named = listed(one.tag for one in self.ailing[AILING_TOLD:])
        return [*(ailing_line(barn, one) for one in self.ailing[:AILING_TOLD]), *([f"Not well too: {named}."] if more > 0 else [])]

    def _chores(self) -> list[str]:
        """The latest of the late ones, then the coming days."""
        late = self.chores.overdue
        coming = [one for one in self.chores.chores if one not in late]
        shown = [*late[-LATE_TOLD:], *coming][:CHORES_TOLD]
        more = len(self.chores.chores) - len(shown)
        lines = [chore_line(one, self.today) for one in shown]
        return [*lines, *([f"And {count(more, 'more', 'more')}: ask what is due."] if more else []), *self.chores.cautions()]

    def _flags(self) -> list[str]:
        """A line an animal: its gravest flag, and the others by name."""
        found: dict[str, list[Finding]] = {}
        for one in self.flags:
            found.setdefault(one.animal, []).append(one)
        told = [flag_line(self.herd, flags) for flags in list(found.values())[:FLAGS_TOLD]]
        more = len(found) - len(told)
        return [*told, *([f"And {count(more, 'more animal')} flagged: ask for flags."] if more > 0 else [])]

    def feed_line(self) -> str:
        """The feed in a line, or how to tell it."""
        settings = self.herd.settings
        if self.feed.grams is None:
            return f"Feed: the herd eats about {grams(settings, self.feed.a_day)} a day. Tell me what is left: 120 lb feed left"
        if self.feed.days is None:
            return f"Feed: {grams(settings, self.feed.grams)} left, more than a year's worth."
        low = " Buy soon." if self.feed.days <= figures.FEED_LOW_DAYS.value else ""
        return f"Feed: about {grams(settings, self.feed.grams)} left, {self.feed.lasts} at {grams(settings, self.feed.a_day)} a day.{low}"


def flag_line(herd: Herd, flags: list[Finding]) -> str:
    """An animal's flags in a line: the gravest with its evidence, the others by name."""
    first, *others = sorted(flags, key=lambda one: -one.heed)
    also = f" Also: {listed(one.code.replace('_', ' ') for one in others)}." if others else ""
    return f"{called(herd.animals[first.animal])}: {first.text}{also}"


def digest(herd: Herd, today: date) -> Digest:
    """The week's letter. Its chores are those of the seven days to come, overdue ones with them."""
    barn = evidence(herd, today)
    chores, flagged = due(herd, today, WEEK), in_order(all_flags(barn))
    return Digest(herd, today, chores, flagged, counts(herd, today), feed_left(barn), all_ailing(barn))


def in_order(flags: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The flags with the gravest animals first, each animal's together."""
    weight: dict[str, int] = {}
    for one in flags:
        weight[one.animal] = weight.get(one.animal, 0) + one.heed
    return tuple(sorted(flags, key=lambda one: -weight[one.animal]))


def feed_left(barn: Evidence) -> FeedLeft:
    """How long the feed lasts."""
    stock = barn.stock
    return FeedLeft(stock.left if stock else None, a_day_g(barn), days_left(barn))
