"""Why an animal got its verdict: each reason with its numbers, and the notes that it stands on."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from core.handbook import health
from core.herd.state import Animal, Herd
from core.notes.journal import Entry
from core.reply import Reply
from core.reports.ailing import ailing
from core.reports.behind import Behind, notes_behind
from core.reports.evidence import evidence
from core.reports.keep_or_cull import keep_or_cull
from core.reports.verdict import Verdict
from core.reports.winter.bringing import bringing_lines, worth_document
from core.reports.winter.worth import worths
from core.reports.wording import begun, called, grams, price, when

#: How many notes stand under each reason.
NOTES = 4
#: Letters of a note that are shown.
LETTERS = 60  # not a figure: letters on a line

_SAYS = {"keep": "keep", "sell": "sell", "cull": "cull", "watch": "watch for now"}


@dataclass(frozen=True, slots=True)
class Why:
    """The verdict on one animal with the notes behind each of its reasons."""

    herd: Herd
    today: date
    animal: Animal
    verdict: Verdict | None
    entries: Sequence[Entry]

    def notes(self, at: int) -> tuple[Behind, ...]:
        """The notes behind a reason, by its place."""
        if self.verdict is None:
            return ()
        return notes_behind(self.entries, self.animal.tag, self.verdict.shown[at].kinds)

    def reply(self) -> Reply:
        """The verdict, each reason, and under it the last notes that tell it."""
        verdict = self.verdict
        if verdict is None:
            gone = "is not weaned yet, so there is no verdict." if self.animal.living else "is not on the farm any more."
            ill = ailing(evidence(self.herd, self.today), self.animal) if self.animal.living else None
            told = (ill.text,) if ill else ()
            return Reply((f"{called(self.animal)} {gone} Ask for the card: card {self.animal.tag}", *told))
        after = f", not before {when(verdict.after, self.today)}" if verdict.after and verdict.after > self.today else ""
        sick = "; not well now" if any(one.code == "ailing" for one in verdict.reasons) else ""
        lines = [f"{called(self.animal)}: {_SAYS[verdict.verdict]}{after}{sick}."]
        for at, reason in enumerate(verdict.shown):
            notes = self.notes(at)
            lines.append(reason.text)
            lines += [f"  {begun(when(one.on, self.today))}: {_cut(one.text)}" for one in notes[-NOTES:]]
            lines += [f"  and {len(notes) - NOTES} earlier notes"] if len(notes) > NOTES else []
        course = (verdict.course.text,) if verdict.course else ()
        brings = bringing_lines(evidence(self.herd, self.today), self.animal.key)
        return Reply((*lines, *course, *brings, *self._saves(verdict), *verdict.cautions, *self._advice(verdict)))

    def _saves(self, verdict: Verdict) -> list[str]:
        saving, settings = verdict.saving, self.herd.settings
        if saving is None:
            return []
        spring = f"{grams(settings, saving.grams_until_spring)} ({price(settings, saving.cents_until_spring)}) until spring"
        return [f"Saves {grams(settings, saving.grams_a_day)} of feed a day, {spring}."]

    def _advice(self, verdict: Verdict) -> tuple[str, ...]:
        return (health.SLAUGHTER, health.ADVICE) if verdict.verdict == "cull" else (health.ADVICE,)

    def document(self) -> dict[str, Any]:
        """The verdict with the notes behind each reason."""
        if self.verdict is None:
            return {"tag": self.animal.tag, "verdict": None, "reasons": []}
        told = self.verdict.document() | {"worth": worth_document(worths(evidence(self.herd, self.today))[self.animal.key])}
        for at, reason in enumerate(told["reasons"]):
            reason["notes"] = [one.document() for one in self.notes(at)]
        return told


def _cut(text: str) -> str:
    """A note on one line, cut to what a phone shows."""
    plain = " ".join(text.split())
    return plain if len(plain) <= LETTERS else f"{plain[: LETTERS - 1]}…"


def why(herd: Herd, today: date, animal: Animal, entries: Iterable[Entry] = ()) -> Why:
    """The reasons for an animal's verdict."""
    return Why(herd, today, animal, keep_or_cull(herd, today).verdict_on(animal.key), tuple(entries))
