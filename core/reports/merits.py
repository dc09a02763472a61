"""What speaks for an animal: how she raises kits, his place among the bucks, growth, show results, and a young one's weight."""

from __future__ import annotations

from statistics import fmean

from core.handbook import flags as figures
from core.handbook import growth
from core.herd.litters import litters_of, litters_sired
from core.herd.questions import age_days, events
from core.herd.settings import target_weight
from core.herd.state import Animal
from core.reports.bucks import growth_merit, on_kits, ranked, stands_out
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.flags import SURVIVAL_KINDS, raised_said
from core.reports.growing import day_line, heading, runt_line
from core.reports.holding import held, held_lines
from core.reports.litter_size import level_said, size_document, size_of
from core.reports.litter_story import causes
from core.reports.survival import finished, nursed
from core.reports.wording import age, begun, grams, how_sure, more_or_less, short, when
from core.words import count


def merits(barn: Evidence, animal: Animal) -> list[Finding]:
    """What speaks for an animal, the weightiest first."""
    found = (
        _lost_so_far(barn, animal),
        _runt(barn, animal),
        _raises_well(barn, animal),
        _large_litters(barn, animal),
        _wanted_buck(barn, animal),
        _against_sire(barn, animal),
        _outdone(barn, animal),
        show_quality(animal),
        _grows_well(barn, animal),
        _on_target(barn, animal),
        _lives_on_little(barn, animal),
    )
    return [one for one in found if one is not None]


def _raises_well(barn: Evidence, animal: Animal) -> Finding | None:
    dam = barn.dams.get(animal.key)
    if dam is None or (not dam.alive and not dam.excused):
        return None
    return Finding(animal.key, animal.tag, "raises_kits", raised_said(barn, animal), dam.document(), kinds=SURVIVAL_KINDS)


def _large_litters(barn: Evidence, animal: Animal) -> Finding | None:
    """A doe whose litters are likely larger than her breed's here."""
    size = size_of(barn, animal) if animal.sex == "doe" else None
    if size is None or size_document(size)["level_low"] <= 0:
        return None
    text = f"Large litters: {level_said(size)} her breed's does here, by {count(size.litters, 'litter')}, allowing for luck."
    evidence = size_document(size) | {"count": size.litters}
    return Finding(animal.key, animal.tag, "large_litters", text, evidence, heed=-1, kinds=("kindled",))


def _runt(barn: Evidence, animal: Animal) -> Finding | None:
    """A young one far behind its herd mates or its target."""
    told = heading(barn, animal) if barn.stages[animal.key] == "grow-out" else None
    if told is None or not told.runt or told.reached:
        return None
    return Finding(animal.key, animal.tag, "runt", runt_line(told), told.document() | {"count": told.mates}, heed=1, kinds=("weighed",))


def _lives_on_little(barn: Evidence, animal: Animal) -> Finding | None:
    """An adult that holds its condition on far less feed than its weight should need."""
    found = held(barn.herd, animal, barn.today)
    if found is None or not found.frugal:
        return None
    lines = held_lines(barn.herd, found)
    evidence = found.document() | {"count": 1}
    return Finding(animal.key, animal.tag, "lives_on_little", " ".join(lines), evidence, heed=-1, kinds=("ration", "condition"))


def _lost_so_far(barn: Evidence, animal: Animal) -> Finding | None:
    """The losses of a litter that is not weaned: nothing is held against her before its end, but it is known."""
    open_ones = [one for one in litters_of(barn.herd, animal.key) if one.losses and not finished(one, barn.today)]
    if not open_ones:
        return None
    litter = open_ones[-1]
    dead = sum(one.count for one in litter.losses)
    kits = max(nursed(litter), dead)
    of_what = causes(litter.losses)
    text = f"{dead} of {count(kits, 'kit')} lost so far ({of_what}) in the litter of {when(litter.born_on, barn.today)}; counted at weaning age."
    evidence = {"born_on": litter.born_on.isoformat(), "given": kits, "lost": dead, "count": kits}
    return Finding(animal.key, animal.tag, "lost_so_far", text, evidence, kinds=("kindled", "kits_lost"))


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
    sure = how_sure("his kits would", "outgrow the old one's", chance)
    text = f"Better than his sire {short(sire)}: {sure}, {on_kits(barn, animal, sire)}."
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
    sure = how_sure(f"{short(rival)}'s kits would", "outgrow his", chance)
    text = f"{sure}, {on_kits(barn, animal, rival)}."
    evidence = {"better": rival.tag, "chance_better": chance, "count": _kits_weighed(barn, animal, rival)}
    return Finding(animal.key, animal.tag, "outproduced", text, evidence, kinds=("weighed",))


def _kits_weighed(barn: Evidence, *animals: Animal) -> int:
    return sum(growth_merit(barn, one)[2] for one in animals)


def show_quality(animal: Animal) -> Finding | None:
    """Placed at a show, or well scored."""
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
    told = heading(barn, animal)
    going = "" if told.reached or barn.stages[animal.key] != "grow-out" else f" {day_line(barn, told)}."
    text = f"{grams(settings, found.grams)} at {age(found.at_days)}{mates}.{going}"
    evidence = told.document() | {
        "grams": found.grams,
        "age_days": found.at_days,
        "target_grams": found.target,
        "expected_grams": found.expected,
        "count": found.mates,
    }
    return Finding(animal.key, animal.tag, "weight", text, evidence, kinds=("weighed",))


def too_young(barn: Evidence, animal: Animal) -> Finding:
    days = age_days(animal, barn.today)
    target = grams(barn.herd.settings, target_weight(barn.herd.settings, animal.breed))
    if days is None or days < growth.LIGHT_AGE_DAYS.value:
        told = f"{age(days)} old: " if days is not None else ""
        first = "" if animal.weights else "never weighed; weigh it now, and "
        text = f"{told}{first}weigh at 16 weeks ({target} wanted), then decide."
    else:
        text = f"{age(days)} old and unproven: breed, sell or butcher before the feed is eaten."
    return Finding(animal.key, animal.tag, "unproven", begun(text), {"age_days": days, "count": 0}, kinds=("weighed",))


def unproven(animal: Animal) -> Finding:
    return Finding(
        animal.key, animal.tag, "unproven", "No litter yet: breed her and count her first one.", {"litters": 0, "count": 0}, kinds=("bred",)
    )


def nothing_against(animal: Animal) -> Finding:
    return Finding(animal.key, animal.tag, "no_complaint", "Nothing in the notes speaks against keeping.", {"count": 0})
