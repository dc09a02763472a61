"""One animal before the plan is made: what speaks against it, what speaks for it, and what a person already decided.

Flags weigh 2 (enough alone) or 1 (a warning). Two or more together mean it should go; one is watched; none keeps it, or, for the
young and unproven, waits. A person's own word goes before everything. Does with kits never go before these are weaned.
"""

from __future__ import annotations

from datetime import date, timedelta
from statistics import fmean

from core.handbook import flags as figures
from core.handbook import growth, health, reproduction
from core.herd.litters import alive_now, litters_of, litters_sired, nursed_litter
from core.herd.matings import open_mating
from core.herd.questions import age_days, events, in_withdrawal, withdrawal_untold
from core.herd.settings import target_weight
from core.herd.state import Animal, Intention, Listing
from core.reports.bucks import growth_merit, ranked, stands_out
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.flags import SURVIVAL_KINDS, flags_of, raised_line
from core.reports.verdict import Verdict
from core.reports.wording import age, begun, called, grams, more_or_less, pronoun, short, tag_of, times_in_ten, when
from core.words import count, day

#: Plans that say what becomes of an animal.
STAY = ("keep", "cull", "sell", "retire", "replace", "review")
ENOUGH = 2
#: A merit's numbers that a flag of the same evidence has said already.
SAID_ALREADY = {"raises_kits": "low_survival", "weight": "light_growout"}


def judged(barn: Evidence, animal: Animal) -> Verdict:
    """The verdict on one animal by itself; the herd's plan may still change it."""
    strikes = sorted(flags_of(barn, animal), key=lambda one: -one.heed)
    praise = [one for one in merits(barn, animal) if not any(strike.code == SAID_ALREADY.get(one.code) for strike in strikes)]
    verdict, reasons, pinned = _weighed(barn, animal, strikes, praise)
    return Verdict(
        animal.key,
        animal.tag,
        barn.stages[animal.key],
        verdict,
        tuple(reasons),
        name=animal.name,
        breed=animal.breed,
        sex=animal.sex,
        pinned=pinned,
    )


def _weighed(barn: Evidence, animal: Animal, strikes: list[Finding], praise: list[Finding]) -> tuple[str, list[Finding], bool]:
    """The verdict, its reasons, and whether a person said so."""
    wish = wish_of(barn, animal)
    if wish is not None:
        verdict = {"keep": "keep", "cull": "cull", "sell": "sell"}.get(wish.what, "watch")
        others = [*praise, *strikes] if verdict == "keep" else [*strikes, *praise]
        return verdict, [_wished(barn, animal, wish), *others], True
    heed = sum(one.heed for one in strikes)
    late_offer = any(one.code == "past_sale_date" for one in strikes)
    if animal.listing is not None and not late_offer:
        return "sell", [_offered(barn, animal, animal.listing), *strikes, *praise], True
    if heed >= ENOUGH:
        return _way_out(barn, animal, strikes, praise), [*strikes, *praise], False
    if heed or strikes:
        return "watch", [*strikes, *praise], False
    return _unflagged(barn, animal, praise)


def _unflagged(barn: Evidence, animal: Animal, praise: list[Finding]) -> tuple[str, list[Finding], bool]:
    """An animal that nothing speaks against: bucks within the number and proven does stay, the unproven are watched."""
    at_stage = barn.stages[animal.key]
    if at_stage == "grow-out":
        return "watch", [*praise, _too_young(barn, animal)], False
    if animal.sex == "buck" or litters_of(barn.herd, animal.key):
        return "keep", praise or [_nothing_against(animal)], False
    return "watch", [_unproven(animal), *praise], False


def _way_out(barn: Evidence, animal: Animal, strikes: list[Finding], praise: list[Finding]) -> str:
    """Show stock, and proven bucks that are only one too many, find a buyer; the others don't."""
    codes = {one.code for one in strikes}
    if "disqualifying_fault" in codes:
        return "cull"
    if any(one.code == "show_quality" for one in praise):
        return "sell"
    return "sell" if codes <= {"excess_buck", "heavy_feeder"} and _good_sire(barn, animal) else "cull"


