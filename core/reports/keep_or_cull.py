"""Who stays, who is sold, who goes before winter, and why. Advice only: nothing here marks an animal.

Each animal is judged by itself, then the herd as a whole: no breed is left without a buck or a doe, the farm's cages and mouths are
heeded, a doe goes only after her kits are weaned, and meat waits for a withdrawal time.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache
from typing import Any

from core.handbook import breeds, health
from core.herd.state import Herd
from core.reply import Choice, Reply
from core.reports.evidence import Evidence, evidence
from core.reports.fitting import coming_on, lasting
from core.reports.judge import judged
from core.reports.litter_verdict import litter_verdict
from core.reports.plan import Plan, finished, plan_of
from core.reports.verdict import VERDICTS, Verdict, heads
from core.reports.winter.deciding import decided
from core.reports.winter.wanted import asked
from core.reports.winter.whole import WinterPlan, whole_plan
from core.reports.wording import begun, when
from core.words import count, listed

#: How many animals of a verdict get a line of their own.
TOLD = {"cull": 5, "sell": 3, "watch": 3}
NAMED = 12  # not a figure: tags in a line


@dataclass(frozen=True, slots=True)
class KeepOrCull:
    """The verdicts and the plan that they make together."""

    herd: Herd
    today: date
    verdicts: tuple[Verdict, ...]
    plan: Plan
    winter: WinterPlan

    def of(self, verdict: str) -> tuple[Verdict, ...]:
        """Those with that verdict."""
        return tuple(one for one in self.verdicts if one.verdict == verdict)

    def only(self, *, scope: str | None = None, breed: str | None = None) -> KeepOrCull:
        """The same for bucks, does or grow-outs, or for one breed; the plan stays the herd's."""
        return replace(self, verdicts=tuple(one for one in self.verdicts if in_scope(one, scope) and in_breed(one.breed, breed)))

    def verdict_on(self, key: str) -> Verdict | None:
        """The verdict on one animal or litter, by key."""
        return next((one for one in self.verdicts if one.key == key), None)

    def document(self) -> dict[str, Any]:
        """The contract's `keep` object."""
        return {
            "today": self.today.isoformat(),
            "verdicts": [one.document() for one in self.verdicts],
            "plan": self.plan.document() | self.winter.document(),
        }

    def reply(self) -> Reply:
        """The summary: the counts first, then those who go with their reason, then the rest by tag."""
        return self._reply(self.winter.warnings(), self.plan.lines(self.herd, self.today))

    def winter_reply(self) -> Reply:
        """The plan for the winter: its dates, the same names, then feed, meat, matings, pins, and what was not known."""
        begins = "Winter" if self.plan.winter <= self.today else f"Winter from {when(self.plan.winter, self.today)}"
        dates = f"{begins} until spring, {when(self.plan.spring, self.today)}: {count(self.plan.days, 'day')} from today."
        return self._reply([dates, *self.winter.first_lines()], [*self.winter.lines(), *self.plan.cautions])

    def _reply(self, before: list[str], after: list[str]) -> Reply:
        if not self.verdicts:
            return Reply((*before, "No weaned animals on the book yet. Tell me one: new doe 40 mini rex born 3/4"))
        told = [f"{word} {heads(self.of(word))}" for word in reversed(VERDICTS) if self.of(word)]
        lines = [*before, f"{begun(listed(told))}."]
        for word in ("cull", "sell"):
            lines += self._lines(word)
        lines += self._watched()
        kept = self.of("keep")
        lines += [f"Keep: {', '.join(one.called for one in kept)}."] if kept else []
        lines += [
            f"Not well: {one.called}, {ill.text[:1].lower()}{ill.text[1:]}" for one in kept for ill in one.reasons if ill.code == "ailing"
        ]
        return Reply((*lines, *after, health.ADVICE), self._choices())

    def _choices(self) -> tuple[Choice, ...]:
        shown = next((one for one in (*self.of("cull"), *self.of("sell"), *self.of("watch")) if one.tag), None)
        choices = [Choice(f"Why {shown.tag}?", f"why {shown.tag}")] if shown else []
        whole = self.verdicts == self.winter.verdicts  # of a part of the herd nothing is done
        if whole and any(one.tag and not one.pinned for one in self.verdicts if one.going):
            choices.append(Choice("Do it", "do it"))
        return tuple(choices)

    def _watched(self) -> list[str]:
        """Those with a warning each by name with it; the young ones that only need time together."""
        waiting = [one for one in self.of("watch") if one.waiting]
        warned = [one for one in self.of("watch") if not one.waiting]
        lines = [self._line("watch", one) for one in warned[: TOLD["watch"]]]
        lines += [f"Watch too: {', '.join(one.called for one in warned[TOLD['watch'] :])}."] if len(warned) > TOLD["watch"] else []
        if waiting:
            named = ", ".join(one.called for one in waiting[:NAMED])
            more = f" and {count(len(waiting) - NAMED, 'more', 'more')}" if len(waiting) > NAMED else ""
            lines.append(f"Too young or unproven to say: {named}{more}.")
        return lines

    def _lines(self, word: str) -> list[str]:
        found = self.of(word)
        lines = [self._line(word, one) for one in found[: TOLD[word]]]
        if len(found) > TOLD[word]:
            lines.append(f"{word.capitalize()} too: {', '.join(one.called for one in found[TOLD[word] :])}.")
        return lines

    def _line(self, word: str, one: Verdict) -> str:
        course = f" {one.course.text}" if one.course and one.course.code != "now" else ""
        return f"{word.capitalize()} {one.called}: {one.reasons[0].text}{course}"


def in_scope(one: Verdict, scope: str | None) -> bool:
    """Whether it belongs to `bucks`, `does` or `grow-outs`; everything belongs to `all`."""
    if scope in {"bucks", "does"}:
        return one.sex == scope.removesuffix("s") and one.stage != "grow-out"
    return one.stage == "grow-out" if scope == "grow-outs" else True


def in_breed(breed: str | None, wanted: str | None) -> bool:
    """Whether it is of the breed asked for, in any of that breed's words."""
    if wanted is None:
        return True
    known, found = breeds.breed(wanted), breeds.breed(breed)
    return found is known if known else (breed or "").lower() == wanted.lower()


def keep_or_cull(herd: Herd, today: date) -> KeepOrCull:
    """The verdict on every living animal past weaning and every weaned litter's untagged kits, and the plan."""
    return advised(evidence(herd, today))


@lru_cache(maxsize=4)
def advised(barn: Evidence) -> KeepOrCull:
    """One advice for all questions of the day, until a note changes the herd."""
    each = [judged(barn, animal) for animal in barn.living if barn.stages[animal.key] != "kit"]
    kits = [litter_verdict(barn, litter, number) for litter, number in barn.weaned_litters]
    before = [*coming_on(barn, lasting(barn, each)), *kits]
    choice = asked(barn, before)
    told = tuple(finished(barn, one) for one in decided(barn, before, choice))
    return KeepOrCull(barn.herd, barn.today, told, plan_of(barn, told), whole_plan(barn, told, choice))
