"""Who stays, who is sold, who goes before winter, and why. Advice only: nothing here marks an animal.

Each animal is judged by itself, then the herd as a whole: no breed is left without a buck or a doe, the farm's cages and mouths are
heeded, a doe goes only after her kits are weaned, and meat waits for a withdrawal time.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from core.handbook import breeds, growth, health
from core.herd.settings import cages, does_a_breed, feed_money, mouths, spring, target_weight, winter
from core.herd.state import Animal, Herd, Litter
from core.reply import Choice, Reply
from core.reports.bucks import worth
from core.reports.evidence import Evidence, evidence
from core.reports.feeding import cents_a_gram, weight_of
from core.reports.finding import Finding
from core.reports.judge import bound_until, judged, withdrawal
from core.reports.verdict import VERDICTS, Saving, Verdict
from core.reports.wording import age, begun, grams, price, tag_of, when
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
        return {"today": self.today.isoformat(), "verdicts": [one.document() for one in self.verdicts], "plan": self.plan.document()}

    def reply(self) -> Reply:
        """The summary: the counts first, then those who go with their reason, then the rest by tag."""
        if not self.verdicts:
            return Reply(("No weaned animals on the book yet. Tell me one: new doe 40 mini rex born 3/4",))
        told = [f"{word} {heads(self.of(word))}" for word in reversed(VERDICTS) if self.of(word)]
        first = f"{begun(listed(told))}."
        lines = [first]
        for word in ("cull", "sell"):
            lines += self._lines(word)
        lines += self._watched()
        kept = self.of("keep")
        lines += [f"Keep: {', '.join(one.called for one in kept)}."] if kept else []
        lines += self.plan.lines(self.herd, self.today)
        shown = next((one for one in (*self.of("cull"), *self.of("sell"), *self.of("watch")) if one.tag), None)
        choices = (Choice(f"Why {shown.tag}?", f"why {shown.tag}"),) if shown else ()
        return Reply((*lines, health.ADVICE), choices)

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
        after = f" Not before {when(one.after, self.today)}." if one.after and one.after > self.today else ""
        return f"{word.capitalize()} {one.called}: {one.reasons[0].text}{after}"


@dataclass(frozen=True, slots=True)
class Plan:
    """What the verdicts come to.

    heads      how many animals have each verdict
    a_day      what the herd eats a day now, and what the plan saves of it [g]
    to_spring  what it saves until spring [g, cents], `priced` where the farm told what feed costs
    meat       what the culls give, dressed [g]; those under a withdrawal time give none
    """

    heads: dict[str, int]
    winter: date
    spring: date
    days: int
    a_day: tuple[float, float]
    to_spring: tuple[float, float]
    priced: bool
    meat: float
    limits: dict[str, int | None]
    cautions: tuple[str, ...]

    def document(self) -> dict[str, Any]:
        """The plan as numbers."""
        return {
            **self.heads,
            "winter": self.winter.isoformat(),
            "spring": self.spring.isoformat(),
            "days_until_spring": self.days,
            "feed_grams_a_day": self.a_day[0],
            "feed_grams_a_day_saved": self.a_day[1],
            "feed_grams_saved_until_spring": self.to_spring[0],
            "cents_saved_until_spring": self.to_spring[1],
            "feed_price_told": self.priced,
            "meat_grams": self.meat,
            "limits": self.limits,
            "cautions": list(self.cautions),
        }

    def lines(self, herd: Herd, today: date) -> list[str]:
        """What the going saves and gives, and what to heed."""
        settings = herd.settings
        if not self.a_day[1]:
            return list(self.cautions)
        about = "" if self.priced else " at a common price"
        feed = f"That saves {grams(settings, self.a_day[1])} of feed a day of {grams(settings, self.a_day[0])}"
        feed += f", {grams(settings, self.to_spring[0])} ({price(settings, self.to_spring[1])}{about}) by {when(self.spring, today)}"
        meat = f"; about {grams(settings, self.meat)} of meat" if self.meat else ""
        return [f"{feed}{meat}.", *self.cautions]


def heads(verdicts: Iterable[Verdict]) -> int:
    """How many animals these are, a litter's kits each counted."""
    return sum(one.count for one in verdicts)


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
    barn = evidence(herd, today)
    each = [judged(barn, animal) for animal in barn.living if barn.stages[animal.key] != "kit"]
    kits = [litter_verdict(barn, litter, number) for litter, number in barn.weaned_litters]
    verdicts = fitted(barn, coming_on(barn, lasting(barn, each)), kits)
    told = tuple(finished(barn, one) for one in verdicts)
    return KeepOrCull(herd, today, told, plan_of(barn, told))


# --- litters without tags -----------------------------------------------------------------------------------------


def litter_verdict(barn: Evidence, litter: Litter, number: int) -> Verdict:
    """One verdict for a weaned litter's untagged kits."""
    dam = barn.herd.animals.get(litter.dam)
    tag = tag_of(barn.herd, litter.dam) or litter.dam
    days = (barn.today - litter.born_on).days
    verdict, reason = _of_litter(barn, litter, number, days, dam.breed if dam else None)
    return Verdict(
        litter.key,
        None,
        "grow-out",
        verdict,
        (reason,),
        litter_of=tag,
        count=number,
        breed=dam.breed if dam else None,
        pinned=verdict == "sell",
    )


