"""The winter ahead: mouths and feed day by day, with everybody and without those advised to go, and the day the bin is empty."""

from __future__ import annotations

from datetime import date

from core.problem import Problem
from core.reports.evidence import Evidence
from core.reports.feed import Feed, bags, feed
from core.reports.pictures.units import day_marks, heavy
from core.reports.pictures.values import Days, Panel
from core.reports.wording import grams, price, when
from core.words import count


def winter(barn: Evidence, _key: str | None = None) -> Days | Problem:
    """The picture of the days until spring; a Problem where nobody eats or spring is here."""
    told = feed(barn.herd, barn.today)
    days = told.all.days
    if len(days) < 2 or not told.all.total_g:
        return Problem(
            "nothing_to_show",
            "Nobody on the book eats until spring, or spring is here.",
            remedy="Add an animal: new doe 40 mini rex born 3/4",
        )
    unit, one = heavy(barn.herd.settings)
    differs = told.planned.total_g < told.all.total_g
    planned = told.planned.days if differs else ()
    return Days(
        title="The winter's feed",
        note=f"until {when(told.spring, barn.today)}",
        alt="\n".join(_words(barn, told, differs=differs)),
        marks=day_marks(days[0][0], days[-1][0]),
        panels=(
            Panel(
                "rabbits at a dish",
                tuple(mouths for _, mouths, _ in days),
                tuple(mouths for _, mouths, _ in planned),
                "all stay",
                "with the plan",
            ),
            Panel(
                f"{unit} of feed a day",
                tuple(each / one for _, _, each in days),
                tuple(each / one for _, _, each in planned),
                f"all stay: {bags(told.all)}",
                f"with the plan: {bags(told.planned)}",
            ),
        ),
        events=_events(barn, told, differs=differs),
    )


def _events(barn: Evidence, told: Feed, *, differs: bool) -> tuple[tuple[float, str], ...]:
    """The days on which the bin is empty, as far as they come before spring."""
    found: list[tuple[date | None, str]] = [(told.all.runs_out, "bin empty")]
    if differs and told.planned.runs_out != told.all.runs_out:
        found.append((told.planned.runs_out, "empty with the plan"))
    return tuple(
        (float((on - barn.today).days), f"{said} {when(on, barn.today)}") for on, said in found if on is not None and on < told.spring
    )


def _words(barn: Evidence, told: Feed, *, differs: bool) -> list[str]:
    settings, days = barn.herd.settings, told.all.days
    most = max(mouths for _, mouths, _ in days)
    whole = f"{grams(settings, told.all.total_g)}, {bags(told.all)}, {price(settings, told.all.cents)}"
    lines = [
        f"Until {when(told.spring, barn.today)}, if nobody leaves: {whole}; {days[0][1]:.0f} rabbits at a dish today, up to {most:.0f}."
    ]
    if differs:
        going = count(len(told.leaving), "dish", "dishes")
        lines.append(
            f"With the plan, {going} fewer: {grams(settings, told.planned.total_g)}, {bags(told.planned)}, {price(settings, told.planned.cents)}."
        )
    lines += [f"{said[:1].upper()}{said[1:]}." for _, said in _events(barn, told, differs=differs)]
    return lines
