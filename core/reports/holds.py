"""What holds an animal back though it should go: kits at foot or coming, and a withdrawal time."""

from __future__ import annotations

from datetime import date, timedelta

from core.handbook import health, reproduction
from core.herd.litters import alive_now, nursed_litter
from core.herd.matings import open_mating
from core.herd.questions import in_withdrawal, withdrawal_untold
from core.herd.state import Animal
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.wording import called, when
from core.words import count, day


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