def _good_sire(barn: Evidence, animal: Animal) -> bool:
    """A buck with litters whose kits grow no worse than the breed's mean here."""
    value, _, _ = growth_merit(barn, animal)
    return bool(litters_sired(barn.herd, animal.key)) and value is not None and value >= 0


# --- what a person said -------------------------------------------------------------------------------------------


def wish_of(barn: Evidence, animal: Animal) -> Intention | None:
    """The person's last word on whether it stays; None where there is none, it has run out, or what it waited for has come."""
    said = [one for one in animal.intentions if one.what in STAY]
    if not said:
        return None
    last = said[-1]
    if last.what == "keep" and (_over(last, barn.today) or _proven_since(barn, animal, last)):
        return None
    return last


def _over(wish: Intention, today: date) -> bool:
    end = wish.until or wish.on
    return end is not None and end < today


def _proven_since(barn: Evidence, animal: Animal, wish: Intention) -> bool:
    """`Keep 7 til he's proven` ends with his first litter, or hers."""
    if "prove" not in (wish.reason or "").lower():
        return False
    litters = [*litters_sired(barn.herd, animal.key), *litters_of(barn.herd, animal.key)]
    return any(one.born_on >= wish.told_on and one.weaned_on is not None for one in litters)


_WISHES = {
    "keep": "You said to keep {it}",
    "cull": "You plan to cull {it}",
    "sell": "You plan to sell {it}",
    "retire": "You plan to retire {it}",
    "replace": "You plan to replace {it}",
    "review": "You want to look at {it} again",
}


def _wished(barn: Evidence, animal: Animal, wish: Intention) -> Finding:
    it = {"he": "him", "she": "her"}.get(pronoun(animal), "it")
    text = _WISHES[wish.what].format(it=it)
    if wish.with_:
        text += f" with {tag_of(barn.herd, wish.with_)}"
    if wish.on:
        text += f" on {when(wish.on, barn.today)}"
    if wish.until:
        text += f" until {when(wish.until, barn.today)}"
    text += f": {wish.reason}." if wish.reason else "."
    evidence = {
        "what": wish.what,
        "told_on": wish.told_on.isoformat(),
        "on": wish.on.isoformat() if wish.on else None,
        "until": wish.until.isoformat() if wish.until else None,
        "reason": wish.reason,
        "count": 1,
    }
    return Finding(animal.key, animal.tag, f"planned_{wish.what}", text, evidence, kinds=("planned",))


def _offered(barn: Evidence, animal: Animal, offer: Listing) -> Finding:
    until = f" until {when(offer.until, barn.today)}" if offer.until else ""
    text = f"For sale since {when(offer.on, barn.today)}{until}."
    evidence = {
        "on": offer.on.isoformat(),
        "until": offer.until.isoformat() if offer.until else None,
        "price_cents": offer.price,
        "count": 1,
    }
    return Finding(animal.key, animal.tag, "for_sale", text, evidence, kinds=("for_sale",))


# --- what speaks for it -------------------------------------------------------------------------------------------


def merits(barn: Evidence, animal: Animal) -> list[Finding]:
    """What speaks for an animal, the weightiest first."""
    found = (
        _raises_well(barn, animal),
        _wanted_buck(barn, animal),
        _against_sire(barn, animal),
        _outdone(barn, animal),
        _show_quality(animal),
        _grows_well(barn, animal),
        _on_target(barn, animal),
    )
    return [one for one in found if one is not None]


def _raises_well(barn: Evidence, animal: Animal) -> Finding | None:
    dam = barn.dams.get(animal.key)
    if dam is None or (not dam.alive and not dam.excused):
        return None
    return Finding(animal.key, animal.tag, "raises_kits", f"{raised_line(barn, animal)}.", dam.document(), kinds=SURVIVAL_KINDS)


