"""When an animal goes, or what to see before it is decided: after her kits, at its weight, once he has bred, by the end of an offer."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from functools import lru_cache

from core.handbook import winter as figures
from core.herd.calendar import all_chores
from core.herd.chore import Chore
from core.herd.settings import target_weight, winter
from core.herd.state import Animal
from core.reports.evidence import Evidence
from core.reports.growing import heading
from core.reports.verdict import Verdict
from core.reports.winter.course import Course
from core.reports.wishes import wish_of
from core.reports.wording import begun, grams, pronoun, when

#: Chores after which more is known of an animal, and what is known then.
SHOWS = {"palpate": "palpation", "kindling": "the litter due", "wean": "weaning", "weigh": "the weighing due"}


#: What to see first of one that is watched for that.
SEE_FIRST = {
    "ailing": "Decide once it is well, or a vet has seen it.",
    "heavy_feeder": "Weigh its ration and feel its condition, then decide.",
    "bad_temper": "Decide if it happens again.",
    "long_open": "Breed her, and decide after that litter; or let her go.",
}


def course_of(barn: Evidence, one: Verdict) -> Course | None:
    """When that verdict is carried out; None for one that stays."""
    if one.verdict == "cull":
        return _cull(barn, one)
    if one.verdict == "sell":
        return _sell(barn, one)
    return _observe(barn, one) if one.verdict == "watch" else None


def _cull(barn: Evidence, one: Verdict) -> Course:
    """The last of the days that hold it back, or today."""
    if any(found.code == "withdrawal" and found.evidence["until"] is None for found in one.reasons):
        return Course("ask_vet", None, "Ask your vet first when it may be eaten.")
    today, ripe = barn.today, _ripe(barn, one)
    told = [
        (one.after, "after_hold", _hold_text(one)),
        (ripe, "at_weight", f"Grow to {grams(barn.herd.settings, target_weight(barn.herd.settings, one.breed))}, about {{on}}, then cull."),
        (_to_breed(barn, one), "after_mating", "After the mating that you planned for {on}."),
        (_own_day(barn, one), "as_planned", "On {on}, as you planned."),
    ]
    days = [(on, code, text) for on, code, text in told if on is not None and on > today]
    if not days:
        return Course("now", today, "Now.")
    on, code, text = max(days, key=lambda day: day[0])
    return Course(code, on, text.format(on=when(on, today)))


def _hold_text(one: Verdict) -> str:
    weaned = any(found.code == "has_kits" for found in one.reasons)
    return "Once her kits are weaned, about {on}." if weaned else "From {on}, when the withdrawal time is over."


def _ripe(barn: Evidence, one: Verdict) -> date | None:
    """The day that a young one makes its weight, where that is near enough to feed it so long."""
    animal = barn.herd.animals.get(one.key)
    if one.stage != "grow-out" or any(found.code == "light_growout" for found in one.reasons):
        return None
    days = [heading(barn, animal).on] if animal else [_day(found.evidence.get("target_on")) for found in one.reasons]
    near = barn.today + timedelta(figures.GROW_ON_DAYS.whole)
    return next((on for on in days if on is not None and on <= near), None)


def _day(said: object) -> date | None:
    return date.fromisoformat(str(said)) if said else None


def _to_breed(barn: Evidence, one: Verdict) -> date | None:
    """The last mating that somebody still plans for a buck: breed him back, then he goes."""
    matings = [plan for doe in barn.living for plan in doe.intentions if plan.what == "breed" and plan.with_ == one.key]
    return max((day for plan in matings if (day := plan.until or plan.on) is not None), default=None)


def _own_day(barn: Evidence, one: Verdict) -> date | None:
    """The day that the person gave."""
    animal = barn.herd.animals.get(one.key)
    wish = wish_of(barn, animal) if animal else None
    return (wish.on or wish.until) if wish else None


def _sell(barn: Evidence, one: Verdict) -> Course:
    """Until the end of the person's offer; else long enough to find a buyer, mostly until winter."""
    today, animal = barn.today, barn.herd.animals.get(one.key)
    own = _own_day(barn, one) or _offered_until(animal)
    if own is not None and own >= today:
        return Course("as_planned", own, f"Until {when(own, today)}, as you planned.")
    on = max(one.after or today, today) + timedelta(figures.SELL_DAYS.whole)
    on = max(on, winter(barn.herd.settings, today))
    return Course("sell_then_cull", on, begun(f"{_offer_from(one, animal, today)}if nobody took it by {when(on, today)}, cull."))


def _offer_from(one: Verdict, animal: Animal | None, today: date) -> str:
    if one.after is not None and one.after > today:
        return f"from {when(one.after, today)} on, when her kits are weaned; "
    return "" if animal is not None and animal.listing else "offer it now; "


def _offered_until(animal: Animal | None) -> date | None:
    return animal.listing.until if animal and animal.listing else None


def _observe(barn: Evidence, one: Verdict) -> Course:
    """What is to be seen next of an animal that is watched; of one that is not well, that first."""
    codes = {found.code for found in one.reasons}
    first = next((text for code, text in SEE_FIRST.items() if code == one.reasons[0].code or (code == "ailing" and code in codes)), None)
    if first is not None:
        return Course("observe", None, first)
    coming = next_seen(barn).get(one.tag or one.litter_of or "")
    if coming is not None:
        late = " (overdue)" if coming.on < barn.today else f" {when(coming.on, barn.today)}"
        return Course("observe", coming.on, f"Decide after {SHOWS[coming.chore]}{late}.")
    if one.stage == "grow-out":
        return Course("observe", None, "Decide once it is weighed again.")
    animal = barn.herd.animals[one.key]
    whose = {"he": "his", "she": "her"}.get(pronoun(animal), "its")
    return Course("observe", None, f"Decide after {whose} next litter.")


@lru_cache(maxsize=4)
def next_seen(barn: Evidence) -> Mapping[str, Chore]:
    """By tag, the first chore after which more is known."""
    told = [chore for chore in all_chores(barn.herd, barn.today) if chore.chore in SHOWS and chore.tag is not None]
    first_last = sorted(told, key=lambda chore: (chore.on < barn.today, chore.on), reverse=True)
    return {chore.tag: chore for chore in first_last if chore.tag is not None}
