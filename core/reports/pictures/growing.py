"""How one animal grows: its weights, the curve that they lead along, its breed's, the weight that is wanted and the day that it likely makes it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from math import ceil

from core.handbook import growth, stages
from core.herd.state import Animal, Weight
from core.problem import Problem
from core.reports.asking import weights_of_one
from core.reports.evidence import Evidence
from core.reports.growing import Heading, breed_curve, curve_for, heading, heading_lines
from core.reports.pictures.units import WEEK, day_marks, heavy, week_marks
from core.reports.pictures.values import Aim, Axis, Growing, Point, Series
from core.reports.wording import age, called, grams, when

STEPS = 60  # not a figure: points that make a line look round
ROOM = 1.12  # not a figure: air above the heaviest


def growing_animal(barn: Evidence, animal: Animal) -> Growing | Problem:
    """The picture of an animal's weights; a Problem where it was never weighed."""
    known = [one for one in animal.weights if one.on <= barn.today]
    if not known:
        return never_weighed(barn, animal)
    if animal.born is not None and (known[-1].on - animal.born).days <= growth.CURVE_UNTIL_DAYS.value:
        return _young(barn, animal, animal.born, known)
    return _grown(barn, animal, known)


def never_weighed(barn: Evidence, animal: Animal) -> Problem:
    """There is nothing to draw; how to weigh it in."""
    text, _, how = weights_of_one(barn, animal).text.partition(". ")
    return Problem("nothing_to_show", f"{text}.", remedy=how)


def newest_said(barn: Evidence, animal: Animal, known: Sequence[Weight]) -> str:
    """The newest weight with its age or day."""
    newest = known[-1]
    at = f"at {age((newest.on - animal.born).days)}" if animal.born else when(newest.on, barn.today)
    return f"{grams(barn.herd.settings, newest.grams)} {at}"


def _young(barn: Evidence, animal: Animal, born: date, known: Sequence[Weight]) -> Growing:
    settings = barn.herd.settings
    unit, one = heavy(settings)
    told = heading(barn, animal)
    aim = _aim(barn, born, told) if animal.living else None
    first, newest = (known[0].on - born).days, (known[-1].on - born).days
    now = (barn.today - born).days if animal.living else newest
    end = weeks_shown(newest, now, aim)
    own_curve, usual = curve_for(barn, animal), breed_curve(barn, animal.breed, animal.sex)
    start = growth.CURVE_FROM_DAYS.value
    own = line(own_curve.weight_at, max(start, min(first, newest)), end * WEEK, one) if told.weighings and animal.living else ()
    usually = line(usual.weight_at, start, end * WEEK, one)
    points = tuple(((each.on - born).days / WEEK, each.grams / one) for each in known if each.on >= born)
    target = told.target / one
    said = grams(settings, told.target)
    words = (f"{called(animal)}: {newest_said(barn, animal, known)}.", *(heading_lines(barn, animal) if animal.living else ()))
    return Growing(
        title=f"{called(animal)} growing",
        note=", ".join(part for part in (animal.breed, newest_said(barn, animal, known)) if part),
        alt="\n".join(words),
        along=Axis("weeks old", 0.0, float(end), week_marks(end)),
        up=Axis(unit, 0.0, highest([points, own, usually], target)),
        series=(Series(animal.tag, points),),
        own=own,
        usual=usually,
        usual_said=usual_said(animal.breed, animal.sex),
        target=target,
        target_said=f"{said} wanted at 16 weeks",
        aim=aim,
        today=now / WEEK if animal.living and now / WEEK <= end else None,
    )


def weeks_shown(newest: int, now: int, aim: Aim | None) -> int:
    """Up to which week the picture goes: past the sixteenth, the newest weight and, as far as one still grows, the day of the target."""
    grown = stages.SENIOR_FROM_DAYS.value
    days = [growth.LIGHT_AGE_DAYS.value, newest, now if now <= grown else 0.0]
    days += [(aim.late or aim.on) * WEEK, aim.on * WEEK] if aim else []
    return ceil(min(max(days), max(grown, newest)) / WEEK) + 1


def line(weight_at: Callable[[float], float], start: float, end: float, one: float) -> tuple[Point, ...]:
    """A curve from age to age [days] in weeks and the farm's unit, `one` of which has so many grams."""
    step = (end - start) / STEPS
    ages = [start + step * at for at in range(STEPS + 1)]
    return tuple((days / WEEK, weight_at(days) / one) for days in ages)


def highest(lines: Sequence[Sequence[Point]], target: float) -> float:
    """The top of the picture: above everything in it."""
    return ROOM * max([target, *(up for points in lines for _, up in points)])


def usual_said(breed: str | None, sex: str | None = None) -> str:
    """Whose the usual curve is."""
    return f"usual {breed or 'rabbit'}{f' {sex}' if sex else ''} here"


def _aim(barn: Evidence, born: date, told: Heading) -> Aim | None:
    """The day of the target along the weeks; None where it is made already, or likely never."""
    if told.on is None or told.early is None:
        return None
    on, early = ((day - born).days / WEEK for day in (told.on, told.early))
    late = (told.late - born).days / WEEK if told.late else None
    return Aim(on, early, late, _aim_said(told.on, told.early, told.late, barn.today))


def _aim_said(on: date, early: date, late: date | None, today: date) -> str:
    """The day of the target in two lines; the words of the card where it should be there by now."""
    if late == today:
        return "should be there\nby now: weigh it"
    if late == early:
        return f"makes it {when(on, today)}"
    return f"makes it {when(on, today)}\n({when(early, today)} {f'to {when(late, today)}' if late else 'or never'})"


def _grown(barn: Evidence, animal: Animal, known: Sequence[Weight]) -> Growing:
    """Weights by day: of one that is grown, or whose birth nobody told."""
    unit, one = heavy(barn.herd.settings)
    first = known[0].on
    last = max(barn.today if animal.living else known[-1].on, known[-1].on)
    days = max((last - first).days, WEEK)
    points = tuple((float((each.on - first).days), each.grams / one) for each in known)
    told = weights_of_one(barn, animal).lines
    return Growing(
        title=f"{called(animal)}: weights",
        note=", ".join(part for part in (animal.breed, newest_said(barn, animal, known)) if part),
        alt="\n".join((told[0], f"Newest: {newest_said(barn, animal, known)}.")),
        along=Axis("", 0.0, float(days), day_marks(first, last)),
        up=Axis(unit, 0.0, ROOM * max(up for _, up in points)),
        series=(Series(animal.tag, points),),
    )