def _wanted_buck(barn: Evidence, animal: Animal) -> Finding | None:
    if animal.sex != "buck" or barn.stages[animal.key] not in {"junior", "senior"}:
        return None
    bucks = ranked(barn, animal)
    if animal not in bucks.kept:
        return None
    sires = len(litters_sired(barn.herd, animal.key))
    coming = "a young buck coming on" if barn.stages[animal.key] == "junior" else "no litter yet"
    what = f"{count(sires, 'litter')} sired" if sires else coming
    breed = f"{animal.breed} " if animal.breed else ""
    text = f"One of the {count(bucks.wanted, f'{breed}buck')} you keep: number {bucks.place(animal)} of {len(bucks.best_first)}, {what}."
    evidence = {"rank": bucks.place(animal), "count": len(bucks.best_first), "keep": bucks.wanted, "litters_sired": sires}
    return Finding(animal.key, animal.tag, "wanted_buck", text, evidence, heed=-1, kinds=("bred", "kindled"))


def _against_sire(barn: Evidence, animal: Animal) -> Finding | None:
    """A buck that is likely better than his own sire."""
    sire = barn.herd.animals.get(animal.sire or "")
    grown = animal.sex == "buck" and barn.stages[animal.key] in {"junior", "senior"}
    chance = barn.growth.better(animal.key, sire.key) if barn.growth and sire and grown else None
    if sire is None or chance is None or chance < figures.OUTDOES_CHANCE.value:
        return None
    text = (
        f"Better than his sire {short(sire)}: his kits would outgrow the old one's {times_in_ten(chance)}, {_on_kits(barn, animal, sire)}."
    )
    evidence = {"sire": sire.tag, "chance_better": chance, "count": _kits_weighed(barn, animal, sire)}
    return Finding(animal.key, animal.tag, "betters_sire", text, evidence, heed=-1, kinds=("weighed",))


def _outdone(barn: Evidence, animal: Animal) -> Finding | None:
    """A buck of the farm's number that another of them outdoes."""
    if animal.sex != "buck" or barn.growth is None or barn.stages[animal.key] not in {"junior", "senior"}:
        return None
    kept = ranked(barn, animal).kept
    rivals = [(barn.growth.better(one.key, animal.key) or 0.0, one) for one in kept if one.key != animal.key and animal in kept]
    chance, rival = max(rivals, key=lambda each: each[0], default=(0.0, animal))
    if chance < figures.OUTDOES_CHANCE.value:
        return None
    text = f"{short(rival)}'s kits would outgrow his {times_in_ten(chance)}, {_on_kits(barn, animal, rival)}."
    evidence = {"better": rival.tag, "chance_better": chance, "count": _kits_weighed(barn, animal, rival)}
    return Finding(animal.key, animal.tag, "outproduced", text, evidence, kinds=("weighed",))


def _kits_weighed(barn: Evidence, *animals: Animal) -> int:
    return sum(growth_merit(barn, one)[2] for one in animals)


def _on_kits(barn: Evidence, *animals: Animal) -> str:
    """What a comparison of growth stands on."""
    return f"by {count(_kits_weighed(barn, *animals), 'kit')} of theirs weighed"


def _show_quality(animal: Animal) -> Finding | None:
    scores = [one.detail["score"] for one in events(animal, "scored")]
    placings = [str(one.detail["placing"]) for one in events(animal, "shown")]
    mean = fmean(scores) if scores else None
    if not placings and (mean is None or mean < figures.SHOW_SCORE.value):
        return None
    told = [f"shown: {placings[-1]}"] if placings else []
    told += [f"scores {mean:.1f} of 5 over {count(len(scores), 'score')}"] if mean is not None else []
    text = f"Show quality: {', '.join(told)}."
    return Finding(
        animal.key,
        animal.tag,
        "show_quality",
        text,
        {"placings": placings, "score": mean, "count": len(scores) + len(placings)},
        heed=-1,
        kinds=("scored", "shown"),
    )


def _grows_well(barn: Evidence, animal: Animal) -> Finding | None:
    """Its breeding value for growth, where there is one and it lies above the breed's mean here."""
    value, reliability, kits = growth_merit(barn, animal)
    if value is None or reliability is None or not stands_out(barn, animal):
        return None
    settings = barn.herd.settings
    on = f"by {count(kits, 'kit')} weighed" if kits else "by its own weights and its family's"
    text = f"Passes on growth: {grams(settings, value)} above the breed's mean here at 10 weeks, {on}."
    evidence = {"weight_70d_grams": value, "reliability": reliability, "count": kits}
    return Finding(animal.key, animal.tag, "grows_well", text, evidence, heed=-1, kinds=("weighed",))


