"""A small invented farm for tests, told in facts; and short ways to tell more of them."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

from core.herd.state import Herd
from core.notes.kinds import KIND_OF
from core.problem import Problem

TODAY = date(2026, 11, 25)


def ago(days: int) -> date:
    """The day so many days before today."""
    return TODAY - timedelta(days)


def fact(kind: str, **fields: Any) -> Any:
    """A fact of that kind; `on` is today where the kind has one and none was given."""
    of = KIND_OF[kind].fact
    if "on" in of.__dataclass_fields__ and kind not in {"animal", "planned", "remind"}:
        fields.setdefault("on", TODAY)
    return of(**fields)


def tell(herd: Herd, kind: str, **fields: Any) -> Herd:
    """The herd after one more fact, told on its own day (today where it has none)."""
    one = fact(kind, **fields)
    day = getattr(one, "on", None) if kind not in {"planned", "remind"} else None
    return KIND_OF[kind].apply(one, herd.on_day(day or TODAY))


def check(herd: Herd, kind: str, today: date = TODAY, **fields: Any) -> Problem | None:
    """What is asked about that fact."""
    return KIND_OF[kind].check(fact(kind, **fields), herd, today)


def why(herd: Herd, kind: str, **fields: Any) -> str | None:
    """The code of what is asked about that fact; None where nothing is."""
    problem = check(herd, kind, **fields)
    return problem.code if problem else None


def reply(herd: Herd, kind: str, **fields: Any) -> tuple[str, ...]:
    """What is answered to that fact, told today."""
    one = fact(kind, **fields)
    return KIND_OF[kind].reply(one, herd.on_day(TODAY), KIND_OF[kind].apply(one, herd.on_day(TODAY)))


def show(kind: str, **fields: Any) -> str:
    """That fact written back."""
    return KIND_OF[kind].show(fact(kind, **fields), Herd())


def small_herd() -> Herd:
    """Two bucks and five does of two breeds; 14 and 9 in kindle, 22 just bred, 12 and 16 with litters, 31 tagged, R23 sold.

    Sire of 12's seven kits (15 days old) is 5, of 16's five (48 days, weaned) 3. 31 is a kit of 14 of last July.
    """
    herd = Herd()
    adults = (
        ("3", "Flint", "buck", "Mini Rex", "black"),
        ("5", "Moss", "buck", "New Zealand", "white"),
        ("9", "Clover", "doe", "New Zealand", "white"),
        ("12", "Sorrel", "doe", "New Zealand", "red"),
        ("14", "Juno", "doe", "Mini Rex", "castor"),
        ("15", None, "doe", "Mini Rex", "opal"),
        ("16", "Thistle", "doe", "Mini Rex", "black"),
        ("22", "Biscuit", "doe", "New Zealand", "white"),
    )
    for tag, name, sex, breed, color in adults:
        herd = tell(herd, "animal", tag=tag, name=name, sex=sex, breed=breed, color=color, born=date(2024, 3, 2))
    herd = tell(herd, "animal", tag="R23", name="Pip", sex="buck", breed="New Zealand", born=date(2026, 8, 30), sire="5", dam="9")
    for doe, buck, days in (("14", "3", 160), ("16", "3", 79), ("12", "5", 46)):
        herd = tell(herd, "bred", doe=doe, buck=buck, on=ago(days))
    herd = tell(herd, "kindled", doe="14", born=4, on=ago(129))
    herd = tell(herd, "weaned", doe="14", count=4, on=ago(94))
    herd = tell(herd, "tagged", litter_of="14", tag="31", sex="buck", color="castor", on=ago(90))
    herd = tell(herd, "sold", litter_of="14", count=3, on=ago(80))
    herd = tell(herd, "kindled", doe="16", born=6, alive=5, dead=1, on=ago(48))
    herd = tell(herd, "bred", doe="14", buck="3", on=ago(32))
    herd = tell(herd, "bred", doe="9", buck="5", on=ago(28))
    herd = tell(herd, "kindled", doe="12", born=7, on=ago(15))
    herd = tell(herd, "bred", doe="22", buck="5", on=ago(14))
    herd = tell(herd, "weaned", doe="16", count=5, on=ago(13))
    return tell(herd, "sold", who="R23", on=ago(2)).on_day(TODAY)
