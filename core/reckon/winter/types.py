"""What the winter's choice is asked, and what it answers: animals as numbers, the farm's limits, and the set that is worth most.

Worth is in one unit throughout, the caller's: the reports use grams of kits weaned a year.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from core.reckon.choose import Guess

#: Kinship of two animals [share, 0 to 1], the COI of their kits; asked of a buck and a doe of one breed only.
Kin = Callable[[str, str], float]


@dataclass(frozen=True, slots=True)
class Candidate:
    """An animal, or a cage of kits, that may stay the winter.

    breed     the breed's key; unknown is a breed of its own
    worth     what it adds in a year over an empty cage, its deviation what is not known of it
    grown     whether it can breed by spring: only these count among a breed's bucks and does, and can be mated
    feed_g    what it eats from today until spring [g]
    places    cages that it takes; 0 for one that shares another's
    mouths    how many eat there
    pin       a person's word, which the choice never goes against
    one_more  how far one more litter, or one more weighing, may be expected to move its worth [the unit of worth]
    """

    key: str
    sex: Literal["buck", "doe"] | None
    breed: str
    worth: Guess
    grown: bool
    feed_g: float = 0.0
    places: int = 1
    mouths: int = 1
    pin: Literal["keep", "go"] | None = None
    one_more: float = 0.0


@dataclass(frozen=True, slots=True)
class Limits:
    """What the choice must keep to. None, or a breed that is not named: no limit.

    feed_g        feed until spring [g]
    bucks, does   the most grown ones of a breed
    litters       how many does of a breed should have a mate in spring
    highest_coi   the highest COI of a spring mating [share]
    caution       how many deviations are taken off a worth that is not well known
    feed_worth    what a gram of feed is worth [worth a g]: an animal that brings less than it eats is not kept for its own sake
    coi_cost      what the kits' inbreeding takes off a mated doe [worth for a COI of 1], never more than `unmated`
    unmated       what a kept grown doe without a mate loses [worth]
    """

    cages: int | None = None
    mouths: int | None = None
    feed_g: float | None = None
    bucks: Mapping[str, int] = field(default_factory=dict)
    does: Mapping[str, int | None] = field(default_factory=dict)
    litters: Mapping[str, int] = field(default_factory=dict)
    highest_coi: float = 1.0
    caution: float = 0.0
    feed_worth: float = 0.0
    coi_cost: float = 0.0
    unmated: float = 0.0


@dataclass(frozen=True, slots=True)
class Mating:
    """A spring mating that the choice leaves possible: within the COI limit, both kept."""

    doe: str
    buck: str
    coi: float


@dataclass(frozen=True, slots=True)
class Price:
    """What a pin costs: the choice with it against the best choice without it.

    worth       what is lost by it
    feed_g      what the pinned one eats until spring [g]
    more_feed_g how much more feed the whole plan takes with it [g]; below 0 where it takes less
    go          who goes and would otherwise stay, the pinned one apart
    stay        who stays and would otherwise go
    """

    worth: float
    feed_g: float
    more_feed_g: float
    go: tuple[str, ...]
    stay: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Choice:
    """The set that is worth most, of those that leave as few breeds as can be unable to breed on; exactly, up to 150 animals.

    In a larger herd it is within a thousandth of the best, and prices and flips are those that a swap of a few animals tells.

    kept, going    keys in the order told
    worth          of the kept, doubt, feed, inbreeding and unmated does taken off
    matings        every spring mating within the limit, by doe, the least inbred first
    mean_kinship   between kept grown bucks and does of one breed, over all pairs; None with no pair
    price_of_pin   what each pin costs; no entry for a pin that changes nothing
    flips          whose place changes when its worth moves by its `one_more`, in the order told
    lacking        breeds with grown stock that can't breed on: they lack a `buck`, a `doe`, `both`, or a `pair` within the limit
    """

    kept: tuple[str, ...]
    going: tuple[str, ...]
    worth: float
    feed_g: float
    places: int
    mouths: int
    matings: tuple[Mating, ...]
    mean_kinship: float | None
    price_of_pin: Mapping[str, Price]
    flips: tuple[str, ...]
    lacking: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Change:
    """One limit changed. `limit` is a field of `Limits`; `was` and `to` in its unit."""

    limit: Literal["cages", "mouths", "feed_g", "bucks", "does", "litters"]
    breed: str | None
    was: float
    to: float


@dataclass(frozen=True, slots=True)
class Unfit:
    """Limits and pins contradict each other.

    changes    the smallest change that makes one fit, each measured against what was set; mostly one
    limits     the limits so changed
    choice     the best choice under them
    or_lift    pins that alone would make it fit, were they lifted
    """

    changes: tuple[Change, ...]
    limits: Limits
    choice: Choice
    or_lift: tuple[str, ...]

    @property
    def change(self) -> Change:
        """The first change, and mostly the only one."""
        return self.changes[0]