def _of_litter(barn: Evidence, litter: Litter, number: int, days: int, breed: str | None) -> tuple[str, Finding]:
    settings = barn.herd.settings
    tag = tag_of(barn.herd, litter.dam) or litter.dam
    offers = [one for one in litter.for_sale if one[3] is None or one[3] >= barn.today]
    target = target_weight(settings, breed)
    newest = max((one for one in litter.weighings if one[0] <= barn.today), default=None)
    mean = newest[1] / (newest[2] or number) if newest else None
    at = (newest[0] - litter.born_on).days if newest else None
    facts = {"age_days": days, "count": number, "mean_grams": mean, "weighed_at_days": at, "target_grams": target}
    if offers:
        return "sell", Finding(
            litter.key, tag, "for_sale", f"For sale since {when(offers[-1][0], barn.today)}.", facts, kinds=("for_sale",)
        )
    if mean is not None and at is not None and at >= growth.LIGHT_AGE_DAYS.value and mean < target:
        text = f"{grams(settings, mean)} a kit at {age(at)}, under the {grams(settings, target)} wanted at 16 weeks."
        return "cull", Finding(litter.key, tag, "light_growout", text, facts, heed=2, kinds=("litter_weighed",))
    weighed = f", {grams(settings, mean)} a kit at {age(at)}" if mean is not None and at is not None else ""
    text = f"{age(days)} old{weighed}: tag and weigh them at 16 weeks, then decide."
    return "watch", Finding(litter.key, tag, "unproven", begun(text), facts, kinds=("weaned",))


# --- the herd as a whole ------------------------------------------------------------------------------------------


def lasting(barn: Evidence, verdicts: Sequence[Verdict]) -> list[Verdict]:
    """The verdicts with no breed left without a buck or a doe: the best of those going stays, unless the person said otherwise."""
    left = list(verdicts)
    for breed, sex in dict.fromkeys(((one.breed or "").lower(), one.sex) for one in left if one.sex):
        kin = [one for one in left if (one.breed or "").lower() == breed and one.sex == sex]
        free = [one for one in kin if one.going and not one.pinned]
        if any(not one.going for one in kin) or not free or not _bred_here(left, breed):
            continue
        best = max(free, key=lambda one: (one.stage != "grow-out", worth(barn, barn.herd.animals[one.key]), one.tag or ""))
        left[left.index(best)] = _kept_as_last(best)
    return left


def _bred_here(verdicts: Sequence[Verdict], breed: str) -> bool:
    """Whether the farm has breeding stock of that breed."""
    return any((one.breed or "").lower() == breed and one.stage in {"junior", "senior"} for one in verdicts)


def _kept_as_last(one: Verdict) -> Verdict:
    text = f"The last {one.breed or 'unnamed breed'} {one.sex} here that would stay: replace first, then decide."
    why = Finding(one.key, one.tag or "", "last_of_breed", text, {"breed": one.breed, "sex": one.sex, "count": 1})
    return replace(one, verdict="keep", reasons=(why, *one.reasons))


def coming_on(barn: Evidence, verdicts: Sequence[Verdict]) -> list[Verdict]:
    """The verdicts with the best grow-out of each breed and sex kept where no junior is coming on."""
    left = list(verdicts)
    for breed, sex in dict.fromkeys(((one.breed or "").lower(), one.sex) for one in left if one.sex):
        kin = [one for one in left if (one.breed or "").lower() == breed and one.sex == sex]
        young = [one for one in kin if one.stage == "grow-out" and one.verdict == "watch" and not one.pinned and _weighed_enough(barn, one)]
        if not young or any(one.stage == "junior" and not one.going for one in kin) or not _bred_here(left, breed):
            continue
        best = max(young, key=lambda one: (worth(barn, barn.herd.animals[one.key]), one.tag or ""))
        text = f"The best of {count(len(young), f'young {sex}')} of the breed: no junior is coming on, so keep this one."
        why = Finding(best.key, best.tag or "", "replacement", text, {"count": len(young)}, heed=-1, kinds=("weighed",))
        left[left.index(best)] = replace(best, verdict="keep", reasons=(why, *best.reasons))
    return left


def _weighed_enough(barn: Evidence, one: Verdict) -> bool:
    """Old enough to be compared, weighed, and nothing flagged."""
    return one.key in barn.standard and all(reason.heed <= 0 for reason in one.reasons)


