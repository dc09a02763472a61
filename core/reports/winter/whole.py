"""What the winter plan comes to: its limits, feed and money, meat, the matings of spring, what a person's word costs, and what was not known."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from math import ceil
from typing import Any

from core.herd.settings import cages, feed_money, mouths, risk
from core.reckon.winter.types import Candidate
from core.reports.evidence import Evidence
from core.reports.verdict import Verdict
from core.reports.winter.bringing import NOTHING, worth_document
from core.reports.winter.eating import WinterFeed, winter_feed
from core.reports.winter.meat import Meat, meat
from core.reports.winter.pins import Pinned, pins
from core.reports.winter.unfit import lacking_lines, percent, unfit_document, unfit_lines
from core.reports.winter.unknown import unknown
from core.reports.winter.wanted import Asked, feed_limit
from core.reports.winter.worth import worths
from core.reports.wording import grams, price, when
from core.words import count, listed, share

#: How many does without a mate are named.
NAMED = 6  # not a figure: tags in a line


@dataclass(frozen=True)
class WinterPlan:
    """The plan for the whole herd, from the verdicts and the choice behind them."""

    barn: Evidence
    verdicts: tuple[Verdict, ...]
    asked: Asked

    @cached_property
    def leaving(self) -> Mapping[str, date]:
        """Those that go, each with its day."""
        return {one.key: one.leaves(self.barn.today) for one in self.verdicts if one.going}

    @property
    def everybody(self) -> WinterFeed:
        """The feed until spring if nobody leaves."""
        return winter_feed(self.barn, {})

    @property
    def fed(self) -> WinterFeed:
        """The feed until spring with the plan."""
        return winter_feed(self.barn, self.leaving)

    @cached_property
    def meat(self) -> Meat:
        """The meat of the culls."""
        culls = {one.key: self.leaving[one.key] for one in self.verdicts if one.verdict == "cull" and not one.cautions}
        return meat(self.barn, culls)

    @cached_property
    def pins(self) -> tuple[Pinned, ...]:
        """What the person's word costs, where it changes the plan."""
        return pins(self.verdicts, self.asked)

    @cached_property
    def called(self) -> Mapping[str, str]:
        """Each one's tag, or whose kits they are."""
        return {one.key: one.tag or f"kits of {one.litter_of}" for one in self.verdicts}

    @cached_property
    def unmated(self) -> tuple[str, ...]:
        """Tags of the grown does that stay and have no mate within the limit."""
        mated = {one.doe for one in self.asked.choice.matings}
        return tuple(
            self.called[one.key] for one in self.asked.candidates if one.grown and one.sex == "doe" and one.key in self.asked.kept - mated
        )

    @property
    def over_g(self) -> float:
        """How much more feed the plan takes than was asked for [g]: what is eaten until each leaves, and kits to come, nobody can choose away."""
        most = feed_limit(self.barn)
        return 0.0 if most is None else max(self.fed.total_g - most, 0.0)

    # in words

    def first_lines(self) -> list[str]:
        """What a person must know before the names: that it does not fit, or that a breed could not breed on with those that stay."""
        return [*unfit_lines(self.barn, self.asked, self.called), *self._over(), *lacking_lines(self.asked)]

    def warnings(self) -> list[str]:
        """The same in short: breeds that could not breed on only where the plan has a part in it."""
        going = {(one.breed or "").lower() for one in self.verdicts if one.going and one.stage != "grow-out"}
        return [*unfit_lines(self.barn, self.asked, self.called), *self._over(), *lacking_lines(self.asked, going)]

    def _over(self) -> list[str]:
        settings = self.barn.herd.settings
        if grams(settings, self.over_g) in NOTHING:
            return []
        eaten = "what each eats until it leaves and what kits will eat is counted in"
        return [f"The plan takes {grams(settings, self.over_g)} more feed until spring than you asked for: {eaten}."]

    def lines(self) -> list[str]:
        """Feed, meat, matings, what the person's word costs, and what was not known."""
        return [*self._feed(), *self._meat(), *self._matings(), *(one.line(self.barn) for one in self.pins), *self._unknown()]

    def _feed(self) -> list[str]:
        settings, today = self.barn.herd.settings, self.barn.today
        whole, fed = self.everybody, self.fed
        if not whole.total_g:
            return []
        lines = [f"Feed until spring: {grams(settings, whole.total_g)}, {self._cost(whole)}, if nobody leaves."]
        if self.leaving:
            saved = f"{grams(settings, whole.total_g - fed.total_g)} and {price(settings, whole.cents - fed.cents)} less"
            lines = [f"{lines[0][:-1]}; {grams(settings, fed.total_g)}, {self._cost(fed)}, with this plan: {saved}."]
        if whole.runs_out:
            later = f"; with this plan {self._empty(fed.runs_out)}" if fed.runs_out != whole.runs_out else ""
            lines.append(f"The bin is empty {when(whole.runs_out, today)}{later}.")
        return lines

    def _cost(self, fed: WinterFeed) -> str:
        about = "" if fed.priced else " at a common price"
        return f"{count(ceil(fed.bags), 'bag')} ({price(self.barn.herd.settings, fed.cents)}{about})"

    def _empty(self, on: date | None) -> str:
        return when(on, self.barn.today) if on else "it lasts"

    def _meat(self) -> list[str]:
        settings, told = self.barn.herd.settings, self.meat
        if not told.grams:
            return []
        likely, low, high = (grams(settings, each) for each in (told.grams, told.low, told.high))
        return [f"Meat from {count(round(told.heads), 'cull')}: about {likely} ({low} to {high})."]

    def _matings(self) -> list[str]:
        choice = self.asked.choice
        mated = {one.doe for one in choice.matings}
        does = len(mated) + len(self.unmated)
        if not does:
            return []
        within = percent(self.asked.limits.highest_coi)
        kin = "" if choice.mean_kinship is None else f"; bucks and does are related {share(choice.mean_kinship)} on the whole"
        none = f" No mate: {listed(self.unmated[:NAMED])}{self._more()}." if self.unmated else ""
        return [f"Spring: {len(mated)} of {count(does, 'doe')} can be bred here with an inbreeding of {within} at most{kin}.{none}"]

    def _more(self) -> str:
        left = len(self.unmated) - NAMED
        return f" and {left} more" if left > 0 else ""

    def _unknown(self) -> list[str]:
        told = unknown(self.barn)
        return [f"I did not know: {'; '.join(told)}."] if told else []

    # as numbers

    def document(self) -> dict[str, Any]:
        """The plan as numbers."""
        whole, fed, choice = self.everybody, self.fed, self.asked.choice
        return {
            "limits": self.limits(),
            "feed": {"without_plan": whole.document(), "with_plan": fed.document()},
            "money": {
                "cents_without_plan": whole.cents,
                "cents_with_plan": fed.cents,
                "cents_saved": whole.cents - fed.cents,
                "price_told": whole.priced,
            },
            "meat": self.meat.document() | {"held": [self.called[key] for key in self.meat.held]},
            "matings": [{"doe": self.called[one.doe], "buck": self.called[one.buck], "coi": one.coi} for one in choice.matings],
            "unmated": list(self.unmated),
            "mean_kinship": choice.mean_kinship,
            "lacking": dict(choice.lacking),
            "feed_over_grams": self.over_g,
            "pins": [one.document() for one in self.pins],
            **unfit_document(self.asked, self.called),
            "close_calls": [self.called[key] for key in choice.flips if self.asked.full],
            "worths": [self._worth(one) for one in self.asked.candidates],
            "unknown": list(unknown(self.barn)),
        }

    def _worth(self, one: Candidate) -> dict[str, Any]:
        return {"tag": self.called[one.key], "stays": one.key in self.asked.kept} | worth_document(worths(self.barn)[one.key])

    def limits(self) -> dict[str, Any]:
        """What the farm asked for; None, or a breed that is not named: no limit."""
        settings, limits = self.barn.herd.settings, self.asked.limits
        return {
            "cages": cages(settings),
            "mouths": mouths(settings),
            "feed_money_cents": feed_money(settings),
            "feed_grams": feed_limit(self.barn),
            "bucks_a_breed": dict(limits.bucks),
            "does_a_breed": {breed: most for breed, most in limits.does.items() if most is not None},
            "litters_wanted": dict(limits.litters),
            "highest_coi": limits.highest_coi,
            "risk": risk(settings),
        }


def whole_plan(barn: Evidence, verdicts: Sequence[Verdict], asked: Asked) -> WinterPlan:
    """The plan that these verdicts make."""
    return WinterPlan(barn, tuple(verdicts), asked)
