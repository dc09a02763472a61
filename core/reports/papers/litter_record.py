"""A litter's record: its parents, its birth, what was lost and why, and each kit, with room to fill in what is to come."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import timedelta

from core.handbook import growth, reproduction
from core.herd.litters import alive_now, live_born, newest_litter, untagged
from core.herd.settings import Settings
from core.herd.state import Animal, Herd, Litter, Mating
from core.reports.litter_story import causes
from core.reports.papers.calendar import on_one_line
from core.reports.papers.leaf import Leaf, Row, Section
from core.reports.papers.paper import written
from core.reports.papers.wanted import Wanted
from core.reports.wording import WEEK, age, grams, short, tag_of

#: Lines for kits without a tag, at most.
LINES = 14  # not a figure: what a sheet holds
NOTES = 4  # not a figure: lines to write on


def litter_records(herd: Herd, wish: Wanted) -> tuple[Leaf, ...]:
    """The record of the litter that the animal bore, sired or was born in last; of all litters under their does where none is named."""
    return tuple(_record(herd, litter) for litter in _wanted(herd, wish))


def _wanted(herd: Herd, wish: Wanted) -> Iterable[Litter]:
    one = herd.find(wish.who) if wish.who else None
    if one is None:
        under = [each for each in herd.litters.values() if each.weaned_on is None and alive_now(each)]
        return sorted(under, key=lambda each: (each.born_on, each.key))
    own = newest_litter(herd, one.key)
    sired = [each for each in herd.litters.values() if each.sire == one.key]
    newest = own or max(sired, key=lambda each: each.born_on, default=None) or herd.litters.get(one.litter or "")
    return [] if newest is None else [newest]


def _record(herd: Herd, litter: Litter) -> Leaf:
    sections = (
        Section(rows=_facts(herd, litter)),
        *_of(Section("Lost", columns=("Day", "Age", "Kits", "Cause"), rows=_losses(litter))),
        *_of(Section("Fostered", columns=("Day", "Kits", "Where"), rows=_fosters(herd, litter))),
        *_of(Section("Weighed together", columns=("Day", "Age", "Kits", "All", "Each"), rows=_weighings(herd.settings, litter))),
        _kits(herd, litter),
        Section("Notes", rows=(("",),) * NOTES),
    )
    return Leaf(f"Litter of {_named(herd, litter.dam)}, {written(litter.born_on)}", sections)


def _of(section: Section) -> tuple[Section, ...]:
    """The section, where it has rows."""
    return (section,) if section.rows else ()


def _named(herd: Herd, key: str | None) -> str:
    animal = herd.animals.get(key or "")
    return on_one_line(short(animal) if animal else key or "")


def _bred(herd: Herd, animal: str | None) -> str:
    """The animal with its breed and colour."""
    known = herd.animals.get(animal or "")
    told = (_named(herd, animal), *((known.breed, known.color) if known else ()))
    return ", ".join(on_one_line(part) for part in told if part)


def _facts(herd: Herd, litter: Litter) -> tuple[Row, ...]:
    mating = next(
        (one for one in herd.matings if one.doe == litter.dam and one.outcome == "kindled" and one.ended_on == litter.born_on), None
    )
    sires = [_named(herd, key) for key in litter.sires_possible]
    return (
        ("Dam", _bred(herd, litter.dam)),
        ("Sire", _bred(herd, litter.sire) if litter.sire else " or ".join(sires)),
        *_mating(mating),
        ("Kindled", written(litter.born_on)),
        ("Born", _born(litter)),
        ("Nest box out", written(litter.box_out)),
        ("Weaned", _weaned(litter)),
        ("Colors", ", ".join(f"{kits} {color}" for color, kits in litter.colors)),
    )


def _mating(mating: Mating | None) -> tuple[Row, ...]:
    if mating is None:
        return (("Bred", ""), ("Nest box in", ""))
    due = mating.on + timedelta(days=reproduction.GESTATION_DAYS.whole)
    return (("Bred", f"{written(mating.on)}, due {written(due)}"), ("Nest box in", written(mating.box_in)))


def _born(litter: Litter) -> str:
    if litter.born is None and litter.alive is None:
        return ""
    return f"{live_born(litter)} alive" + (f", {litter.dead} dead" if litter.dead else "")


def _weaned(litter: Litter) -> str:
    if litter.weaned is None:
        return ""
    sexes = ((litter.weaned_bucks, "bucks"), (litter.weaned_does, "does"))
    told = ", ".join(f"{kits} {sex}" for kits, sex in sexes if kits is not None)
    return f"{litter.weaned}{f' ({told})' if told else ''} on {written(litter.weaned_on)}"


def _losses(litter: Litter) -> tuple[Row, ...]:
    return tuple(
        (written(one.on), age((one.on - litter.born_on).days), str(one.count), causes((one,)).partition(" ")[2]) for one in litter.losses
    )


def _fosters(herd: Herd, litter: Litter) -> tuple[Row, ...]:
    told = [(one, "from") for one in litter.fostered_in] + [(one, "to") for one in litter.fostered_out]
    return tuple(
        (written(one.on), str(one.count), f"{word} {_doe(herd, one.other)}") for one, word in sorted(told, key=lambda each: each[0].on)
    )


def _doe(herd: Herd, litter: str | None) -> str:
    found = herd.litters.get(litter or "")
    return on_one_line(tag_of(herd, found.dam) or "") if found else "another litter"


def _weighings(settings: Settings, litter: Litter) -> tuple[Row, ...]:
    return tuple(
        (
            written(on),
            age((on - litter.born_on).days),
            str(kits or ""),
            grams(settings, all_of_them),
            grams(settings, all_of_them / kits) if kits else "",
        )
        for on, all_of_them, kits in litter.weighings
    )


def _kits(herd: Herd, litter: Litter) -> Section:
    """Each kit with a tag, then lines for those without; a column an age at which the farm weighs."""
    ages = [figure.whole for figure in growth.WEIGH_DAYS]
    columns = ("Kit", "Sex", "Color", *(f"{days // WEEK} weeks" for days in ages), "What became of it")
    tagged = [herd.animals[key] for key in litter.tagged if key in herd.animals]
    without = min(untagged(herd, litter), LINES)
    blank = ("",) * len(columns)
    return Section("Kits", columns=columns, rows=(*(_kit(herd.settings, kit, ages) for kit in tagged), *(blank for _ in range(without))))


def _kit(settings: Settings, kit: Animal, ages: list[int]) -> Row:
    weights = tuple(_at(settings, kit, days) for days in ages)
    gone = f"{kit.gone.how.replace('_', ' ')} {written(kit.gone.on)}" if kit.gone else ""
    return on_one_line(short(kit)), kit.sex or "", on_one_line(kit.color or ""), *weights, gone


def _at(settings: Settings, kit: Animal, days: int) -> str:
    """The weight nearest that age, less than a week off; else a line to write it on."""
    near = [(abs((one.on - kit.born).days - days), one) for one in kit.weights if kit.born and abs((one.on - kit.born).days - days) < WEEK]
    return grams(settings, min(near, key=lambda each: each[0])[1].grams) if near else ""
