"""Animals beside each other, each with how sure its place is: does by the kits they raise, bucks by the growth they pass on."""

from __future__ import annotations

from collections.abc import Sequence

from core.handbook import survival as figures
from core.herd.litters import litters_sired
from core.herd.settings import lowest_survival
from core.herd.state import Animal
from core.problem import Problem
from core.reckon.interval import LEVEL, reach
from core.reports.bucks import grams_scale, growth_merit
from core.reports.evidence import Evidence
from core.reports.keep_or_cull import in_breed
from core.reports.pictures.units import light
from core.reports.pictures.values import Axis, Group, Ranks, Row
from core.reports.survival import DamSurvival
from core.reports.wording import more_or_less, short
from core.words import count, listed, share

#: Rows that fit on a phone; of more, the worst and the best.
ROWS_SHOWN = 16
WHOLE = 100  # not a figure: per cent
NAMED = 3


def dams(barn: Evidence, breed: str | None = None) -> Ranks | Problem:
    """The living does that raised a litter, the one that raises the smallest share first."""
    told = [(one, barn.dams[one.key]) for one in barn.living if one.key in barn.dams and in_breed(one.breed, breed)]
    if not told:
        return Problem(
            "nothing_to_show", "No doe has raised a litter yet.", remedy="Tell me: doe 14 kindled 8, 2 dead; then: weaned 14, 6 kits"
        )
    told.sort(key=lambda each: (each[1].share.estimate, each[0].tag))
    line = lowest_survival(barn.herd.settings)
    below = [short(one) for one, dam in told if _low(dam)]
    words = [f"{count(len(told), 'doe')} by the share of live-born kits that they raise; weather and predators are not held against them."]
    words += [f"Below your line of {share(line)}, more likely than not: {_named(below)}."] if below else []
    ends = f"Lowest: {_dam_said(*told[0])}. Highest: {_dam_said(*told[-1])}." if len(told) > 1 else f"{_dam_said(*told[0])}."
    words.append(ends)
    rows = [_dam_row(one, dam) for one, dam in told]
    return Ranks(
        title=f"{f'{breed} does' if breed else 'Does'} by kits raised",
        note="share of live-born kits weaned; the bar holds 8 times in 10",
        alt="\n".join(words),
        along=Axis("% raised", 0.0, float(WHOLE)),
        groups=(_group("", rows),),
        line=line * WHOLE,
        line_said=f"your line {share(line)}",
        marked_said="more likely than not below it" if below else "",
    )


def _low(dam: DamSurvival) -> bool:
    """Whether she is flagged for it."""
    return dam.enough and dam.chance_below >= figures.LOW_SURVIVAL_CHANCE.value


def _dam_row(one: Animal, dam: DamSurvival) -> Row:
    told = dam.share
    stands_on = f"{dam.kept} of {dam.alive}, {count(len(dam.litters), 'litter')}"
    return Row(short(one), told.estimate * WHOLE, told.low * WHOLE, told.high * WHOLE, stands_on, _low(dam))


def _dam_said(one: Animal, dam: DamSurvival) -> str:
    return f"{short(one)} {share(dam.share.estimate)} (likely {dam.share.low * WHOLE:.0f} to {share(dam.share.high)}, {dam.kept} of {dam.alive} kits)"


def bucks(barn: Evidence, breed: str | None = None) -> Ranks | Problem:
    """The living bucks that sired a litter or of whose growth something is known, breed by breed, the best first."""
    unit, one_g = light(barn.herd.settings)
    grown = [
        one for one in barn.living if one.sex == "buck" and barn.stages[one.key] in {"junior", "senior"} and in_breed(one.breed, breed)
    ]
    told = [(one, found) for one in grown if (found := _merit(barn, one)) is not None]
    if not told:
        return Problem("nothing_to_show", "Nothing tells yet how fast a buck's kits grow.", remedy="Weigh kits at ten weeks: 31 4-6")
    breeds = dict.fromkeys((one.breed or "").lower() for one, _ in sorted(told, key=lambda each: (each[0].breed or "~").lower()))
    room = max(ROWS_SHOWN // len(breeds), 2)
    groups, words = [], ["Bucks by the growth that they pass on at ten weeks; dam, litter, nest and season are allowed for."]
    for each in breeds:
        of_breed = _fitting(barn, [one for one in told if (one[0].breed or "").lower() == each], room)
        name = of_breed[0][0].breed or "Breed unknown"
        groups.append(
            _group(name if len(breeds) > 1 else "", [_buck_row(barn, *one, one_g) for one in of_breed], ROWS_SHOWN // len(breeds))
        )
        words.append(f"{name}: {_buck_said(barn, *of_breed[0])}" + (f"; {_buck_said(barn, *of_breed[-1])}." if len(of_breed) > 1 else "."))
    ends = [end for group in groups for row in group.rows for end in (row.low, row.high, 0.0)]
    return Ranks(
        title=f"{f'{breed} bucks' if breed else 'Bucks'} by their kits' growth",
        note=f"{unit} passed on at ten weeks; the bar holds 8 times in 10",
        alt="\n".join(words),
        along=Axis(f"{unit} against the breed's mean here", min(ends), max(ends)),
        groups=tuple(groups),
        line=0.0,
        line_said="mean here",
    )


def _fitting(barn: Evidence, bucks: list[tuple[Animal, tuple[float, float]]], room: int) -> list[tuple[Animal, tuple[float, float]]]:
    """A breed's bucks, the best first; of more than fit, those whose kits were weighed, where there are two or more."""
    proven = [one for one in bucks if growth_merit(barn, one[0])[2]]
    shown = proven if len(bucks) > room and len(proven) > 1 else bucks
    return sorted(shown, key=lambda one: (-one[1][0], one[0].tag))


def _merit(barn: Evidence, one: Animal) -> tuple[float, float] | None:
    """What he passes on against his breed's mean here, and its standard error [g]; None where nothing tells of it."""
    trait = barn.growth
    value, _, kits = growth_merit(barn, one)
    asked = trait.solved.asked.get(one.key) if trait else None
    if value is None or asked is None or not (kits or one.weights or litters_sired(barn.herd, one.key)):
        return None
    return value, asked.standard_error * grams_scale(one)


def _buck_row(barn: Evidence, one: Animal, merit: tuple[float, float], one_g: float) -> Row:
    value, error = merit
    width, kits = reach(LEVEL) * error, growth_merit(barn, one)[2]
    stands_on = f"{count(kits, 'kit')} weighed" if kits else "no kit weighed"
    return Row(short(one), value / one_g, (value - width) / one_g, (value + width) / one_g, stands_on)


def _buck_said(barn: Evidence, one: Animal, merit: tuple[float, float]) -> str:
    kits = growth_merit(barn, one)[2]
    return f"{short(one)} {more_or_less(barn.herd.settings, merit[0])} the mean, {count(kits, 'kit')} weighed"


def _group(heading: str, rows: Sequence[Row], most: int = ROWS_SHOWN) -> Group:
    """As many rows as fit: of more, from both ends, and how many stand between."""
    if len(rows) <= most:
        return Group(heading, tuple(rows))
    upper = -(-most // 2)
    return Group(heading, (*rows[:upper], *rows[len(rows) - (most - upper) :]), len(rows) - most, upper)


def _named(names: Sequence[str]) -> str:
    """Some names, and how many more."""
    more = len(names) - NAMED
    return listed([*names[:NAMED], *([f"{more} more"] if more > 0 else [])])
