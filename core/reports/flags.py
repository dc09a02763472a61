"""Animals worth a second look, each with its evidence in a line: one function a flag.

Every function asks one question of one animal and gives a finding or nothing. Thresholds are the handbook's figures or the farm's settings.

Over 300 lines: one function a flag of the digest.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date, timedelta

from core.handbook import flags as figures
from core.handbook import growth, reproduction
from core.handbook import survival as survival_figures
from core.herd.litters import alive_now, litters_of, live_born
from core.herd.matings import last_mating, matings_of
from core.herd.questions import age_days, events, senior_since
from core.herd.settings import lowest_temper
from core.herd.state import Animal, Event, Litter, Mating
from core.reckon.bad_nights import BadNight
from core.reckon.survival import Survival
from core.reports.bucks import excess_buck
from core.reports.doe_life import tries
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.growing import heading
from core.reports.litter_size import size_document, size_of, told_litters
from core.reports.survival import BAD_NIGHT, NOT_HERS, POWER, DamSurvival
from core.reports.wording import age, grams, how_sure, likely, pronoun, when
from core.words import count, listed, share

Flag = Callable[[Evidence, Animal], Finding | None]


def light_growout(barn: Evidence, animal: Animal) -> Finding | None:
    """Sixteen weeks or older, never mated, and under the farm's target for its breed."""
    days = age_days(animal, barn.today)
    found = barn.grown(animal)
    if days is None or found is None or days < growth.LIGHT_AGE_DAYS.value:
        return None
    if last_mating(barn.herd, animal.key) is not None or (barn.stages[animal.key] == "senior" and _has_litters(barn, animal)):
        return None
    if found.grams >= found.target:
        return None
    settings = barn.herd.settings
    herd_says = (
        f"; its {count(found.mates, 'herd mate')} of the breed average {grams(settings, found.expected)} at that age"
        if found.expected is not None
        else ""
    )
    text = (
        f"{grams(settings, found.grams)} at {age(found.at_days)}, under the {grams(settings, found.target)} wanted at 16 weeks{herd_says}."
    )
    return Finding(
        animal.key,
        animal.tag,
        "light_growout",
        text,
        {
            "grams": found.grams,
            "on": found.on.isoformat(),
            "age_days": found.at_days,
            "target_grams": found.target,
            "expected_grams": found.expected,
            "count": found.mates,
        }
        | heading(barn, animal).document(),
        heed=2,
        kinds=("weighed",),
    )


def _has_litters(barn: Evidence, animal: Animal) -> bool:
    return any(animal.key in {litter.dam, litter.sire} for litter in barn.herd.litters.values())


def low_survival(barn: Evidence, animal: Animal) -> Finding | None:
    """A doe whose kits, weather and predators apart, are more likely than not raised below the farm's line."""
    dam = barn.dams.get(animal.key)
    if dam is None or not dam.enough or dam.chance_below < survival_figures.LOW_SURVIVAL_CHANCE.value:
        return None
    text = f"{raised_line(barn, animal)}; your line is {share(dam.line)}, {_how_sure_below(dam)}."
    heed = 2 if _still_low_after_a_good_litter(dam.share, dam.line) else 1
    return Finding(animal.key, animal.tag, "low_survival", text, dam.document(), heed=heed, kinds=SURVIVAL_KINDS)


def _how_sure_below(dam: DamSurvival) -> str:
    """How sure it is that she is below the line, and what would make it so: `below it 7 times in 10; 2 more litters like these would settle it`."""
    text = how_sure("she is", "below it", dam.chance_below)
    needed = dam.to_be_sure
    return text if not needed else f"{text}; {count(needed, 'more litter')} like these would settle it"


def _still_low_after_a_good_litter(share_: Survival, line: float) -> bool:
    """Whether one more litter of the usual size, every kit raised, would leave her below the line: if not, she is only watched."""
    kits = int(reproduction.USUAL_BORN_ALIVE.value)
    return share_.with_litter(kits, kits).chance_below(line) >= survival_figures.LOW_SURVIVAL_CHANCE.value