def _on_target(barn: Evidence, animal: Animal) -> Finding | None:
    """A young one's weight against its herd mates and its target."""
    found = barn.grown(animal)
    if found is None or barn.stages[animal.key] not in {"grow-out", "junior"}:
        return None
    settings = barn.herd.settings
    mates = ""
    if found.expected is not None:
        mates = f", {more_or_less(settings, found.grams - found.expected)} the mean of {count(found.mates, 'herd mate')}"
    text = f"{grams(settings, found.grams)} at {age(found.at_days)}{mates}."
    evidence = {
        "grams": found.grams,
        "age_days": found.at_days,
        "target_grams": found.target,
        "expected_grams": found.expected,
        "count": found.mates,
    }
    return Finding(animal.key, animal.tag, "weight", text, evidence, kinds=("weighed",))


def _too_young(barn: Evidence, animal: Animal) -> Finding:
    days = age_days(animal, barn.today)
    target = grams(barn.herd.settings, target_weight(barn.herd.settings, animal.breed))
    if days is None or days < growth.LIGHT_AGE_DAYS.value:
        told = f"{age(days)} old: " if days is not None else ""
        text = f"{told}weigh at 16 weeks ({target} wanted), then decide."
    else:
        text = f"{age(days)} old and unproven: breed, sell or butcher before the feed is eaten."
    return Finding(animal.key, animal.tag, "unproven", begun(text), {"age_days": days, "count": 0}, kinds=("weighed",))


def _unproven(animal: Animal) -> Finding:
    return Finding(
        animal.key, animal.tag, "unproven", "No litter yet: breed her and count her first one.", {"litters": 0, "count": 0}, kinds=("bred",)
    )


def _nothing_against(animal: Animal) -> Finding:
    return Finding(animal.key, animal.tag, "no_complaint", "Nothing in the notes speaks against keeping.", {"count": 0})


# --- what holds an animal back ------------------------------------------------------------------------------------


def bound_until(barn: Evidence, animal: Animal) -> tuple[date, Finding] | None:
    """The day her kits, born or coming, will be weaned; None for an animal without any."""
    if animal.sex != "doe":
        return None
    litter = nursed_litter(barn.herd, animal.key, barn.today)
    mating = open_mating(barn.herd, animal.key, barn.today)
    wean = timedelta(days=reproduction.WEAN_DAY.whole)
    if litter is not None:
        after, why, kind = max(litter.born_on + wean, barn.today), f"She nurses {count(alive_now(litter), 'kit')}", "kindled"
    elif mating is not None and (barn.today - mating.on).days < reproduction.ASK_KINDLING_DAY.value:
        after = mating.on + timedelta(days=reproduction.GESTATION_DAYS.whole) + wean
        why, kind = f"She may be in kindle, bred {when(mating.on, barn.today)}", "bred"
    else:
        return None
    text = f"{why}: only after weaning, about {day(after)}."
    return after, Finding(animal.key, animal.tag, "has_kits", text, {"after": after.isoformat(), "count": 1}, kinds=(kind,))


def withdrawal(barn: Evidence, animal: Animal) -> tuple[date | None, str, Finding] | None:
    """Why it may not be eaten: until which day where that is known, the caution, and the reason; None where nothing was given."""
    until = in_withdrawal(animal, barn.today)
    if until is not None:
        text = f"Withdrawal time runs until {when(until, barn.today)}: not to be eaten before."
        evidence = {"until": until.isoformat(), "count": 1}
        return (
            until,
            f"{called(animal)}: {health.WITHDRAWAL_RUNNING}",
            Finding(animal.key, animal.tag, "withdrawal", text, evidence, kinds=("treated",)),
        )
    untold = withdrawal_untold(animal, barn.today)
    if untold is None:
        return None
    text = f"Treated {when(untold.on, barn.today)} with {untold.detail.get('with') or 'something'}; no withdrawal time noted."
    evidence = {"until": None, "count": 1}
    finding = Finding(animal.key, animal.tag, "withdrawal", text, evidence, kinds=("treated",))
    return None, f"{called(animal)}: {health.WITHDRAWAL_UNKNOWN}", finding
