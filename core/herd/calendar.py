"""The breeder's calendar: what follows from matings, litters, weights and plans, as chores with their days.

Nothing here is scheduled: each call works the chores out anew. What is done, skipped or put off is settled at the end.
Moot chores (a later event of the same mating or litter is on the book) don't come out at all.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date, timedelta

from core import words
from core.handbook import growth, reproduction
from core.handbook.figure import Figure
from core.herd import litters as kits
from core.herd.chore import Chore
from core.herd.matings import matings_of, open_mating
from core.herd.questions import leaving
from core.herd.settings import junior_age
from core.herd.state import Animal, Herd, Intention, Litter, Mating


def settled(herd: Herd, chores: Iterable[Chore]) -> tuple[Chore, ...]:
    """The chores less those done or skipped, each on the day it was put off to."""
    moved = {each.key: each for each in herd.reminders}
    left = []
    for chore in chores:
        if chore.key in herd.closed:
            continue
        put_off = moved.get(chore.key)
        left.append(replace(chore, on=put_off.on, time=put_off.time or chore.time) if put_off else chore)
    return tuple(left)


def key_of(chore: str, *parts: object) -> str:
    """The key of a chore: its name, its animal and the day of what caused it."""
    return ":".join((chore, *(str(part) for part in parts)))


# --- what a mating causes -----------------------------------------------------------------------------------------


def mating_chores(herd: Herd, today: date) -> tuple[Chore, ...]:
    """Palpate, box in and kindling for every doe in kindle."""
    return settled(herd, _mating_chores(herd, today))


def _mating_chores(herd: Herd, _today: date) -> Iterator[Chore]:
    for doe in [animal for animal in herd.animals.values() if animal.living]:
        mating = open_mating(herd, doe.key)
        if mating is not None:
            yield from _of_mating(herd, doe, mating)


def _of_mating(herd: Herd, doe: Animal, mating: Mating) -> Iterator[Chore]:
    service = [each for each in matings_of(herd, doe.key) if each.on >= mating.on]
    box_in = any(each.box_in for each in service)
    bred = f"bred to {_who(herd, mating.buck)} {words.day(mating.on)}"
    first, last = (_after(mating.on, day) for day in (reproduction.KINDLING_WINDOW_FIRST, reproduction.KINDLING_WINDOW_LAST))
    texts = {
        "palpate": f"Palpate doe {doe.tag} ({bred})",
        "nest_box_in": f"Nest box in for doe {doe.tag} ({bred})",
        "kindling": f"Doe {doe.tag} is due to kindle, {words.day(first)} to {words.day(last)} ({bred})",
    }
    days = {"palpate": reproduction.PALPATE_DAY, "nest_box_in": reproduction.NEST_BOX_IN_DAY, "kindling": reproduction.GESTATION_DAYS}
    moot = {"palpate": box_in or any(each.palpated for each in service), "nest_box_in": box_in, "kindling": False}
    for chore, figure in days.items():
        if not moot[chore]:
            yield Chore(_after(mating.on, figure), chore, doe.tag, texts[chore], key_of(chore, doe.key, mating.on))


def _after(day: date, figure: Figure) -> date:
    return day + timedelta(figure.whole)


def _who(herd: Herd, key: str) -> str:
    animal = herd.animals.get(key)
    return animal.tag if animal else key


# --- what a kindling causes ---------------------------------------------------------------------------------------


def litter_chores(herd: Herd, today: date) -> tuple[Chore, ...]:
    """Check the nest, box out, wean and rebreed after every kindling."""
    return settled(herd, _litter_chores(herd, today))


def _litter_chores(herd: Herd, _today: date) -> Iterator[Chore]:
    for litter in herd.litters.values():
        doe = herd.animals.get(litter.dam)
        tag = doe.tag if doe else litter.dam
        gone = " (she is gone)" if doe and not doe.living else ""
        texts = {
            "check_nest": f"Check the nest of doe {tag}{gone}: count the kits, take out the dead",
            "nest_box_out": f"Nest box out for doe {tag}'s kits{gone}" if gone else f"Nest box out for doe {tag}",
            "wean": f"Wean doe {tag}'s litter{gone}: {words.count(kits.alive_now(litter), 'kit')}",
            "rebreed": f"Doe {tag} can be bred again",
        }
        for chore, figure in _AFTER_KINDLING.items():
            if not _is_moot(herd, doe, litter, chore):
                yield Chore(_after(litter.born_on, figure), chore, tag, texts[chore], key_of(chore, litter.dam, litter.born_on))


_AFTER_KINDLING = {
    "check_nest": reproduction.CHECK_NEST_DAY,
    "nest_box_out": reproduction.NEST_BOX_OUT_DAY,
    "wean": reproduction.WEAN_DAY,
    "rebreed": reproduction.REBREED_DAY,
}


def _is_moot(herd: Herd, doe: Animal | None, litter: Litter, chore: str) -> bool:
    """Whether a later event of the litter, or of its dam, makes the chore pointless."""
    if chore == "rebreed":
        return _needs_no_buck(herd, doe, litter)
    if litter.weaned_on is not None or kits.alive_now(litter) == 0:
        return True
    if chore == "check_nest":
        return litter.box_out is not None or _was_seen(litter)
    return chore == "nest_box_out" and litter.box_out is not None


def _was_seen(litter: Litter) -> bool:
    """Whether anybody looked at the nest after the day of the kindling."""
    days = [each[0] for each in (*litter.tally, *litter.counts)] + [each[0] for each in litter.weighings]
    return any(day > litter.born_on for day in days)


def _needs_no_buck(herd: Herd, doe: Animal | None, litter: Litter) -> bool:
    """A doe that left or is meant to, is mated again, or has kindled since."""
    if doe is None or not doe.living or leaving(doe):
        return True
    later = kits.newest_litter(herd, doe.key)
    mated = any(mating.on >= litter.born_on for mating in matings_of(herd, doe.key))
    return mated or (later is not None and later.key != litter.key)


# --- weighing -----------------------------------------------------------------------------------------------------


def weigh_chores(herd: Herd, today: date) -> tuple[Chore, ...]:
    """Weigh at the handbook's ages: litters by their doe, tagged young ones each."""
    return settled(herd, _weigh_chores(herd, today))


