"""A verdict on one animal, or on a litter's untagged kits: keep, sell, cull or watch, with its reasons and what it saves."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import Any

from core.handbook import flags
from core.reports.finding import Finding
from core.reports.winter.course import Course
from core.words import count

#: What can be advised, in the order in which the summary tells it.
VERDICTS = ("cull", "sell", "watch", "keep")


@dataclass(frozen=True, slots=True)
class Saving:
    """What an animal's going saves [g of feed a day, g and cents until spring], and the meat it gives [g]."""

    grams_a_day: float
    grams_until_spring: float
    cents_until_spring: float
    meat_grams: float = 0.0

    def document(self) -> dict[str, Any]:
        """The saving as numbers."""
        return {
            "feed_grams_a_day": self.grams_a_day,
            "feed_grams_until_spring": self.grams_until_spring,
            "cents_until_spring": self.cents_until_spring,
            "meat_grams": self.meat_grams,
        }


@dataclass(frozen=True, slots=True)
class Verdict:
    """What is advised for one animal or one litter's kits.

    key       the animal's key, or the litter's
    tag       None for untagged kits; then `litter_of` is their dam's tag and `count` how many
    reasons   one to three findings, the weightiest first
    after     a day before which it should not go: a litter at foot or in kindle, a withdrawal time
    pinned    whether the person said so
    cautions  what to heed before acting
    course    when it is done, or what to see before it is decided
    """

    key: str
    tag: str | None
    stage: str
    verdict: str
    reasons: tuple[Finding, ...]
    litter_of: str | None = None
    count: int = 1
    name: str | None = None
    breed: str | None = None
    sex: str | None = None
    after: date | None = None
    pinned: bool = False
    cautions: tuple[str, ...] = ()
    saving: Saving | None = None
    course: Course | None = None

    @property
    def going(self) -> bool:
        """Whether it is advised to leave."""
        return self.verdict in {"sell", "cull"}

    def leaves(self, today: date) -> date:
        """The day from which one that goes eats no more: its course's, never before what holds it back."""
        days = (today, self.after, self.course.on if self.course else None)
        return max(day for day in days if day is not None)

    @property
    def waiting(self) -> bool:
        """Whether only time will tell: nothing is held against it, it is young or unproven."""
        codes = {one.code for one in self.reasons}
        return "unproven" in codes and "ailing" not in codes and all(one.heed <= 0 for one in self.reasons)

    @property
    def called(self) -> str:
        """How a line names it: `14 Juno`, `3 kits of 16`."""
        if self.tag is None:
            return f"{count(self.count, 'kit')} of {self.litter_of}"
        return f"{self.tag} {self.name}" if self.name else self.tag

    @property
    def shown(self) -> tuple[Finding, ...]:
        """The reasons that are told."""
        return self.reasons[: flags.REASONS_AT_MOST.whole]

    def document(self) -> dict[str, Any]:
        """The contract's verdict."""
        told: dict[str, Any] = {
            "tag": self.tag,
            "stage": self.stage,
            "verdict": self.verdict,
            "reasons": [one.reason() for one in self.shown],
            "after": self.after.isoformat() if self.after else None,
            "pinned": self.pinned,
            "cautions": list(self.cautions),
            "course": self.course.document() if self.course else None,
            "saves": self.saving.document() if self.saving else None,
        }
        return told if self.tag is not None else told | {"litter_of": self.litter_of, "count": self.count}


def heads(verdicts: Iterable[Verdict]) -> int:
    """How many animals these are, a litter's kits each counted."""
    return sum(one.count for one in verdicts)