#: The notes that tell how a doe raises her kits.
SURVIVAL_KINDS = ("kindled", "kits_lost", "kit_count", "fostered", "weaned")


def raised_line(barn: Evidence, animal: Animal) -> str:
    """A doe's survival in words: `11 of 19 kits raised in 3 litters, 58 % (allowing for luck, likely 50 to 71 %)`, and what the weather took."""
    dam = barn.dams[animal.key]
    plain = f", {share(dam.kept / dam.alive)}" if dam.alive else ""
    range_ = likely(dam.share.low, dam.share.high)
    text = f"{dam.kept} of {count(dam.alive, 'kit')} raised in {count(len(dam.litters), 'litter')}{plain} ({range_})"
    return text + (f"; {count(dam.excused, 'kit')} lost to {_what_took_them(barn, dam)} not held against her" if dam.excused else "")


def raised_said(barn: Evidence, animal: Animal) -> str:
    """The same as a sentence; where she raised too few to be judged, what to note."""
    thin = "" if barn.dams[animal.key].enough else " Too few to judge her by: note what becomes of her next litter."
    return f"{raised_line(barn, animal)}.{thin}"


def _what_took_them(barn: Evidence, dam: DamSurvival) -> str:
    """What took the kits that are not held against a doe: `weather or predators`, `a night when 4 of 5 litters lost kits (Wed 12 Nov)`."""
    causes = set(dam.excused_by)
    told = ["weather or predators"] if causes & NOT_HERS else []
    told += ["a power cut"] if POWER in causes else []
    if BAD_NIGHT in causes:
        told += [_a_night(barn, night) for night in dam.nights]
    return listed(told)


def _a_night(barn: Evidence, night: BadNight) -> str:
    on = when(date.fromordinal(night.day), barn.today)
    return f"a night when {len(night.hit)} of {count(night.at_risk, 'litter')} lost kits ({on})"


def past_sale_date(barn: Evidence, animal: Animal) -> Finding | None:
    """For sale until a day that has passed, and still here."""
    offer = animal.listing
    if offer is None or offer.until is None or offer.until >= barn.today:
        return None
    days = (barn.today - offer.until).days
    text = f"For sale until {when(offer.until, barn.today)}, {count(days, 'day')} ago, and still here."
    evidence = {"until": offer.until.isoformat(), "days": days, "price_cents": offer.price}
    return Finding(animal.key, animal.tag, "past_sale_date", text, evidence, heed=2, kinds=("for_sale",))


def shrinking_litters(barn: Evidence, animal: Animal) -> Finding | None:
    """A doe whose litters get smaller, and it is likely no accident."""
    sizes = [live_born(litter) for litter in told_litters(barn, animal)]
    if len(sizes) < survival_figures.SHRINKING_FROM_LITTERS.value:
        return None
    trend = size_of(barn, animal)
    if trend.chance_of_fall < survival_figures.SHRINKING_CHANCE.value:
        return None
    luck = how_sure("a fall like this is", "more than luck", trend.chance_of_fall)
    text = f"Litters shrink: {listed(str(size) for size in sizes)} born alive; {luck}."
    evidence = {"born_alive": sizes, "litters": len(sizes), "slope": trend.slope} | size_document(trend)
    return Finding(animal.key, animal.tag, "shrinking_litters", text, evidence, heed=_heed_of_fall(barn, sizes), kinds=("kindled",))


def _heed_of_fall(barn: Evidence, sizes: list[int]) -> int:
    """A doe whose last two litters are below the herd's mean is past her best; one still above it is only watched."""
    every = [live_born(litter) for litter in barn.herd.litters.values() if litter.alive is not None or litter.born is not None]
    return 2 if sum(sizes[-2:]) / 2 < sum(every) / len(every) else 1


#: A doe is open from the day that she could have been bred.
GROWN = "grown"