def _weigh_chores(herd: Herd, today: date) -> Iterator[Chore]:
    for litter in herd.litters.values():
        if kits.untagged(herd, litter):
            weighed = [on for on, _, _ in litter.weighings]
            tag = _who(herd, litter.dam)
            what = f"doe {tag}'s {words.count(kits.untagged(herd, litter), 'untagged kit')}"
            yield from _weighings(herd, today, litter.born_on, weighed, (tag, litter.dam, what))
    for animal in herd.animals.values():
        if animal.living and animal.born:
            weighed = [weight.on for weight in animal.weights]
            yield from _weighings(herd, today, animal.born, weighed, (animal.tag, animal.key, animal.tag))


def _weighings(herd: Herd, today: date, born: date, weighed: list[date], who: tuple[str, str, str]) -> Iterator[Chore]:
    """The weighings still to come, and the last one passed by: an earlier one is moot once the next is due, all are for a grown one."""
    tag, key, what = who
    ends = [*(figure.whole for figure in growth.WEIGH_DAYS[1:]), junior_age(herd.settings)]
    for figure, end in zip(growth.WEIGH_DAYS, ends, strict=True):
        done = any((on - born).days >= figure.low for on in weighed)
        if not done and (today - born).days < end:
            text = f"Weigh {what} ({figure.whole} days)"
            yield Chore(_after(born, figure), "weigh", tag, text, key_of("weigh", key, born, figure.whole))


# --- sale dates, plans and reminders ------------------------------------------------------------------------------


def sale_chores(herd: Herd, _today: date) -> tuple[Chore, ...]:
    """The end of every offer."""
    return settled(herd, _sale_chores(herd))


def _sale_chores(herd: Herd) -> Iterator[Chore]:
    for animal in herd.animals.values():
        offer = animal.listing
        if animal.living and offer and offer.until:
            text = f"{animal.tag} was for sale until {words.day(offer.until)}: sell, list again or keep"
            yield Chore(offer.until, "sale_date", animal.tag, text, key_of("sale_date", animal.key, offer.until))
    for litter in herd.litters.values():
        for _, count, _, until in litter.for_sale[-1:]:
            if until and kits.untagged(herd, litter):
                tag = _who(herd, litter.dam)
                text = f"{words.count(count, 'kit')} of doe {tag} for sale until {words.day(until)}: sell, list again or keep"
                yield Chore(until, "sale_date", tag, text, key_of("sale_date", litter.dam, until))


_PLAN_CHORES = {"cull": "cull_date", "sell": "sale_date", "review": "review", "keep": "review"}


def plan_chores(herd: Herd, _today: date) -> tuple[Chore, ...]:
    """The days that plans name. The last word on an animal's stay holds; a breeding is done once it happened."""
    return settled(herd, _plan_chores(herd))


def _plan_chores(herd: Herd) -> Iterator[Chore]:
    for animal in [animal for animal in herd.animals.values() if animal.living]:
        latest = {("stay" if plan.what in _STAY else plan.what): plan for plan in animal.intentions}
        for plan in latest.values():
            on = plan.on or plan.until
            if on is not None and not (plan.what == "breed" and _bred_since(herd, animal, plan)):
                chore = _PLAN_CHORES.get(plan.what, "custom")
                yield Chore(on, chore, animal.tag, plan_text(herd, animal, plan), key_of(chore, animal.key, on))


_STAY = frozenset({"cull", "sell", "keep", "retire", "replace"})


def _bred_since(herd: Herd, animal: Animal, plan: Intention) -> bool:
    return any(mating.on >= plan.told_on for mating in herd.matings if animal.key in {mating.doe, mating.buck})


def plan_text(herd: Herd, animal: Animal, plan: Intention) -> str:
    """A plan in words: `Breed 14 to 7`, `Cull 12: barren`."""
    link = {"breed": " to ", "replace": " with "}.get(plan.what, " with ")
    other = link + _who(herd, plan.with_) if plan.with_ else ""
    reason = f": {plan.reason}" if plan.reason else ""
    return f"{plan.what.capitalize()} {animal.tag}{other}{reason}"


def reminder_chores(herd: Herd, _today: date) -> tuple[Chore, ...]:
    """What a person asked to be reminded of; chores put off keep their own kind's words."""
    own = {each.key: each for each in herd.reminders if each.key.startswith("custom:")}
    asked = [Chore(each.on, "custom", _tag(herd, each.who), each.text, each.key, each.time) for each in own.values()]
    return settled(herd, asked)


def _tag(herd: Herd, key: str | None) -> str | None:
    return None if key is None else _who(herd, key)


def all_chores(herd: Herd, today: date) -> tuple[Chore, ...]:
    """Every chore that is not done and not moot, by day; each key once (an offer and a plan may name the same day)."""
    makers = (reminder_chores, plan_chores, sale_chores, weigh_chores, litter_chores, mating_chores)
    by_key = {chore.key: chore for make in makers for chore in make(herd, today)}
    return tuple(sorted(by_key.values(), key=lambda chore: (chore.on, chore.key)))
