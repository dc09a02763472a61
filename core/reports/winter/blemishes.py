"""What temper, nest manners, illness and faults take off a worth, and what a wanted colour or a place at a show adds."""

from __future__ import annotations

from datetime import timedelta

from core.handbook import flags
from core.handbook import worth as figures
from core.herd.litters import litters_of
from core.herd.questions import events
from core.herd.settings import aim, colors_wanted
from core.herd.state import Animal
from core.reports.ailing import ailing
from core.reports.evidence import Evidence
from core.reports.merits import show_quality
from core.reports.winter.factors import Factor


def blemishes(barn: Evidence, animal: Animal) -> list[Factor]:
    """Those that the notes tell of it."""
    found = (
        _temper(barn, animal),
        _nest(barn, animal),
        _not_well(barn, animal),
        _fault(barn, animal),
        _show(barn, animal),
        _color(barn, animal),
    )
    return [one for one in found if one is not None]


def _temper(barn: Evidence, animal: Animal) -> Factor | None:
    since = barn.today - timedelta(days=flags.BAD_NOTES_WITHIN_DAYS.whole)
    bad = sum(one.detail.get("grade") == "bad" and one.on > since for one in events(animal, "temper"))
    return Factor("bad_temper", (1 - figures.BAD_TEMPER_TAKES.value) ** bad, 0.0, bad) if bad else None


def _nest(barn: Evidence, animal: Animal) -> Factor | None:
    since = barn.today - timedelta(days=flags.BAD_NOTES_WITHIN_DAYS.whole)
    seen = [*events(animal, "nest_manners"), *(one for litter in litters_of(barn.herd, animal.key) for one in litter.events)]
    bad = sum(one.what == "nest_manners" and one.detail.get("sign") != "good" and one.on > since for one in seen)
    return Factor("bad_nest", (1 - figures.BAD_NEST_TAKES.value) ** bad, 0.0, bad) if bad else None


def _not_well(barn: Evidence, animal: Animal) -> Factor | None:
    ill = ailing(barn, animal)
    return Factor("ailing", 1 - figures.NOT_WELL_TAKES.value, 0.0, int(ill.evidence["count"])) if ill else None


def _fault(barn: Evidence, animal: Animal) -> Factor | None:
    last = {str(one.detail.get("fault")): bool(one.detail.get("disqualifies")) for one in events(animal, "fault")}
    barred = sum(last.values())
    takes = figures.FAULT_TAKES_SHOW if for_show(barn) else figures.FAULT_TAKES
    return Factor("disqualifying_fault", 1 - takes.value, 0.0, barred) if barred else None


def _show(barn: Evidence, animal: Animal) -> Factor | None:
    found = show_quality(animal)
    adds = figures.SHOW_ADDS_SHOW if for_show(barn) else figures.SHOW_ADDS
    return Factor("show_quality", 1 + adds.value, 0.0, int(found.evidence["count"])) if found else None


def _color(barn: Evidence, animal: Animal) -> Factor | None:
    wanted = colors_wanted(barn.herd.settings, animal.breed)
    color = (animal.color or "").lower()
    return Factor("color_wanted", 1 + figures.COLOR_ADDS.value, 0.0, 1) if wanted and color and color in wanted.lower() else None


def for_show(barn: Evidence) -> bool:
    """Whether the farm says that it breeds for show."""
    return "show" in (aim(barn.herd.settings) or "").lower()
