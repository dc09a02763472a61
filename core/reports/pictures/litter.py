"""How a litter grows: the weights of each of its kits that has a tag, the mean of those weighed together, beside the breed's curve."""

from __future__ import annotations

from collections.abc import Iterable

from core.handbook import growth
from core.herd.litters import litters_of
from core.herd.settings import target_weight
from core.herd.state import Animal, Litter
from core.problem import Problem
from core.reports.evidence import Evidence
from core.reports.growing import breed_curve
from core.reports.pictures.growing import highest, line, usual_said, weeks_shown
from core.reports.pictures.units import WEEK, heavy, week_marks
from core.reports.pictures.values import Axis, Growing, Point, Series
from core.reports.wording import age, called, grams, short, when
from core.words import count

#: So many kits are told apart; of more, the lightest and the heaviest.
KITS_SHOWN = 12  # not a figure: names that fit beside a picture
TOGETHER = "all"


def growing_litter(barn: Evidence, dam: Animal) -> Growing | Problem:
    """The picture of a doe's newest litter that was weighed; a Problem where none was."""
    weighed = [one for one in reversed(litters_of(barn.herd, dam.key)) if one.born_on <= barn.today and _series(barn, one)]
    if not weighed:
        how = f"Tell me: {dam.tag} litter 5 kits 9 lb"
        return Problem("nothing_to_show", f"No kit of {called(dam)} was weighed yet.", remedy=how)
    return _drawn(barn, dam, weighed[0])


def _series(barn: Evidence, litter: Litter) -> list[Series]:
    """The weights of the litter: one series for each kit with a tag, one for those weighed together."""
    one = heavy(barn.herd.settings)[1]
    tagged = [barn.herd.animals[key] for key in litter.tagged if key in barn.herd.animals]
    told = [(kit.tag, [(each.on, each.grams / one) for each in kit.weights]) for kit in tagged]
    told.append((TOGETHER, [(on, weight / kits / one) for on, weight, kits in litter.weighings if kits]))
    aged = [
        (name, tuple(((on - litter.born_on).days / WEEK, weight) for on, weight in points if litter.born_on <= on <= barn.today))
        for name, points in told
    ]
    return [Series(name, points) for name, points in aged if points]


def _drawn(barn: Evidence, dam: Animal, litter: Litter) -> Growing:
    settings = barn.herd.settings
    unit, one = heavy(settings)
    series = sorted(_series(barn, litter), key=lambda each: (each.points[-1][1], each.name))
    days = [round(along * WEEK) for each in series for along, _ in each.points]
    end = weeks_shown(min(max(days), growth.CURVE_UNTIL_DAYS.whole), (barn.today - litter.born_on).days, None)
    shown = [Series(each.name, kept) for each in _told_apart(series) if (kept := _until(each.points, float(end)))]
    usually = line(breed_curve(barn, dam.breed).weight_at, growth.CURVE_FROM_DAYS.value, end * WEEK, one)
    target = target_weight(settings, dam.breed)
    now = (barn.today - litter.born_on).days / WEEK
    return Growing(
        title=f"Litter of {short(dam)}, born {when(litter.born_on, barn.today)}",
        note=", ".join(part for part in (dam.breed, _newest(series)) if part),
        alt="\n".join((f"Litter of {short(dam)}, born {when(litter.born_on, barn.today)}.", _words(barn, series))),
        along=Axis("weeks old", 0.0, float(end), week_marks(end)),
        up=Axis(unit, 0.0, highest([usually, *(each.points for each in shown)], target / one)),
        series=tuple(shown),
        usual=usually,
        usual_said=usual_said(dam.breed),
        target=target / one,
        target_said=f"{grams(settings, target)} wanted at 16 weeks",
        today=now if now <= end else None,
    )


def _told_apart(series: list[Series]) -> list[Series]:
    """As many as can be told apart: of more, half from each end."""
    half = KITS_SHOWN // 2
    return series if len(series) <= KITS_SHOWN else [*series[:half], *series[-half:]]


def _until(points: Iterable[Point], end: float) -> tuple[Point, ...]:
    return tuple(each for each in points if each[0] <= end)


def _newest(series: list[Series]) -> str:
    """How old it is, or was when last weighed, and how many were weighed."""
    kits = [each for each in series if each.name != TOGETHER]
    newest = max(along for each in series for along, _ in each.points)
    weighed = f"{count(len(kits), 'kit')} weighed" if kits else "weighed together"
    return f"{weighed}, last at {age(round(newest * WEEK))}"


def _words(barn: Evidence, series: list[Series]) -> str:
    """The lightest and the heaviest by their newest weights; of those weighed together their mean."""
    settings, one = barn.herd.settings, heavy(barn.herd.settings)[1]

    def said(each: Series) -> str:
        along, up = each.points[-1]
        return f"{each.name} {grams(settings, up * one)} at {age(round(along * WEEK))}"

    kits = [each for each in series if each.name != TOGETHER]
    if len(kits) > 1:
        return f"{count(len(kits), 'kit')} weighed, from {said(kits[0])} to {said(kits[-1])}."
    if kits:
        return f"One kit weighed: {said(kits[0])}."
    along, up = series[0].points[-1]
    return f"Weighed together: {grams(settings, up * one)} a kit at {age(round(along * WEEK))}."
