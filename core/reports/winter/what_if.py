"""What would change: the plan with something supposed beside the plan as it stands, in four lines. Nothing is recorded."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from core.handbook import health
from core.herd.settings import Settings
from core.notes.fact import Fact
from core.notes.kinds import KIND_OF
from core.notes.kinds.plan import Planned
from core.notes.kinds.query import Query
from core.notes.replay import apply
from core.problem import Problem
from core.reply import Reply
from core.reports.evidence import Evidence, supposing
from core.reports.keep_or_cull import KeepOrCull, advised
from core.reports.winter.supposed import supposed
from core.reports.winter.worth import worths
from core.reports.wording import grams, price, when
from core.words import count, listed

#: How many of those that go or stay are named.
NAMED = 8  # not a figure: tags in a line
AS_NOW = "as now"
HOW_TO = (
    "Ask like this: what if I keep 14 · what if 3 goes · what if 6 cages · what if only one NZ buck · what if feed is 22 a bag",
    "Nothing was recorded.",
)


def what_if(barn: Evidence, query: Query, said: str) -> Reply:
    """The difference that it would make, against the plan as it stands."""
    facts = supposed(barn, query, said)
    wrong = next((found for fact in facts if (found := _against(barn, fact)) is not None), None)
    if wrong is not None:
        return Reply((f"{wrong.text} {wrong.remedy}".strip(), "Nothing was recorded."))
    if not facts:
        return Reply(HOW_TO)
    herd = barn.herd
    for fact in facts:
        herd = apply(fact, herd, barn.today)
    return Supposition(barn, facts, advised(barn), advised(supposing(barn, herd))).reply()


def _against(barn: Evidence, fact: Fact) -> Problem | None:
    problem: Problem | None = KIND_OF[fact.kind].check(fact, barn.herd, barn.today)
    return problem


@dataclass(frozen=True)
class Supposition:
    """The plan as it stands, and as it would be."""

    barn: Evidence
    facts: tuple[Fact, ...]
    now: KeepOrCull
    then: KeepOrCull

    def reply(self) -> Reply:
        """Who moves, feed, what it brings, the matings; and what to send to have it so."""
        notes = [KIND_OF[fact.kind].show(fact, self.barn.herd) for fact in self.facts]
        end = f"Nothing was recorded. To have it so, send: {' / '.join(notes)}" if len(notes) <= NAMED else "Nothing was recorded."
        first = [line for line in self.then.winter.first_lines() if line not in self.now.winter.first_lines()]
        return Reply((*first, self._who(), self._feed(), self._brings(), self._matings(), end, health.ADVICE))

    def _who(self) -> str:
        """Who would go, or stay, that now would not."""
        then, now = self._going(self.then), self._going(self.now)
        go, stay = [one for one in then if one not in now], [one for one in now if one not in then]
        told = [f"{_names(go)} would go"] if go else []
        told += [f"{_names(stay)} would stay"] if stay else []
        if not told:
            return f"{self._already()}Who stays and who goes would not change."
        as_now = len(then) - len(go)
        rest = f"; the other {as_now} that go by the plan go all the same" if as_now else ""
        return f"{'; '.join(told)}{rest}."

    def _already(self) -> str:
        """Who was supposed to go and goes by the plan as it stands."""
        gone = {fact.who for fact in self.facts if isinstance(fact, Planned) and fact.what in {"cull", "sell"}}
        goes = [one.called for one in self.now.verdicts if one.going and one.tag in gone]
        return f"By the plan as it stands {_names(goes)} {'go' if len(goes) > 1 else 'goes'} already. " if goes else ""

    def _going(self, plan: KeepOrCull) -> list[str]:
        return [one.called for one in plan.verdicts if one.going]

    def _feed(self) -> str:
        settings, today = self.barn.herd.settings, self.barn.today
        fed, was = self.then.winter.fed, self.now.winter.fed
        money = round(fed.cents - was.cents)
        told = [_more(settings, fed.total_g - was.total_g)]
        told += [f"{price(settings, abs(money))} {'more' if money > 0 else 'less'}"] if money else []
        more = " and ".join(told if told[0] != AS_NOW or not money else told[1:])
        out = _bin(fed.runs_out, was.runs_out, today)
        return f"Feed until {when(fed.spring, today)}: {grams(settings, fed.total_g)} ({price(settings, fed.cents)}), {more}{out}."

    def _brings(self) -> str:
        """Kits a year and meat, against the plan as it stands."""
        settings = self.barn.herd.settings
        kits = _brought(self.barn, self.then) - _brought(self.barn, self.now)
        meat = self.then.winter.meat.grams - self.now.winter.meat.grams
        return f"Kits a year from those that stay: {_more(settings, kits)}. Meat from the culls: {_more(settings, meat)}."

    def _matings(self) -> str:
        then, now = self.then.winter, self.now.winter
        can, could = (len({one.doe for one in plan.asked.choice.matings}) for plan in (then, now))
        spoken = f"{count(can, 'doe')} can be bred here in spring"
        return f"{spoken}, as now." if can == could else f"{spoken}, {could} by the plan as it stands."


def _brought(barn: Evidence, plan: KeepOrCull) -> float:
    """What those that stay should bring [g of kits a year]."""
    worth = worths(barn)
    return sum(worth[one.key].guess.value for one in plan.verdicts if not one.going and one.key in worth)


def _names(called: Sequence[str]) -> str:
    more = len(called) - NAMED
    return f"{', '.join(called[:NAMED])} and {more} more" if more > 0 else listed(called)


def _more(settings: Settings, weight: float) -> str:
    """A difference of weight: `3 lb more`, `as now`."""
    told = grams(settings, abs(weight))
    return AS_NOW if told in {"0 oz", "0 g"} else f"{told} {'more' if weight > 0 else 'less'}"


def _bin(out: date | None, was: date | None, today: date) -> str:
    if out == was:
        return ""
    return f"; the bin lasts until {when(out, today)}" if out else "; the bin lasts"