def fitted(barn: Evidence, verdicts: Sequence[Verdict], kits: Sequence[Verdict]) -> list[Verdict]:
    """The verdicts cut to the does a breed, the cages and the mouths that the farm set, the least promising first."""
    settings = barn.herd.settings
    left = list(verdicts)
    for breed in dict.fromkeys(one.breed for one in left):
        wanted = does_a_breed(settings, breed)
        does = [one for one in left if one.breed == breed and one.sex == "doe" and one.stage != "grow-out" and not one.going]
        if wanted is not None:
            left = _cut(barn, left, does, len(does) - wanted, ("excess_doe", f"You keep {count(wanted, 'doe')} a breed"))
    room = min((limit for limit in (cages(settings), mouths(settings)) if limit is not None), default=None)
    if room is not None:
        staying = [one for one in left if not one.going]
        kits_staying = heads(one for one in kits if not one.going) if mouths(settings) is not None else 0
        why = f"{count(room, 'place')} for the winter"
        left = _cut(barn, left, staying, len(staying) + kits_staying - room, ("no_room", why))
    return [*left, *kits]


def _cut(barn: Evidence, verdicts: list[Verdict], among: list[Verdict], over: int, why: tuple[str, str]) -> list[Verdict]:
    """The verdicts with the `over` least promising of these going. Those that a person pinned and a breed's last ones stay."""
    left = list(verdicts)
    order = sorted(among, key=lambda one: _promise(barn, one))
    for place, one in enumerate(order):
        if over <= 0:
            break
        if one.pinned or _is_last(left, one):
            continue
        text = f"{why[1]}: comes {len(order) - place} of {len(order)}."
        evidence_ = {"rank": len(order) - place, "count": len(order)}
        reason = Finding(one.key, one.tag or "", why[0], text, evidence_, heed=2)
        verdict = "sell" if any(found.code in {"show_quality", "grows_well"} for found in one.reasons) else "cull"
        left[left.index(one)] = replace(one, verdict=verdict, reasons=(reason, *one.reasons))
        over -= 1
    return left


def _promise(barn: Evidence, one: Verdict) -> tuple[int, float, str]:
    """How much there is to lose with it: its verdict, its stage, its worth."""
    steps = {"grow-out": 0, "junior": 1, "senior": 2}
    return (one.verdict == "keep") * len(steps) + steps[one.stage], worth(barn, barn.herd.animals[one.key]), one.tag or ""


def _is_last(verdicts: Sequence[Verdict], one: Verdict) -> bool:
    kin = [other for other in verdicts if other.sex == one.sex and (other.breed or "").lower() == (one.breed or "").lower()]
    return one.sex is not None and sum(1 for other in kin if not other.going) == 1


# --- what holds back, what it saves -------------------------------------------------------------------------------


def finished(barn: Evidence, one: Verdict) -> Verdict:
    """A verdict with what holds it back and what it saves; those that stay are left as they are."""
    if not one.going:
        return one
    animal = barn.herd.animals.get(one.key)
    held = _held_back(barn, animal, one) if animal else one
    return replace(held, saving=saving_of(barn, held, animal))


def _held_back(barn: Evidence, animal: Animal, one: Verdict) -> Verdict:
    bound = bound_until(barn, animal)
    drug = withdrawal(barn, animal) if one.verdict == "cull" else None
    days = [day for day in (bound[0] if bound else None, drug[0] if drug else None) if day is not None]
    holds = tuple(finding for finding in (bound[1] if bound else None, drug[2] if drug else None) if finding is not None)
    reasons = (*one.reasons[:1], *holds, *one.reasons[1:])
    return replace(one, reasons=reasons, after=max(days, default=None), cautions=(drug[1],) if drug else ())


def saving_of(barn: Evidence, one: Verdict, animal: Animal | None) -> Saving:
    """What its going saves until spring, from the day it may go, and the meat it gives."""
    eater = barn.eaters[one.key]
    start = max(one.after or barn.today, barn.today)
    days = max((spring(barn.herd.settings, barn.today) - start).days, 0)
    fed = eater.over(days)
    meat = 0.0
    if one.verdict == "cull" and animal is not None and not one.cautions:
        meat = weight_of(animal, barn.today) * growth.DRESSING_SHARE.value
    return Saving(eater.grams(), fed, fed * cents_a_gram(barn.herd)[0], meat)


def plan_of(barn: Evidence, verdicts: Sequence[Verdict]) -> Plan:
    """What the verdicts come to."""
    settings = barn.herd.settings
    savings = [one.saving for one in verdicts if one.saving is not None]
    until = spring(settings, barn.today)
    return Plan(
        heads={word: heads(one for one in verdicts if one.verdict == word) for word in VERDICTS},
        winter=winter(settings, barn.today),
        spring=until,
        days=max((until - barn.today).days, 0),
        a_day=(barn.feed_a_day, sum(one.grams_a_day for one in savings)),
        to_spring=(sum(one.grams_until_spring for one in savings), sum(one.cents_until_spring for one in savings)),
        priced=cents_a_gram(barn.herd)[1],
        meat=sum(one.meat_grams for one in savings),
        limits={"cages": cages(settings), "mouths": mouths(settings), "feed_money_cents": feed_money(settings)},
        cautions=_cautions(verdicts),
    )


def _cautions(verdicts: Sequence[Verdict]) -> tuple[str, ...]:
    """What to heed before anybody acts."""
    culls = [one for one in verdicts if one.verdict == "cull"]
    drugs = [caution for one in culls for caution in one.cautions]
    return (*drugs, *((health.SLAUGHTER, health.SELLING_MEAT) if culls else ()))