def long_open(barn: Evidence, animal: Animal) -> Finding | None:
    """A senior doe that nobody has bred for a long time: the breeder's doing, so it weighs only where she has never kindled."""
    if animal.sex != "doe" or barn.stages[animal.key] != "senior":
        return None
    last = _open_since(barn, animal)
    if last is None or (barn.today - last[1]).days < figures.LONG_OPEN_DAYS.value:
        return None
    what, since = last
    days = (barn.today - since).days
    noted = ", as far as the notes tell" if what == GROWN and animal.came_on is not None and animal.came_on > since else ""
    text = f"Open for {count(days, 'day')}{noted}: {what} {when(since, barn.today)}, and not bred since."
    heed = 0 if litters_of(barn.herd, animal.key) else 1
    evidence = {"since": since.isoformat(), "days": days}
    return Finding(animal.key, animal.tag, "long_open", text, evidence, heed=heed, kinds=("bred", "weaned"))


def _open_since(barn: Evidence, doe: Animal) -> tuple[str, date] | None:
    """What she did last and when, from which day she could have been bred; None while she is bred or nurses."""
    matings = matings_of(barn.herd, doe.key)
    litters = litters_of(barn.herd, doe.key)
    if any(one.outcome is None and (barn.today - one.on).days < reproduction.ASK_KINDLING_DAY.value for one in matings):
        return None
    if any(litter.weaned_on is None and alive_now(litter) for litter in litters):
        return None
    senior = senior_since(barn.herd, doe, barn.today)
    told = [("her kits weaned", one.weaned_on) for one in litters] + [("her litter lost", _lost_on(one)) for one in litters]
    told += [("last bred", one.on) for one in matings] + [(GROWN, senior)]
    return max(((what, on) for what, on in told if on is not None), key=lambda each: each[1], default=None)


def _lost_on(litter: Litter) -> date | None:
    """The day its last kit was lost; None where some lived."""
    if litter.weaned_on is not None or alive_now(litter):
        return None
    return max([loss.on for loss in litter.losses], default=litter.born_on)


def missed_twice(barn: Evidence, animal: Animal) -> Finding | None:
    """A doe with two matings in a row and no litter."""
    missed = _missed_since_kindling(matings_of(barn.herd, animal.key)) if animal.sex == "doe" else []
    if len(missed) < figures.MISSED_IN_A_ROW.value:
        return None
    text = f"{count(len(missed), 'mating')} in a row without a litter, the first {when(missed[0], barn.today)}."
    evidence = {"missed": len(missed), "on": [day.isoformat() for day in missed]}
    heed = 2 if len(missed) > figures.MISSED_IN_A_ROW.value else 1
    return Finding(animal.key, animal.tag, "missed_twice", text, evidence, heed=heed, kinds=("bred", "missed", "palpated"))


def _missed_since_kindling(matings: tuple[Mating, ...]) -> list[date]:
    """The days of her tries that came to nothing since she last kindled."""
    told = tries(matings)
    last = max((at for at, (_, settled) in enumerate(told) if settled), default=-1)
    return [on for on, _ in told[last + 1 :]]


def bad_temper(barn: Evidence, animal: Animal) -> Finding | None:
    """Two bad notes of its temper within a year; one where the farm puts up with none, none where temper doesn't matter."""
    wanted = lowest_temper(barn.herd.settings)
    bad = [one for one in events(animal, "temper") if one.detail.get("grade") == "bad" and wanted != "any"]
    return _bad_notes(barn, animal, bad, "bad_temper", "temper", 1 if wanted == "good" else figures.BAD_TEMPER_NOTES.whole)


def bad_nest(barn: Evidence, animal: Animal) -> Finding | None:
    """Two bad notes of a doe's nest within a year."""
    seen = [*events(animal, "nest_manners"), *(one for litter in litters_of(barn.herd, animal.key) for one in litter.events)]
    bad = [one for one in seen if one.what == "nest_manners" and one.detail.get("sign") != "good"]
    return _bad_notes(barn, animal, sorted(bad, key=lambda one: one.on), "bad_nest", "nest_manners", figures.BAD_NEST_NOTES.whole)


