"""Rows that tell of matings and litters: bred, nest box, kindled, weaned."""

from __future__ import annotations

from datetime import date, timedelta

from core.notes.kinds.kindling import Kindled
from core.notes.kinds.mating import Bred
from core.notes.kinds.nest_box import NestBoxMoved
from core.notes.kinds.weaning import Weaned
from core.notes.moving.row import Row, known_words

_COUNTS = ("born_kits", "alive", "dead")


def read_birth(row: Row) -> None:
    """Add what the row tells of its doe."""
    doe = row.tag("doe")
    if doe is None:
        row.nobody("it names no doe")
        return
    _bred(row, doe)
    if (box := row.day("box_in")) is not None:
        row.facts.append(NestBoxMoved(doe=doe, change="in", on=box))
    kindled = _kindled(row, doe)
    _weaned(row, doe, kindled)
    days = [on for fact in row.facts if isinstance(on := getattr(fact, "on", None), date)]
    for name in ("date", "status", "name", "cage"):
        row.keep(name)
    row.remarks(doe, max(days, default=row.today))


def _bred(row: Row, doe: str) -> None:
    on, buck = row.day("bred"), row.tag("buck")
    if on is not None and buck is not None and buck != doe:
        row.facts.append(Bred(doe=doe, buck=buck, on=on))
        return
    if on is not None:
        row.doubts.append("bred, but no buck is named")
        row.keep("bred")
    row.keep("buck")


def _kindled(row: Row, doe: str) -> date | None:
    on = row.day("kindled")
    if on is None:
        if known_words(row, _COUNTS):
            row.doubts.append("kits, but no day they were born")
        for name in _COUNTS:
            row.keep(name)
        return None
    born, alive, dead = (row.count(name) for name in _COUNTS)
    if alive is not None and dead is None and born is not None and born >= alive:
        dead = born - alive
    row.facts.append(Kindled(doe=doe, on=on, born=born, alive=alive, dead=dead))
    return on


def _weaned(row: Row, doe: str, kindled: date | None) -> None:
    count, on = row.count("weaned"), row.day("weaned_on")
    age = row.layout.decisions.get("weaned", "")
    if on is None and kindled is not None and age.isdigit():
        on = kindled + timedelta(int(age))
    if count is not None and on is not None and on <= row.today:
        if count:
            row.facts.append(Weaned(doe=doe, count=count, on=on))
        else:
            row.keep("weaned")
        return
    row.keep("weaned_on" if count is None else "weaned")
