"""The forms of pictures. Every number is in the unit that its label names; nothing here knows how it will look."""

from __future__ import annotations

from dataclasses import dataclass

#: A place on the picture, along and up.
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Axis:
    """What runs along an edge: its label, from where to where, and the marks with their words (none: the drawer sets round numbers)."""

    label: str
    start: float
    end: float
    marks: tuple[tuple[float, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Series:
    """The weighings of one animal. `name` stands at their end."""

    name: str
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Aim:
    """When a weight is likely made: the middle of the answer with its likely bounds, all along the axis. `late` None: perhaps never."""

    on: float
    early: float
    late: float | None
    said: str


@dataclass(frozen=True, slots=True)
class Growing:
    """Weights over time.

    series  one for each animal
    own     the curve of the one animal, to where it leads; empty where there is none
    usual   its breed's curve on this farm, `usual_said` whose that is
    target  the weight that is wanted, `target_said` in words; None where none is
    today   where today is along the axis; None where it is not on it
    """

    title: str
    note: str
    alt: str
    along: Axis
    up: Axis
    series: tuple[Series, ...]
    own: tuple[Point, ...] = ()
    usual: tuple[Point, ...] = ()
    usual_said: str = ""
    target: float | None = None
    target_said: str = ""
    aim: Aim | None = None
    today: float | None = None


@dataclass(frozen=True, slots=True)
class Row:
    """An animal among others: what is known of it and how sure that is. `stands_on` is what is behind it, `marked` that it wants a look."""

    name: str
    value: float
    low: float
    high: float
    stands_on: str
    marked: bool = False


@dataclass(frozen=True, slots=True)
class Group:
    """Rows under a heading of their own; `left_out` rows stand between the first `upper` and the rest. Empty heading: only one group."""

    heading: str
    rows: tuple[Row, ...]
    left_out: int = 0
    upper: int = 0


@dataclass(frozen=True, slots=True)
class Ranks:
    """Animals beside each other, each with its interval; `line` is what they are held against, `line_said` in words, `marked_said` what a mark says."""

    title: str
    note: str
    alt: str
    along: Axis
    groups: tuple[Group, ...]
    line: float
    line_said: str
    marked_said: str = ""


@dataclass(frozen=True, slots=True)
class Born:
    """One litter: its day, kits alive and dead at birth, those weaned (None: not yet, or nobody told)."""

    name: str
    alive: int
    dead: int
    weaned: int | None


@dataclass(frozen=True, slots=True)
class Litters:
    """A doe's litters in order, and what to expect of the next: likely between `low` and `high`; None where she is gone."""

    title: str
    note: str
    alt: str
    litters: tuple[Born, ...]
    following: tuple[float, float, float] | None  # low, likely, high
    following_said: str = "next"


@dataclass(frozen=True, slots=True)
class Panel:
    """One measure day by day: with everybody, and with the plan where that differs (else empty)."""

    label: str
    whole: tuple[float, ...]
    planned: tuple[float, ...]
    whole_said: str
    planned_said: str


@dataclass(frozen=True, slots=True)
class Days:
    """Measures over the same days. `events` are days (by number from the first) with what happens then."""

    title: str
    note: str
    alt: str
    marks: tuple[tuple[float, str], ...]
    panels: tuple[Panel, ...]
    events: tuple[tuple[float, str], ...] = ()


@dataclass(frozen=True, slots=True)
class DayRow:
    """One day of a week: its name, its chores, how many more there are, and whether it is today or `late`: before today."""

    name: str
    chores: tuple[str, ...]
    more: int = 0
    today: bool = False
    late: bool = False


@dataclass(frozen=True, slots=True)
class Week:
    """Days one below the other with what is to be done."""

    title: str
    note: str
    alt: str
    days: tuple[DayRow, ...]


Picture = Growing | Ranks | Litters | Days | Week