def _bad_notes(barn: Evidence, animal: Animal, bad: list[Event], code: str, kind: str, least: int) -> Finding | None:  # noqa: PLR0913, PLR0917
    since = barn.today - timedelta(days=figures.BAD_NOTES_WITHIN_DAYS.whole)
    recent = [one for one in bad if one.on > since]
    if len(recent) < least:
        return None
    signs = list(dict.fromkeys(str(one.detail["sign"]).replace("_", " ") for one in recent if one.detail.get("sign")))
    what = "temper" if code == "bad_temper" else "nest"
    told = f" ({listed(signs)})" if signs else ""
    text = f"{count(len(recent), 'bad note')} on {possessive(animal)} {what} in 12 months{told}."
    evidence = {"count": len(recent), "on": [one.on.isoformat() for one in recent], "signs": signs}
    return Finding(animal.key, animal.tag, code, text, evidence, heed=1, kinds=(kind,))


def possessive(animal: Animal) -> str:
    """His, her or its."""
    return {"he": "his", "she": "her"}.get(pronoun(animal), "its")


def disqualifying_fault(barn: Evidence, animal: Animal) -> Finding | None:
    """A fault that bars it from the show table, noted and not withdrawn."""
    last = {str(one.detail.get("fault")): one for one in events(animal, "fault")}
    barred = [one for one in last.values() if one.detail.get("disqualifies")]
    if not barred:
        return None
    young = barn.stages.get(animal.key) != "senior"
    faults = [str(one.detail["fault"]) for one in barred]
    text = f"Disqualifying fault: {listed(faults)}, noted {when(barred[-1].on, barn.today)}."
    evidence = {"faults": faults, "on": [one.on.isoformat() for one in barred], "count": len(barred)}
    return Finding(animal.key, animal.tag, "disqualifying_fault", text, evidence, heed=2 if young else 1, kinds=("fault",))


def heavy_feeder(barn: Evidence, animal: Animal) -> Finding | None:
    """Gets by its own ration far more feed than its weight and state should need, and is not thin. A ration for all does is nobody's greed."""
    eater = barn.eaters.get(animal.key)
    if eater is None or eater.told is None or animal.ration is None:
        return None
    need = eater.need()
    condition = animal.conditions[-1][1] if animal.conditions else None
    thin = condition is not None and condition < figures.HEAVY_FEEDER_CONDITION.value
    if thin or eater.told <= need * figures.HEAVY_FEEDER_TIMES.value:
        return None
    settings = barn.herd.settings
    text = (
        f"Eats {grams(settings, eater.told)} a day, {eater.told / need:.1f} times the {grams(settings, need)} "
        f"expected for {possessive(animal)} weight."
    )
    evidence = {"grams_a_day": eater.told, "expected_grams_a_day": need, "times": eater.told / need, "condition": condition}
    return Finding(animal.key, animal.tag, "heavy_feeder", text, evidence, heed=1, kinds=("ration", "condition"))


#: Every flag, in the order in which the digest tells them.
FLAGS: tuple[Flag, ...] = (
    low_survival,
    light_growout,
    excess_buck,
    past_sale_date,
    shrinking_litters,
    missed_twice,
    long_open,
    bad_temper,
    bad_nest,
    disqualifying_fault,
    heavy_feeder,
)


def flags_of(barn: Evidence, animal: Animal) -> tuple[Finding, ...]:
    """What is worth knowing of one animal. Kits are left alone."""
    if barn.stages[animal.key] == "kit":
        return ()
    found = (flag(barn, animal) for flag in FLAGS)
    return tuple(one for one in found if one is not None)


def all_flags(barn: Evidence) -> tuple[Finding, ...]:
    """The herd's flags, animal by animal."""
    return tuple(_each(barn))


def _each(barn: Evidence) -> Iterator[Finding]:
    for animal in barn.living:
        yield from flags_of(barn, animal)
