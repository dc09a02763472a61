"""May it be eaten: what the notes say of medicines and their withdrawal times. Never more than the notes say; a vet has the last word."""

from __future__ import annotations

from datetime import date

from core.handbook import health
from core.herd.questions import days_later, events, in_withdrawal, withdrawal_untold
from core.herd.state import Animal
from core.reply import Reply
from core.reports.ailing import ailing
from core.reports.asking import first_lines
from core.reports.evidence import Evidence
from core.reports.wording import begun, called, short
from core.words import full_day


def held_lines(animal: Animal, on: date) -> list[str]:
    """Why an animal is not for the table on that day, by the notes."""
    until, untold = in_withdrawal(animal, on), withdrawal_untold(animal, on)
    told = [f"Not to be eaten until after {full_day(until)}, by the withdrawal time you noted."] if until else []
    if untold:
        told.append(f"Treated with {untold.detail.get('with')} {full_day(untold.on)}. {health.WITHDRAWAL_UNKNOWN}")
    return told


def may_be_eaten(barn: Evidence, animal: Animal) -> tuple[str, ...]:
    """The answer, its reasons, and the caution: the words on the label and the vet's stand above the notes."""
    on = animal.gone.on if animal.gone else barn.today
    held = held_lines(animal, on)
    ill = ailing(barn, animal) if animal.living else None
    if animal.gone and animal.gone.how == "died":
        held = [health.DIED_BY_ITSELF, *held]
    if ill:
        held.append(f"{begun(ill.text)} {health.ASK_BEFORE}")
    if held:
        return (f"{called(animal)}: no, not by the notes.", *held, health.WITHDRAWAL)
    return (f"{called(animal)}: yes, as far as the notes go. {_nothing_runs(animal, on)}", health.WITHDRAWAL)


def _nothing_runs(animal: Animal, on: date) -> str:
    """Why no withdrawal time is running."""
    over = [days_later(one.on, one.detail["withdrawal_days"]) for one in events(animal, "treated") if one.on <= on]
    return (
        f"The withdrawal time you noted ended {full_day(max(over))}." if over else "No medicine is on the book; I know only what was noted."
    )


def all_held(barn: Evidence) -> Reply:
    """Everybody on the farm that is not for the table by a medicine."""
    lines = [f"{short(one)}: {held_lines(one, barn.today)[0]}" for one in barn.living if held_lines(one, barn.today)]
    if not lines:
        return Reply(("No withdrawal time is running by your notes.", health.WITHDRAWAL))
    told = first_lines("Not to be eaten:", lines)
    return Reply((*told.lines, health.WITHDRAWAL))
